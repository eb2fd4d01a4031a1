package choose_test

import (
	"math"
	"strings"
	"testing"

	"fettle/eval"
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

// A clamp that stands over a slot is moved to the other end before the second half is milled: the tool meets
// it only where it is not moved. The piece keeps its place.
func TestClampsAreShifted(t *testing.T) {
	recipe := sound(t, "clamp-over-nothing", "setup \"drill\" {", "setup \"drill\" {\n    measure {\n      size = length\n      with = caliper.long\n    }")
	recipe = strings.Replace(recipe, "    operation {\n      makes = hole.pin", `    shift "to the right" {
      clamps = [{ at = { left = 52, back = 8 }, tip = 8 }]
    }
    operation {
      makes = hole.pin`, 1)
	p, _ := playedRecipe(t, recipe)
	var holds []*eval.Holding
	for _, m := range p.Moments {
		if m.Hold != nil && m.Hold.Choice.Clamps != nil {
			holds = append(holds, m.Hold)
		}
	}
	if len(holds) != 2 || holds[1].Shifted != holds[0] || holds[1].Pose != holds[0].Pose || holds[1].Work.Spot.SetUp != "setup drill" {
		t.Fatalf("%d holdings", len(holds))
	}
	var tip [2]solid.Vec
	for i, h := range holds {
		b := h.Bearings()
		if len(b) != 1 {
			t.Fatal(b)
		}
		tip[i] = b[0].At
	}
	if math.Abs(tip[0][0]-35) > 1e-9 || math.Abs(tip[1][0]-52) > 1e-9 {
		t.Error(tip)
	}
	clamps := 0
	for _, o := range holds[1].Obstacles {
		if strings.HasPrefix(o.Name, "the clamp") {
			clamps++
		}
	}
	if last := p.Moments[len(p.Moments)-1].Cut; clamps != 1 || last == nil || last.Hold != holds[1] || len(p.Stretches()) != 2 {
		t.Errorf("%d clamps stand there", clamps)
	}
}

// A steady that is taken away within a holding leaves the work unsupported from there on, and as far out of
// the jaws as before.
func TestSupportIsShifted(t *testing.T) {
	recipe := sound(t, "steady-on-rough")
	i := strings.LastIndex(recipe, "    operation {")
	recipe = recipe[:i] + "    shift \"steady away\" {\n      support = { by = \"none\" }\n    }\n" + recipe[i:]
	p, _ := playedRecipe(t, recipe)
	var hs []*eval.Chucking
	var last *eval.Turn
	for _, m := range p.Moments {
		if m.Chuck != nil {
			hs = append(hs, m.Chuck)
		}
		if m.Turn != nil {
			last = m.Turn
		}
	}
	n := len(hs)
	if n < 2 || hs[n-1].Shifted != hs[n-2] || hs[n-2].Choice.Support == nil || hs[n-1].Choice.Support != nil || math.Abs(hs[n-1].Jaw-hs[n-2].Jaw) > 1e-9 {
		t.Fatalf("%d holdings of %s", n, recipe)
	}
	if last.Hold != hs[n-1] {
		t.Error("the last operation is in the holding from before")
	}
}
