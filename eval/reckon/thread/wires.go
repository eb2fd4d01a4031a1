package thread

import (
	"fmt"
	"math"

	"fettle/schema/drawing"
)

// angle of a series' form, degrees between the flanks; 0 where it is not known.
func angle(series string) float64 {
	switch series {
	case "M", "UN", "UNC", "UNF", "UNEF":
		return 60
	case "BSW", "BSF", "ME", "BSB", "BSP":
		return 55
	case "BA":
		return 47.5
	case "Tr":
		return 30
	}
	return 0
}

// Angle gives the angle between the flanks, degrees, by the profile's standard; false for a series
// without one here.
func Angle(t drawing.Thread) (degrees float64, ok bool) {
	a := angle(t.Series)
	return a, a > 0
}

// Wires are wires for measuring the pitch diameter, mm.
type Wires struct {
	Best        float64 // touches the flanks at the pitch diameter: P/(2 cos half)
	Least, Most float64 // wires that touch the flanks at all: over the crest, not down to the root
}

// WiresFor gives the wires for a thread, mm, by geometry. The least stands level with the crests
// of the full profile; the most touches the flanks where the crest cuts them. An error where form,
// diameter or pitch is not known or out of range.
func WiresFor(t drawing.Thread) (Wires, error) {
	if err := outside(t); err != nil {
		return Wires{}, err
	}
	p, ok := known(t)
	a, half := angle(t.Series), 0.0
	if !ok || a == 0 {
		return Wires{}, fmt.Errorf("%s has no wires here: its form, diameter and pitch must be known", t)
	}
	half = a / 2 * math.Pi / 180
	w := Wires{Best: t.Pitch / (2 * math.Cos(half))}
	// a wire touches the flanks a radius times sin half outside of its middle; its middle stands
	// w/(2 sin half) - P/(4 tan half) over the pitch line
	crest := p.Effective * t.Pitch / 2
	w.Least = (crest + t.Pitch/(4*math.Tan(half))) / (0.5/math.Sin(half) + 0.5)
	w.Most = (crest + t.Pitch/(4*math.Tan(half))) / (0.5/math.Sin(half) - 0.5*math.Sin(half))
	return w, nil
}

// Over gives the size over three wires for a pitch diameter, mm: M = d2 + w (1 + 1/sin half) -
// P/(2 tan half). For 60 degrees d2 + 3 w - 0.866025 P, for 55 d2 + 3.16568 w - 0.960491 P. slope
// is what the lead of the thread adds, w/2 tan^2(lead) cos(half)/tan(half), which plain tables
// leave out; it is not in over. Sources: handbooks, from memory; the slope from memory too. The
// pitch diameter runs from a hundredth of the major one to twice it; wires must serve. An error
// names what does not.
func Over(t drawing.Thread, effective, wire float64) (over, slope float64, err error) {
	w, err := WiresFor(t)
	switch {
	case err != nil:
		return 0, 0, err
	case !(effective >= t.Diameter/100 && effective <= 2*t.Diameter):
		return 0, 0, fmt.Errorf("a pitch diameter of %v mm: from %v to %v mm is wanted", effective, t.Diameter/100, 2*t.Diameter)
	case !(wire >= w.Least-1e-4 && wire <= w.Most+1e-4):
		return 0, 0, fmt.Errorf("wires of %v mm do not serve: they must be %.3f to %.3f mm to stand above the crests and touch the flanks, %.3f mm at best", wire, w.Least, w.Most, w.Best)
	}
	k, c := overFactors(t)
	half := angle(t.Series) / 2 * math.Pi / 180
	lead := t.Pitch / (math.Pi * effective)
	return effective + k*wire - c, wire / 2 * lead * lead * math.Cos(half) / math.Tan(half), nil
}

func overFactors(t drawing.Thread) (wire, less float64) {
	half := angle(t.Series) / 2 * math.Pi / 180
	return 1 + 1/math.Sin(half), t.Pitch / (2 * math.Tan(half))
}

// EffectiveFrom is the other way about: the pitch diameter, mm, from a size over three wires, mm.
// Errors as of Over.
func EffectiveFrom(t drawing.Thread, over, wire float64) (effective float64, err error) {
	k, c := overFactors(t)
	effective = over - k*wire + c
	if _, _, err = Over(t, effective, wire); err != nil {
		return 0, err
	}
	return effective, nil
}
