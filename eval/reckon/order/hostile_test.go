package order

import (
	"testing"

	"fettle/schema/hostile"
)

func TestHostile(t *testing.T) {
	job := Job{Operations: []Operation{
		{"face", []Way{{"lathe", "knife tool", "right", 5}}, nil},
		{"drill", []Way{{"lathe", "drill", "right", 4}, {"drill press", "drill", "top", 6}}, []string{"face"}},
		{"tap", []Way{{"drill press", "tap", "top", 8}}, []string{"drill"}},
	}, Charge: Charge{30, 5, 20}}
	best, err := Best(job)
	if err != nil {
		t.Fatal(err)
	}
	lost := []Thing{{Tool, "drill"}}
	hostile.Calls(t, []hostile.Call{
		{Name: "Best", Func: Best, With: []any{job}},
		{Name: "FewestSetups", Func: FewestSetups, With: []any{job}},
		{Name: "Price", Func: Price, With: []any{job, best.Steps}},
		{Name: "Check", Func: Check, With: []any{job, best.Steps}},
		{Name: "Moves", Func: Moves, With: []any{job, best.Steps}},
		{Name: "Explain", Func: Explain, With: []any{job, lost}},
		{Name: "Without", Func: Without, With: []any{job, lost[0]}},
		{Name: "WhatIf", Func: WhatIf, With: []any{job}},
		{Name: "Kind.String", Func: Kind.String, With: []any{Tool}},
		{Name: "Thing.String", Func: Thing.String, With: []any{lost[0]}},
		{Name: "Reason.Possible", Func: Reason.Possible, With: []any{Reason{}}},
		{Name: "Impossible.Error", Func: (*Impossible).Error, With: []any{&Impossible{Explain(job, lost)}}},
	})
}
