package thread

import (
	"fmt"
	"math"
	"strings"

	"fettle/schema/drawing"
)

// StressArea gives the area that a screw's strength is reckoned with, mm2: that of a circle of the
// mean of pitch and root diameter. Source: ISO 898-1, from memory; for Unified threads ASME B1.1
// has the diameter less 0.9743 P, from memory, and other forms are reckoned as metric ones are.
// False for a series without a profile here, and where diameter and pitch are not known, out of
// range or leave no core.
func StressArea(t drawing.Thread) (mm2 float64, ok bool) {
	effective, _, root, ok := Diameters(t)
	if !ok || root <= 0 {
		return 0, false
	}
	d := (effective + root) / 2
	if strings.HasPrefix(t.Series, "UN") {
		d = t.Diameter - 0.9743*t.Pitch
	}
	return math.Pi / 4 * d * d, true
}

// Tensile strengths that are taken, MPa.
const (
	weakest   = 0.01
	strongest = 1e4
)

// Breaks gives the force at which a screw breaks, N, from its tensile strength, above 0 to 10,000
// MPa: by its StressArea. False for other strengths, and for a thread that has no such area.
func Breaks(t drawing.Thread, strength float64) (force float64, ok bool) {
	a, ok := StressArea(t)
	if !ok || !(strength > 0 && strength <= strongest) {
		return 0, false
	}
	return a * strength, true
}

// Strips gives the forces at which a length of thread, 0 to 10,000 mm, strips, N: the nut's at the
// tips of the screw, the screw's at the tips of the nut. Tensile strengths 0.01 to 10,000 MPa;
// shear is taken as 0.577 of them (von Mises, from memory). Basic sizes, with the hole drilled or
// bored to hole mm (0: basic; else from a hundredth of the diameter to under it): An = pi d L (1/2
// + tan(half)(d - d2)/P), As = pi D1 L (1/2 + tan(half)(d2 - D1)/P). Source: FED-STD-H28, shear
// areas, from memory. Loose limits make it up to a fifth less. An error names the figure out of
// range or not known.
func Strips(t drawing.Thread, length, hole, screwStrength, nutStrength float64) (screw, nut float64, err error) {
	effective, minor, _, ok := Diameters(t)
	if err := outside(t); err != nil {
		return 0, 0, err
	}
	if !ok {
		return 0, 0, fmt.Errorf("%s: its form, diameter and pitch must be known", t)
	}
	if hole != 0 {
		minor = hole
	}
	switch {
	case !(length >= 0 && length <= 1e4):
		return 0, 0, fmt.Errorf("a length of %v mm: 0 to 10000 is wanted", length)
	case !(minor >= t.Diameter/100 && minor < t.Diameter):
		return 0, 0, fmt.Errorf("a hole of %v mm leaves no thread of %s", hole, t)
	case !(screwStrength >= weakest && screwStrength <= strongest && nutStrength >= weakest && nutStrength <= strongest):
		return 0, 0, fmt.Errorf("strengths of %v and %v MPa: %v to %v are wanted", screwStrength, nutStrength, weakest, strongest)
	}
	tan := math.Tan(angle(t.Series) / 2 * math.Pi / 180)
	nutArea := math.Pi * t.Diameter * length * (0.5 + tan*(t.Diameter-effective)/t.Pitch)
	screwArea := math.Pi * minor * length * math.Max(0.5+tan*(effective-minor)/t.Pitch, 0)
	return 0.577 * screwStrength * screwArea, 0.577 * nutStrength * nutArea, nil
}

// LengthToBreak gives the length of thread with which the screw breaks before either thread
// strips, mm, by Breaks and Strips. Errors as of Strips, and where the hole leaves no thread that
// holds.
func LengthToBreak(t drawing.Thread, hole, screwStrength, nutStrength float64) (mm float64, err error) {
	screw, nut, err := Strips(t, 1, hole, screwStrength, nutStrength)
	if err != nil {
		return 0, err
	}
	breaks, ok := Breaks(t, screwStrength)
	if !ok || math.Min(screw, nut) <= 0 {
		return 0, fmt.Errorf("a hole of %v mm leaves no thread that holds", hole)
	}
	return breaks / math.Min(screw, nut), nil
}

// Room is what a blind hole needs beyond the full thread, besides the tap's incomplete threads.
type Room struct {
	Pitches float64 // run-out: 1 for a slow tap by hand, 1 to 3 where a machine overruns
	Chips   bool    // a straight-fluted tap pushes its chips ahead: one diameter more
	Centre  bool    // a tap up to 3/8 in with an outside centre: half a diameter more
}

// BlindWith gives how deep the full diameter of a blind hole must be, mm: full thread, 0 to 10,000
// mm, lead and room, each 0 to 50 pitches. Source: a cutting tool supplier's page on the least
// depth for tapping. An error names the figures, or says that diameter and pitch must be known.
func BlindWith(t drawing.Thread, fullThread, leadPitches float64, r Room) (depth float64, err error) {
	if err := outside(t); err != nil {
		return 0, err
	}
	if _, ok := known(t); !ok {
		return 0, fmt.Errorf("%s: its diameter and pitch must be known", t)
	}
	if !(fullThread >= 0 && fullThread <= 1e4 && leadPitches >= 0 && leadPitches <= 50 && r.Pitches >= 0 && r.Pitches <= 50) {
		return 0, fmt.Errorf("full thread %v mm, lead %v and run-out %v pitches: 0 to 10000 mm and 0 to 50 pitches are wanted", fullThread, leadPitches, r.Pitches)
	}
	depth = fullThread + (leadPitches+r.Pitches)*t.Pitch
	if r.Chips {
		depth += t.Diameter
	}
	if r.Centre {
		depth += t.Diameter / 2
	}
	return depth, nil
}
