package hold

import (
	"testing"

	"fettle/schema/hostile"
)

func TestHostile(t *testing.T) {
	contacts := []Contact{
		{Name: "jaw", At: Vector{0, 10, 5}, Normal: Vector{1, 0, 0}, Friction: 0.15, Clamp: true},
		{Name: "jaw behind", At: Vector{40, 10, 5}, Normal: Vector{-1, 0, 0}, Friction: 0.15},
		{Name: "left", At: Vector{5, 10, 0}, Normal: Vector{0, 0, 1}, Friction: 0.15},
		{Name: "front", At: Vector{35, 0, 0}, Normal: Vector{0, 0, 1}, Friction: 0.15},
		{Name: "back", At: Vector{35, 20, 0}, Normal: Vector{0, 0, 1}, Friction: 0.15},
	}
	loads := []Load{{Force: Vector{0, 0, -50}, At: Vector{20, 10, 8}}}
	cut := []Load{{Force: Vector{0, 20, 0}, At: Vector{20, 10, 5}}}
	hostile.Calls(t, []hostile.Call{
		{Name: "Vector.Length", Func: Vector.Length, With: []any{Vector{3, 4, 12}}},
		{Name: "Least", Func: Least, With: []any{contacts, loads, 8}},
		{Name: "Margin", Func: Margin, With: []any{contacts, []float64{500}, cut, loads, 8}, Endless: true},
		{Name: "Mark.String", Func: Mark.String, With: []any{MayMark}},
		{Name: "UnderBall", Func: UnderBall, With: []any{500.0, 6.0, 120.0, 200000.0, 200000.0}},
		{Name: "UnderFlat", Func: UnderFlat, With: []any{500.0, 10.0, 120.0}},
		{Name: "Lobes", Func: Lobes, With: []any{3}},
		{Name: "Ring", Func: Ring, With: []any{3, 500.0, 60.0, 50.0, 20.0, 200000.0}},
		{Name: "RingForce", Func: RingForce, With: []any{3, 0.01, 60.0, 50.0, 20.0, 200000.0}},
		{Name: "Slot", Func: Slot, With: []any{500.0, 10.0, 20.0, 5.0, 20.0, 200000.0}},
		{Name: "SlotForce", Func: SlotForce, With: []any{0.02, 10.0, 20.0, 5.0, 20.0, 200000.0}},
		{Name: "Screw", Func: Screw, With: []any{10000.0, 4.0, 0.2}},
		{Name: "Rack", Func: Rack, With: []any{5000.0, 20.0, 80.0, 0.15, 0.1}},
		{Name: "Packed", Func: Packed, With: []any{5000.0, 30.0, 30.0}},
		{Name: "Mismatch", Func: Mismatch, With: []any{20.0, 20.1, 30.0, 30.0}},
		{Name: "Jaws", Func: Jaws, With: []any{500.0, 0.15, 2.0}},
		{Name: "Strap", Func: Strap, With: []any{5000.0, 20.0, 40.0}},
		{Name: "Resist", Func: Resist, With: []any{5000.0, 0.15, 2, true}},
	})
}
