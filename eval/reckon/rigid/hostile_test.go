package rigid

import (
	"testing"

	"fettle/schema/handbook"
	"fettle/schema/hostile"
)

func TestHostile(t *testing.T) {
	band := func(lo, hi float64) handbook.Band { return handbook.Band{Lo: lo, Hi: hi} }
	young := band(200000, 210000)
	bar := Bar{Parts: []Part{Round(40, 20, 5), Round(30, 15, 5)}, Hold: Centre, Young: young}
	wall := Wall{Length: 40, Height: 20, Thickness: 1}
	steel := handbook.Elastic{Young: young, Poisson: band(0.28, 0.3)}
	row := handbook.SlenderRow{Limit: 3, Most: 6}
	hostile.Calls(t, []hostile.Call{
		{Name: "Round", Func: Round, With: []any{40.0, 20.0, 5.0}, Undefined: true},
		{Name: "Flat", Func: Flat, With: []any{40.0, 20.0, 5.0}},
		{Name: "Bar.Length", Func: Bar.Length, With: []any{bar},
			Free: []string{"0.Parts[0].Bend", "0.Parts[0].Area", "0.Parts[0].Shear", "0.Parts[1].Bend", "0.Parts[1].Area", "0.Parts[1].Shear", "0.Young.Lo", "0.Young.Hi"}}, // lengths alone are read
		{Name: "Bar.Under", Func: Bar.Under, With: []any{bar, Load{50, 100}, 60.0}},
		{Name: "EndMill", Func: EndMill, With: []any{10.0, 22.0, 10.0, 40.0, young}},
		{Name: "Share", Func: Share, With: []any{band(0.01, 0.02), true, 0.05}},
		{Name: "Slender", Func: Slender, With: []any{row, 60.0, 20.0}},
		{Name: "Whirl", Func: Whirl, With: []any{500.0, 20.0, 5.0, young, 7850.0}},
		{Name: "Wall.Figure", Func: Wall.Figure, With: []any{wall}},
		{Name: "Wall.Under", Func: Wall.Under, With: []any{wall, 100.0, steel},
			Free: []string{"2.Yield.Lo", "2.Yield.Hi", "2.Breaks.Lo", "2.Breaks.Hi", "2.Expansion.Lo", "2.Expansion.Hi", "2.Density"}}, // are not read
	})
}
