package eval

import (
	"fettle/eval/solid"
	"fettle/schema/model"
)

// After a split the two pieces are worked one at a time, or together. A set-up that names
// one of them is played on that piece alone; what it takes is then taken from the whole.
//

// alone gives the state with only the piece that a set-up works on, and false where it works on
// both, or on one that has not been split off yet. Where none is named, a set-up all of whose
// steps make a joint face of one piece works on that piece.
func (p *Part) alone(s *State, w *Work) (*State, bool) {
	for i, f := range p.Forms {
		ps := f.Feature.Pieces.V
		if f.Feature.Kind != "split" || len(ps) != 2 || !s.Features[i].Finished {
			continue
		}
		for n, name := range ps {
			if name == pieceOf(f, w) {
				return p.without(s, f, 1-n, name), true
			}
		}
	}
	return nil, false
}

// pieceOf is the piece after a split that a stretch of work is on; "" both or the whole.
func pieceOf(f *Form, w *Work) string {
	if names := w.SetUp.Piece.V; w.SetUp.Piece.Is() {
		if len(names) == 1 {
			return names[0]
		}
		return ""
	}
	name := ""
	for _, st := range w.Steps {
		for _, t := range st.Makes {
			if n, ok := t.joint(); !ok || name != "" && f.Feature.Pieces.V[n] != name {
				return ""
			} else {
				name = f.Feature.Pieces.V[n]
			}
		}
	}
	return name
}

// closes says whether a stretch of work puts the two pieces of a split together: the first set-up
// after it that is on both, and a bench or heat that joins.
func (p *Part) closes(s *State, w *Work) bool {
	if p.Joint == nil {
		return false
	}
	fs := p.Feature(s, p.Joint.Form)
	if !fs.Finished || pieceOf(p.Joint.Form, w) != "" {
		return false
	}
	return w.Kind == "setup" || w.SetUp.Joins.Is()
}

// joint says whether a target is the face of a joint, and of which piece.
func (t Target) joint() (int, bool) {
	if t.Form == nil || t.Form.Feature.Kind != "split" || t.Sub == "" {
		return 0, false
	}
	for n, name := range t.Form.Feature.Pieces.V {
		if name == t.Sub {
			return n, true
		}
	}
	return 0, false
}

// JointFace says whether a target is the face of a joint, and in which direction it looks.
func (p *Part) JointFace(t Target) (model.Face, bool) {
	n, ok := t.joint()
	if !ok {
		return model.NoFace, false
	}
	return p.side(t.Form, 1-n), true
}

// jointFace is the face of a split that belongs to a piece.
func (f *Form) jointFace(sub string) (Plane, bool) {
	for n, name := range f.Feature.Pieces.V {
		if name == sub && n < 2 {
			return Plane{sideOf(f, 1-n), (f.Lo[f.Across] + f.Hi[f.Across]) / 2, f.Name() + "." + sub}, true
		}
	}
	return Plane{}, false
}

// side is the direction, along the axis of a split, in which its first (0) or second (1)
// piece lies: the first is the one nearer the datum.
func (p *Part) side(f *Form, n int) model.Face { return sideOf(f, n) }

func sideOf(f *Form, n int) model.Face {
	first := model.FaceOn(f.Across, -1)
	if cs := f.Feature.At.V; len(cs) > 0 && len(cs[0].Coords) > 0 && cs[0].Coords[0].Datum.Face != model.NoFace {
		first = cs[0].Coords[0].Datum.Face
		if f.Mirrored {
			first = turned(first)
		}
	} else if f.Mirrored {
		first = turned(first)
	}
	if n == 0 {
		return first
	}
	return first.Opposite()
}

// without takes piece 0 or 1 away.
func (p *Part) without(s *State, f *Form, n int, left string) *State {
	gone := p.side(f, n)
	lo, hi := p.Blank.Lo, p.Blank.Hi
	out := p.outward()
	for i := range 3 {
		lo[i] -= out
		hi[i] += out
	}
	joint := f.Lo[f.Across]
	if gone.Sign() > 0 {
		joint = f.Hi[f.Across]
		lo[f.Across] = f.Lo[f.Across]
	} else {
		hi[f.Across] = f.Hi[f.Across]
	}
	one := s.next(s.Last, s.Key.With(digest("piece", left)))
	one.Alone = left
	one.Piece = s.Piece.Cut(solid.Removal{Take: solid.Box(lo, hi), By: "the other piece"})
	one.Faces[gone] = FaceState{At: joint, Done: true, By: s.Last}
	if p.Joint != nil {
		one.Faces[gone] = s.Joint[1-n]
	}
	return one
}

// together gives the whole after one piece was worked alone: the same metal is gone from that
// piece and none from the other, and what was done to its faces and features counts.
func (s *State) together(whole, alone *State, gone model.Face) *State {
	n := s.next(s.Last, whole.Key.With(s.Key[0], s.Key[1]))
	n.Alone = ""
	was := alone.Piece.Removals()
	other := was[len(was)-1].Take
	var took []solid.Removal
	for _, r := range s.Piece.Removals()[len(was):] {
		r.Less = append(append([]solid.Shape{}, r.Less...), other)
		took = append(took, r)
	}
	n.Piece = whole.Piece.Cut(took...)
	n.Faces[gone] = whole.Faces[gone]
	return n
}
