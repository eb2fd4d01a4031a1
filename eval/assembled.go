package eval

import (
	"slices"

	"fettle/eval/solid"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// Parts that are joined are held and cut as one piece. For the dry run they become one Part with
// members: its envelope, faces and frame are the first member's, its forms those of all members,
// each laid where its part sits and noting whose it is. The solid is joined of theirs, so that
// every lump stays one member's, and once the work is done each member takes away what was cut
// from it: that is where it goes on from, taken apart again or joined to others.
//
// What is asked of the drawing of a form (walls, what lies beside it) is asked of its owner; what
// lies in the way of tools and jaws is asked of the whole.

// Member is one of the parts of an assembly, or an assembly that was made before.
type Member struct {
	Part  *Part
	State *State     // as it goes in
	Pose  solid.Pose // its own frame to the assembly's
	How   string     // why it sits there: "place", "fit.bush"
	Lumps int        // of how many pieces it consists
}

// Joined says whether it is parts that are joined.
func (p *Part) Joined() bool { return len(p.Members) > 0 }

// Leaves lists the parts that an assembly consists of in the end; of a part itself.
func (p *Part) Leaves() []*Part {
	if !p.Joined() {
		return []*Part{p}
	}
	var out []*Part
	for _, m := range p.Members {
		out = append(out, m.Part.Leaves()...)
	}
	return out
}

// Owner is the part that a target is of: the first member where it is a face of the assembly.
func (p *Part) Owner(t Target) *Part {
	switch {
	case !p.Joined():
		return p
	case t.Form != nil && t.Form.Owner != nil:
		return t.Form.Owner
	case t.Member > 0:
		return p.Members[t.Member].Part.Leaves()[0]
	}
	return p.Leaves()[0]
}

// Makes is the part that decides how a step of an assembly is cut: that of its first target.
func (p *Part) Makes(st *Step) *Part {
	if !p.Joined() || len(st.Makes) == 0 {
		return p.Leaves()[0]
	}
	return p.Owner(st.Makes[0])
}

// assembly makes one part of members that are placed, and the state that they are in together.
func assembly(b *model.Build, a *model.Assembly, members []Member) (*Part, *State) {
	first := members[0].Part
	m := *first.Part
	m.Item, m.Blank, m.Work, m.Title, m.Features, m.Quantity = a.Item, nil, a.Work, a.Title, nil, a.Quantity
	p := &Part{Part: &m, Build: b, Size: first.Size, Low: first.Low, Round: first.Round, Across: first.Across, Sized: first.Sized}
	s := &State{Profile: members[0].State.Profile, Faces: members[0].State.Faces, Centred: members[0].State.Centred, Parted: true,
		Last: finding.Spot{Part: a.Label}, Key: Key{}.With(itemDigest(a.Item))}
	p.Members = members
	var pieces []*solid.Piece
	for i := range members {
		w := &members[i]
		w.Lumps = len(w.State.Piece.Lumps())
		pieces = append(pieces, w.State.Piece.Placed(w.Pose))
		m.Features = append(m.Features, w.Part.Features...)
		s.Features = append(s.Features, w.State.Features...)
		p.Forms = append(p.Forms, w.forms(first)...)
		s.Key = s.Key.With(w.State.Key[0], w.State.Key[1], digest(poseWords(w.Pose)...))
		for _, t := range w.State.Treated {
			if t.Part == nil && len(w.Part.Leaves()) == 1 {
				t.Part = w.Part
			}
			s.Treated = append(s.Treated, t)
		}
		for _, b := range w.State.Burrs {
			own := b.placed(w.Pose)
			if own.Of == nil {
				own.Of = w.Part
			}
			s.Burrs = append(s.Burrs, own)
		}
		if i > 0 {
			s.Others = append(s.Others, [7]FaceState{})
			p.setFacesOf(s, i, w.State.Faces)
		}
	}
	s.Piece = solid.Joined(pieces...)
	p.whole = s.Piece
	p.around(s, first)
	if p.Round {
		s.Profile = p.coaxial(s)
	}
	p.fill(b)
	p.spellTogether(a)
	p.hideBurrs(s, nil)
	return p, s
}

// around is the room that the joined piece takes up, in place of a raw piece.
func (p *Part) around(s *State, first *Part) {
	p.Blank = Blank{Lies: first.Blank.Lies, Stock: first.Blank.Stock}
	p.Blank.Lo, p.Blank.Hi = s.Bounds()
	p.Blank.Shape = solid.Box(p.Blank.Lo, p.Blank.Hi)
	for _, f := range model.Faces {
		p.Blank.Over[f] = model.Known[float64]{V: 0, From: model.WorkedOut}
		p.Blank.Skin[f] = model.Known[string]{V: s.Faces[f].Skin, From: model.WorkedOut}
	}
}

func poseWords(q solid.Pose) []string {
	var out []string
	for _, v := range [4]solid.Vec{q.Point(solid.Vec{}), q.Dir(solid.Vec{1, 0, 0}), q.Dir(solid.Vec{0, 1, 0}), q.Dir(solid.Vec{0, 0, 1})} {
		for i := range v {
			out = append(out, model.Figure(v[i]))
		}
	}
	return out
}

// spellTogether lays the work of an assembly out.
func (p *Part) spellTogether(a *model.Assembly) {
	for _, s := range a.Work {
		p.spellOne(s)
		w := p.Work[len(p.Work)-1]
		if w.Unplayed == "" && s.Kind != "heat" {
			w.Unplayed = p.cannotMake(s)
		}
	}
}

// cannotMake says why a stretch of work on joined parts is not made on paper; "" if it is.
func (p *Part) cannotMake(s *model.SetUp) string {
	for _, r := range makesOf(s) {
		t, ok := p.target(r)
		switch {
		case !ok:
			return r.Path() + " is no feature or face of what is joined here"
		case t.Form != nil && t.Form.Wrong != "" && t.Form.Later:
			if why := p.asideWrong(t.Form); why != "" {
				return t.Form.Name() + " is not made on paper: " + why
			}
		}
	}
	return ""
}

// asideWrong says why a form is not made on paper in the frame of its own part either; "" if it is.
func (p *Part) asideWrong(f *Form) string {
	if n, ok := p.asideOf(Target{Form: f}); ok {
		q, _ := p.as(n)
		return q.Forms[p.numberOf(f)].Wrong
	}
	return f.Wrong
}

// makesOf lists all that a set-up makes.
func makesOf(s *model.SetUp) []model.Ref {
	refs := slices.Clone(s.Makes.V)
	for _, st := range s.Steps {
		refs = append(refs, st.Makes.V...)
	}
	return refs
}

// memberTarget finds what a reference stands for in an assembly: a feature of any of its parts, a face of
// the first or of another.
func (p *Part) memberTarget(r model.Ref) (Target, bool) {
	for i := range p.Members {
		q := p.Members[i].Part
		f := q.faceNamed(r)
		if r.Item == nil || f == model.NoFace || i == 0 && r.Item == nil {
			continue
		}
		if i == 0 {
			return Target{Ref: r, Face: f}, true
		}
		pose := p.Members[i].Pose
		var v solid.Vec
		v[f.Axis()] = q.FaceAt(f)
		to := placedFace(pose, f)
		return Target{Ref: r, Face: to, Member: i, At: pose.Point(v)[to.Axis()]}, true
	}
	return Target{}, false
}

// memberOf is the number of the member that a part is, or is in; -1 where it is in none.
func (p *Part) memberOf(q *Part) int {
	for i := range p.Members {
		if slices.Contains(p.Members[i].Part.Leaves(), q) {
			return i
		}
	}
	return -1
}

// lumpsOf are the pieces of one member as it is now.
func (p *Part) lumpsOf(s *State, n int) []*solid.Piece {
	all, from := s.Piece.Lumps(), 0
	for i := range n {
		from += p.Members[i].Lumps
	}
	to := from + p.Members[n].Lumps
	if to > len(all) {
		return nil
	}
	return all[from:to]
}

// takeOut gives every member as it is after the work: what was cut from it is gone from it, its
// features are as far as they came, and the burrs that stand on it are its own.
func (p *Part) takeOut(s *State) []*State {
	var out []*State
	at := 0
	for n := range p.Members {
		m := &p.Members[n]
		back := m.Pose.Inverse()
		one := m.State.next(s.Last, m.State.Key.With(s.Key[0], s.Key[1]))
		if lumps := p.lumpsOf(s, n); len(lumps) > 0 {
			placed := make([]*solid.Piece, len(lumps))
			for i, l := range lumps {
				placed[i] = l.Placed(back)
			}
			one.Piece = placed[0]
			if len(placed) > 1 {
				one.Piece = solid.Joined(placed...)
			}
		}
		k := len(m.State.Features)
		one.Features = slices.Clone(s.Features[at : at+k])
		p.profileOut(m, one)
		at += k
		one.Faces = p.facesOf(s, n)
		one.Burrs = nil
		for _, b := range append(slices.Clone(s.Burrs), s.Hidden...) {
			if p.memberOf(b.Of) == n || b.Of == m.Part {
				one.Burrs = append(one.Burrs, b.placed(back))
			}
		}
		for _, t := range s.Treated[min(len(s.Treated), p.treatedBefore()):] {
			one.Treated = append(one.Treated[:len(one.Treated):len(one.Treated)], t)
		}
		out = append(out, one)
	}
	return out
}

// treatedBefore is how many treatments the members brought along.
func (p *Part) treatedBefore() (n int) {
	for _, m := range p.Members {
		n += len(m.State.Treated)
	}
	return n
}

// profileOut brings the half section of a turned member up to what was made on it.
func (p *Part) profileOut(m *Member, one *State) {
	q := m.Part
	if !q.Round {
		return
	}
	for i, f := range q.Forms {
		if one.Features[i] != m.State.Features[i] && one.Features[i].Begun {
			one.Profile = q.madeAbout(one.Profile, f, one.Features[i], Axis{})
		}
	}
}

// fill notes the holes that another member stands in, by the fits between them.
func (p *Part) fill(b *model.Build) {
	p.Filled = map[*Form]bool{}
	for _, m := range b.Fits {
		hole, shaft := m.Hole.V.Item, m.Shaft.V.Item
		if hole == nil || shaft == nil {
			continue
		}
		f := p.formMeant(m.Hole.V)
		h, s := p.memberPart(m.Hole.V.Part()), p.memberPart(m.Shaft.V.Part())
		if f != nil && h >= 0 && s >= 0 && h != s {
			p.Filled[f] = true
		}
	}
}

// memberPart is the number of the member that a part belongs to; -1 none.
func (p *Part) memberPart(i *model.Item) int {
	for n := range p.Members {
		for _, q := range p.Members[n].Part.Leaves() {
			if i == q.Item {
				return n
			}
		}
	}
	return -1
}

// passedOver says whether a form says nothing of the half section of an assembly: a hole that another
// part stands in, and the outside of what stands in one.
func (p *Part) passedOver(f *Form) bool {
	if !p.Joined() {
		return false
	}
	return p.Filled[f] || f.Lathe != nil && !f.Lathe.Inside && p.memberOf(f.Owner) > 0
}

// coaxial is the half section of turned parts that are joined: what turns about the first one's axis.
func (p *Part) coaxial(s *State) Profile {
	all := []Profile{slices.Clone(s.Profile)}
	for i := 1; i < len(p.Members); i++ {
		m := &p.Members[i]
		if x := m.Pose.Dir(solid.Vec{1, 0, 0}); m.Part.Round && x[1] == 0 && x[2] == 0 {
			if at := m.Pose.Point(solid.Vec{}); near(at[1], 0) && near(at[2], 0) {
				all = append(all, m.State.Profile.carried(m.Pose))
			}
		}
	}
	own := map[*Form]*Form{}
	for _, f := range p.Forms {
		own[f.Own] = f
	}
	var cuts []float64
	for _, q := range all {
		for i := range q {
			cuts = append(cuts, q[i].X0, q[i].X1)
			if f, ok := own[q[i].Form]; ok {
				q[i].Form = f
			}
		}
	}
	slices.Sort(cuts)
	var out Profile
	for i := 0; i+1 < len(cuts); i++ {
		if cuts[i+1]-cuts[i] < model.Grain {
			continue
		}
		var z Zone
		found := false
		for _, q := range all {
			for _, w := range q.Between(cuts[i], cuts[i+1]) {
				if !found {
					z, found = w, true
					continue
				}
				in0, in1 := min(z.In0, w.In0), min(z.In1, w.In1)
				if w.Most() > z.Most() {
					z = w
				}
				z.In0, z.In1 = in0, in1
			}
		}
		if found {
			out = append(out, z)
		}
	}
	return out
}

// carried is a half section along an axis that runs as the assembly's or against it.
func (p Profile) carried(q solid.Pose) Profile {
	sign, at := q.Dir(solid.Vec{1, 0, 0})[0], q.Point(solid.Vec{})[0]
	out := slices.Clone(p)
	for i := range out {
		z := &out[i]
		z.X0, z.X1 = at+sign*z.X0, at+sign*z.X1
		if sign < 0 {
			z.X0, z.X1, z.Out0, z.Out1, z.In0, z.In1 = z.X1, z.X0, z.Out1, z.Out0, z.In1, z.In0
		}
	}
	if sign < 0 {
		slices.Reverse(out)
	}
	return out
}
