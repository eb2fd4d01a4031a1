package eval

import (
	"math"
	"slices"

	"fettle/eval/solid"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Breakout is how a feature stands to the surface of the finished part and to others.
type Breakout struct {
	Wall  float64 // least metal beside it
	And   string  // what is on the other side; "" the part's own surface
	Other *Form   // the same; nil the part's own surface
	Turn  int     // its turn among the forms of the part
	Known bool
}

// SideWall is the least metal between a hole of the finished part and the sides of its
// envelope. Negative: it breaks out by so much. A thread counts with its major diameter.
func (p *Part) SideWall(f *Form) (side Breakout) {
	if f.Owner != nil {
		return f.Owner.SideWall(f.Own)
	}
	if len(f.Mouths) == 0 || !f.Diameter.Is() {
		return side
	}
	r := f.Radius()
	for _, m := range f.Mouths {
		if p.Round {
			if d := p.roundWall(f, m) - r; !side.Known || d < side.Wall {
				side = Breakout{Wall: d, Known: true}
			}
			continue
		}
		for i := range 3 {
			if i == f.Into.Face.Axis() {
				continue
			}
			for _, d := range [2]float64{m[i] - p.Low[i] - r, p.High()[i] - m[i] - r} {
				if !side.Known || d < side.Wall {
					side = Breakout{Wall: d, Known: true}
				}
			}
		}
	}
	return side
}

// roundWall is how far the axis of a hole lies from the outside of a turned part, or, across
// it, from the nearer end.
func (p *Part) roundWall(f *Form, m solid.Vec) float64 {
	if !f.Into.Face.Turned() {
		return min(m[0]-p.Low[0], p.High()[0]-m[0])
	}
	r := p.Radius()
	for _, g := range p.Forms {
		if l := g.Lathe; l != nil && p.Own(g.About) && !l.Inside && g.Feature.Kind == "outside" && m[0] > l.X0-model.Grain && m[0] < l.X1+model.Grain {
			r = min(r, l.R0)
		}
	}
	return r - math.Hypot(m[1], m[2])
}

// Beside is the least metal between a hole of the finished part and every other feature,
// declared to meet it or not. Negative: they overlap by so much. Threads count with their
// major diameter. Of a part with many features only what is near is looked at: what may be nearer
// than the thinnest wall that is told of, or than the nearest of all.
func (p *Part) Beside(f *Form) []Breakout {
	if f.Owner != nil {
		return f.Owner.Beside(f.Own)
	}
	if len(f.Mouths) == 0 || !f.Diameter.Is() {
		return nil
	}
	if f.beside == nil {
		f.beside = p.allBeside(f)
	}
	return f.beside
}

// manyForms is from how many features on only near ones are looked at.
const manyForms = 64

func (p *Part) allBeside(f *Form) []Breakout {
	others := []Breakout{}
	far := math.Inf(1)
	if len(p.Forms) > manyForms {
		far = p.nearest(f)
	}
	own := f.bounds()
	for i, g := range p.Forms {
		if g == f || g.Wrong != "" || len(g.Lacks) > 0 || own.apart(p.boxOf(i)) > far {
			continue
		}
		if d, ok := p.between(f, g); ok {
			others = append(others, Breakout{Wall: d, And: g.Name(), Other: g, Turn: i, Known: true})
		}
	}
	return others
}

// nearest is how far another feature may be from a hole for it to be looked at.
func (p *Part) nearest(f *Form) float64 {
	own := f.bounds()
	var none []*Form // nearer ones of which no figure can be given
	for {
		least, at := math.Inf(1), (*Form)(nil)
		for i, g := range p.Forms {
			if g == f || g.Wrong != "" || len(g.Lacks) > 0 || len(none) > 0 && slices.Contains(none, g) {
				continue
			}
			if d := own.apart(p.boxOf(i)); d < least {
				least, at = d, g
			}
		}
		if at == nil {
			return math.Inf(1)
		}
		if exact, ok := p.between(f, at); ok {
			return math.Max(math.Max(exact, least), p.Build.Thumbs["thin_wall"].Or(1)) + 1
		}
		if none = append(none, at); len(none) > manyForms {
			return math.Inf(1) // all of them are looked at
		}
	}
}

// bounds is a box round all that a form takes away.
type bounds struct{ lo, hi solid.Vec }

func (f *Form) bounds() bounds {
	lo, hi := f.extent()
	return bounds{lo, hi}
}

// boxOf is the box of a form by its number, worked out once for all of them.
func (p *Part) boxOf(i int) bounds {
	if len(p.boxes) != len(p.Forms) {
		p.boxes = make([]bounds, len(p.Forms))
		for i, g := range p.Forms {
			p.boxes[i] = g.bounds()
		}
	}
	return p.boxes[i]
}

// apart is the least distance between two boxes; 0 where they overlap.
func (r bounds) apart(o bounds) float64 {
	var d solid.Vec
	for i := range 3 {
		d[i] = math.Max(0, math.Max(o.lo[i]-r.hi[i], r.lo[i]-o.hi[i]))
	}
	return d.Len()
}

// extent is a box round all that a form takes away.
func (f *Form) extent() (lo, hi solid.Vec) {
	if f.Skew != nil || len(f.Copies) > 0 { // it may be anywhere
		inf := math.Inf(1)
		return solid.Vec{-inf, -inf, -inf}, solid.Vec{inf, inf, inf}
	}
	if len(f.Mouths) == 0 {
		return f.Lo, f.Hi
	}
	r := f.Radius()
	for i := range 3 {
		lo[i], hi[i] = math.Inf(1), math.Inf(-1)
	}
	deep := f.Depth.V + f.point()
	for n, m := range f.Mouths {
		foot := m.Add(f.dir(n).Times(deep))
		for i := range 3 {
			lo[i], hi[i] = math.Min(lo[i], math.Min(m[i], foot[i])-r), math.Max(hi[i], math.Max(m[i], foot[i])+r)
		}
	}
	return lo, hi
}

// Radius is the greatest radius of a hole, its thread included, mm.
func (f *Form) Radius() float64 {
	r := f.Diameter.V / 2
	if f.Feature.Thread.Said {
		r = max(r, f.Feature.Thread.Size.V.Diameter/2)
	}
	return r
}

// axes gives each hole of a form as a line from mouth to floor, points included.
func (f *Form) axes() (lines [][2]solid.Vec) {
	deep := f.Depth.V + f.point()
	for i, m := range f.Mouths {
		lines = append(lines, [2]solid.Vec{m, m.Add(f.dir(i).Times(deep))})
	}
	return lines
}

// point is the length of the drill's point below the full diameter; a drill of 118 degrees
// leaves 0.300 D.
func (f *Form) point() float64 {
	if f.Through || f.Flat {
		return 0
	}
	return handbook.DrillPoint(118) * f.Diameter.V
}

// between is the least metal between two holes, or between a hole and the room of a
// straight feature; false where the two lie in one axis or no figure can be given.
func (p *Part) between(f, g *Form) (float64, bool) {
	best, ok := 0.0, false
	see := func(least float64, exact func() float64) {
		if ok && least >= best {
			return
		}
		if d := exact(); !ok || d < best {
			best, ok = d, true
		}
	}
	for i, a := range f.axes() {
		switch {
		case len(g.Mouths) > 0 && g.Diameter.Is():
			for j, b := range g.axes() {
				if inLine(a, b) {
					return 0, false
				}
				see(lineGap(a, b)-f.Radius()-g.Radius(), func() float64 { return f.gapTo(i, g.bored(j)...) })
			}
		case g.Feature.Kind == "slit" || g.Feature.Kind == "slot" || g.Feature.Kind == "pocket" || g.Feature.Kind == "step":
			if f.Into.Name == g.Name()+".floor" {
				return 0, false
			}
			see(boxGap(a, g.Lo, g.Hi)-f.Radius(), func() float64 { return f.gapTo(i, g.room()...) })
		}
	}
	return best, ok && !math.IsInf(best, 1)
}

// bored is the room of one hole of a form: its cylinder and the cone of its point.
func (f *Form) bored(i int) []solid.Shape {
	m, in := f.Mouths[i], f.dir(i)
	foot := m.Add(in.Times(f.Depth.V))
	out := []solid.Shape{solid.Cylinder(m, foot, f.Radius())}
	if l := f.point(); l > 0 {
		out = append(out, solid.Cone(foot, foot.Add(in.Times(l)), f.Diameter.V/2, 0))
	}
	return out
}

// gapTo is the least distance of one hole of a form, stood on its point, from shapes;
// where they overlap, less the least move along its axis or square to it that clears.
func (f *Form) gapTo(i int, things ...solid.Shape) float64 {
	in := f.dir(i)
	pose := solid.Attitude(in.Times(-1), solid.Vec{in[1], in[2], in[0]})
	at := pose.Point(f.Mouths[i])
	deep, l := f.Depth.V, f.point()
	tool := []solid.Turned{{Z0: -deep, Z1: 0, R0: f.Radius(), R1: f.Radius()}}
	if l > 0 {
		tool = append(tool, solid.Turned{Z0: -deep - l, Z1: -deep, R1: f.Diameter.V / 2})
	}
	gap := math.Inf(1)
	for _, t := range tool {
		for _, s := range things {
			gap = min(gap, solid.Gap(t, solid.Move{From: at, To: at}, s.Placed(pose)).Gap)
		}
	}
	return gap
}

// inLine says whether two holes share an axis: a clearance hole over a tapped one.
func inLine(a, b [2]solid.Vec) bool {
	u := a[1].Sub(a[0])
	if u.Len() == 0 {
		return false
	}
	u = u.Unit()
	for _, v := range b {
		d := v.Sub(a[0])
		if d.Sub(u.Times(d.Dot(u))).Len() > 0.01 {
			return false
		}
	}
	return true
}

// lineGap is the least distance of two stretches: the nearest places of the two whole lines,
// each held within its own stretch, the other then sought again.
func lineGap(a, b [2]solid.Vec) float64 {
	u, v, w := a[1].Sub(a[0]), b[1].Sub(b[0]), a[0].Sub(b[0])
	uu, uv, vv, uw, vw := u.Dot(u), u.Dot(v), v.Dot(v), u.Dot(w), v.Dot(w)
	hold := func(t float64) float64 { return min(max(t, 0), 1) }
	s := 0.0
	if d := uu*vv - uv*uv; d > 1e-12*uu*vv {
		s = hold((uv*vw - vv*uw) / d)
	}
	t := 0.0
	if vv > 0 {
		t = hold((uv*s + vw) / vv)
	}
	if uu > 0 {
		s = hold((uv*t - uw) / uu)
	}
	return w.Add(u.Times(s)).Sub(v.Times(t)).Len()
}

// boxGap is the least distance of a stretch from a box; 0 where it goes through it.
func boxGap(a [2]solid.Vec, lo, hi solid.Vec) float64 {
	return least(func(t float64) float64 {
		v := a[0].Add(a[1].Sub(a[0]).Times(t))
		var d solid.Vec
		for i := range 3 {
			d[i] = max(lo[i]-v[i], 0, v[i]-hi[i])
		}
		return d.Len()
	})
}

// least finds the least value of a convex function on 0 to 1, to far below a grain.
func least(f func(float64) float64) float64 {
	lo, hi := 0.0, 1.0
	for range 48 {
		a, b := lo+(hi-lo)/3, hi-(hi-lo)/3
		if f(a) < f(b) {
			hi = b
		} else {
			lo = a
		}
	}
	return min(f((lo+hi)/2), f(0), f(1))
}

// Meets says whether two features are declared to break into each other.
func Meets(f, g *Form) bool {
	for _, r := range f.Feature.Meets.V {
		if r.Item == g.Feature.Item {
			return true
		}
	}
	for _, r := range g.Feature.Meets.V {
		if r.Item == f.Feature.Item {
			return true
		}
	}
	return false
}
