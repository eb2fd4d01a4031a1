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
