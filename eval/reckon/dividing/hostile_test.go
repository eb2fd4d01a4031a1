package dividing

import (
	"testing"

	"fettle/schema/hostile"
)

func TestHostile(t *testing.T) {
	head := Head{Ratio: Of(40, 1), Plates: []Plate{{Name: "A", Faces: [][]int{{15, 16, 17, 18, 19, 20}}}}, Direct: []int{24},
		Gear: Gearing{Wheels: []int{24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100}, Axis: Level}}
	job, err := Divisions(24)
	if err != nil {
		t.Fatal(err)
	}
	half := Of(1, 2)
	plain, err := Settings(head, job)
	if err != nil {
		t.Fatal(err)
	}
	rotary, err := Lined(Of(90, 1), Of(1, 60))
	if err != nil {
		t.Fatal(err)
	}
	near, err := Near(head, job)
	if err != nil {
		t.Fatal(err)
	}
	train := Train{Pairs: 2, Spindle: 48, StudIn: 24, StudOut: 32, Plate: 56}
	hostile.Calls(t, []hostile.Call{
		{Name: "Divisions", Func: Divisions, With: []any{24}},
		{Name: "Block", Func: Block, With: []any{25, 4}},
		{Name: "Angle", Func: Angle, With: []any{Of(15, 1), 3}},
		{Name: "Degrees", Func: Degrees, With: []any{half}, Undefined: true},
		{Name: "Seconds", Func: Seconds, With: []any{half}, Undefined: true},
		{Name: "Arc", Func: Arc, With: []any{half, 50.0}, Undefined: true},
		{Name: "Of", Func: Of, With: []any{int64(1), int64(2)}},
		{Name: "Fraction.Valid", Func: Fraction.Valid, With: []any{half}},
		{Name: "Fraction.Plus", Func: Fraction.Plus, With: []any{half, half}},
		{Name: "Fraction.Minus", Func: Fraction.Minus, With: []any{half, half}},
		{Name: "Fraction.Times", Func: Fraction.Times, With: []any{half, half}},
		{Name: "Fraction.Over", Func: Fraction.Over, With: []any{half, half}},
		{Name: "Fraction.Cmp", Func: Fraction.Cmp, With: []any{half, half}},
		{Name: "Fraction.Abs", Func: Fraction.Abs, With: []any{half}},
		{Name: "Fraction.Sign", Func: Fraction.Sign, With: []any{half}},
		{Name: "Fraction.Whole", Func: Fraction.Whole, With: []any{half}},
		{Name: "Fraction.Round", Func: Fraction.Round, With: []any{half}},
		{Name: "Fraction.Float", Func: Fraction.Float, With: []any{half}, Undefined: true},
		{Name: "Fraction.String", Func: Fraction.String, With: []any{half}},
		{Name: "Near", Func: Near, With: []any{head, job}},
		{Name: "Lined", Func: Lined, With: []any{Of(90, 1), Of(1, 60)}},
		{Name: "Rotary.Step", Func: Rotary.Step, With: []any{rotary, job}},
		{Name: "Rotary.Table", Func: Rotary.Table, With: []any{rotary, job}},
		{Name: "Method.String", Func: Method.String, With: []any{Plain}},
		{Name: "Count.Part", Func: Count.Part, With: []any{Count{1, 2, 3}}},
		{Name: "Count.Span", Func: Count.Span, With: []any{Count{1, 2, 3}}},
		{Name: "Setting.Exact", Func: Setting.Exact, With: []any{plain[0]}},
		{Name: "Setting.Holes", Func: Setting.Holes, With: []any{plain[0]}},
		{Name: "Head.Moves", Func: Head.Moves, With: []any{head, plain[0]}},
		{Name: "Turns", Func: Turns, With: []any{head, job}},
		{Name: "Settings", Func: Settings, With: []any{head, job}},
		{Name: "Serve", Func: Serve, With: []any{head, job, 100}},
		{Name: "Blocks", Func: Blocks, With: []any{25, 4}},
		{Name: "Job.Rounds", Func: Job.Rounds, With: []any{job}},
		{Name: "Table", Func: Table, With: []any{job, plain[0]}},
		{Name: "Rounding.Table", Func: Rounding.Table, With: []any{near.Rounded, head, job}},
		{Name: "Train.Meshes", Func: Train.Meshes, With: []any{train}},
		{Name: "Train.Ratio", Func: Train.Ratio, With: []any{train}},
		{Name: "Gears", Func: Gears, With: []any{head, job}},
	})
}
