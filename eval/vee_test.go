package eval

import (
	"math"
	"testing"

	"fettle/eval/reckon/taper"
	"fettle/eval/solid"
	"fettle/schema/model"

	"pgregory.net/rapid"
)

// Law: the axis of work in a vee stands where the arithmetic of rollers in a vee puts it, and the sides of
// the block as they stand beside the work touch it: no nearer than its radius, and no farther.
func TestVeeTouches(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		d := rapid.Float64Range(2, 80).Draw(r, "d")
		angle := rapid.Float64Range(60, 120).Draw(r, "angle")
		axis, touch := VeeAxis(d, angle*math.Pi/180)
		top, err := taper.Vee{Angle: angle}.Top(d)
		if err != nil || math.Abs(axis+d/2-top) > 1e-9 {
			r.Fatalf("the top of %v mm stands %v above the bottom, the arithmetic of rollers says %v, %v", d, axis+d/2, top, err)
		}
		deep := rapid.Float64Range(1, 30).Draw(r, "vee")
		block := &model.VBlock{Vee: model.Sure(deep), Height: model.Sure(deep + touch + 1), Length: model.Sure(20.0),
			Width: model.Sure(200.0), Relief: model.Sure(0.0), Angle: model.Sure(angle)}
		v := &InVee{Veed: &Veed{Block: block, Looks: "up"}, D: d, Axis: axis, Touch: touch, half: angle / 2 * math.Pi / 180,
			along: solid.Vec{1, 0, 0}, out: solid.Vec{0, 0, 1}, aside: solid.Vec{0, 1, 0}}
		mid := solid.Vec{3, 4, deep + axis}
		for _, least := range []bool{true, false} {
			for i, s := range v.shapes(mid, -10, 10, least) {
				lo, hi, ok := s.Bounds()
				if !ok || math.Abs(lo[2]) > 1e-9 || hi[2] > deep+touch+1+1e-9 {
					r.Fatalf("shape %d of the block reaches from %v to %v", i, lo[2], hi[2])
				}
			}
			sides := v.shapes(mid, -10, 10, least)
			for i, sign := range []float64{1, -1} {
				at := mid.Add(solid.Vec{0, sign * d / 2 * math.Cos(angle/2*math.Pi/180), -(axis - touch)})
				in := mid.Sub(at).Unit().Times(0.02)
				if gap(at.Sub(in), sides[i]) > 0 || gap(at.Add(in), sides[i]) <= 0 {
					r.Errorf("side %d does not touch the work at %v", i, at)
				}
			}
		}
	})
}

// gap is how far a hair of metal at a place lies from a shape.
func gap(at solid.Vec, b solid.Shape) float64 {
	return solid.Gap(solid.Turned{Z0: -1e-4, Z1: 1e-4, R0: 1e-4, R1: 1e-4}, solid.Move{From: at, To: at}, b).Gap
}
