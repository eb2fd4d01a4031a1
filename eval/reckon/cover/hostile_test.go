package cover

import (
	"testing"

	"fettle/schema/hostile"
)

func TestHostile(t *testing.T) {
	needs := []Need{{"bore", [][]string{{"reamer"}, {"boring head", "bar"}}}, {"slot", [][]string{{"cutter"}}}}
	fails := func(wishes []int) bool { return len(wishes) > 2 }
	hostile.Calls(t, []hostile.Call{
		{Name: "Least", Func: Least, With: []any{needs, []string{"bar"}, map[string]int64{"reamer": 3, "cutter": 2}}},
		{Name: "Unlocks", Func: Unlocks, With: []any{needs, []string{"bar"}}},
		{Name: "Clashes", Func: Clashes, With: []any{4, fails}},
		{Name: "Preferred", Func: Preferred, With: []any{4, fails}},
	})
	if _, err := Clashes(4, nil); err == nil {
		t.Error("clashes are found without a question")
	}
}
