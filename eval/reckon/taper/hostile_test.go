package taper

import (
	"testing"

	"fettle/schema/hostile"
)

func TestHostile(t *testing.T) {
	cone, err := OneIn(20)
	if err != nil {
		t.Fatal(err)
	}
	slide := Dovetail{60, 8}
	bar := Bar{100, 0.002}
	hostile.Calls(t, []hostile.Call{
		{Name: "OnDiameter", Func: OnDiameter, With: []any{0.05}},
		{Name: "PerFoot", Func: PerFoot, With: []any{0.6}},
		{Name: "OneIn", Func: OneIn, With: []any{20.0}},
		{Name: "Included", Func: Included, With: []any{8.0}},
		{Name: "Ends", Func: Ends, With: []any{20.0, 18.0, 40.0}},
		{Name: "Taper.Ratio", Func: Taper.Ratio, With: []any{cone}},
		{Name: "Taper.PerFoot", Func: Taper.PerFoot, With: []any{cone}},
		{Name: "Taper.OneIn", Func: Taper.OneIn, With: []any{cone}},
		{Name: "Taper.Half", Func: Taper.Half, With: []any{cone}},
		{Name: "Taper.Included", Func: Taper.Included, With: []any{cone}},
		{Name: "Taper.Across", Func: Taper.Across, With: []any{cone, 40.0}},
		{Name: "Taper.Slide", Func: Taper.Slide, With: []any{cone, FromFace}},
		{Name: "Taper.SlideWay", Func: Taper.SlideWay, With: []any{cone, 40.0}},
		{Name: "Taper.SlideReach", Func: Taper.SlideReach, With: []any{cone, 40.0}},
		{Name: "Taper.SetOver", Func: Taper.SetOver, With: []any{cone, 200.0}},
		{Name: "SetOverReach", Func: SetOverReach, With: []any{10.0, 200.0}},
		{Name: "Bar.Stack", Func: Bar.Stack, With: []any{bar, 20.0}},
		{Name: "Bar.Angle", Func: Bar.Angle, With: []any{bar, 20.0}},
		{Name: "Bar.Off", Func: Bar.Off, With: []any{bar, 20.0, 0.001}},
		{Name: "Blocks.Build", Func: Blocks.Build, With: []any{Blocks{Grain, 2 * Grain, 10 * Grain, 100500}, int64(11 * Grain), [2]int64{}}},
		{Name: "Plug.Cone", Func: Plug.Cone, With: []any{Plug{10, 40, 45, 47}}},
		{Name: "Taper.OverRollers", Func: Taper.OverRollers, With: []any{cone, 20.0, 10.0, 40.0}},
		{Name: "Ring.Cone", Func: Ring.Cone, With: []any{Ring{20, 16, 2, 60}}},
		{Name: "Dovetail.Touches", Func: Dovetail.Touches, With: []any{slide, 6.0}, Undefined: true, Free: []string{"0.Height"}}, // the height is not read
		{Name: "Dovetail.OverMale", Func: Dovetail.OverMale, With: []any{slide, 30.0, 6.0}},
		{Name: "Dovetail.BetweenFemale", Func: Dovetail.BetweenFemale, With: []any{slide, 40.0, 6.0}},
		{Name: "Dovetail.Wide", Func: Dovetail.Wide, With: []any{slide, 30.0}},
		{Name: "Vee.Top", Func: Vee.Top, With: []any{Vee{90}, 10.0}},
		{Name: "Vee.Depth", Func: Vee.Depth, With: []any{Vee{90}, 10.0, 3.0}},
		{Name: "VeeAngle", Func: VeeAngle, With: []any{20.0, 10.0, 30.0, 15.0}},
	})
}
