package solid

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	_ "fettle/schema/seeded"
)

// A plain rectangle is roomiest along its middle, half its shorter side from the edges; with a disc over the left
// half, in the right one.
func TestRoomiestPlace(t *testing.T) {
	lo, hi := [2]float64{0, 0}, [2]float64{30, 10}
	at, far, ok := RoomiestPlace(lo, hi, nil)
	if !ok || math.Abs(far-5) > 0.02 || math.Abs(at[1]-5) > 0.02 {
		t.Errorf("at %v, %g from the edges", at, far)
	}
	at, far, ok = RoomiestPlace(lo, hi, []Flat{{A: [2]float64{0, 5}, B: [2]float64{18, 5}, R: 4}})
	// On the middle line it would be 4; in a corner beside the round end a little more.
	if !ok || at[0] < 25 || far < 4 || far > 4.1 {
		t.Errorf("beside a slot: at %v, %g from what is taken", at, far)
	}
	if _, _, ok := RoomiestPlace(lo, hi, []Flat{{Box: true, Lo: [2]float64{-1, -1}, Hi: [2]float64{31, 11}}}); ok {
		t.Error("a place where all is taken")
	}
}

// The place keeps its distance from the edges and from every disc, and no point of a fine grid keeps more
// than a thousandth of the shorter side more.
func TestRoomiestPlaceAgainstAGrid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lo, hi := [2]float64{0, 0}, [2]float64{rapid.Float64Range(2, 50).Draw(t, "long"), rapid.Float64Range(2, 50).Draw(t, "wide")}
		var taken []Flat
		for range rapid.IntRange(0, 5).Draw(t, "discs") {
			c := [2]float64{rapid.Float64Range(0, hi[0]).Draw(t, "x"), rapid.Float64Range(0, hi[1]).Draw(t, "y")}
			taken = append(taken, Flat{A: c, B: c, R: rapid.Float64Range(0.5, 5).Draw(t, "r")})
		}
		room := func(p [2]float64) float64 {
			r := min(p[0], p[1], hi[0]-p[0], hi[1]-p[1])
			for _, d := range taken {
				r = min(r, math.Hypot(p[0]-d.A[0], p[1]-d.A[1])-d.R)
			}
			return r
		}
		at, far, ok := RoomiestPlace(lo, hi, taken)
		best := math.Inf(-1)
		for i := range 61 {
			for j := range 61 {
				best = max(best, room([2]float64{hi[0] * float64(i) / 60, hi[1] * float64(j) / 60}))
			}
		}
		within := min(hi[0], hi[1]) / 1000
		switch {
		case !ok && best > within:
			t.Fatalf("nothing found; a point of the grid has %g", best)
		case ok && room(at) < far-1e-6:
			t.Fatalf("%v has %g, not %g", at, room(at), far)
		case ok && best > far+within:
			t.Fatalf("found %g, a point of the grid has %g", far, best)
		}
	})
}
