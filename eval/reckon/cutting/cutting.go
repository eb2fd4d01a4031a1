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

// Revs gives the spindle speed, rev/min, at which an edge at a diameter, mm, runs at a speed,
// m/min: n = 1000 v / (pi D), by the definition of the units. A bare formula: 0 where the diameter
// is not above 0; what is no number stays none.
func Revs(speed, diameter float64) float64 {
	if !(diameter > 0) {
		return 0
	}
	return 1000 * speed / (math.Pi * diameter)
}

// Speed gives the speed, m/min, of an edge at a diameter, mm, and a spindle speed, rev/min: v = pi
// D n / 1000, by the definition of the units. A bare formula, which refuses nothing.
func Speed(revs, diameter float64) float64 { return math.Pi * diameter * revs / 1000 }

// Choice is a speed of a machine, rev/min, and what it makes at the edge, m/min.
type Choice struct {
	Revs    float64
	Speed   float64 // what it makes at the edge
	TooFast bool    // even the slowest is above what was wanted
}

// Pick takes the fastest speed of a machine that keeps an edge at or below a wanted speed, m/min,
// at a diameter, mm, and at or below a mark on the tool, rev/min (0: no mark). Where even the
// slowest is faster, it is taken and said to be too fast. False where the machine has no speeds
// above 0, and where the wanted speed or the diameter is not above 0 or is no number, or a
// diameter is a kilometre or more.
func Pick(s model.Speeds, wanted, diameter, mark float64) (Choice, bool) {
	if !(wanted > 0 && diameter > 0 && diameter < 1e6) || math.IsNaN(mark) {
		return Choice{}, false
	}
	limit := Revs(wanted, diameter)
	if mark > 0 {
		limit = math.Min(limit, mark)
	}
	n, kept := s.At(limit)
	if !kept {
		n, _ = s.Slowest()
	}
	if !(n > 0) || math.IsInf(n, 0) {
		return Choice{}, false
	}
	return Choice{n, Speed(n, diameter), !kept}, true
}

// PerMinute gives the rate of a feed in mm a minute: f n, or f z n for a feed counted over teeth,
// at rev/min and a count of teeth. False by hand, where the feed, the turns or the teeth that it
// counts over are not above 0 or not known, and where the rate would be infinite.
func PerMinute(f drawing.Feed, revs float64, teeth int) (rate float64, ok bool) {
	switch f.Kind {
	case drawing.PerMinute:
		rate = f.Rate
	case drawing.PerTurn:
		rate = f.Rate * revs
	case drawing.PerTooth:
		rate = f.Rate * revs * float64(teeth)
	}
	if f.Kind != drawing.PerMinute && !(revs > 0) || !(f.Rate > 0) {
		return 0, false
	}
	return above(rate)
}

// above takes a figure where it is one and more than nought.
func above(x float64) (float64, bool) {
	if !(x > 0) || math.IsInf(x, 0) {
		return 0, false
	}
	return x, true
}

// PerTooth gives what each tooth takes, mm, at a rate in mm a minute, rev/min and a count of
// teeth. False where one of the three is not above 0 or is no number.
func PerTooth(rate, revs float64, teeth int) (mm float64, ok bool) {
	if !(revs > 0) || teeth <= 0 {
		return 0, false
	}
	return above(rate / (revs * float64(teeth)))
}

// Minutes gives how long a length, mm, takes at a rate in mm a minute. False where either is not
// above 0 or is no number.
func Minutes(length, rate float64) (t float64, ok bool) {
	if !(rate > 0) {
		return 0, false
	}
	return above(length / rate)
}

// SawReach gives how deep, mm, a slitting saw cuts before its collar, nut or screw head meets the
// work, with a gap kept: (saw - collar)/2 - gap, diameters and gap mm, by geometry. Below nought
// it does not cut at all. The collar is the largest thing beside the saw on the side of the work.
// A bare formula, which refuses nothing.
func SawReach(saw, collar, gap float64) float64 { return (saw-collar)/2 - gap }

// RunOut gives how far, mm, a blind saw cut ends short of full depth at each end: the distance
// along the work from the rim at the surface to the deepest point, sqrt(h (D - h)), by geometry;
// the saw's diameter and the depth mm. A depth of 0 or below, of D or above, or of no number has
// none: 0.
func RunOut(saw, depth float64) float64 {
	if !(depth > 0 && depth < saw) {
		return 0
	}
	return math.Sqrt(depth * (saw - depth))
}

// ClampLoad gives the pull in a screw, N, from the torque on it: F = T / (K d), T in N mm, d in
// mm. K, without unit, is about 0.2 dry (a workholding maker's table gives 0.20 to 0.21). A bare
// formula: 0 where K or d is not above 0.
func ClampLoad(torque, k, diameter float64) float64 {
	if !(k > 0 && diameter > 0) {
		return 0
	}
	return torque / (k * diameter)
}

// CollarGrip gives the torque in N mm that clamped collars hold by friction: mu F r n, load N,
// diameters mm, with r = 2/3 (Ro^3 - Ri^3)/(Ro^2 - Ri^2) the mean radius of a ring pressed evenly,
// and n the faces that drive: 1 where the washer under the nut is free to turn. A bare formula: 0
// where the outside is not above the inside, or the inside below 0.
func CollarGrip(load, friction, outside, inside float64, faces int) float64 {
	ro, ri := outside/2, inside/2
	if !(ro > ri && ri >= 0) {
		return 0
	}
	r := 2.0 / 3 * (ro*ro*ro - ri*ri*ri) / (ro*ro - ri*ri)
	return friction * load * r * float64(faces)
}
