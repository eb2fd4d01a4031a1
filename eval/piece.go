package eval

import (
	"fettle/eval/solid"
	"fettle/schema/model"
)

// After a split the two pieces are worked one at a time, or together. A set-up that names
// one of them is played on that piece alone; what it takes is then taken from the whole.
//
// The joint is played as it stands on the drawing, closed: half of the kerf is gone from
// either side of it. Until it is closed the second piece really lies farther off by kerf
// and clean-up, which no figure of one piece alone depends on.

// alone gives the state with only the piece that a set-up names, and false where it names
// none, both, or one that has not been split off yet.
func (p *Part) alone(s *State, w *Work) (*State, bool) {
	names := w.SetUp.Piece.V
	if len(names) != 1 {
		return nil, false
	}
	for i, f := range p.Forms {
		ps := f.Feature.Pieces.V
		if f.Feature.Kind != "split" || len(ps) != 2 || !s.Features[i].Finished {
			continue
		}
		for n, name := range ps {
			if name == names[0] {
				return p.without(s, f, p.side(f, 1-n), w), true
			}
		}
	}
	return nil, false
}

// side is the direction, along the axis of a split, in which its first (0) or second (1)
// piece lies: the first is the one nearer the datum.
func (p *Part) side(f *Form, n int) model.Face {
	first := model.FaceOn(f.Across, -1)
	if cs := f.Feature.At.V; len(cs) > 0 && len(cs[0].Coords) > 0 && cs[0].Coords[0].Datum.Face != model.NoFace {
		first = cs[0].Coords[0].Datum.Face
	}
	if n == 0 {
		return first
	}
	return first.Opposite()
}

// without takes the piece on one side of a joint away.
func (p *Part) without(s *State, f *Form, gone model.Face, w *Work) *State {
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
	n := s.next(s.Last, s.Key.With(digest("piece", w.SetUp.Piece.V[0])))
	n.Piece = s.Piece.Cut(solid.Removal{Take: solid.Box(lo, hi), By: "the other piece"})
	n.Faces[gone] = FaceState{At: joint, Done: true, By: s.Last}
	return n
}

// together gives the whole after one piece was worked alone: the same metal is gone from
// it, and what was done to its faces and features counts.
func (s *State) together(whole, alone *State, gone model.Face) *State {
	n := s.next(s.Last, whole.Key.With(s.Key[0], s.Key[1]))
	all := s.Piece.Removals()
	n.Piece = whole.Piece.Cut(all[len(alone.Piece.Removals()):]...)
	n.Faces[gone] = whole.Faces[gone]
	return n
}
