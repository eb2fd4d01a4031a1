package eval

import "fettle/schema/model"

// Pinned is one pin in the holes of two parts that two or more such pins hold in one place to each other.
type Pinned struct {
	One, Two *FitJoint // the pin in the hole of either part
	OneJoint *Joint
	OneGo    bool                 // both holes are made in one step on the joined parts, or one through the other
	Off      model.Known[float64] // how far the two holes may lie off each other along one co-ordinate, by the drawing
	Free     model.Known[float64] // how far the pin lets them: half of what it is loose in either, at least
}

// Pinned lists the pins between two parts, where there are two or more: a pin stands tight in one of the
// parts at least by its limits; what runs in both is a shaft.
func (t *Trace) Pinned() (out []Pinned) {
	type pair struct{ a, b *Part }
	count := map[pair]int{}
	between := func(p *Pinned) pair { return pair{p.One.Hole.Part, p.Two.Hole.Part} }
	for i, j := range t.Joints {
		for _, k := range t.Joints[i+1:] {
			x, y := j.Fit, k.Fit
			if x == nil || y == nil || !pinned(x, y) {
				continue
			}
			if x.Hole.Part.Label > y.Hole.Part.Label {
				x, y = y, x
			}
			p := Pinned{One: x, Two: y, OneJoint: j, OneGo: t.together(x, y),
				Off:  model.Both(t.off(x.Hole.Part, x.Hole.Form), t.off(y.Hole.Part, y.Hole.Form), sum),
				Free: model.Both(x.Play, y.Play, func(u, v Limits) float64 { return max(0, u.Lo)/2 + max(0, v.Lo)/2 })}
			out = append(out, p)
			count[between(&p)] += min(len(x.Hole.Form.Mouths), len(y.Hole.Form.Mouths))
		}
	}
	several := out[:0]
	for _, p := range out {
		if count[between(&p)] > 1 {
			several = append(several, p)
		}
	}
	return several
}

// pinned says whether two fits are of one pin in holes of two parts.
func pinned(x, y *FitJoint) bool {
	if x.Hole.Form == nil || y.Hole.Form == nil || x.Hole.Part == y.Hole.Part || x.Shaft.Of == nil || x.Shaft.Of != y.Shaft.Of {
		return false
	}
	if x.Shaft.Part == x.Hole.Part || x.Shaft.Part == y.Hole.Part || !x.Play.Is() || !y.Play.Is() || min(x.Play.V.Lo, y.Play.V.Lo) > 0 {
		return false
	}
	return x.Shaft.Part != nil || near(x.Hole.Size.V.Nominal, y.Hole.Size.V.Nominal)
}
