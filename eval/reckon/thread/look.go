package thread

import (
	"cmp"
	"math"
	"slices"

	"fettle/schema/drawing"
	"fettle/schema/handbook"
)

// Look is a thread that another could be taken for. Diameters and pitches are mm.
type Look struct {
	Thread   drawing.Thread
	Diameter float64 // how much larger its major diameter is, mm
	Pitch    float64 // how much longer its pitch is, mm
	Angle    float64 // between its flanks, degrees
	Enters   float64 // turns, at most, before the pitches bind: half the play of a sixth of a pitch over the difference; 0: never
}

// LookAlikes lists the threads of the tables whose major diameter is within byDiameter mm and
// whose pitch is within byPitch (a share of it, 0.06 is 6 %), nearest first. Those of another form
// go in a few turns and strip. None where the thread's diameter or pitch is not above 0, or a
// figure is no number.
func LookAlikes(t drawing.Thread, byDiameter, byPitch float64) []Look {
	return looks(t.Diameter, t.Pitch, -byDiameter, byDiameter, byPitch, func(o drawing.Thread) bool {
		return sameForm(t, o) && math.Abs(o.Diameter-t.Diameter) < 1e-6 && math.Abs(o.Pitch-t.Pitch) < 1e-6
	})
}

func sameForm(a, b drawing.Thread) bool { return angle(a.Series) == angle(b.Series) }

// Guess lists the threads of the tables that a measured screw may be: its diameter over the
// crests, mm, which is below the nominal by up to worn mm and above it by 0.02 mm at most, and its
// pitch, mm, within a share, nearest first. None where diameter or pitch is not above 0, or a
// figure is no number.
func Guess(diameter, pitch, worn, byPitch float64) []Look {
	return looks(diameter, pitch, -0.02, worn, byPitch, func(drawing.Thread) bool { return false })
}

func looks(diameter, pitch, less, more, byPitch float64, skip func(drawing.Thread) bool) []Look {
	var out []Look
	if !(diameter > 0 && pitch > 0) {
		return nil
	}
	for _, r := range handbook.Threads() {
		o := drawing.Thread{Series: r.Series, Size: r.Size, Diameter: r.Diameter, Pitch: r.Pitch, Coarse: r.Coarse}
		dd, dp := r.Diameter-diameter, r.Pitch-pitch
		if !(dd >= less-1e-9 && dd <= more+1e-9 && math.Abs(dp) <= byPitch*pitch+1e-9) || skip(o) {
			continue
		}
		l := Look{Thread: o, Diameter: dd, Pitch: dp, Angle: angle(r.Series)}
		if math.Abs(dp) > 1e-6 {
			l.Enters = pitch / 12 / math.Abs(dp)
		}
		out = append(out, l)
	}
	slices.SortStableFunc(out, func(a, b Look) int {
		far := func(l Look) float64 { return math.Abs(l.Diameter)/diameter + math.Abs(l.Pitch)/pitch }
		return cmp.Compare(far(a), far(b))
	})
	return out
}
