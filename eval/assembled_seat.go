package eval

import (
	"math"
	"slices"
	"sort"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// Where a part sits in an assembly follows from what is written: a place block, the fits and the
// screws that join it to parts that sit already. Each gives conditions on how it is turned, which is
// looked for among the 24 ways that axes lie on axes, the least turned first, and on where its origin
// lies. A shaft with a shoulder stands with it against the mouth of its hole; one without goes to the
// bottom of a blind hole; one no longer than a through hole stands flush with the mouth. How far a
// longer one goes in, and how a part turns about the only screw or shaft that holds it, must be said.

// anchor is a place of the part that lies on a place of the assembly, and a direction of it that runs
// along one of the assembly.
type anchor struct {
	own, ownDir     solid.Vec // in the part's frame
	other, otherDir solid.Vec // in the assembly's
	facing          bool      // the two directions are one; else they may also be opposite
	line            bool      // the places lie on one line along the direction
	deep            bool      // the places count along the direction
	soft            bool      // but only where nothing else says it
	round           bool      // the line is the part's own axis: how it turns about it does not matter
	how             string
}

// poseOf is how a part of a member lies in the assembly.
func (m *Member) poseOf(leaf *Part) solid.Pose {
	for i := range m.Part.Members {
		if n := &m.Part.Members[i]; slices.Contains(n.Part.Leaves(), leaf) {
			return after(m.Pose, n.poseOf(leaf))
		}
	}
	return m.Pose
}

// seat finds where a part sits beside those that sit already; why says why it is not known.
func (t *Trace) seat(a *model.Assembly, sits []Member, m *Member) (why string) {
	var as []anchor
	for _, f := range t.Build.Fits {
		as = append(as, t.fitAnchors(f, sits, m)...)
	}
	for _, s := range t.Build.Screwed {
		as = append(as, t.screwAnchors(s, sits, m)...)
	}
	var place *model.Place
	for _, pl := range a.Places {
		if pl.Part.V.Item == m.Part.Item {
			place = pl
		}
	}
	switch {
	case place == nil && len(as) == 0:
		return "nothing says where " + m.Part.Path() + " sits in it: a fit or screws that join it, or a place block, would"
	case place == nil && !as[0].round && !severalAxes(as):
		return "how " + m.Part.Path() + " is turned about " + as[0].how + " is not known: a place block would say it"
	case place != nil && place.Turned.Said && !place.Turned.By.Is():
		return "how far " + m.Part.Path() + " is turned is not known"
	}
	if place != nil {
		ts, said := touchAnchors(place, sits, m)
		if said != "" {
			return said
		}
		as = append(ts, as...)
	}
	lacks := ""
	for _, q := range t.turns(place) {
		pose, whole, ok := solve(q, as, place, sits[0].Part)
		if !ok {
			continue
		}
		if !whole {
			lacks = "how far " + m.Part.Path() + " goes in is not known: a place block would say it"
			continue
		}
		m.Pose, m.How = pose, "place"
		if place == nil {
			m.How = as[0].how
		}
		return ""
	}
	if lacks == "" {
		lacks = "what is said of where " + m.Part.Path() + " sits does not go together"
	}
	return lacks
}

// severalAxes says whether anchors lie on more than one line.
func severalAxes(as []anchor) bool {
	for _, b := range as[1:] {
		d := b.other.Sub(as[0].other)
		if d.Sub(as[0].otherDir.Times(d.Dot(as[0].otherDir))).Len() > 0.01 {
			return true
		}
	}
	return false
}

// turns lists the ways that a part may be turned: as its place block says, else the least turned first.
func (t *Trace) turns(place *model.Place) []solid.Pose {
	var said solid.Pose
	if place != nil && place.Turned.Said {
		axis := map[string]int{"x": 0, "y": 1, "z": 2}[place.Turned.About.V]
		said = Lean{axis, place.Turned.By.V}.pose()
		if !squareTo(said) {
			return []solid.Pose{said}
		}
	}
	var out []solid.Pose
	for _, up := range model.Faces {
		for _, back := range model.Faces {
			if up.Axis() != back.Axis() {
				out = append(out, solid.Attitude(Normal(up), Normal(back)))
			}
		}
	}
	if place != nil && place.Turned.Said {
		return slices.DeleteFunc(out, func(q solid.Pose) bool { // the same without the last digits of sines
			return q.Dir(solid.Vec{1, 0, 0}).Sub(said.Dir(solid.Vec{1, 0, 0})).Len() > 0.1 || q.Dir(solid.Vec{0, 1, 0}).Sub(said.Dir(solid.Vec{0, 1, 0})).Len() > 0.1
		})
	}
	straight := func(q solid.Pose) (sum float64) {
		for i := range 3 {
			var v solid.Vec
			v[i] = 1
			sum += q.Dir(v)[i]
		}
		return sum + q.Dir(solid.Vec{0, 0, 1})[2]/8 // of two that are turned as far the one that stands upright
	}
	sort.SliceStable(out, func(i, j int) bool { return straight(out[i]) > straight(out[j]) })
	return out
}

// solve shifts a part that is turned so that all conditions hold. whole says whether nothing of its
// place is left open, ok whether the conditions go together.
func solve(q solid.Pose, as []anchor, place *model.Place, frame *Part) (pose solid.Pose, whole, ok bool) {
	var at solid.Vec
	var known [3]bool
	set := func(i int, x float64) bool {
		if known[i] {
			return math.Abs(at[i]-x) < 0.01
		}
		at[i], known[i] = x, true
		return true
	}
	if place != nil {
		for i, s := range place.At.V.Short {
			if i < 3 {
				set(i, s.Nominal)
			}
		}
		for _, c := range place.At.V.Coords { // counted from faces of the first part
			if c.Datum.Face != model.NoFace {
				set(c.Datum.Face.Axis(), frame.FaceAt(c.Datum.Face)-c.Datum.Face.Sign()*c.Size.Nominal)
			}
		}
	}
	for _, soft := range [2]bool{false, true} {
		for _, a := range as {
			d := q.Dir(a.ownDir).Dot(a.otherDir)
			if math.Abs(math.Abs(d)-1) > 1e-6 || a.facing && d < 0 {
				return pose, false, false
			}
			shift := a.other.Sub(q.Point(a.own))
			for i := range 3 {
				along := math.Abs(a.otherDir[i]) > 0.5
				if along && (!a.deep || a.soft != soft || soft && known[i]) || !along && (!a.line || soft) {
					continue
				}
				if !set(i, shift[i]) {
					return pose, false, false
				}
			}
		}
	}
	return q.Shifted(at), known[0] && known[1] && known[2], true
}

// touchAnchors are the faces of a place block that touch: the part's own and another's, in turn.
func touchAnchors(place *model.Place, sits []Member, m *Member) (out []anchor, why string) {
	refs := place.Touches.V
	if len(refs)%2 == 1 {
		return nil, "the faces that touch in " + place.Path() + " do not come in pairs"
	}
	for i := 0; i < len(refs); i += 2 {
		own, ok := m.Part.planeNamed(refs[i])
		other, ok2 := Plane{}, false
		for j := range sits {
			if refs[i+1].Item == nil {
				continue
			}
			for _, leaf := range sits[j].Part.Leaves() {
				if pl, ok := leaf.planeNamed(refs[i+1]); ok && !ok2 {
					other, ok2 = placedPlane(sits[j].poseOf(leaf), pl), true
				}
			}
		}
		if !ok || !ok2 {
			return nil, "the faces that touch in " + place.Path() + " are no flat faces of parts that are joined here"
		}
		a := anchor{ownDir: Normal(own.Face), otherDir: Normal(other.Face).Times(-1), facing: true, deep: true, how: place.Path()}
		a.own[own.Face.Axis()] = own.At
		a.other[other.Face.Axis()] = other.At + other.Face.Sign()*place.Gap.V.Nominal
		out = append(out, a)
	}
	return out, ""
}

// planeNamed is a flat face of this part by a reference from outside it.
func (p *Part) planeNamed(r model.Ref) (Plane, bool) {
	if r.Item == nil || r.Item.Up("part") != p.Item {
		return Plane{}, false
	}
	if f := p.faceNamed(r); f != model.NoFace {
		return Plane{f, p.FaceAt(f), f.String()}, true
	}
	return p.PlaneOf(r)
}

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
	hp, hm := leafOf(hole, sits, in)
	sp, sm := leafOf(shaft, sits, in)
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
func leafOf(i *model.Item, sits []Member, in *Member) (*Part, *Member) {
	up := i.Up("part")
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
		fp, fm := leafOf(refs[i].Item, sits, in)
		np, nm := leafOf(refs[i+1].Item, sits, in)
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
