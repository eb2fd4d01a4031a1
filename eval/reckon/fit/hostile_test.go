package fit

import (
	"testing"

	"fettle/schema/handbook"
	"fettle/schema/hostile"
)

func TestHostile(t *testing.T) {
	d := handbook.ISO286()
	hostile.Calls(t, []hostile.Call{
		{Name: "Limits", Func: Limits, With: []any{d, 20.0, "H7"}},
		{Name: "IsHole", Func: IsHole, With: []any{"H7"}},
		{Name: "Kind.String", Func: Kind.String, With: []any{Clearance}},
		{Name: "Play", Func: Play, With: []any{20.0, 20.02, 19.98, 19.99}},
		{Name: "KindOf", Func: KindOf, With: []any{0.01, 0.04}},
		{Name: "ParsePair", Func: ParsePair, With: []any{"H7/g6"}},
		{Name: "Pair", Func: Pair, With: []any{d, 20.0, "H7/g6"}},
		{Name: "Grade", Func: Grade, With: []any{d, 20.0, 0.021}},
		{Name: "ShaftFor", Func: ShaftFor, With: []any{20.01, 0.002, 0.01, 0.03}},
		{Name: "HoleFor", Func: HoleFor, With: []any{20.01, 0.002, 0.01, 0.03}},
		{Name: "Nearest", Func: Nearest, With: []any{d, 20.0, "H7", 0.01, 0.04}},
		{Name: "Basis", Func: Basis, With: []any{20.0, 0.02, 0.013, 0.01, true}},
	})
}
