// Package press is the arithmetic of press and shrink fits: a shaft, solid or hollow, in a hub
// of another metal that is smaller than it. It follows Lamé's thick rings (see Ring).
//
// Lengths are millimetres, the interference is DIAMETRAL (shaft diameter less bore diameter,
// never radial), stresses and pressures MPa, forces N, torques N mm.
//
// What goes in as a band comes out as a band: limits of size, the spread of a metal's
// stiffness, friction. Each answer rises or falls with each figure that goes in, so that its
// bounds lie at bounds of the figures, and the bands below are exact for the theory.
//
// The theory takes hub and shaft as equally long, round, even along their length and elastic.
// A shaft that stands out of its hub raises the pressure at the ends; a hub with a web, a
// keyway or a flange is stiffer in places; beyond yield the pressure is less than given.
//
// Where a function gives an error, it names the figure that is out of range or what does not go
// together; what is not a number is out of every range.
package press

import (
	"cmp"
	"fmt"
	"math"

	"fettle/schema/handbook"
)

// Fit is a hub over a shaft, at 20 degrees unless the interference says otherwise. Diameters are
// above 0 to 10,000 mm (the outside to 100,000) and differ by a thousandth at least; the
// interference is within a twentieth of the diameter either way, the smoothing 0 to 2 mm, the
// friction 0 to 2, the length 0 to 10,000.
type Fit struct {
	Diameter     float64       // common, mm
	Outside      float64       // of the hub, mm
	Bore         float64       // of the shaft, mm; 0 solid
	Length       float64       // pressed, mm; 0 not known: no force or torque
	Interference handbook.Band // diametral, mm; below 0 it is play
	Smoothing    handbook.Band // lost to roughness, diametral, mm; see Smoothing. Zero: none counted
	Hub, Shaft   handbook.Elastic
	Friction     handbook.Band // zero not known: no force or torque
}

// Answer is what comes of it. Pressures are MPa, interferences diametral, mm.
type Answer struct {
	Interference handbook.Band // that works: after smoothing, never below 0
	Pressure     handbook.Band
	Hub, Shaft   Stress
	Force        handbook.Band // to press in or out at full length, N
	Torque       handbook.Band // at which it slips, N mm
	Closes       handbook.Band // bore of the shaft gets smaller, diametral, mm; 0 when solid
	Grows        handbook.Band // outside of the hub gets larger, diametral, mm
}

// Stress is how hard a part is worked at its worst place. Share is a plain number.
type Stress struct {
	Hoop  handbook.Band // at that place, MPa; push is below 0
	Worst handbook.Band // largest difference of two principal stresses (Tresca), or the largest pull where the metal breaks without yielding, MPa
	Share handbook.Band // of what the metal bears: Worst over yield or strength; zero where neither is known
	Holds Truth
}

// Truth is an answer that a band may leave open.
type Truth uint8

const (
	Open Truth = iota
	Yes        // stays below yield over the whole band
	No         // beyond yield, or broken, over the whole band
)

// Limits gives the diametral interference of a pair from its limits of size, mm, above 0 to
// 10,000: least is the smallest shaft in the largest hole. An error names a pair of limits that
// does not rise or lies outside.
func Limits(holeLo, holeHi, shaftLo, shaftHi float64) (handbook.Band, error) {
	for _, p := range [][2]float64{{holeLo, holeHi}, {shaftLo, shaftHi}} {
		if !(p[0] > 0 && p[0] <= p[1] && p[1] <= largest) {
			return handbook.Band{}, fmt.Errorf("limits of size must rise and lie over 0 up to %v mm, not %v to %v", float64(largest), p[0], p[1])
		}
	}
	return handbook.Band{Lo: shaftLo - holeHi, Hi: shaftHi - holeLo}, nil
}

// SmoothingSource says where Smoothing is from.
const SmoothingSource = "from memory: DIN 7190-1: 0.8 (Rz of the shaft + Rz of the bore) is lost, Rz about 4 to 7 times Ra"

// Smoothing gives what of a measured interference is lost when the peaks of both faces are pressed
// flat, diametral, mm: 0.8 (Rz + Rz), with Rz in micrometres, 0 to 1000 (SmoothingSource). An
// error names the Rz outside.
func Smoothing(shaftRz, boreRz handbook.Band) (handbook.Band, error) {
	for _, r := range []handbook.Band{shaftRz, boreRz} {
		if !(r.Lo >= 0 && r.Lo <= r.Hi && r.Hi <= 1000) {
			return handbook.Band{}, fmt.Errorf("the roughness Rz must lie from 0 to 1000 micrometres, not %v to %v", r.Lo, r.Hi)
		}
	}
	return handbook.Band{Lo: 0.8e-3 * (shaftRz.Lo + boreRz.Lo), Hi: 0.8e-3 * (shaftRz.Hi + boreRz.Hi)}, nil
}

// RzOfRa gives the band of Rz for a roughness Ra, both in micrometres (SmoothingSource). A bare
// formula; Smoothing asks for the range.
func RzOfRa(ra float64) handbook.Band { return handbook.Band{Lo: 4 * ra, Hi: 7 * ra} }

const largest = 10000 // mm

func (f Fit) check() error {
	var bad []error
	say := func(ok bool, form string, in ...any) {
		if !ok {
			bad = append(bad, fmt.Errorf(form, in...))
		}
	}
	say(f.Diameter > 0 && f.Diameter <= largest, "the common diameter must lie over 0 up to %d mm, not %v", largest, f.Diameter)
	say(f.Outside >= f.Diameter*1.001 && f.Outside <= 10*largest, "the outside of the hub must be larger than the common diameter, %v mm, by a thousandth at least, not %v", f.Diameter, f.Outside)
	say(f.Bore >= 0 && f.Bore <= f.Diameter*0.999, "the bore of the shaft must lie from 0 to under the common diameter, %v mm, by a thousandth at least, not %v", f.Diameter, f.Bore)
	say(f.Length >= 0 && f.Length <= largest, "the length must lie over 0 up to %d mm, not %v", largest, f.Length)
	i := f.Interference
	say(i.Lo <= i.Hi && math.Abs(i.Lo) <= f.Diameter/20 && math.Abs(i.Hi) <= f.Diameter/20, "the interference on diameter must lie within a twentieth of it, not %v to %v mm", i.Lo, i.Hi)
	say(f.Smoothing.Lo >= 0 && f.Smoothing.Lo <= f.Smoothing.Hi && f.Smoothing.Hi <= 2, "the interference lost to roughness must lie from 0 to 2 mm, not %v to %v", f.Smoothing.Lo, f.Smoothing.Hi)
	say(f.Friction.Lo >= 0 && f.Friction.Lo <= f.Friction.Hi && f.Friction.Hi <= 2, "friction must lie from 0 to 2, not %v to %v", f.Friction.Lo, f.Friction.Hi)
	return cmp.Or(append(bad, checkMetal("hub", f.Hub), checkMetal("shaft", f.Shaft))...)
}

func checkMetal(of string, m handbook.Elastic) error {
	y, p := m.Young, m.Poisson
	switch {
	case !(y.Lo >= 1 && y.Lo <= y.Hi && y.Hi <= 2e6):
		return fmt.Errorf("the stiffness of the %s must lie from 1 to 2,000,000 MPa, not %v to %v", of, y.Lo, y.Hi)
	case !(p.Lo >= 0 && p.Lo <= p.Hi && p.Hi < 0.5):
		return fmt.Errorf("the Poisson's ratio of the %s must lie from 0 to under 0.5, not %v to %v", of, p.Lo, p.Hi)
	case !(m.Yield.Lo >= 0 && m.Yield.Lo <= m.Yield.Hi && m.Yield.Hi <= 1e5 && m.Breaks.Lo >= 0 && m.Breaks.Lo <= m.Breaks.Hi && m.Breaks.Hi <= 1e5):
		return fmt.Errorf("the strength of the %s must lie from 0 to 100,000 MPa, not %v to %v, or %v to %v where it breaks", of,
			m.Yield.Lo, m.Yield.Hi, m.Breaks.Lo, m.Breaks.Hi)
	}
	return nil
}

// Work works a fit out by Lamé's thick rings. Where there is no interference left the pressure is
// 0 and so is all that follows from it. An error names the figure of the fit, or the stiffness (1
// to 2,000,000 MPa), Poisson's ratio (0 to under 0.5) or strength (0, not known, to 100,000 MPa)
// of a metal, that is out of range. A strength below 0.001 MPa is taken as not known. Hub and
// shaft are open where it is not known.
func Work(f Fit) (Answer, error) {
	if err := f.check(); err != nil {
		return Answer{}, err
	}
	var a Answer
	a.Interference = handbook.Band{Lo: math.Max(0, f.Interference.Lo-f.Smoothing.Hi), Hi: math.Max(0, f.Interference.Hi-f.Smoothing.Lo)}
	a.Pressure = handbook.Band{Lo: f.pressure(a.Interference.Lo, soft, stiff, soft, soft), Hi: f.pressure(a.Interference.Hi, stiff, soft, stiff, stiff)}
	a.Hub, a.Shaft = f.hub(a.Pressure), f.shaft(a.Pressure)
	around := math.Pi * f.Diameter * f.Length
	a.Force = handbook.Band{Lo: f.Friction.Lo * around * a.Pressure.Lo, Hi: f.Friction.Hi * around * a.Pressure.Hi}
	a.Torque = a.Force.Times(f.Diameter / 2)
	a.Closes, a.Grows = f.closes(a.Interference), f.grows(a.Interference)
	return a, nil
}

// end picks a bound of a band.
type end bool

const (
	soft  end = false // the lower bound
	stiff end = true
)

func (e end) of(b handbook.Band) float64 {
	if e == stiff {
		return b.Hi
	}
	return b.Lo
}

// pressure takes each figure at a bound. Pressure rises with either stiffness and with
// Poisson's ratio of the shaft, and falls with that of the hub.
func (f Fit) pressure(interference float64, hub, hubPoisson, shaft, shaftPoisson end) float64 {
	return Pressure(f.Bore, f.Diameter, f.Outside, interference, hub.of(f.Hub.Young), hubPoisson.of(f.Hub.Poisson),
		shaft.of(f.Shaft.Young), shaftPoisson.of(f.Shaft.Poisson))
}

// closes: a softer shaft closes more although the pressure is less, since it takes a larger
// part of the interference. Its two stiffnesses are one: the same bound goes into both.
func (f Fit) closes(i handbook.Band) handbook.Band {
	at := func(i float64, hub, hubPoisson, shaft, shaftPoisson end) float64 {
		p := f.pressure(i, hub, hubPoisson, shaft, shaftPoisson)
		return -Ring{f.Bore, f.Diameter}.Growth(f.Bore, 0, p, 0, shaft.of(f.Shaft.Young), 0)
	}
	return handbook.Band{Lo: at(i.Lo, soft, stiff, stiff, soft) + 0, Hi: at(i.Hi, stiff, soft, soft, stiff) + 0}
}

// grows: the outside of the hub, the same the other way round.
func (f Fit) grows(i handbook.Band) handbook.Band {
	at := func(i float64, hub, hubPoisson, shaft, shaftPoisson end) float64 {
		p := f.pressure(i, hub, hubPoisson, shaft, shaftPoisson)
		return Ring{f.Diameter, f.Outside}.Growth(f.Outside, p, 0, 0, hub.of(f.Hub.Young), 0)
	}
	return handbook.Band{Lo: at(i.Lo, stiff, stiff, soft, soft), Hi: at(i.Hi, soft, soft, stiff, stiff)}
}
