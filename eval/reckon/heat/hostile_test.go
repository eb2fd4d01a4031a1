package heat

import (
	"testing"

	"fettle/schema/handbook"
	"fettle/schema/hostile"
)

func TestHostile(t *testing.T) {
	steel, brass := handbook.Band{Lo: 11e-6, Hi: 12e-6}, handbook.Band{Lo: 18e-6, Hi: 19e-6}
	joint := Joint{40, handbook.Band{Lo: 0.02, Hi: 0.03}, Body{brass, 20}, Body{steel, 20}}
	hostile.Calls(t, []hostile.Call{
		{Name: "Growth", Func: Growth, With: []any{100.0, steel, 20.0, 60.0}},
		{Name: "Misreading", Func: Misreading, With: []any{100.0, Body{brass, 30}, Body{steel, 22}}},
		{Name: "At20", Func: At20, With: []any{100.0, Body{brass, 30}, Body{steel, 22}}},
		{Name: "Spoils", Func: Spoils, With: []any{0.02, handbook.Band{Lo: 0.001, Hi: 0.002}}},
		{Name: "Interference", Func: Interference, With: []any{joint}},
		{Name: "HubAt", Func: HubAt, With: []any{joint, 0.02}},
		{Name: "ShaftAt", Func: ShaftAt, With: []any{joint, 0.02}},
		{Name: "LooseAt", Func: LooseAt, With: []any{joint}},
	})
}
