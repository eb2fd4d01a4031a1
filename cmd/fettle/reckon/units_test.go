package reckon

import (
	"math"
	"testing"

	"fettle/schema/drawing"
	"fettle/schema/printed"
)

// The words of the command take the same units as drawings, and threads per inch for a pitch; each
// comes to what a program for units makes of it (values kept beside the script in testdata/units).
func TestUnits(t *testing.T) {
	wants := map[string]Want{
		"length": {Name: "x", Kind: Length, Most: 1e6}, "pitch": {Name: "x", Kind: Pitch, Least: 0.01, Most: 1000}, "angle": {Name: "x", Kind: Angle},
	}
	rows := 0
	for _, r := range printed.Rows(t, "../units/values.tsv", 4) {
		w, ok := wants[r[0]]
		if !ok {
			continue // feeds and worm pitches are texts of their subjects
		}
		rows++
		for _, bare := range []drawing.Unit{drawing.Millimetre, drawing.Inch} {
			s, err := w.read(r[1], bare)
			got := s.deg
			if err == nil && w.Kind != Angle {
				got, _ = s.exact[0].Float64()
			}
			if want := printed.Figure(t, r[2]); err != nil || math.Abs(got-want) > 1e-13*math.Max(1, want) {
				t.Errorf("%s %s: %v (%v), %s in %s", r[0], r[1], got, err, r[2], r[3])
			}
		}
	}
	if rows < 58 {
		t.Errorf("%d rows", rows)
	}
}
