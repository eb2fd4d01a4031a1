package eval

import (
	"fettle/eval/solid"
	"fettle/schema/finding"
)

// CutAway looks back for the step that took the metal which a flat thing would touch now:
// the area that it would have touched on the piece as it was at first, and the last step
// after which the area was less. False where no step changed it.
func (h *Holding) CutAway(axis int, sign float64, r solid.Rect) (by finding.Spot, had float64, ok bool) {
	at := h.Hi[axis]
	if sign < 0 {
		at = h.Lo[axis]
	}
	area := func(s *State) float64 {
		return s.Piece.Placed(h.Pose).Contact(axis, sign, at, r).Area
	}
	now := area(h.Before)
	for s := h.Before; s.Prev != nil; s = s.Prev {
		if before := area(s.Prev); before > now+1 {
			return s.Last, before, true
		}
	}
	return finding.Spot{}, now, false
}

// Outline is the area that a jaw, seen along Y, has in common with the box round the metal.
func (h *Holding) Outline(r solid.Rect) float64 {
	x := min(r.Hi[0], h.Hi[0]) - max(r.Lo[0], h.Lo[0])
	z := min(r.Hi[1], h.Hi[2]) - max(r.Lo[1], h.Lo[2])
	return max(x, 0) * max(z, 0)
}
