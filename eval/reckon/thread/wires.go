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

// Angle gives the angle between the flanks, degrees.
func Angle(t drawing.Thread) (degrees float64, ok bool) {
	a := angle(t.Series)
	return a, a > 0
}

// Wires are wires for measuring the pitch diameter, mm.
type Wires struct {
	Best        float64 // touches the flanks at the pitch diameter: P/(2 cos half)
	Least, Most float64 // wires that touch the flanks at all: over the crest, not down to the root
}

// WiresFor gives the wires for a thread. The least stands level with the crests of the full
// profile; the most touches the flanks where the crest cuts them.
func WiresFor(t drawing.Thread) (Wires, error) {
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

// Over gives the size over three wires for a pitch diameter: M = d2 + w (1 + 1/sin half) - P/(2 tan half). For 60
// degrees d2 + 3 w - 0.866025 P, for 55 d2 + 3.16568 w - 0.960491 P. slope is what
// the lead of the thread adds, w/2 tan^2(lead) cos(half)/tan(half), which plain tables leave out; it is not in
// over. Sources: handbooks, from memory; the slope from memory too.
func Over(t drawing.Thread, effective, wire float64) (over, slope float64, err error) {
	w, err := WiresFor(t)
	switch {
	case err != nil:
		return 0, 0, err
	case !(effective > 0 && effective <= 2*t.Diameter):
		return 0, 0, fmt.Errorf("a pitch diameter of %v mm: over 0 to %v mm is wanted", effective, 2*t.Diameter)
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

// EffectiveFrom is the other way about: the pitch diameter from a size over three wires.
func EffectiveFrom(t drawing.Thread, over, wire float64) (effective float64, err error) {
	k, c := overFactors(t)
	effective = over - k*wire + c
	_, _, err = Over(t, effective, wire)
	return effective, err
}
