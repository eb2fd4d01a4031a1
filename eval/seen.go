package eval

import (
	"slices"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// A part of an assembly that does not lie as the first one does, and a leg of folded sheet, are held in
// the frame of the whole and cut in their own. There every form is as it is drawn, and all that is known
// of making it holds. So such an operation is played on the holding as it is seen from that part: the
// same piece on the same machine, with the part's own frame in place of the whole's. What was taken and
// the burrs are then laid back (Cut.Left). Holes that can be laid in the frame of the whole are made
// there, since those of several parts are drilled in one go.

// Seen is the frame of one part of the whole from which a holding is seen.
type Seen struct {
	Whole  *Holding
	Member int        // of an assembly: which of its members; of folded sheet: which leg
	Pose   solid.Pose // from its frame to that of the whole
}

// ForStep gives holding, state and step as they are seen from the part that the step makes something of;
// as they are, where it lies as the whole does.
func (h *Holding) ForStep(before *State, st *Step) (*Holding, *State, *Step) {
	if h.Seen != nil || h.Unplayed != "" || st.Kind != "operation" {
		return h, before, st
	}
	n, ok := h.Part.seenFrom(st)
	if !ok {
		return h, before, st
	}
	v := h.from(n)
	return v, v.state(before), v.step(st)
}

// Held is the holding of an operation in the frame of the whole.
func (k *Cut) Held() *Holding {
	if k.Hold.Seen != nil {
		return k.Hold.Seen.Whole
	}
	return k.Hold
}

// Stood is the state before an operation in the frame of the whole.
func (k *Cut) Stood() *State {
	if k.whole != nil {
		return k.whole
	}
	return k.Before
}

// Here is a face of the part that a holding is seen from as the whole has it: the one that looks most its way.
func (h *Holding) Here(f model.Face) model.Face {
	if h.Seen == nil || f == model.NoFace {
		return f
	}
	return mostly(h.Seen.Pose.Dir(Normal(f)))
}

// inWhole is a direction of the part that a holding is seen from in the frame of the whole.
func (h *Holding) inWhole(d solid.Vec) solid.Vec {
	if h.Seen == nil {
		return d
	}
	return h.Seen.Pose.Dir(d)
}

// mostly is the face whose direction lies nearest to one.
func mostly(d solid.Vec) model.Face {
	best, most := model.NoFace, 0.0
	for _, f := range model.Faces {
		if x := d.Dot(Normal(f)); x > most+model.Same {
			best, most = f, x
		}
	}
	return best
}

// seenFrom is the member or leg in whose frame a step is played; false where that is the whole's.
func (p *Part) seenFrom(st *Step) (int, bool) {
	for _, t := range st.Makes {
		if n, ok := p.asideOf(t); ok {
			return n, true
		}
	}
	return p.straightOf(st)
}

// straightOf is the member, other than the first, of which a step makes something milled and nothing of any
// other: its burrs stand on that member's own faces.
func (p *Part) straightOf(st *Step) (n int, milled bool) {
	for i, t := range st.Makes {
		if !p.Joined() || t.Form == nil || t.Form.Owner == nil || t.Form.Lathe != nil {
			return 0, false
		}
		of := p.memberOf(t.Form.Owner)
		if i > 0 && of != n {
			return 0, false
		}
		n = of
		milled = milled || len(t.Form.Mouths) == 0
	}
	return n, milled && n > 0
}

// asideOf is the member or leg in whose frame a target is made; false where that is the whole's.
func (p *Part) asideOf(t Target) (int, bool) {
	switch {
	case p.Bent != nil:
		return p.legOf(t)
	case !p.Joined():
		return 0, false
	case t.Form != nil && t.Form.Aside:
		n := p.memberOf(t.Form.Owner)
		return n, n >= 0
	case t.Form == nil && t.Member > 0:
		return t.Member, true
	}
	return 0, false
}

// from is the holding as it is seen from a member or leg.
func (h *Holding) from(n int) *Holding {
	if v := h.views[n]; v != nil {
		return v
	}
	q, pose := h.Part.as(n)
	v := *h
	v.Seen = &Seen{h, n, pose}
	v.Part, v.Pose, v.views = q, after(h.Pose, pose), nil
	v.Key = h.Key.With(digest("seen from", model.Figure(float64(n))))
	v.steps, v.states, v.wholes = map[*Step]*Step{}, map[Key]*State{}, map[Key]*State{}
	v.Before = v.state(h.Before)
	if h.views == nil {
		h.views = map[int]*Holding{}
	}
	h.views[n] = &v
	return &v
}

// state is the piece in the frame that the holding is seen from.
func (h *Holding) state(s *State) *State {
	if v := h.states[s.Key]; v != nil {
		return v
	}
	back := h.Seen.Pose.Inverse()
	v := *s
	v.Key = s.Key.With(digest("seen from", model.Figure(float64(h.Seen.Member))))
	v.Piece = s.Piece.Placed(back)
	v.Faces = h.Seen.Whole.Part.facesOf(s, h.Seen.Member)
	v.Burrs = nil
	for _, b := range s.Burrs {
		v.Burrs = append(v.Burrs, b.placed(back))
	}
	v.Profile = nil
	if ms := h.Seen.Whole.Part.Members; h.Seen.Member < len(ms) {
		v.Profile = ms[h.Seen.Member].State.Profile
	}
	h.states[s.Key], h.wholes[v.Key] = &v, s
	return &v
}

// step is a step with its targets in the frame that the holding is seen from.
func (h *Holding) step(st *Step) *Step {
	if v := h.steps[st]; v != nil {
		return v
	}
	v := *st
	v.Makes = nil
	whole := h.Seen.Whole.Part
	for _, t := range st.Makes {
		if t.Form != nil {
			t.Form = h.Part.Forms[whole.numberOf(t.Form)]
		} else if u, ok := h.Part.target(t.Ref); ok {
			t = u
		}
		v.Makes = append(v.Makes, t)
	}
	h.steps[st] = &v
	return &v
}

// Left is the state after an operation in the frame of the whole.
func (k *Cut) Left() *State {
	if k.Hold.Seen == nil {
		return k.After
	}
	if k.left == nil {
		k.left = k.laidBack()
	}
	return k.left
}

// laidBack lays what an operation did in the frame of the whole.
func (k *Cut) laidBack() *State {
	s := k.Hold.Seen
	was := k.whole
	n := was.next(k.Spot, k.After.Key.With(digest("laid back")))
	var took []solid.Removal
	for _, w := range k.Works {
		for _, r := range w.Took {
			took = append(took, turnedBack(r, s.Pose))
		}
	}
	if len(took) > 0 {
		n.Piece = was.Piece.Cut(took...)
	}
	n.Features = slices.Clone(k.After.Features)
	s.Whole.Part.setFacesOf(n, s.Member, k.After.Faces)
	n.Burrs, n.Hidden = nil, was.Hidden
	own := map[*Burr]*Burr{}
	for i, b := range k.Before.Burrs {
		own[b] = was.Burrs[i]
	}
	lay := func(b *Burr) *Burr {
		if o := own[b]; o != nil {
			return o
		}
		return b.placed(s.Pose)
	}
	for _, b := range k.After.Burrs {
		n.Burrs = append(n.Burrs, lay(b))
	}
	for i, b := range k.After.Hidden {
		if i >= len(k.Before.Hidden) {
			n.Hidden = append(n.Hidden[:len(n.Hidden):len(n.Hidden)], lay(b))
		}
	}
	return n
}

// as is the whole in the frame of one of its members, and how that lies in it.
func (p *Part) as(n int) (*Part, solid.Pose) {
	if p.Bent != nil {
		return p.asLeg(n)
	}
	pose := p.Members[n].Pose
	if q := p.seen[n]; q != nil {
		return q, pose
	}
	own := p.Members[n].Part
	q, m := *p, *own.Part
	m.Item, m.Blank, m.Work, m.Features = p.Item, nil, p.Part.Work, p.Part.Features
	q.Part = &m
	q.Size, q.Low, q.Round, q.Across, q.Sized = own.Size, own.Low, own.Round, own.Across, own.Sized
	back := pose.Inverse()
	q.Members, q.Forms, q.boxes, q.seen = slices.Clone(p.Members), nil, nil, nil
	q.Filled = map[*Form]bool{}
	for i := range q.Members {
		w := &q.Members[i]
		w.Pose = after(back, w.Pose)
		if i == n {
			w.Pose = unturned
		}
		q.Forms = append(q.Forms, w.forms(own)...)
	}
	for i, f := range p.Forms {
		if p.Filled[f] {
			q.Filled[q.Forms[i]] = true
		}
	}
	seen := p.whole.Placed(back)
	for i := range 3 {
		q.Blank.Lo[i], q.Blank.Hi[i] = seen.Extent(i, -1), seen.Extent(i, 1)
	}
	q.Blank.Shape = solid.Box(q.Blank.Lo, q.Blank.Hi)
	if p.seen == nil {
		p.seen = map[int]*Part{}
	}
	p.seen[n] = &q
	return &q, pose
}

// facesOf are the faces of a member in its own frame.
func (p *Part) facesOf(s *State, n int) [7]FaceState {
	if p.Bent != nil {
		return s.Others[0]
	}
	if n == 0 {
		return s.Faces
	}
	pose := p.Members[n].Pose
	if !squareTo(pose) {
		return s.Others[n-1]
	}
	var out [7]FaceState
	back := pose.Inverse()
	for _, f := range model.Faces {
		out[placedFace(back, f)] = s.Others[n-1][f].placed(back, f)
	}
	return out
}

// setFacesOf lays the faces of a member back in a state that nobody has seen yet.
func (p *Part) setFacesOf(s *State, n int, faces [7]FaceState) {
	if p.Bent != nil {
		s.Others = [][7]FaceState{faces}
		for _, f := range model.Faces {
			s.Faces[f].At = s.Piece.Extent(f.Axis(), f.Sign())
		}
		p.envelopeFaces(s)
		return
	}
	if n == 0 {
		s.Faces = faces
		return
	}
	pose := p.Members[n].Pose
	if squareTo(pose) {
		var out [7]FaceState
		for _, f := range model.Faces {
			out[placedFace(pose, f)] = faces[f].placed(pose, f)
		}
		faces = out
	}
	s.Others = slices.Clone(s.Others)
	s.Others[n-1] = faces
}

// Wants lists the directions of the whole that want to look at the spindle for a target which is made in
// the frame of its own part; false where it lies as the whole does.
func (p *Part) Wants(t Target) ([]solid.Vec, bool) {
	n, ok := p.asideOf(t)
	if !ok {
		return nil, false
	}
	q, pose := p.as(n)
	if t.Form == nil {
		u, ok := q.target(t.Ref)
		return []solid.Vec{pose.Dir(Normal(u.Face))}, ok
	}
	f := q.Forms[p.numberOf(t.Form)]
	var out []solid.Vec
	for _, d := range f.wants() {
		out = append(out, pose.Dir(d))
	}
	return out, true
}

// wants lists the directions in which a form wants to look at the spindle, any of them.
func (f *Form) wants() []solid.Vec {
	var square solid.Vec
	square[f.Across] = 1
	switch {
	case f.Wrong != "" || len(f.Lacks) > 0:
		return nil
	case len(f.Mouths) > 0 && f.Through:
		return []solid.Vec{f.Dir.Times(-1), f.Dir}
	case len(f.Mouths) > 0:
		return []solid.Vec{f.Dir.Times(-1)}
	case f.Feature.Kind == "slit" || f.Feature.Kind == "split" || f.Seat != nil:
		return []solid.Vec{square, square.Times(-1)}
	case f.Into.Face != model.NoFace:
		return []solid.Vec{Normal(f.Into.Face)}
	}
	if n, ok := f.Bevel(); ok {
		return []solid.Vec{n}
	}
	return nil
}

// MayLookUp lists the faces of the whole that look most as a target wants to look up which is made in the
// frame of its own part; none where it lies as the whole does.
func (p *Part) MayLookUp(t Target) (out []model.Face) {
	ds, _ := p.Wants(t)
	for _, d := range ds {
		out = append(out, mostly(d))
	}
	return out
}
