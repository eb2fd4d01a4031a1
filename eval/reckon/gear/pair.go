package gear

import (
	"errors"
	"fmt"
	"math"
)

// Mesh is two wheels run together. The contact ratio is a plain number: how many pairs of teeth
// are in touch on the mean.
type Mesh struct {
	Centre       float64    // mm
	Standard     float64    // centre distance without shift, mm: half the sum (inside: difference) of the reference diameters
	Pressure     float64    // working angle in the plane of rotation, degrees
	Working      [2]float64 // working pitch diameters, mm
	Clearance    [2]float64 // tip of the first to root of the second, tip of the second to root of the first, mm
	Shorten      float64    // taken off each tip radius to keep the depth system's clearance, mm
	Tip          [2]float64 // tip diameters so shortened, mm
	ContactRatio float64    // in the plane of rotation, with those tips
	Backlash     float64    // along the working circle, in the plane of rotation, mm; below 0 the teeth jam
	Normal       float64    // backlash square to the flanks, mm
	Overlap      float64    // width of face for an overlap of one tooth, mm; 0 for spur wheels
}

// pairing holds what a pair of wheels has in common.
type pairing struct {
	g     [2]geometry
	z     [2]float64
	inner float64 // +1 two outside wheels, -1 the second is internal
	a0    float64
}

func pairOf(a, b Wheel) (p pairing, err error) {
	if a.Internal {
		return p, errors.New("the first wheel of a pair cannot be the internal one: name it second")
	}
	for i, w := range [2]Wheel{a, b} {
		if p.g[i], err = w.geometry(); err != nil {
			return p, err
		}
		p.z[i] = float64(w.Teeth)
	}
	switch {
	case math.Abs(a.Module-b.Module) > 1e-9*a.Module:
		return p, fmt.Errorf("modules of %v mm and %v mm do not run together", a.Module, b.Module)
	case math.Abs(a.Pressure-b.Pressure) > 1e-9:
		return p, fmt.Errorf("pressure angles of %v and %v degrees do not run together", a.Pressure, b.Pressure)
	case math.Abs(a.Helix-b.Helix) > 1e-9:
		return p, fmt.Errorf("helix angles of %v and %v degrees do not run together on parallel shafts", a.Helix, b.Helix)
	case b.Internal && b.Teeth <= a.Teeth:
		return p, fmt.Errorf("an internal wheel of %d teeth: it must have more than its pinion's %d", b.Teeth, a.Teeth)
	}
	p.inner = p.g[1].side
	p.a0 = (p.g[1].d + p.inner*p.g[0].d) / 2
	return p, nil
}

// Pair runs two wheels together at a centre distance in mm; 0 asks for the centre distance at
// which the teeth as shifted, but not thinned, fit without backlash: a = a0 cos(at)/cos(aw), inv
// aw = inv at + 2 tan(an) (x2 +- x1)/(z2 +- z1). ISO 21771; the shortening of the tips keeps the
// clearance that the depth system leaves.
//
// Laws: without shift the centre distance is half the sum (inside: difference) of the reference
// diameters; teeth thinned by s1 and s2 have, at the centre distance worked out, the backlash (s1
// + s2) cos(an) square to the flanks.
//
// An error names what Wheel.Check refuses of either, what does not run together (modules, angles,
// an internal wheel named first or with too few teeth), shifts too negative for any centre
// distance, or a centre distance beyond that of the base circles or twice the standard one.
func Pair(a, b Wheel, centre float64) (Mesh, error) {
	p, err := pairOf(a, b)
	if err != nil {
		return Mesh{}, err
	}
	aw, err := p.angle(a, b, centre)
	if err != nil {
		return Mesh{}, err
	}
	m := Mesh{Standard: p.a0, Pressure: deg(aw), Centre: centre}
	if centre == 0 {
		m.Centre = p.a0 * math.Cos(p.g[0].at) / math.Cos(aw)
	}
	for i := range 2 {
		m.Working[i] = p.g[i].db / math.Cos(aw)
	}
	m.tips(p, a.depth().Clearance(a.Module))
	m.ContactRatio = p.contact(m.Tip, m.Centre, aw)
	m.Backlash = math.Pi*m.Working[0]/p.z[0] - p.g[0].thickness(m.Working[0]) - p.g[1].thickness(m.Working[1])
	m.Normal = m.Backlash * math.Cos(aw) * math.Cos(p.g[0].bb)
	if a.Helix > 0 {
		m.Overlap = math.Pi * a.Module / math.Sin(rad(a.Helix))
	}
	return m, nil
}

// angle is the working angle in radians.
func (p pairing) angle(a, b Wheel, centre float64) (float64, error) {
	at := p.g[0].at
	if centre == 0 {
		x := Involute(at) + 2*math.Tan(p.g[0].an)*(b.Shift+p.inner*a.Shift)/(p.z[1]+p.inner*p.z[0])
		if x <= 0 {
			return 0, fmt.Errorf("profile shifts of %v and %v modules: too negative for any centre distance", a.Shift, b.Shift)
		}
		return AngleOf(x)
	}
	if err := within("a centre distance of", centre, p.a0*math.Cos(at), 2*p.a0, " mm"); err != nil {
		return 0, err
	}
	return math.Acos(math.Min(1, p.a0*math.Cos(at)/centre)), nil
}

// tips works out the clearances and what is taken off the tips for them.
func (m *Mesh) tips(p pairing, want float64) {
	tip := [2]float64{p.g[0].tipDiameter(), p.g[1].tipDiameter()}
	root := [2]float64{p.g[0].rootDiameter(), p.g[1].rootDiameter()}
	m.Clearance = [2]float64{m.Centre - tip[0]/2 - root[1]/2, m.Centre - tip[1]/2 - root[0]/2}
	if p.inner < 0 {
		m.Clearance = [2]float64{root[1]/2 - m.Centre - tip[0]/2, tip[1]/2 - m.Centre - root[0]/2}
	}
	m.Shorten = math.Max(0, want-math.Min(m.Clearance[0], m.Clearance[1]))
	if m.Shorten < 1e-9 {
		m.Shorten = 0
	}
	m.Tip = [2]float64{tip[0] - 2*m.Shorten, tip[1] - p.inner*2*m.Shorten}
}

// contact is the length of the path of contact over the base pitch.
func (p pairing) contact(tip [2]float64, centre, aw float64) float64 {
	out := [2]float64{}
	for i := range 2 {
		out[i] = math.Sqrt(math.Max(0, tip[i]*tip[i]-p.g[i].db*p.g[i].db)) / 2
	}
	path := out[0] + p.inner*out[1] - p.inner*centre*math.Sin(aw)
	return math.Max(0, path) / (math.Pi * p.g[0].db / p.z[0])
}

// SharedShift gives the profile shift, in modules, that two wheels must have together to run
// without backlash at a centre distance, mm: the sum of both, or of an internal pair the wheel's
// less the pinion's (ISO 21771). The shifts of the wheels themselves do not count. Errors as of
// Pair; a centre distance of 0 is one too.
//
// Law: wheels so shifted pair at that centre distance.
func SharedShift(a, b Wheel, centre float64) (float64, error) {
	p, err := pairOf(a, b)
	if err != nil {
		return 0, err
	}
	if centre == 0 {
		return 0, errors.New("a centre distance is wanted, in mm")
	}
	aw, err := p.angle(a, b, centre)
	if err != nil {
		return 0, err
	}
	return (Involute(aw) - Involute(p.g[0].at)) * (p.z[1] + p.inner*p.z[0]) / (2 * math.Tan(p.g[0].an)), nil
}

// Choice is a pair of tooth counts for a centre distance.
type Choice struct {
	Teeth    [2]int
	Off      float64 // centre distance wanted less the pair's own without shift, mm
	Ratio    float64 // second by first
	Undercut bool    // of either by a rack-shaped cutter
}

// PairsFor finds tooth counts for a centre distance, 0.1 to 100,000 mm, and a ratio of wheel to
// pinion, 1 to 1000, spur and unshifted, of one module, mm, and pressure angle, degrees: for each
// whole sum of teeth next to 2a/m the split nearest to the ratio. The first answer is the one
// whose own centre distance is nearest. An error names the figure out of range, or says that a
// wheel would have fewer than 3 teeth or more than 10,000.
func PairsFor(centre, ratio, module, pressure float64) ([]Choice, error) {
	if err := first(within("a centre distance of", centre, 0.1, 1e5, " mm"), within("a ratio of", ratio, 1, 1000, ""),
		Wheel{Teeth: 3, Module: module, Pressure: pressure}.Check()); err != nil {
		return nil, err
	}
	exact := 2 * centre / module
	sums := []float64{math.Round(exact)}
	if math.Abs(exact-sums[0]) > 1e-6 {
		sums = append(sums, 2*math.Floor(exact)+1-sums[0])
	}
	var out []Choice
	for _, sum := range sums {
		z1 := math.Round(sum / (1 + ratio))
		z2 := sum - z1
		if z1 < 3 || z2 < 3 || z2 > 10000 {
			continue
		}
		c := Choice{Teeth: [2]int{int(z1), int(z2)}, Off: centre - sum*module/2, Ratio: z2 / z1}
		for _, z := range c.Teeth {
			b, err := Wheel{Teeth: z, Module: module, Pressure: pressure}.Blank()
			if err != nil {
				return nil, err
			}
			c.Undercut = c.Undercut || b.Undercut
		}
		out = append(out, c)
	}
	if out == nil {
		return nil, fmt.Errorf("a ratio of %v at %v mm with module %v mm: it leaves a wheel with fewer than 3 or more than 10000 teeth", ratio, centre, module)
	}
	return out, nil
}
