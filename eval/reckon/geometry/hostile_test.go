package geometry

import (
	"testing"

	"fettle/schema/hostile"
)

func TestHostile(t *testing.T) {
	circle := Circle{6, 60, 15, Point{10, 20}}
	arc := Arc{20, 90}
	hexagon := Polygon{6, 20}
	bar := Section{Shape: Flatbar, Size: 20, Other: 10, Bore: 4}
	hostile.Calls(t, []hostile.Call{
		{Name: "Circle.Places", Func: Circle.Places, With: []any{circle}},
		{Name: "Circle.Chord", Func: Circle.Chord, With: []any{circle, 2}},
		{Name: "Arc.Length", Func: Arc.Length, With: []any{arc}},
		{Name: "Arc.Chord", Func: Arc.Chord, With: []any{arc}},
		{Name: "Arc.Height", Func: Arc.Height, With: []any{arc}},
		{Name: "ByAngle", Func: ByAngle, With: []any{20.0, 90.0}},
		{Name: "ByLength", Func: ByLength, With: []any{20.0, 30.0}},
		{Name: "ByChord", Func: ByChord, With: []any{20.0, 30.0}},
		{Name: "ByHeight", Func: ByHeight, With: []any{20.0, 3.0}},
		{Name: "Flat", Func: Flat, With: []any{20.0, 6.0}},
		{Name: "FlatWidth", Func: FlatWidth, With: []any{20.0, 3.0}},
		{Name: "Scallop", Func: Scallop, With: []any{2.0, 0.5}},
		{Name: "Section.Area", Func: Section.Area, With: []any{bar}},
		{Name: "Section.Volume", Func: Section.Volume, With: []any{bar, 100.0}},
		{Name: "Section.LengthOf", Func: Section.LengthOf, With: []any{bar, 1.0, 7850.0}},
		{Name: "Cone", Func: Cone, With: []any{20.0, 10.0, 30.0}},
		{Name: "Ball", Func: Ball, With: []any{20.0}},
		{Name: "Mass", Func: Mass, With: []any{1e5, 7850.0}},
		{Name: "FromRound", Func: FromRound, With: []any{6, 20.0}},
		{Name: "OfFlats", Func: OfFlats, With: []any{6, 17.0}},
		{Name: "Polygon.Across", Func: Polygon.Across, With: []any{hexagon}, Undefined: true},
		{Name: "Polygon.Side", Func: Polygon.Side, With: []any{hexagon}, Undefined: true},
		{Name: "Polygon.Depth", Func: Polygon.Depth, With: []any{hexagon}, Undefined: true},
		{Name: "OnRound", Func: OnRound, With: []any{6, 17.0, 19.0}},
		{Name: "RoundForBar", Func: RoundForBar, With: []any{20.0, 10.0}},
		{Name: "Corner.Fillet", Func: Corner.Fillet, With: []any{Corner{90}, 5.0}},
		{Name: "Tangent", Func: Tangent, With: []any{10.0, 5.0, 40.0}},
		{Name: "Blend", Func: Blend, With: []any{10.0, 5.0, 40.0, 30.0}},
		{Name: "Compound.Once", Func: Compound.Once, With: []any{Compound{10, 20}}},
		{Name: "Compound.Twice", Func: Compound.Twice, With: []any{Compound{10, 20}}},
		{Name: "OfTilt", Func: OfTilt, With: []any{10.0, 20.0}},
		{Name: "OfTilts", Func: OfTilts, With: []any{10.0, 20.0}},
	})
}
