package eval

import (
	"slices"

	"math"

	"fettle/schema/model"
)

// Going is a part that goes onto a shaft on which others sit already.
type Going struct {
	Fit         *FitJoint
	Joint       *Joint
	Bench       *model.SetUp
	Left, Right Barrier
}

// Barrier is what stands largest on one side of a seat: the shaft itself, or a part that sits on it.
type Barrier struct {
	Diameter float64
	By       *Part // nil the shaft itself
}

// Goings lists the fits that benches join in turn on one shaft, each with what the part that is to go on
// must pass on either side. What one bench joins has no order in it.
func (t *Trace) Goings() (out []Going) {
	type onto struct {
		fit   *FitJoint
		bench *model.SetUp
	}
	on := map[*Part][]onto{}
	for _, s := range t.benches() {
		for p, there := range on {
			on[p] = slices.DeleteFunc(there, func(o onto) bool { return opens(s, o.fit) })
		}
		for _, r := range s.Joins.V {
			for _, j := range t.Joints {
				f := j.Fit
				if f == nil || r.Item == nil || j.Item != r.Item || f.Shaft.Part == nil {
					continue
				}
				left, right, ok := f.Passage()
				if !ok {
					continue
				}
				g := Going{Fit: f, Joint: j, Bench: s, Left: Barrier{Diameter: left}, Right: Barrier{Diameter: right}}
				for _, was := range on[f.Shaft.Part] {
					if was.bench != s {
						g.passes(was.fit)
					}
				}
				if g.Left.By != nil || g.Right.By != nil {
					out = append(out, g)
				}
				on[f.Shaft.Part] = append(on[f.Shaft.Part], onto{f, s})
			}
		}
	}
	return out
}

// passes sees whether a part that sits on the shaft already is larger than what stands on its side.
func (g *Going) passes(f *FitJoint) {
	seat, own := f.Shaft.Form, g.Fit.Shaft.Form
	if seat == nil || own == nil || seat.Lathe == nil || own.Lathe == nil || f.Hole.Part == nil {
		return
	}
	d := f.Hole.Part.leastAcross(f.Hole.Form)
	b := &g.Left
	switch {
	case seat.Lathe.X0 >= own.Lathe.X1-model.Grain:
		b = &g.Right
	case seat.Lathe.X1 > own.Lathe.X0+model.Grain:
		return // on the same seat
	}
	if d > b.Diameter {
		*b = Barrier{d, f.Hole.Part}
	}
}

// leastAcross is how large at least a part is across the axis of one of its holes: a hole smaller than
// that does not go over it.
func (p *Part) leastAcross(f *Form) float64 {
	if p.Round {
		return 2 * p.Radius()
	}
	if f == nil || f.Into.Face == model.NoFace {
		return 0
	}
	a, b := across(f.Into.Face)
	return math.Min(p.Size[a], p.Size[b])
}

// benches lists the benches of all parts, then those of the assemblies, in the order written.
func (t *Trace) benches() (out []*model.SetUp) {
	add := func(ws []*model.SetUp) {
		for _, s := range ws {
			if s.Joins.Is() || s.Opens.Is() {
				out = append(out, s)
			}
		}
	}
	for _, p := range t.Build.Parts {
		add(p.Work)
	}
	for _, a := range t.Build.Assemblies {
		add(a.Work)
	}
	return out
}

// opens says whether a bench takes a fit apart.
func opens(s *model.SetUp, f *FitJoint) bool {
	return slices.ContainsFunc(s.Opens.V, func(r model.Ref) bool { return r.Item != nil && r.Item == f.Model.Item })
}
