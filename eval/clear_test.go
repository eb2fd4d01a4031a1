package eval

import (
	"math"
	"math/rand"
	"testing"

	"fettle/eval/solid"
)

// The least distance of two stretches, against a search along both: the distance is convex,
// so that the search cannot end in a false place.
func TestLineGapAgainstSearch(t *testing.T) {
	r := rand.New(rand.NewSource(3))
	v := func() solid.Vec { return solid.Vec{r.Float64() * 40, r.Float64() * 40, r.Float64() * 40} }
	for i := range 500 {
		a, b := [2]solid.Vec{v(), v()}, [2]solid.Vec{v(), v()}
		switch i % 4 {
		case 1: // parallel
			b[1] = b[0].Add(a[1].Sub(a[0]).Times(0.7))
		case 2: // square to each other, along axes
			a[1], b[1] = a[0], b[0]
			a[1][2] += 10
			b[1][0] -= 12
		case 3: // a stretch of no length
			b[1] = b[0]
		}
		at := func(s [2]solid.Vec, t float64) solid.Vec { return s[0].Add(s[1].Sub(s[0]).Times(t)) }
		want := least(func(x float64) float64 {
			p := at(a, x)
			return least(func(y float64) float64 { return p.Sub(at(b, y)).Len() })
		})
		if got := lineGap(a, b); math.Abs(got-want) > 1e-6 {
			t.Fatalf("%v %v: %v, by search %v", a, b, got, want)
		}
	}
}
