// Package balance is the pull of a mass that turns off its middle: work on a faceplate, in an
// offset chuck, on an angle plate.
//
// Masses are kilograms, distances from the axis of turning mm, speeds rev/min, forces N. The
// moment of a mass is mass times distance, kg mm, with a direction: an angle counted from a
// mark on the faceplate, degrees, one way round. All masses are taken to lie in one plane
// square to the axis: what lies further out along the axis also tips, which no counterweight
// in another plane takes away.
//
// Where a comment names no source, a formula is the definition of its words, plain mechanics or
// geometry.
//
// Where a function gives an error, it names the figure that is out of range or what does not go
// together; what is not a number is out of every range.
package balance

import (
	"cmp"
	"fmt"
	"math"
)

// Mass is something that turns, as a point at its centre of mass: up to 100,000 kg, 10,000 mm from
// the axis, at any angle within a hundred turns.
type Mass struct {
	Kilograms float64
	Radius    float64 // from the axis, mm
	Angle     float64 // degrees from the mark
}

// Moment is what masses come to together.
type Moment struct {
	Size  float64 // kg mm
	Angle float64 // the heavy side, degrees from 0 to under 360; without meaning where Size is 0
}

const (
	heaviest = 1e5 // kg
	widest   = 1e4 // mm
	fastest  = 1e5 // rev/min
)

// G is the standard acceleration of fall, m/s2 (3rd CGPM, 1901: 9.80665 by definition).
const G = 9.80665

func within(what string, x, lo, hi float64, unit string) error {
	if !(x >= lo && x <= hi) {
		return fmt.Errorf("the %s must lie from %v to %v %s, not %v", what, lo, hi, unit, x)
	}
	return nil
}

func (m Mass) check() error {
	return cmp.Or(within("mass", m.Kilograms, 0, heaviest, "kg"), within("distance from the axis", m.Radius, 0, widest, "mm"),
		within("angle", m.Angle, -36000, 36000, "degrees"))
}

// Sum adds the moments of masses as arrows, kg mm. A sum that is below 1e-12 of all its parts is
// nought. No mass at all is nought too. An error names the figure of a mass that is out of its
// range.
func Sum(masses ...Mass) (Moment, error) {
	var x, y, all float64
	for _, m := range masses {
		if err := m.check(); err != nil {
			return Moment{}, err
		}
		s, c := math.Sincos(m.Angle * math.Pi / 180)
		x, y = x+m.Kilograms*m.Radius*c, y+m.Kilograms*m.Radius*s
		all += m.Kilograms * m.Radius
	}
	size := math.Hypot(x, y)
	if size <= 1e-12*all {
		return Moment{}, nil
	}
	angle := math.Mod(math.Atan2(y, x)*180/math.Pi+360, 360)
	return Moment{size, angle}, nil
}

func (m Moment) check() error {
	return cmp.Or(within("moment", m.Size, 0, heaviest*widest, "kg mm"), within("angle", m.Angle, -36000, 36000, "degrees"))
}

// Force gives the pull of a moment, 0 to 1e9 kg mm, at a speed, 0 to 100,000 rev/min, in N: m r (2
// pi n/60)^2, r in m, by mechanics. An error names the figure out of range.
func Force(m Moment, revs float64) (float64, error) {
	if err := cmp.Or(m.check(), within("speed", revs, 0, fastest, "rev/min")); err != nil {
		return 0, err
	}
	w := 2 * math.Pi * revs / 60
	return m.Size / 1000 * w * w, nil
}

// SpeedAt gives the speed at which the pull of a moment, 0 to 1e9 kg mm, reaches a force, 0 to 1e9
// N, in rev/min. It undoes Force. False for a moment of nought, which never does, or so small that
// the speed would be infinite. An error names the figure out of range.
func SpeedAt(m Moment, force float64) (revs float64, ok bool, err error) {
	if err := cmp.Or(m.check(), within("force", force, 0, 1e9, "N")); err != nil {
		return 0, false, err
	}
	revs = 60 / (2 * math.Pi) * math.Sqrt(force*1000/m.Size)
	if m.Size == 0 || math.IsInf(revs, 0) {
		return 0, false, nil
	}
	return revs, true, nil
}

// UsualShare is the part of a lathe's weight above which a turning pull is worth a word: a
// twentieth. Common practice without a source; give your own.
const UsualShare = 0.05

// Weight gives the share, 1e-6 to 10, of a machine's weight, N, for its mass, 0.1 to 100,000 kg.
// An error names the figure out of range.
func Weight(kilograms, share float64) (float64, error) {
	if err := cmp.Or(within("mass of the machine", kilograms, 0.1, heaviest, "kg"), within("share of its weight", share, 1e-6, 10, "")); err != nil {
		return 0, err
	}
	return kilograms * G * share, nil
}

// Counterweight gives what balances a moment at a distance from the axis, 0.001 to 10,000 mm: the
// mass, kg, on the other side. An error names the figure out of range.
func Counterweight(m Moment, radius float64) (Mass, error) {
	if err := cmp.Or(m.check(), within("distance of the counterweight", radius, 1e-3, widest, "mm")); err != nil {
		return Mass{}, err
	}
	return Mass{m.Size / radius, radius, opposite(m.Angle)}, nil
}

// CounterRadius gives how far from the axis, mm, a weight that is there, 1e-6 to 100,000 kg, must
// sit to balance a moment, and on which side. Whether there is room so far out is not asked. An
// error names the figure out of range.
func CounterRadius(m Moment, kilograms float64) (Mass, error) {
	if err := cmp.Or(m.check(), within("mass of the counterweight", kilograms, 1e-6, heaviest, "kg")); err != nil {
		return Mass{}, err
	}
	return Mass{kilograms, m.Size / kilograms, opposite(m.Angle)}, nil
}

func opposite(angle float64) float64 { return math.Mod(angle+180, 360) }

// Disc gives the mass of a round disc or ring, kg: diameters and thickness in mm, 0.001 to 10,000,
// the bore 0 to under the outside; density 100 to 25,000 kg/m3. An error names the figure out of
// range.
func Disc(outside, bore, thickness, density float64) (float64, error) {
	err := cmp.Or(within("outside diameter", outside, 1e-3, widest, "mm"), within("thickness", thickness, 1e-3, widest, "mm"),
		within("density", density, 100, 25000, "kg/m3"))
	if err == nil && !(bore >= 0 && bore < outside) {
		err = fmt.Errorf("the bore must lie from 0 to under the outside, %v mm, not %v", outside, bore)
	}
	if err != nil {
		return 0, err
	}
	return math.Pi / 4 * (outside*outside - bore*bore) * thickness * density * 1e-9, nil
}

// Block gives the mass of a block, kg: its sides in mm, 0.001 to 10,000, density 100 to 25,000
// kg/m3. An error names the figure out of range.
func Block(long, wide, high, density float64) (float64, error) {
	for _, side := range []float64{long, wide, high} {
		if err := within("side", side, 1e-3, widest, "mm"); err != nil {
			return 0, err
		}
	}
	if err := within("density", density, 100, 25000, "kg/m3"); err != nil {
		return 0, err
	}
	return long * wide * high * density * 1e-9, nil
}

// Sway gives the speed of the common centre of mass round the axis, mm/s: e w, the figure by which
// ISO 21940-11 grades balance (from memory: G 6.3 is 6.3 mm/s). Kilograms, 1e-6 to 100,000, is all
// that turns; the speed is 0 to 100,000 rev/min. An error names the figure out of range.
func Sway(m Moment, kilograms, revs float64) (float64, error) {
	err := cmp.Or(m.check(), within("mass that turns", kilograms, 1e-6, heaviest, "kg"), within("speed", revs, 0, fastest, "rev/min"))
	if err != nil {
		return 0, err
	}
	return m.Size / kilograms * 2 * math.Pi * revs / 60, nil
}
