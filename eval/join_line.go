package eval

import (
	"math"

	"fettle/schema/model"
)

// LineHole is a hole in which a shaft is to run, or that is to lie in line with another.
type LineHole struct {
	Part *Part
	Form *Form
}

// Name is what it is called from outside its part.
func (b LineHole) Name() string { return b.Part.Path() + "." + b.Form.Name() }

// Lined is two holes of two parts that are to lie in one line, the parts being held in one place to each other
// by pins, or standing on one face of a third.
type Lined struct {
	One, Two LineHole
	Item     *model.Item          // the first of the fits that ask for it, or the first of the holes
	Shaft    *Part                // what runs in both; nil where the drawing wants them concentric
	Pins     int                  // how many pins locate the parts
	On       string               // the face that both stand on; "" where pins locate them
	OneGo    bool                 // both holes are brought to size in one step on the joined parts
	Free     model.Known[float64] // how far the two holes may lie off each other's line: half of either play, or of what the drawing allows
	Most     model.Known[float64] // how far the drawing lets them lie off it along one co-ordinate: both bearings, and a pair of pin holes
	PinPlay  model.Known[float64] // how far the parts may be shifted on their pins, at least
	tight    float64              // the least play that a shaft has in either; a pin with more locates nothing
}

// Lines lists every shaft in two parts that pins or a common face locate, and every hole that is to be
// concentric to one of another such part. Parts that screws alone hold are lined up with the shaft in
// them and then screwed tight, and nothing is said of them.
func (t *Trace) Lines() (out []Lined) {
	for i, j := range t.Joints {
		for _, k := range t.Joints[i+1:] {
			a, b := j.Fit, k.Fit
			if a == nil || b == nil || !a.running() || !b.running() || a.Shaft.Part == nil || a.Shaft.Part != b.Shaft.Part || a.Hole.Part == b.Hole.Part {
				continue
			}
			l := Lined{One: LineHole{a.Hole.Part, a.Hole.Form}, Two: LineHole{b.Hole.Part, b.Hole.Form}, Item: j.Item, Shaft: a.Shaft.Part,
				tight: min(a.Play.V.Lo, b.Play.V.Lo)}
			l.Free = model.Both(a.Play, b.Play, func(x, y Limits) float64 { return (x.Lo + y.Lo) / 2 })
			if t.lined(&l) || t.standing(&l) {
				out = append(out, l)
			}
		}
	}
	for _, p := range t.Parts {
		for _, f := range p.Part.Forms {
			to := f.Feature.Concentric.To.V
			if to.Item == nil || !f.Feature.Concentric.Within.Is() || f.Wrong != "" {
				continue
			}
			q := t.partOf(to.Part())
			if q == nil || q == p.Part || q.FormOf(to.Item) == nil {
				continue
			}
			l := Lined{One: LineHole{p.Part, f}, Two: LineHole{q, q.FormOf(to.Item)}, Item: f.Feature.Item, tight: math.Inf(1),
				Free: model.Sure(f.Feature.Concentric.Within.V / 2)}
			if t.lined(&l) || t.standing(&l) {
				out = append(out, l)
			}
		}
	}
	return out
}

// running says whether a hole and its shaft are forms of two parts, the shaft free to turn.
func (f *FitJoint) running() bool {
	return f.Hole.Part != nil && f.Hole.Form != nil && f.Shaft.Part != f.Hole.Part && f.Play.Is() && f.Play.V.Lo >= 0
}

// lined says whether pins locate the parts of two bearings, and how well these then lie in line.
func (t *Trace) lined(l *Lined) bool {
	a, b := l.One, l.Two
	l.OneGo = t.inOneGo(a.Form, b.Form)
	bearings := model.Both(t.off(a.Part, a.Form), t.off(b.Part, b.Form), sum)
	pins, play := model.Sure(0.0), model.Sure(0.0)
	holes := map[*Part]map[*Form]bool{a.Part: {}, b.Part: {}}
	for i, p := range t.Joints {
		for _, q := range t.Joints[i+1:] {
			x, y := p.Fit, q.Fit
			if x == nil || y == nil || !l.onePin(x, y) || t.together(x, y) {
				continue
			}
			holes[x.Hole.Part][x.Hole.Form], holes[y.Hole.Part][y.Hole.Form] = true, true
			pins = model.Both(pins, model.Both(t.off(x.Hole.Part, x.Hole.Form), t.off(y.Hole.Part, y.Hole.Form), sum), wider)
			play = model.Both(play, model.Both(x.Play, y.Play, func(u, v Limits) float64 { return max(0, u.Lo)/2 + max(0, v.Lo)/2 }), wider)
		}
	}
	l.Pins, l.PinPlay, l.Most = min(places(holes[a.Part]), places(holes[b.Part])), play, model.Both(bearings, pins, sum)
	return l.Pins >= 2
}

// places counts where forms lie: one feature may have several holes.
func places(forms map[*Form]bool) (n int) {
	for f := range forms {
		n += max(1, len(f.Mouths))
	}
	return n
}

func sum(a, b float64) float64   { return a + b }
func wider(a, b float64) float64 { return max(a, b) }

// together says whether two holes are made in one step on the joined parts, or one through the other:
// how the parts lie to each other is then settled as they are drilled, by the shaft that is in them or
// by eye.
func (t *Trace) together(x, y *FitJoint) bool {
	p, q := x.Hole, y.Hole
	return t.inOneGo(p.Form, q.Form) || t.spotted(p.Part, p.Form, q.Form) || t.spotted(q.Part, q.Form, p.Form)
}

// onePin says whether two fits are of one pin in holes of the two parts.
func (l *Lined) onePin(x, y *FitJoint) bool {
	if x.Hole.Form == nil || y.Hole.Form == nil || x.Hole.Part == y.Hole.Part || x.Shaft.Of == nil || x.Shaft.Of != y.Shaft.Of || x.Shaft.Part == l.Shaft && l.Shaft != nil {
		return false
	}
	if !x.Play.Is() || !y.Play.Is() || max(x.Play.V.Lo, y.Play.V.Lo) >= l.tight {
		return false // what stands closest in its holes locates
	}
	if x.Shaft.Part == nil && !near(x.Hole.Size.V.Nominal, y.Hole.Size.V.Nominal) {
		return false
	}
	is := func(p, q *Part) bool { return x.Hole.Part == p && y.Hole.Part == q }
	return is(l.One.Part, l.Two.Part) || is(l.Two.Part, l.One.Part)
}

// inOneGo says whether one step on joined parts makes both of two features.
func (t *Trace) inOneGo(f, g *Form) bool {
	if f == nil || g == nil {
		return false
	}
	for _, a := range t.Build.Assemblies {
		for _, s := range a.Work {
			for _, st := range s.Steps {
				one, two := false, false
				for _, r := range st.Makes.V {
					one = one || r.Item == f.Feature.Item && (f.Feature.Item != g.Feature.Item || r.In == nil)
					two = two || r.Item == g.Feature.Item && (f.Feature.Item != g.Feature.Item || r.In != nil)
				}
				if one && two {
					return true
				}
			}
		}
	}
	return false
}
