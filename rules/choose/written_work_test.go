package choose_test

import (
	"math"
	"testing"

	"fettle/eval/solid"
)

// A drill that is to go down to the floor of a ledge 8 mm below the top goes 8 mm deep there, whether
// that is said by the face or by the figure.
func TestDownToAFaceIsADepth(t *testing.T) {
	for _, down := range []string{"step.ledge.floor", "8"} {
		p, _ := playedRecipe(t, sound(t, "down-to-no-floor", "step.ledge.floor", down))
		k := p.Moments[len(p.Moments)-1].Cut
		if k == nil || len(k.Works) != 1 || math.Abs(k.Works[0].Depth-8) > 1e-9 || k.Works[0].Through {
			t.Fatalf("down to %s: %+v", down, k)
		}
		if p.End.Piece.Holds(solid.Vec{20, 15, 12.1}) || !p.End.Piece.Holds(solid.Vec{22.5, 15, 11.5}) {
			t.Errorf("down to %s: the hole does not end there", down)
		}
	}
}

// A piece on the step of soft jaws 7 mm above a bed of 35 mm sits at 42 mm, and no pair is chosen; one that
// goes against the step of bored jaws is gripped as deep as that lies.
func TestSoftJawsSeatThePiece(t *testing.T) {
	p, cs := playedRecipe(t, sound(t, "zero-lost", "parallels = 10", "soft = { step = 7 }"))
	h := p.Moments[0].Hold
	if h == nil || h.Unplayed != "" || h.Seat.V != 42 || h.Choice.Pair != nil {
		t.Fatalf("%+v", h)
	}
	for _, c := range cs {
		if c.What == "parallels" {
			t.Error("parallels are chosen:", c.Item)
		}
	}
	p, _ = playedRecipe(t, sound(t, "soft-jaws-do-not-fit", "    grip    = 20\n", "", "depth = 20", "depth = 17"))
	if c := p.Moments[0].Chuck; c == nil || math.Abs(c.Held-17) > 1e-9 {
		t.Errorf("%+v", c)
	}
}
