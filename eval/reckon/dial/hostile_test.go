package dial

import (
	"math/big"
	"testing"

	"fettle/schema/hostile"
)

func TestHostileFigures(t *testing.T) {
	r := big.NewRat
	dial := Dial{Lead: r(2, 1), Ratio: r(1, 1), Lines: 80}
	hostile.Calls(t, []hostile.Call{
		{Name: "Dial.Turn", Func: Dial.Turn, With: []any{dial}},
		{Name: "Dial.Value", Func: Dial.Value, With: []any{dial}},
		{Name: "Dial.Closes", Func: Dial.Closes, With: []any{dial, r(1, 40)}},
		{Name: "NearestLines", Func: NearestLines, With: []any{r(127, 50), r(1, 50)}},
		{Name: "Divisions", Func: Divisions, With: []any{r(2, 1), []*big.Rat{r(1, 50), r(1, 20)}, 20, 200}},
		{Name: "Vernier", Func: Vernier, With: []any{r(1, 1), 10, 9}},
		{Name: "VernierLines", Func: VernierLines, With: []any{r(1, 1), r(1, 10)}},
		{Name: "Width", Func: Width, With: []any{2.0}},
		{Name: "Figures", Func: Figures, With: []any{40.0, 10, 2, 1.2, 0.4, 100}},
		{Name: "Cut", Func: Cut, With: []any{[]Stroke{{Every: 10, Length: 8, Cutter: 50}, {Every: 1, Length: 4}}, 0.2, 2.0, 0.02},
			// what is worked out, and not read
			Free: []string{"0[0].Beyond", "0[0].Travel", "0[0].Off", "0[1].Beyond", "0[1].Travel", "0[1].Off"}},
		{Name: "Way", Func: Way, With: []any{true}},
	})
}
