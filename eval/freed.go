package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// Freed is a piece that an operation cuts off from the rest while it is held.
type Freed struct {
	Lo, Hi solid.Vec // the box round it, in the part's frame
	Held   bool      // what holds the work still holds it
}

// Freed lists the pieces that a cut leaves where it goes right through the piece between two jaws;
// none where it does not, where that is what it is for (a split), and where something other than a
// vise holds the piece. A piece is held that both jaws touch. Cuts through by a plane are found,
// others are not (see solid.Piece.Parted).
func (k *Cut) Freed() []Freed {
	fixed, ok := k.Hold.Fixed.Get()
	moving, ok2 := k.Hold.Moving.Get()
	if k.Hold.Jaws() == nil || !ok || !ok2 || k.Unplayed != "" {
		return nil
	}
	for _, w := range k.Works {
		f := w.Target.Form
		if f == nil || f.Feature.Kind == "split" || f.Kind() == "hole" || len(w.Took) == 0 {
			continue
		}
		below, above, ok := k.After.Piece.Parted(len(k.Before.Piece.Removals()))
		if !ok {
			return nil
		}
		var out []Freed
		for _, q := range []*solid.Piece{below, above} {
			stands := q.Placed(k.Hold.Pose)
			touch := func(sign, at float64, r solid.Rect) bool {
				return stands.Contact(1, sign, at, r).Area > 0.01
			}
			one := Freed{Held: touch(1, k.Hold.Hi[1], fixed.Rect) && touch(-1, k.Hold.Lo[1], moving.Rect)}
			for i := range 3 {
				one.Lo[i], one.Hi[i] = q.Extent(i, -1), q.Extent(i, 1)
			}
			out = append(out, one)
		}
		return out
	}
	return nil
}

// Freed gives the stretch of the axis that an operation on a lathe cuts off from what the jaws hold,
// where outside and bore meet; false where they do not, and where that is what it is for (parting).
func (k *Turn) Freed() (x0, x1 float64, ok bool) {
	if k.Choice.By == "parting" || k.Unplayed != "" || k.Hold.Choice.Centres || len(k.Before.Profile.gaps()) > 0 {
		return 0, 0, false
	}
	lo, hi, _ := k.After.Profile.Ends()
	gaps := k.After.Profile.gaps()
	switch {
	case len(gaps) == 0:
		return 0, 0, false
	case k.Hold.Sign > 0:
		return gaps[0], hi, true
	}
	return lo, gaps[len(gaps)-1], true
}

// gaps gives the places, from left to right, at which no metal is left between outside and bore,
// with metal on either side.
func (p Profile) gaps() []float64 {
	var out []float64
	had, open, at := false, false, 0.0
	for i := range p {
		z := &p[i]
		first, last := z.Out0-z.In0, z.Out1-z.In1
		if had && !open && first <= model.Grain {
			open, at = true, z.X0
		}
		if math.Max(first, last) <= model.Grain {
			continue
		}
		if open {
			out, open = append(out, at), false
		}
		had = true
		if last <= model.Grain {
			open, at = true, z.X1
		}
	}
	return out
}
