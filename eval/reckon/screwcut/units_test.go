package screwcut

import (
	"math"
	"testing"

	"fettle/schema/drawing"
	"fettle/schema/printed"
)

// Pitches in every unit that is taken come to what a program for units makes of them (values kept
// beside the script in testdata/units).
func TestUnits(t *testing.T) {
	rows := 0
	for _, r := range printed.Rows(t, "../units/values.tsv", 4) {
		if r[0] != "pitch" && r[0] != "worm pitch" {
			continue
		}
		rows++
		for _, bare := range []drawing.Unit{drawing.Millimetre, drawing.Inch} {
			want := printed.Figure(t, r[2])
			if got, err := ParsePitch(r[1], bare); err != nil || math.Abs(got.MM()-want) > 1e-13*want {
				t.Errorf("%s: %v (%v), %s in %s", r[1], got.MM(), err, r[2], r[3])
			}
		}
	}
	if rows < 8 {
		t.Errorf("%d rows", rows)
	}
}
