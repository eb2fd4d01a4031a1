package cutting

import (
	"testing"

	"fettle/schema/drawing"
	"fettle/schema/hostile"
	"fettle/schema/model"
)

func TestHostile(t *testing.T) {
	const steel = "steel_mild"
	feed := drawing.Feed{Kind: drawing.PerTooth, Rate: 0.05}
	hostile.Calls(t, []hostile.Call{
		{Name: "Band.None", Func: Band.None, With: []any{Band{Says: []Said{{"a table", 2, "a source"}}}}},
		{Name: "Band.Times", Func: Band.Times, With: []any{Band{2, 2, []Said{{"a table", 2, "a source"}}}, 3.0},
			Free: []string{"0.Lo", "0.Hi"}}, // the band is made anew of what the tables say
		{Name: "Revs", Func: Revs, With: []any{25.0, 12.0}},
		{Name: "Speed", Func: Speed, With: []any{600.0, 12.0}},
		{Name: "Pick", Func: Pick, With: []any{model.Speeds{List: []float64{100, 600}}, 25.0, 12.0, 0.0},
			Free: []string{"0.List[0]", "0.List[1]", "0.From", "0.To"}}, // a machine's speeds are refused where they are read
		{Name: "PerMinute", Func: PerMinute, With: []any{feed, 600.0, 4}},
		{Name: "PerTooth", Func: PerTooth, With: []any{100.0, 600.0, 4}},
		{Name: "Minutes", Func: Minutes, With: []any{100.0, 20.0}},
		{Name: "SawReach", Func: SawReach, With: []any{63.0, 30.0, 0.5}},
		{Name: "RunOut", Func: RunOut, With: []any{63.0, 5.0}},
		{Name: "ClampLoad", Func: ClampLoad, With: []any{5000.0, 0.2, 8.0}},
		{Name: "CollarGrip", Func: CollarGrip, With: []any{5000.0, 0.15, 30.0, 16.0, 2}},
		{Name: "Drill", Func: Drill, With: []any{steel, 8.0, 0.1, 118.0, 0.18, 600.0}},
		{Name: "DrillByForce", Func: DrillByForce, With: []any{8.0, 0.1, 2000.0}},
		{Name: "DrillByFactor", Func: DrillByFactor, With: []any{8.0, 0.1, 1.2}, Undefined: true},
		{Name: "DrillByHandbook", Func: DrillByHandbook, With: []any{8.0, 0.1, 0.18, 17000.0, 1.3}, Undefined: true},
		{Name: "DrillByHandbookInch", Func: DrillByHandbookInch, With: []any{0.5, 0.01, 0.18, 24000.0, 1.3}, Undefined: true},
		{Name: "Tap", Func: Tap, With: []any{steel, 6.0, 1.0, 5.0, true}},
		{Name: "TapByPitch", Func: TapByPitch, With: []any{6.0, 1.0, 2000.0}},
		{Name: "TapByThread", Func: TapByThread, With: []any{6.0, 5.0, 2000.0, 1.1}},
		{Name: "FeedFor", Func: FeedFor, With: []any{"drilling", "HSS", steel, 8.0}},
		{Name: "Rz", Func: Rz, With: []any{0.1, 0.4}},
		{Name: "FeedForRz", Func: FeedForRz, With: []any{6.3, 0.4}},
		{Name: "ReachesGrade", Func: ReachesGrade, With: []any{"reaming", 7}},
		{Name: "ReachesRa", Func: ReachesRa, With: []any{"reaming", 1.6}},
		{Name: "Kienzle", Func: Kienzle, With: []any{1500.0, 0.25, 0.1}, Undefined: true},
		{Name: "Specific", Func: Specific, With: []any{"turning", steel, 0.1, 0.1}},
		{Name: "Turn", Func: Turn, With: []any{steel, 1.0, 0.1, 90.0, 25.0, 20.0}},
		{Name: "Mill", Func: Mill, With: []any{steel, 12.0, 6.0, 2.0, 0.05, 4, 600.0}},
		{Name: "TurnPower", Func: TurnPower, With: []any{1.0, 0.1, 2000.0, 25.0}},
		{Name: "MillPower", Func: MillPower, With: []any{2.0, 6.0, 100.0, 2000.0}},
		{Name: "Motor", Func: Motor, With: []any{0.5, 0.8}},
		{Name: "UnitForce", Func: UnitForce, With: []any{0.05, 0.005, 1.0}},
		{Name: "UnitDrillTorque", Func: UnitDrillTorque, With: []any{0.5, 0.005, 1.0}},
		{Name: "Rotation.OtherEnd", Func: Rotation.OtherEnd, With: []any{Clockwise}},
		{Name: "FreeEnd", Func: FreeEnd, With: []any{true}},
		{Name: "HandOf", Func: HandOf, With: []any{true}},
		{Name: "Verdict.String", Func: Verdict.String, With: []any{Tightens}},
		{Name: "Nut", Func: Nut, With: []any{Clockwise, RightHand, false, NoKey}},
	})
}
