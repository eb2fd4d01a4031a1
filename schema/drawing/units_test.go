package drawing_test

import (
	"math"
	"testing"

	"fettle/schema/drawing"
	"fettle/schema/printed"
)

// Every unit that the notation takes comes to what a program for units makes of it (values kept
// beside the script in testdata/units), to the last bits of a float64, whatever a bare figure means.
func TestUnits(t *testing.T) {
	read := map[string]func(string, drawing.Unit) (float64, error){
		"length": drawing.ParseLength,
		"angle":  func(s string, _ drawing.Unit) (float64, error) { return drawing.ParseAngle(s) },
		"feed": func(s string, u drawing.Unit) (float64, error) {
			f, err := drawing.ParseFeed(s, u)
			return f.Rate, err
		},
		"size": func(s string, u drawing.Unit) (float64, error) {
			z, err := drawing.ParseSize(s, u)
			return z.Nominal, err
		},
	}
	counts := map[string]int{}
	for _, r := range printed.Rows(t, "../units/values.tsv", 4) {
		kinds := []string{r[0]}
		if r[0] == "length" {
			kinds = append(kinds, "size")
		}
		for _, kind := range kinds {
			f := read[kind]
			if f == nil {
				continue // pitches are read by eval/reckon/screwcut and by the command, and tested there
			}
			counts[kind]++
			for _, bare := range []drawing.Unit{drawing.Millimetre, drawing.Inch} {
				want := printed.Figure(t, r[2])
				if got, err := f(r[1], bare); err != nil || math.Abs(got-want) > 1e-13*math.Max(1, want) {
					t.Errorf("%s %s: %v (%v), %s in %s", kind, r[1], got, err, r[2], r[3])
				}
			}
		}
	}
	if counts["length"] < 42 || counts["size"] < 42 || counts["angle"] < 11 || counts["feed"] < 5 {
		t.Errorf("rows checked: %v", counts)
	}
}
