package thread

import (
	"testing"

	"fettle/schema/drawing"
	"fettle/schema/hostile"
	"fettle/schema/model"
)

func TestHostile(t *testing.T) {
	m6 := drawing.Thread{Series: "M", Size: "M6", Diameter: 6, Pitch: 1, Coarse: true}
	drills := model.Sizes{List: []model.Member{{Size: 4.9}, {Size: 5}, {Size: 5.1}}, Series: []model.Series{{From: 1, To: 10, By: 0.5}}}
	limits, err := WiresFor(m6)
	if err != nil {
		t.Fatal(err)
	}
	series := []string{"0.Diameter", "0.Pitch"} // the series alone is read
	hostile.Calls(t, []hostile.Call{
		{Name: "Classes", Func: Classes, With: []any{"M"}},
		{Name: "UsualClasses", Func: UsualClasses, With: []any{m6}, Free: series},
		{Name: "LimitsOf", Func: LimitsOf, With: []any{m6, "6g"}},
		{Name: "LookAlikes", Func: LookAlikes, With: []any{m6, 0.3, 0.06}},
		{Name: "Guess", Func: Guess, With: []any{5.9, 1.0, 0.2, 0.03}},
		{Name: "StressArea", Func: StressArea, With: []any{m6}},
		{Name: "Breaks", Func: Breaks, With: []any{m6, 400.0}},
		{Name: "Strips", Func: Strips, With: []any{m6, 6.0, 5.0, 400.0, 200.0}},
		{Name: "LengthToBreak", Func: LengthToBreak, With: []any{m6, 5.0, 400.0, 200.0}},
		{Name: "BlindWith", Func: BlindWith, With: []any{m6, 10.0, 4.0, Room{1, true, true}}},
		{Name: "ProfileOf", Func: ProfileOf, With: []any{"M"}},
		{Name: "Diameters", Func: Diameters, With: []any{m6}},
		{Name: "Percent", Func: Percent, With: []any{m6, 5.0}},
		{Name: "Hole", Func: Hole, With: []any{m6, 75.0}},
		{Name: "Drill", Func: Drill, With: []any{m6, drills, 50.0, 85.0},
			Free: []string{"1.List[0].Size", "1.List[1].Size", "1.Series[0].From", "1.Series[0].To", "1.Series[0].By"}}, // are passed over
		{Name: "Blind", Func: Blind, With: []any{10.0, 1.0, 4.0}},
		{Name: "BlindBS1936", Func: BlindBS1936, With: []any{10.0, 6.0}},
		{Name: "FullThread", Func: FullThread, With: []any{16.0, 1.0, 4.0}},
		{Name: "Engaged", Func: Engaged, With: []any{20.0, 8.0, 10.0}},
		{Name: "LeastEngaged", Func: LeastEngaged, With: []any{"steel_mild"}},
		{Name: "Angle", Func: Angle, With: []any{m6}, Free: series},
		{Name: "WiresFor", Func: WiresFor, With: []any{m6}},
		{Name: "Over", Func: Over, With: []any{m6, 5.35, limits.Best}},
		{Name: "EffectiveFrom", Func: EffectiveFrom, With: []any{m6, 5.35 + 3*limits.Best - 0.866, limits.Best}},
	})
}
