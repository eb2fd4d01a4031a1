package gear

import (
	"errors"
	"fmt"
	"math"
)

// Pins is a measurement over two pins or balls (of an internal wheel: between them).
type Pins struct {
	Pin     float64 // diameter, mm
	Measure float64 // mm
	Circle  float64 // diameter on which the pins' centres lie, mm
	Touches float64 // diameter at which a pin touches the flanks, mm
	On      bool    // it touches on the involute, between root and tip
	Proud   float64 // how far the pins stand out of the tips, mm
	Clear   float64 // gap between a pin and the root, mm
}

// StandardPins lists pin diameters of the trade in modules: outside 1.728, and 1.92 and 1.68 as
// alternates; inside 1.68 and 1.44. Machinery's Handbook, Van Keuren pins (from memory).
func StandardPins(internal bool) []float64 {
	if internal {
		return []float64{1.68, 1.44}
	}
	return []float64{1.728, 1.92, 1.68}
}

// BestPin is the diameter of the pin that touches on the circle d + 2xm, mm; where that lies
// within the base circle, on the base circle. The thinning plays no part. An error for what Check
// refuses, and where no pin so touches. It follows from the thickness of the tooth, as the
// measurement does.
func (w Wheel) BestPin() (float64, error) {
	w.Thinning = 0
	g, err := w.geometry()
	if err != nil {
		return 0, err
	}
	a := math.Acos(math.Min(1, g.db/(g.d+2*w.Shift*w.Module)))
	half := g.halfGap(float64(w.Teeth))
	// Along the base tangent plane the pin's centre lies tan(phi) from the base circle and its
	// contact tan(a), in base radii; the pin's size is set by halfGap. Newton's steps, from the
	// spur wheel's answer, on tan(phi) - c2 (inv(phi) +- half) = tan(a).
	c := math.Cos(g.bb)
	phi := math.Tan(a) + g.side*half
	for range 30 {
		t := math.Tan(phi)
		phi -= (t - c*c*(Involute(phi)+g.side*half) - math.Tan(a)) / (1 + t*t - c*c*t*t)
	}
	pin := g.side * (Involute(phi) + g.side*half) * g.db * c
	if !(phi > 0 && phi < math.Pi/2 && pin > 0) {
		return 0, errors.New("no pin touches these teeth in the middle of their depth")
	}
	return pin, nil
}

// halfGap is the angle from the middle of a space to where its flank, drawn on, meets the base
// circle, in radians; of an outside wheel it is counted against the space.
func (g geometry) halfGap(z float64) float64 {
	return math.Pi/z - g.st/g.d - g.side*Involute(g.at)
}

// OverPins gives the measurement, mm, with a pin of 0.5 to 4 modules.
//
// With an odd number of teeth the pins do not stand opposite each other: the measurement is then 2
// r cos(90/z) + pin. Of a helical wheel with an odd number of teeth that holds for balls, or for
// pins between flat anvils that are narrower than the pitch (from memory: gear handbooks). Errors:
// what Check refuses, a pin out of that range, and one that finds no rest between the teeth.
//
// Law: of an outside wheel it falls, of an internal one it grows, as the teeth are thinned.
func (w Wheel) OverPins(pin float64) (Pins, error) {
	g, err := w.geometry()
	if err != nil {
		return Pins{}, err
	}
	if err := within("a pin of", pin, 0.5*w.Module, 4*w.Module, " mm"); err != nil {
		return Pins{}, err
	}
	z := float64(w.Teeth)
	x := g.side * (pin/(g.db*math.Cos(g.bb)) - g.halfGap(z))
	phi, err := AngleOf(x)
	if err != nil {
		return Pins{}, fmt.Errorf("a pin of %v mm finds no rest between these teeth", pin)
	}
	p := Pins{Pin: pin, Circle: g.db / math.Cos(phi)}
	p.Measure = p.Circle*apart(w.Teeth) + g.side*pin
	t := math.Tan(phi) - g.side*pin*math.Cos(g.bb)/g.db
	p.Touches = g.db * math.Hypot(1, math.Max(0, t))
	p.Proud = g.side * (p.Circle + g.side*pin - g.tipDiameter()) / 2
	p.Clear = g.side * (p.Circle - g.side*pin - g.rootDiameter()) / 2
	tip := g.tipDiameter()
	p.On = t >= 0 && p.Clear > 0 && g.side*(tip-p.Touches) > 0
	return p, nil
}

// apart is how far apart two pins stand, of the diameter of their circle.
func apart(z int) float64 {
	if z%2 == 0 {
		return 1
	}
	return math.Cos(math.Pi / (2 * float64(z)))
}

// PinLimits gives the least and the greatest measurement, mm, for teeth that may be thinned from
// least to most, mm, in place of the wheel's own thinning. Errors as of OverPins, and where least
// is above most; the figures then mean nothing.
func (w Wheel) PinLimits(pin, least, most float64) (small, large float64, err error) {
	if !(least <= most) {
		return 0, 0, fmt.Errorf("thinnings from %v to %v mm: they must rise, from 0 up", least, most)
	}
	w.Thinning = least
	a, err := w.OverPins(pin)
	if err != nil {
		return 0, 0, err
	}
	w.Thinning = most
	b, err := w.OverPins(pin)
	return math.Min(a.Measure, b.Measure), math.Max(a.Measure, b.Measure), err
}

// ThinningByPins is how much thinner than the unthinned wheel a tooth is, normal to it on the
// reference circle, by a measurement over pins, mm; below 0 it is still too thick. The measurement
// is within two modules of that of the unthinned wheel, and the pins' centres not inside the base
// circle; others are an error, as is what OverPins refuses.
//
// Law: a wheel so thinned measures what was measured.
func (w Wheel) ThinningByPins(pin, measured float64) (float64, error) {
	w.Thinning = 0
	g, err := w.geometry()
	if err != nil {
		return 0, err
	}
	full, err := w.OverPins(pin)
	if err != nil {
		return 0, err
	}
	circle := (measured - g.side*pin) / apart(w.Teeth)
	if err := within("a measurement of", measured, math.Max(full.Measure-2*w.Module, g.db*apart(w.Teeth)+g.side*pin),
		full.Measure+2*w.Module, " mm"); err != nil {
		return 0, err
	}
	phi := math.Acos(math.Min(1, g.db/circle))
	half := pin/(g.db*math.Cos(g.bb)) - g.side*Involute(phi)
	// halfGap = pi/z - st/d -+ inv at is half: solved for the thickness.
	st := g.d * (math.Pi/float64(w.Teeth) - half - g.side*Involute(g.at))
	return g.sn - st*math.Cos(g.b), nil
}
