package handbook

import (
	"math"
	"sync"
)

// ThreadTolerance is a row of ISO 965-1 by pitch, micrometres; 0 where the table has none.
type ThreadTolerance struct {
	Pitch, G               float64 // G: how far the deviation g lies below the basic size
	Nut5, Nut6             float64 // minor diameter of the nut, grades 5 and 6
	Major6                 float64 // major diameter of the screw, grade 6
	over, to               float64
	screwPitch6, nutPitch6 float64
}

var threadTolerances = sync.OnceValue(func() []ThreadTolerance {
	var out []ThreadTolerance
	for _, r := range load("thread_tolerance").rows {
		out = append(out, ThreadTolerance{Pitch: r.number("pitch_mm"), G: r.number("g"), Nut5: r.number("nut_minor_5"), Nut6: r.number("nut_minor_6"), Major6: r.number("major_6")})
	}
	return out
})

var pitchTolerances = sync.OnceValue(func() []ThreadTolerance {
	var out []ThreadTolerance
	for _, r := range load("thread_pitch_tolerance").rows {
		out = append(out, ThreadTolerance{Pitch: r.number("pitch_mm"), over: r.number("over_mm"), to: r.number("to_mm"), screwPitch6: r.number("screw_6"), nutPitch6: r.number("nut_6")})
	}
	return out
})

// Tolerances gives the row of a pitch, mm.
func Tolerances(pitch float64) (ThreadTolerance, bool) {
	for _, t := range threadTolerances() {
		if math.Abs(t.Pitch-pitch) < hair {
			return t, true
		}
	}
	return ThreadTolerance{}, false
}

// PitchTolerance gives the tolerances of the pitch diameter, grade 6, micrometres, of screw
// and nut; a diameter on a bound is in the step below, 1 mm itself in the first. Each is 0 where the table has none.
func PitchTolerance(diameter, pitch float64) (screw, nut float64) {
	for _, t := range pitchTolerances() {
		least := diameter > t.over+hair || t.over == 1 && diameter >= 1-hair
		if math.Abs(t.Pitch-pitch) < hair && least && diameter <= t.to+hair {
			return t.screwPitch6, t.nutPitch6
		}
	}
	return 0, 0
}
