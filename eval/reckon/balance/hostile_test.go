package balance

import (
	"testing"

	"fettle/schema/hostile"
)

func TestHostile(t *testing.T) {
	heavy := Moment{120, 30}
	hostile.Calls(t, []hostile.Call{
		{Name: "Sum", Func: Sum, With: []any{Mass{2, 60, 30}, Mass{1, 40, 200}}},
		{Name: "Force", Func: Force, With: []any{heavy, 600.0}},
		{Name: "SpeedAt", Func: SpeedAt, With: []any{heavy, 100.0}},
		{Name: "Weight", Func: Weight, With: []any{200.0, UsualShare}},
		{Name: "Counterweight", Func: Counterweight, With: []any{heavy, 80.0}},
		{Name: "CounterRadius", Func: CounterRadius, With: []any{heavy, 1.5}},
		{Name: "Disc", Func: Disc, With: []any{200.0, 20.0, 15.0, 7200.0}},
		{Name: "Block", Func: Block, With: []any{60.0, 40.0, 30.0, 7850.0}},
		{Name: "Sway", Func: Sway, With: []any{heavy, 20.0, 600.0}},
	})
}
