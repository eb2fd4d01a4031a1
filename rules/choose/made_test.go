package choose_test

import (
	"math"
	"math/rand"
	"testing"

	"fettle/eval/solid"
	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

// What the dry run has made at the end is what the drawing says: random places of random
// parts are metal exactly where the drawing, read here by other means, leaves metal.
// Places within a hundredth of a border are passed over.
func TestMadePartIsTheDrawing(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	tried := 0
	for range rounds {
		b := random(r)
		build, _, err := schema.Load(text.Archive{"r/a.hcl": []byte(b.written(false, false)), "s/a.hcl": []byte(rules.ExampleShop)}, "r", "s")
		if err != nil {
			t.Fatal(err)
		}
		tr, _, _ := choose.Choose(build, choose.Effort)
		piece := tr.Parts[0].End.Piece
		saw := 0.0
		for _, m := range tr.Parts[0].Moments {
			if m.Cut != nil && m.Cut.Choice.By == "sawing" {
				saw = m.Cut.Choice.Tool.Size / 2
			}
		}
		for range 400 {
			v := solid.Vec{r.Float64() * b.size[0], r.Float64() * b.size[1], r.Float64() * b.size[2]}
			metal, near := b.metal(v, saw)
			if near {
				continue
			}
			tried++
			if got := piece.Holds(v); got != metal {
				t.Fatalf("at %v the piece is metal: %v, the drawing: %v\n%s", v, got, metal, b.written(false, false))
			}
		}
	}
	if tried < 10_000 {
		t.Errorf("only %d places were tried", tried)
	}
}

// metal says whether a place of the finished part is metal, and whether it lies too near to
// a border to tell. Holes have the point of a 118 degree drill; a plunged saw of
// the radius that was chosen leaves an arc that is deepest in its middle; a slot drill narrower than the slot leaves
// square walls along it.
func (b block) metal(v solid.Vec, saw float64) (metal, near bool) {
	metal = true
	cut := func(depth float64) { // how far inside of what is cut away
		if math.Abs(depth) < 0.01 {
			near = true
		}
		metal = metal && depth <= 0
	}
	for _, h := range b.holes {
		d := math.Hypot(v[0]-h.x, v[1]-h.y)
		deep := b.size[2] - v[2]
		through := h.depth >= b.size[2]-0.001
		side := h.d/2 - d
		if through {
			cut(side)
			continue
		}
		cone := (h.depth-deep)*math.Tan(59*math.Pi/180) + side // the point: 118 degrees included
		if deep <= h.depth {
			cut(side)
		} else {
			cut(cone * math.Cos(59*math.Pi/180))
		}
	}
	if b.slot != nil {
		cut(math.Min(b.slot.width/2-math.Abs(v[1]-b.slot.at), b.slot.depth-(b.size[2]-v[2])))
	}
	if b.saw != nil {
		half := b.size[2] / 2
		sag := saw - math.Sqrt(saw*saw-half*half)
		x := saw - b.saw.depth - sag // the saw's axis, left of the end
		cut(math.Min(0.4-math.Abs(v[1]-b.saw.at), saw-math.Hypot(v[0]+x, v[2]-half)))
	}
	return metal, near
}
