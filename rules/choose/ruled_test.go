package choose_test

import (
	"math"
	"testing"
)

// Twenty divisions of 2.5 mm on the top of a bar 58 x 20: held with the edge that the lines begin at
// below, they grow to the right unless runs says left.
func TestRuledLines(t *testing.T) {
	for _, c := range []struct {
		pairs      []string
		first, way float64
		edge, in   float64
	}{
		{nil, 3, 1, 0, 1},
		{[]string{"zero_at = { left = 3 }", "zero_at = { right = 4 }\n    runs = \"left\""}, 54, -1, 0, 1},
		{[]string{"from    = \"front\"", "from    = \"back\"", "zero_at = { left = 3 }", "zero_at = { left = 55 }"}, 55, -1, 20, -1},
		{[]string{"from    = \"front\"", "from    = \"back\"", "zero_at = { left = 3 }", "zero_at = { left = 5 }\n    runs = \"left\""}, 5, 1, 20, -1},
		{[]string{"length   = 58", "length   = 50", "zero_at = { left = 3 }", ""}, 0, 1, 0, 1},
	} {
		p, _ := playedRecipe(t, sound(t, "lines-fall-between", c.pairs...))
		f := p.Part.Forms[0]
		if f.Wrong != "" || f.Scale == nil || f.Scale.Ruled == nil {
			t.Fatalf("%v: %s", c.pairs, f.Wrong)
		}
		r := f.Scale.Ruled
		if r.First != c.first || r.Way != c.way || f.Scale.Edge != c.edge || f.Scale.Inward != c.in {
			t.Errorf("%v: %+v %+v", c.pairs, r, f.Scale)
		}
		k := p.Moments[len(p.Moments)-1].Cut
		if len(k.Works) != 1 || k.Works[0].Wrong != "" || !k.Works[0].Facing || len(k.Works[0].Moves) != 21 || len(k.Works[0].Took) != 0 {
			t.Fatalf("%v: %+v", c.pairs, k.Works)
		}
		for i, m := range k.Works[0].Moves {
			long := 3.0
			if i%5 == 0 {
				long = 4
			}
			if i%10 == 0 {
				long = 5
			}
			x := c.first + c.way*2.5*float64(i) + k.Hold.Lo[0]
			if math.Abs(m.From[0]-x) > 1e-9 || math.Abs(m.To[0]-x) > 1e-9 || math.Abs(math.Abs(m.To[1]-m.From[1])-long-1) > 1e-9 {
				t.Errorf("%v: line %d goes %+v", c.pairs, i, m)
			}
		}
		if got, ok := k.Ruling(f); !ok || got.Axis != 0 || got.Off > 1e-9 || got.Step > 1e-9 || got.Adds > 1e-9 {
			t.Errorf("%+v", got)
		}
	}
}

// Spaces of 2.54 mm by a dial of 0.05 mm, worked out by hand: 2.55, 5.10, 7.60, 10.15, ... so that a line
// is off by 0.02 at most, a space by 0.04, and spaces of 2.55 would gather 20 x 0.01.
func TestRulingByTheDial(t *testing.T) {
	p, _ := playedRecipe(t, sound(t, "lines-fall-between", "\"2.5 ±0.01\"", "\"2.54 ±0.05\""))
	k := p.Moments[len(p.Moments)-1].Cut
	got, ok := k.Ruling(p.Part.Forms[0])
	if !ok || math.Abs(got.Off-0.02) > 1e-9 || math.Abs(got.Step-0.04) > 1e-9 || got.At != 3 || math.Abs(got.Adds-0.2) > 1e-9 {
		t.Errorf("%+v", got)
	}
}
