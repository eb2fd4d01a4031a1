package eval

import (
	"math"
	"slices"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// bodyLine is a hole or a shaft as a line: where it begins, which way it runs, how long it is.
type bodyLine struct {
	at, dir solid.Vec // of a hole: mouth, and inwards; of a shaft: left end of its seat, and along its axis
	long    float64
	through bool
	d       float64
}

// holeLine is a hole or bore that stands alone; false where it is none.
func (p *Part) holeLine(f *Form) (h bodyLine, ok bool) {
	switch {
	case f == nil || f.Wrong != "" || len(f.Lacks) > 0 || !f.Diameter.Is():
		return h, false
	case len(f.Mouths) == 1 && f.Depth.Is():
		return bodyLine{f.Mouths[0], f.Dir, f.Depth.V, f.Through, f.Diameter.V}, true
	case f.Lathe != nil && f.Lathe.Inside && f.Feature.Kind == "bore":
		l, a := f.Lathe, f.About.Along
		into := f.Feature.Into.V.Face
		if into == model.NoFace || into.Axis() != a {
			into = model.FaceOn(a, 1)
		}
		lo, hi := near(l.X0, p.Low[a]), near(l.X1, p.High()[a])
		if !lo && !hi {
			return h, false
		}
		if into.Sign() > 0 && !hi || into.Sign() < 0 && !lo {
			into = into.Opposite()
		}
		h = bodyLine{at: f.About.At, dir: Normal(into).Times(-1), long: l.X1 - l.X0, through: lo && hi, d: 2 * l.R0}
		h.at[a] = l.X0
		if into.Sign() > 0 {
			h.at[a] = l.X1
		}
		return h, true
	}
	return h, false
}

// shaftLine is the seat of a shaft, and the diameters of its part to the left and right of it.
func (p *Part) shaftLine(f *Form) (s bodyLine, left, right float64, ok bool) {
	if !p.Round {
		return s, 0, 0, false
	}
	x0, x1, d := p.Low[0], p.High()[0], 2*p.Radius()
	if f != nil {
		if f.Lathe == nil || f.Lathe.Inside || f.Feature.Kind != "outside" || !p.Own(f.About) || f.Wrong != "" {
			return s, 0, 0, false
		}
		x0, x1, d = f.Lathe.X0, f.Lathe.X1, 2*f.Lathe.R0
	}
	s = bodyLine{at: solid.Vec{x0, 0, 0}, dir: solid.Vec{1, 0, 0}, long: x1 - x0, d: d}
	for _, x := range p.corners() {
		switch r, in := p.radiusAt(x); {
		case !in:
		case x < x0-model.Grain:
			left = max(left, 2*r)
		case x > x1+model.Grain:
			right = max(right, 2*r)
		}
	}
	return s, left, right, true
}

// corners are the places along a turned part just beside which its outside changes.
func (p *Part) corners() (out []float64) {
	cuts := []float64{p.Low[0], p.High()[0]}
	for _, g := range p.Forms {
		if g.Lathe != nil && !g.Lathe.Inside {
			cuts = append(cuts, g.Lathe.X0, g.Lathe.X1)
		}
	}
	for _, x := range cuts {
		out = append(out, x-2*model.Grain, x+2*model.Grain)
	}
	return out
}

// fitAnchors is what a fit says of where a part sits, where it joins it to one that sits already.
func (t *Trace) fitAnchors(m *model.Fit, sits []Member, in *Member) []anchor {
	hole, shaft := m.Hole.V.Item, m.Shaft.V.Item
	if hole == nil || shaft == nil {
		return nil
	}
	hp, hm := leafOf(m.Hole.V, sits, in)
	sp, sm := leafOf(m.Shaft.V, sits, in)
	if hp == nil || sp == nil || hp == sp || (hm == in) == (sm == in) {
		return nil
	}
	h, ok := hp.holeLine(hp.FormOf(hole))
	s, left, right, ok2 := sp.shaftLine(sp.FormOf(shaft))
	if !ok || !ok2 {
		return nil
	}
	// Where the shaft's seat begins or ends, along its own x, when it stands in the hole; toward says
	// whether its x runs out of the hole (-1) or into it.
	x, toward, deep := seatedAt(h, s, left, right, sp)
	holeAt, shaftAt := h.at, s.at
	if deep {
		shaftAt[0] = x
		if !h.through && left <= h.d+model.Grain && right <= h.d+model.Grain {
			holeAt = h.at.Add(h.dir.Times(h.long)) // at the bottom
		}
	}
	a := anchor{line: true, deep: deep, soft: true, facing: true, how: m.Path(), round: in.Part.Round}
	ha, sa := hm.poseOf(hp), sm.poseOf(sp)
	hd, sd := h.dir, s.dir.Times(toward)
	if hm == in {
		a.own, a.ownDir, a.other, a.otherDir = ha.Point(holeAt), ha.Dir(hd), sa.Point(shaftAt), sa.Dir(sd)
	} else {
		a.own, a.ownDir, a.other, a.otherDir = sa.Point(shaftAt), sa.Dir(sd), ha.Point(holeAt), ha.Dir(hd)
	}
	d := a.ownDir
	a.round = a.round && near(math.Abs(d[0]), 1) && near(a.own[1], 0) && near(a.own[2], 0)
	return []anchor{a}
}

// seatedAt is which place of a shaft lies at the mouth of its hole, or at its bottom, and whether its
// axis runs into the hole (+1) or out of it (-1). Not deep: nothing says how far it goes in.
func seatedAt(h, s bodyLine, left, right float64, sp *Part) (x, toward float64, deep bool) {
	x0, x1 := s.at[0], s.at[0]+s.long
	larger := func(d float64) bool { return d > h.d+model.Grain }
	switch {
	case larger(left) && larger(right):
		return 0, 1, false
	case larger(left):
		return x0, 1, true
	case larger(right):
		return x1, -1, true
	}
	toward, lead, trail := -1.0, sp.Low[0], sp.High()[0]
	if sp.boredFrom() == model.FaceOn(0, -1) {
		toward, lead, trail = 1, trail, lead
	}
	switch {
	case !h.through:
		return lead, toward, true
	case sp.Size[0] <= h.long+model.Grain:
		return trail, toward, true
	}
	return 0, toward, false
}

// boredFrom is the end that the hole along the axis of a turned part goes into; the right one where
// there is none, or one in either.
func (p *Part) boredFrom() model.Face {
	out := model.NoFace
	for _, f := range p.Forms {
		h, ok := p.holeLine(f)
		if !ok || h.through || f.Into.Face != model.NoFace && f.Into.Face.Axis() != 0 {
			continue
		}
		if face := faceAlong(h.dir.Times(-1)); face.Axis() == 0 && (out == model.NoFace || out == face) {
			out = face
		} else {
			return model.FaceOn(0, 1)
		}
	}
	if out == model.NoFace {
		return model.FaceOn(0, 1)
	}
	return out
}

// leafOf finds the part that a block is of, and the member that it is in: one that sits, or the one in
// hand, whose own pose is not settled yet.
func leafOf(r model.Ref, sits []Member, in *Member) (*Part, *Member) {
	up := r.Part()
	for n := -1; n < len(sits); n++ {
		m := in
		if n >= 0 {
			m = &sits[n]
		}
		for _, leaf := range m.Part.Leaves() {
			if leaf.Item == up {
				return leaf, m
			}
		}
	}
	return nil, nil
}

// screwAnchors is what a screw says: the hole that it passes lies over the one that it goes into, and
// the two parts lie against each other there.
func (t *Trace) screwAnchors(s *model.ScrewJoint, sits []Member, in *Member) (out []anchor) {
	refs := append(slices.Clone(s.Through.V), s.Into.V)
	for i := 0; i+1 < len(refs); i++ {
		if refs[i].Item == nil || refs[i+1].Item == nil {
			continue
		}
		fp, fm := leafOf(refs[i], sits, in)
		np, nm := leafOf(refs[i+1], sits, in)
		if fp == nil || np == nil || (fm == in) == (nm == in) {
			continue
		}
		first, next := fp.FormOf(refs[i].Item), np.FormOf(refs[i+1].Item)
		if first == nil || next == nil || len(first.Mouths) != len(next.Mouths) || !first.Through || first.Wrong != "" || next.Wrong != "" || first.tilted() || next.tilted() {
			continue
		}
		fa, na := fm.poseOf(fp), nm.poseOf(np)
		for n := range first.Mouths {
			foot := fa.Point(first.Mouths[n].Add(first.Dir.Times(first.Depth.V)))
			head := na.Point(next.Mouths[n])
			a := anchor{own: foot, ownDir: fa.Dir(first.Dir), other: head, otherDir: na.Dir(next.Dir), facing: true, line: true, deep: true, how: s.Path()}
			if fm != in {
				a.own, a.ownDir, a.other, a.otherDir = a.other, a.otherDir, a.own, a.ownDir
			}
			a.round = in.Part.Round && near(math.Abs(a.ownDir[0]), 1) && near(a.own[1], 0) && near(a.own[2], 0)
			out = append(out, a)
		}
	}
	return out
}
