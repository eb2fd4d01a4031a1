package gear

import (
	"fmt"
	"math"
)

// Wheel is one spur or helical wheel, as it is ordered. What lies outside the ranges below is an
// error of its methods, which names the figure.
type Wheel struct {
	Teeth    int     // 3 to 10000
	Module   float64 // normal, mm, 0.02 to 100
	Pressure float64 // normal, degrees, 10 to 35
	Helix    float64 // degrees at the reference circle, 0 (spur) to 75; its hand is not reckoned with
	Shift    float64 // profile shift in modules, -2 to 2; positive moves tip and root away from the axis
	Thinning float64 // mm taken off the normal tooth thickness for backlash, from 0
	Internal bool    // teeth point inwards
	Depth    Depth   // the zero Depth: UsualDepth
}

// Blank is what there is to turn and to cut.
type Blank struct {
	Reference float64 // diameters, mm
	Base      float64
	Tip       float64 // of an internal wheel: the bore
	Root      float64
	Addendum  float64 // reference circle to tip, mm
	Whole     float64 // tip to root, mm, without what is fed deeper
	Deeper    float64 // how much deeper a form cutter is fed to thin the teeth: thinning / (2 tan a)
	Thickness float64 // of the tooth, arc on the reference circle, normal to it, mm
	TipLand   float64 // thickness left at the tip, arc in the plane of rotation; below 0 the tooth is pointed

	TransverseModule   float64
	TransversePressure float64 // degrees
	BasePitch          float64 // normal, mm: each further tooth adds it to a span
	Lead               float64 // of the helix, mm; 0 for a spur wheel
	Virtual            float64 // teeth that a form cutter is chosen for: z / cos^3(helix)

	LeastTeeth float64 // fewest teeth that a rack-shaped cutter does not undercut, unshifted
	LeastShift float64 // least shift in modules without undercut
	Undercut   bool    // by a rack-shaped cutter; of an internal wheel always false
}

// geometry is what every reckoning of a wheel needs.
type geometry struct {
	d, db          float64 // reference and base diameter
	an, at, b, bb  float64 // normal and transverse angle, helix, helix on the base cylinder, rad
	sn, st         float64 // thickness on the reference circle, normal and transverse
	side           float64 // +1 outside, -1 inside
	addendum, root float64 // radial, mm, from the reference circle
}

// depth is the depth of the wheel's teeth.
func (w Wheel) depth() Depth { return w.Depth.or(w.Pressure) }

// leastHelix is the least helix angle that is one, degrees: less winds once in more than any bar is long.
const leastHelix = 1e-9

// Check says what is out of range; also a helix angle that is above 0 and below 1e-9 degrees, a
// shift that leaves no tooth on the reference circle, and thinning of more than half of it.
func (w Wheel) Check() error {
	if w.Teeth < 3 || w.Teeth > 10000 {
		return fmt.Errorf("%d teeth: a wheel has from 3 to 10000", w.Teeth)
	}
	if w.Helix > 0 && w.Helix < leastHelix {
		return fmt.Errorf("a helix angle of %v degrees: it must be 0, or from %v to 75 degrees", w.Helix, leastHelix)
	}
	return first(
		within("a module of", w.Module, 0.02, 100, " mm"),
		within("a pressure angle of", w.Pressure, 10, 35, " degrees"),
		within("a helix angle of", w.Helix, 0, 75, " degrees"),
		within("a profile shift of", w.Shift, -2, 2, " modules"),
		w.depth().check(),
		w.thickEnough(),
	)
}

// thickEnough wants some tooth left on the reference circle.
func (w Wheel) thickEnough() error {
	left := w.Module * (math.Pi/2 + w.side()*2*w.Shift*math.Tan(rad(w.Pressure)))
	if left < 0.05*w.Module {
		return fmt.Errorf("a profile shift of %v modules: it leaves no tooth on the reference circle", w.Shift)
	}
	return within("a thinning of", w.Thinning, 0, 0.5*left, " mm")
}

func (w Wheel) side() float64 {
	if w.Internal {
		return -1
	}
	return 1
}

func (w Wheel) geometry() (geometry, error) {
	if err := w.Check(); err != nil {
		return geometry{}, err
	}
	g := geometry{an: rad(w.Pressure), b: rad(w.Helix), side: w.side()}
	m, depth := w.Module, w.depth()
	g.at = math.Atan(math.Tan(g.an) / math.Cos(g.b))
	g.bb = math.Asin(math.Sin(g.b) * math.Cos(g.an))
	g.d = float64(w.Teeth) * m / math.Cos(g.b)
	g.db = g.d * math.Cos(g.at)
	g.sn = m*(math.Pi/2+g.side*2*w.Shift*math.Tan(g.an)) - w.Thinning
	g.st = g.sn / math.Cos(g.b)
	g.addendum = (depth.Addendum + g.side*w.Shift) * m
	g.root = (depth.Whole-depth.Addendum-g.side*w.Shift)*m + depth.Extra
	return g, nil
}

// tip and root are diameters.
func (g geometry) tipDiameter() float64  { return g.d + g.side*2*g.addendum }
func (g geometry) rootDiameter() float64 { return g.d - g.side*2*g.root }

// Blank gives the sizes of a wheel. An internal wheel is reckoned with its own tooth, not with the
// space that the pinion's cutter leaves. Formulas: ISO 21771; undercut z >= 2 h cos(b) /
// sin^2(at), any gear text. An error for what Check refuses, and where nothing is left inside the
// teeth.
func (w Wheel) Blank() (Blank, error) {
	g, err := w.geometry()
	if err != nil {
		return Blank{}, err
	}
	d, m, z := w.depth(), w.Module, float64(w.Teeth)
	out := Blank{Reference: g.d, Base: g.db, Tip: g.tipDiameter(), Root: g.rootDiameter(), Addendum: g.addendum,
		Whole: d.Whole*m + d.Extra, Deeper: w.Thinning / (2 * math.Tan(g.an)), Thickness: g.sn,
		TransverseModule: m / math.Cos(g.b), TransversePressure: deg(g.at), BasePitch: math.Pi * m * math.Cos(g.an)}
	if out.Root <= 0 || out.Tip <= 0 {
		return Blank{}, fmt.Errorf("%d teeth of module %v mm with a shift of %v: nothing is left inside the teeth", w.Teeth, m, w.Shift)
	}
	if w.Helix > 0 {
		out.Lead = math.Pi * g.d / math.Tan(g.b)
	}
	out.Virtual = VirtualTeeth(z, w.Helix)
	out.TipLand = g.thickness(out.Tip)
	if !w.Internal {
		s := math.Sin(g.at)
		out.LeastTeeth = 2 * d.Addendum * math.Cos(g.b) / (s * s)
		out.LeastShift = d.Addendum - z*s*s/(2*math.Cos(g.b))
		out.Undercut = w.Shift < out.LeastShift-1e-9
	}
	return out, nil
}

// thickness is the arc of the tooth on a circle, in the plane of rotation. Inside the base
// circle there is no involute: there it is taken as far as the base circle.
func (g geometry) thickness(diameter float64) float64 {
	a := math.Acos(math.Min(1, g.db/diameter))
	return diameter * (g.st/g.d + g.side*(Involute(g.at)-Involute(a)))
}

// VirtualTeeth is the number of teeth of a spur wheel whose tooth is shaped like that of a helical
// one, seen square to the tooth: z / cos^3(helix), helix in degrees (any gear text). A bare
// formula, whose ranges Check asks for; no number where teeth or helix are none.
func VirtualTeeth(teeth, helix float64) float64 {
	c := math.Cos(rad(helix))
	return teeth / (c * c * c)
}

// HelixFor gives the helix angle in degrees that brings two outside wheels of a module, mm, to a
// centre distance, mm: cos b = m (z1 + z2) / 2a. A centre distance below that of spur wheels, or
// above that of 75 degrees, is an error, as is what Check refuses.
func HelixFor(z1, z2 int, module, centre float64) (float64, error) {
	spur := module * float64(z1+z2) / 2
	if err := first(Wheel{Teeth: z1, Module: module, Pressure: 20}.Check(), Wheel{Teeth: z2, Module: module, Pressure: 20}.Check(),
		within("a centre distance of", centre, spur, spur/math.Cos(rad(75)), " mm")); err != nil {
		return 0, err
	}
	return deg(math.Acos(math.Min(1, spur/centre))), nil
}
