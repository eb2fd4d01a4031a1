package screwcut

import (
	"math/big"
	"testing"

	"fettle/schema/drawing"
	"fettle/schema/hostile"
)

func TestHostile(t *testing.T) {
	screw, err := PerInch(8)
	if err != nil {
		t.Fatal(err)
	}
	lead, err := Millimetres(1.5)
	if err != nil {
		t.Fatal(err)
	}
	lathe := Lathe{Screw: screw, Head: Fraction{1, 1}, Wheels: []int{20, 30, 35, 38, 40, 45, 50, 55, 60, 63, 65, 127}, Mesh: Mesh{Spare: RuleOfThumb}}
	wanted := Wanted{Lead: lead, Within: 500, Pairs: 2}
	found, err := Trains(lathe, wanted)
	if err != nil || len(found.Trains) == 0 {
		t.Fatal(found, err)
	}
	train := found.Trains[0]
	mesh := Mesh{Module: 1, Boss: 13, Centres: 120, Nearest: 20, Far: 200}
	half := Fraction{1, 2}
	hostile.Calls(t, []hostile.Call{
		{Name: "Mesh.Measured", Func: Mesh.Measured, With: []any{mesh}, Free: []string{"0.Centres", "0.Nearest", "0.Far"}}, // are not read
		{Name: "Mesh.Stands", Func: Mesh.Stands, With: []any{mesh, train}, Free: []string{"1.Lead", "1.PPM"}},              // the wheels alone are read
		{Name: "Apart", Func: Apart, With: []any{1.0, 40, 60}},
		{Name: "HalfNuts", Func: HalfNuts, With: []any{train, screw}, Free: []string{"0.Lead", "0.PPM"}}, // Turn alone is read
		{Name: "Nuts.Marks", Func: Nuts.Marks, With: []any{Nuts{Screw: 4}, 16}, Free: []string{"0.Way"}},
		{Name: "Nuts.NextStart", Func: Nuts.NextStart, With: []any{Nuts{Screw: 4}, 2}, Free: []string{"0.Way"}},
		{Name: "StartTeeth", Func: StartTeeth, With: []any{40, Fraction{1, 1}, 2}},
		{Name: "Fraction.Float", Func: Fraction.Float, With: []any{half}},
		{Name: "Fraction.String", Func: Fraction.String, With: []any{half}},
		{Name: "FractionOf", Func: FractionOf, With: []any{11.5}},
		{Name: "Millimetres", Func: Millimetres, With: []any{1.5}},
		{Name: "Exactly", Func: Exactly, With: []any{big.NewRat(3, 2)}},
		{Name: "PerInch", Func: PerInch, With: []any{8.0}},
		{Name: "Module", Func: Module, With: []any{0.8}},
		{Name: "DiametralPitch", Func: DiametralPitch, With: []any{20.0}},
		{Name: "Pitch.Times", Func: Pitch.Times, With: []any{lead, 2}},
		{Name: "Pitch.MM", Func: Pitch.MM, With: []any{lead}},
		{Name: "Pitch.String", Func: Pitch.String, With: []any{lead}},
		{Name: "ParsePitch", Func: ParsePitch, With: []any{"8 tpi", drawing.Millimetre}},
		{Name: "Train.Wheels", Func: Train.Wheels, With: []any{train}, Free: []string{"0.Lead", "0.PPM"}},
		{Name: "Train.String", Func: Train.String, With: []any{train}, Free: []string{"0.Lead", "0.PPM"}},
		{Name: "Train.Over", Func: Train.Over, With: []any{train, 100.0}, Free: []string{"0.Lead"}},
		{Name: "Train.Meshes", Func: Train.Meshes, With: []any{train, 1}, Free: []string{"0.Lead", "0.PPM"}},
		{Name: "TooTight", Func: TooTight, With: []any{0.01, 60.0}},
		{Name: "Trains", Func: Trains, With: []any{lathe, wanted}},
		{Name: "Given", Func: Given, With: []any{lathe, []int{40, 30, 65, 127}, lead}, Free: []string{"0.Wheels"}}, // whether they are there is not asked
		{Name: "Ratio", Func: Ratio, With: []any{lathe, lead}, Free: []string{"0.Mesh.Module", "0.Mesh.Boss", "0.Mesh.Centres", "0.Mesh.Nearest", "0.Mesh.Far"}},
		{Name: "Mate", Func: Mate, With: []any{lathe, lead, 40}, Free: []string{"0.Mesh.Module", "0.Mesh.Boss", "0.Mesh.Centres", "0.Mesh.Nearest", "0.Mesh.Far"}},
		{Name: "WheelsToGet", Func: WheelsToGet, With: []any{lathe, wanted},
			Free: []string{"1.Within"}}, // exact trains alone are looked for
	})
}

// A pitch that is none, and the zero values, come to nothing and panic nowhere.
func TestNone(t *testing.T) {
	if r := Ratio(Lathe{}, Pitch{}); r.Sign() != 0 {
		t.Errorf("no lathe has the ratio %v", r)
	}
	if _, err := Exactly(nil); err == nil {
		t.Error("no figure is taken for a pitch")
	}
	if (Mesh{}).Stands(Train{}) || (Pitch{}).MM() != 0 || (Pitch{}).String() != "no pitch" {
		t.Error("nothing is taken for something")
	}
	if _, err := (Pitch{}).Times(2); err == nil {
		t.Error("no pitch has a lead")
	}
	if (Mesh{Spare: 15}).Stands(Train{Pairs: 1}) {
		t.Error("a train of wheels without teeth stands")
	}
}
