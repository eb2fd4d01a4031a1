// Package cutting is the arithmetic of cutting speeds, feeds and slitting saws, and whether
// a cut tightens or loosens the nut that clamps a cutter.
//
// Lengths are millimetres, speeds at the edge m/min, spindle speeds rev/min. Speeds that
// come out of here are starting points: the mark on a cutter and the machine's manual go first.
//
// Where a function gives an error, it names the figure that is out of range or what does not go
// together; what is not a number is out of every range.
package cutting

import (
	"math"

	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Revs gives the spindle speed at which an edge at a diameter runs at a speed:
// n = 1000 v / (pi D). 0 where there is no diameter.
func Revs(speed, diameter float64) float64 {
	if !(diameter > 0) {
		return 0
	}
	return 1000 * speed / (math.Pi * diameter)
}

// Speed gives the speed of an edge at a diameter: v = pi D n / 1000.
func Speed(revs, diameter float64) float64 { return math.Pi * diameter * revs / 1000 }

// Choice is a speed of a machine.
type Choice struct {
	Revs    float64
	Speed   float64 // what it makes at the edge
	TooFast bool    // even the slowest is above what was wanted
}

// Pick takes the fastest speed of a machine that keeps an edge at or below a wanted speed
// and below a mark on the tool, rev/min (0: no mark). Where even the slowest is faster, it
// is taken and said to be too fast. False where the machine has no speeds.
func Pick(s model.Speeds, wanted, diameter, mark float64) (Choice, bool) {
	limit := Revs(wanted, diameter)
	if mark > 0 {
		limit = math.Min(limit, mark)
	}
	n, ok := s.At(limit)
	if !ok {
		if n, ok = s.Slowest(); !ok {
			return Choice{}, false
		}
		return Choice{n, Speed(n, diameter), true}, true
	}
	return Choice{n, Speed(n, diameter), false}, true
}

// PerMinute gives the rate of a feed in mm a minute: f n, or f z n for a feed counted over
// teeth. False by hand, and where turns or teeth are not known.
func PerMinute(f drawing.Feed, revs float64, teeth int) (rate float64, ok bool) {
	switch f.Kind {
	case drawing.PerMinute:
		return f.Rate, f.Rate > 0
	case drawing.PerTurn:
		return f.Rate * revs, f.Rate > 0 && revs > 0
	case drawing.PerTooth:
		return f.Rate * revs * float64(teeth), f.Rate > 0 && revs > 0 && teeth > 0
	}
	return 0, false
}

// PerTooth gives what each tooth takes at a rate in mm a minute.
func PerTooth(rate, revs float64, teeth int) (mm float64, ok bool) {
	if !(revs > 0) || teeth <= 0 {
		return 0, false
	}
	return rate / (revs * float64(teeth)), true
}

// Minutes gives how long a length takes at a rate in mm a minute.
func Minutes(length, rate float64) (t float64, ok bool) {
	if !(rate > 0) {
		return 0, false
	}
	return length / rate, true
}

// SawReach gives how deep a slitting saw cuts before its collar, nut or screw head meets
// the work, with a gap kept: (saw - collar)/2 - gap. Below nought it does not cut at all.
// The collar is the largest thing beside the saw on the side of the work.
func SawReach(saw, collar, gap float64) float64 { return (saw-collar)/2 - gap }

// RunOut gives how far short of full depth a blind saw cut ends at each end: the distance
// along the work from the rim at the surface to the deepest point, sqrt(h (D - h)). A depth
// outside 0 to D has none.
func RunOut(saw, depth float64) float64 {
	if !(depth > 0 && depth < saw) {
		return 0
	}
	return math.Sqrt(depth * (saw - depth))
}

// ClampLoad gives the pull in a screw from the torque on it: F = T / (K d), T in N mm, d in
// mm, F in N. K is about 0.2 dry (a workholding maker's table gives 0.20 to 0.21).
func ClampLoad(torque, k, diameter float64) float64 {
	if !(k > 0 && diameter > 0) {
		return 0
	}
	return torque / (k * diameter)
}

// CollarGrip gives the torque in N mm that clamped collars hold by friction: mu F r n, with
// r = 2/3 (Ro^3 - Ri^3)/(Ro^2 - Ri^2) the mean radius of a ring pressed evenly, and n the
// faces that drive: 1 where the washer under the nut is free to turn.
func CollarGrip(load, friction, outside, inside float64, faces int) float64 {
	ro, ri := outside/2, inside/2
	if !(ro > ri && ri >= 0) {
		return 0
	}
	r := 2.0 / 3 * (ro*ro*ro - ri*ri*ri) / (ro*ro - ri*ri)
	return friction * load * r * float64(faces)
}
