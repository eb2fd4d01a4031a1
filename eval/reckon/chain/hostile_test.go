package chain

import (
	"testing"

	"fettle/schema/hostile"
)

func TestHostile(t *testing.T) {
	links := []Link{{"plate", 1, 10, -0.1, 0.1}, {"washer", -1, 2, -0.05, 0.05}}
	chart := Chart{
		Raw:     []Dim{{"blank", "left", "right", 52, -0.5, 0.5}},
		Cuts:    []Cut{{"face", "right", "left", -51, -0.1, 0.1, Right, 0.2}, {"part", "left", "right", 50, -0.1, 0.1, Left, 0.2}},
		Drawing: []Dim{{"length", "left", "right", 50, -0.2, 0.2}},
	}
	wide := chart
	wide.Drawing = []Dim{{"length", "left", "right", 50, -0.05, 0.05}}
	off := chart
	off.Drawing = []Dim{{"length", "left", "right", 50.5, -0.2, 0.2}}
	reading, err := Read(chart)
	if err != nil || !reading.Holds() {
		t.Fatal(reading, err)
	}
	figures := []string{"0.Results[0].Terms[0].Size", "0.Results[0].Terms[0].Lower", "0.Results[0].Terms[0].Upper", "0.Results[0].Sum.Nominal"}
	hostile.Calls(t, []hostile.Call{
		{Name: "Close", Func: Close, With: []any{links}},
		{Name: "Solve", Func: Solve, With: []any{5.0, 9.0, links, 1.0}, Endless: true},
		{Name: "Reading.Holds", Func: Reading.Holds, With: []any{Reading{Results: []Result{{Name: "length", Holds: true}}}},
			Free: append(figures, "0.Results[0].Sum.Least", "0.Results[0].Sum.Most", "0.Results[0].Sum.Mean", "0.Results[0].Sum.Worst",
				"0.Results[0].Sum.Statistical", "0.Results[0].Least", "0.Results[0].Most")}, // each result says whether it holds
		{Name: "Read", Func: Read, With: []any{chart}},
		{Name: "Rooms", Func: Rooms, With: []any{chart}},
		{Name: "Shifts", Func: Shifts, With: []any{off}},
		{Name: "Tighten", Func: Tighten, With: []any{wide, map[string]float64{"part": 0.01}}},
		{Name: "Loops", Func: Loops, With: []any{[]Dim{{"a", "x", "y", 10, 0, 0.1}, {"b", "y", "z", 5, 0, 0.1}, {"c", "x", "z", 15, 0, 0.1}}}},
	})
}
