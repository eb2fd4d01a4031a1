package press

import (
	"testing"

	"fettle/schema/handbook"
	"fettle/schema/hostile"
)

func TestHostile(t *testing.T) {
	band := func(lo, hi float64) handbook.Band { return handbook.Band{Lo: lo, Hi: hi} }
	steel := handbook.Elastic{Young: band(200000, 210000), Poisson: band(0.28, 0.3), Yield: band(240, 300)}
	fit := Fit{Diameter: 20, Outside: 40, Bore: 5, Length: 20, Interference: band(0.02, 0.03), Smoothing: band(0.002, 0.004),
		Hub: steel, Shaft: steel, Friction: band(0.1, 0.15)}
	ring := Ring{10, 30}
	warmth := []string{"0.Hub.Density", "0.Shaft.Density", "0.Hub.Expansion.Lo", "0.Hub.Expansion.Hi", "0.Shaft.Expansion.Lo", "0.Shaft.Expansion.Hi"} // are not read
	hostile.Calls(t, []hostile.Call{
		{Name: "Limits", Func: Limits, With: []any{20.0, 20.02, 20.03, 20.05}},
		{Name: "Smoothing", Func: Smoothing, With: []any{band(3, 6), band(3, 6)}},
		{Name: "RzOfRa", Func: RzOfRa, With: []any{0.8}},
		{Name: "Work", Func: Work, With: []any{fit}, Free: warmth},
		{Name: "Ring.Stress", Func: Ring.Stress, With: []any{ring, 20.0, 10.0, 5.0}},
		{Name: "Ring.Growth", Func: Ring.Growth, With: []any{ring, 20.0, 10.0, 5.0, 0.0, 200000.0, 0.3}},
		{Name: "Ring.EndPull", Func: Ring.EndPull, With: []any{ring, 10.0}},
		{Name: "Pressure", Func: Pressure, With: []any{5.0, 20.0, 40.0, 0.02, 200000.0, 0.3, 200000.0, 0.3}},
		{Name: "MostPressure", Func: MostPressure, With: []any{20.0, 40.0, 240.0}},
		{Name: "MostInterference", Func: MostInterference, With: []any{fit},
			Free: append(warmth, "0.Interference.Lo", "0.Interference.Hi", "0.Smoothing.Lo", "0.Smoothing.Hi")},
	})
}
