package eval

import (
	"math"
	"testing"

	"fettle/eval/solid"

	"pgregory.net/rapid"
)

// Law: bevels that touch a round never take more than the round, and between them at most
// solid.Within is left.
func TestRoundLegs(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		size := rapid.Float64Range(0.05, 10).Draw(r, "radius")
		legs := roundLegs(size)
		for i := range 201 {
			// A place of the arc, and how far outwards from it the metal ends after all bevels.
			sin, cos := math.Sincos(float64(i) / 200 * math.Pi / 2)
			most := math.Inf(1)
			for _, l := range legs {
				// u/l0 + v/l1 < 1 is taken; u = size - s cos, v = size - s sin at a distance s.
				s := (size/l[0] + size/l[1] - 1) / (cos/l[0] + sin/l[1])
				if s < size-1e-9*size {
					r.Fatalf("radius %v: a bevel takes %v of the round", size, size-s)
				}
				most = math.Min(most, s)
			}
			at := math.Min(most, math.Min(size/math.Max(cos, 1e-12), size/math.Max(sin, 1e-12)))
			if at > size+solid.Within+1e-9 && len(legs) < 40 {
				r.Fatalf("radius %v: %v is left", size, at-size)
			}
		}
	})
}
