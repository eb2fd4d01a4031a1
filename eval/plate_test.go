package eval

import (
	"testing"

	"fettle/eval/solid"

	"pgregory.net/rapid"
)

// Law: a strap lies outside the piece's extent on the side of the face that it presses on, begins at the tip,
// runs out beyond an edge of the piece if it is long enough to, and against an upright never down.
func TestStrapRunsOff(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		h := &Holding{}
		var at solid.Vec
		for i := range 3 {
			h.Lo[i] = rapid.Float64Range(-50, 50).Draw(r, "lo")
			h.Hi[i] = h.Lo[i] + rapid.Float64Range(1, 80).Draw(r, "size")
			at[i] = rapid.Float64Range(h.Lo[i], h.Hi[i]).Draw(r, "at")
		}
		axis := rapid.IntRange(0, 2).Draw(r, "axis")
		sign := 1.0
		if at[axis] = h.Hi[axis]; axis < 2 && rapid.Bool().Draw(r, "low") {
			at[axis], sign = h.Lo[axis], -1
		}
		high := rapid.Float64Range(1, 30).Draw(r, "high")
		lo, hi, ok := h.strap(at, axis, sign, 100, 8, high).Bounds()
		if !ok {
			r.Fatal("the strap has no bounds")
		}
		if near := h.Hi[axis] - lo[axis]; sign > 0 && near > 1e-9 {
			r.Errorf("the strap reaches %v into the piece", near)
		}
		if near := hi[axis] - h.Lo[axis]; sign < 0 && near > 1e-9 {
			r.Errorf("the strap reaches %v into the piece", near)
		}
		out := 0
		for i := range 3 {
			switch {
			case i == axis:
				if d := hi[i] - lo[i] - high; d > 1e-9 || d < -1e-9 {
					r.Errorf("the strap stands %v high, not %v", hi[i]-lo[i], high)
				}
			case hi[i]-lo[i] > 99: // along it
				if i == 2 && hi[2] < h.Hi[2] {
					r.Error("the strap runs down")
				}
				if lo[i] < h.Lo[i] || hi[i] > h.Hi[i] {
					out++
				}
			}
		}
		if out != 1 {
			r.Errorf("the strap of 100 mm runs off over %d edges", out)
		}
	})
}
