package taper

import "math"

// Bar is a sine bar or sine plate. Centres are 0.001 to MostLength mm.
type Bar struct {
	Centres float64 // middle of one roller to middle of the other, mm
	Error   float64 // of Centres either way, mm; 0: not known
}

func (b Bar) check() error {
	return first(length("centres of the sine bar", b.Centres), in("error of the centres", b.Error, 0, b.Centres, " mm"))
}

// MostSine is the steepest angle that a sine bar is asked for here, degrees. Above 45 an error of the
// stack tells ever more in the angle (common practice: turn the work over and set the complement).
const MostSine = 89

// Stack gives the height of the stack under one roller, mm, both rollers of one diameter: centres
// times the sine of the angle in degrees, from 0. An error names the figure out of range, up to
// MostSine.
func (b Bar) Stack(deg float64) (float64, error) {
	if err := first(b.check(), in("angle", deg, 0, MostSine, " degrees")); err != nil {
		return 0, err
	}
	return b.Centres * math.Sin(deg*math.Pi/180), nil
}

// Angle gives the angle in degrees that a stack makes, mm: the arc whose sine is stack over
// centres. An error names the figure out of range: no stack for more than MostSine.
func (b Bar) Angle(stack float64) (float64, error) {
	if err := b.check(); err != nil {
		return 0, err
	}
	most := b.Centres * math.Sin(MostSine*math.Pi/180)
	if err := in("stack", stack, 0, most, " mm"); err != nil {
		return 0, err
	}
	return math.Asin(stack/b.Centres) * 180 / math.Pi, nil
}

// Off gives by how many degrees either way the angle may be off at worst, for a stack that is off
// by so much, mm, and the bar's own error of its centres: dh/(L cos) + dL tan/L, to first order.
// Both errors are 0 to the centres, mm; an error names the figure out of range.
func (b Bar) Off(deg, stackError float64) (float64, error) {
	err := first(b.check(), in("angle", deg, 0, MostSine, " degrees"), in("error of the stack", stackError, 0, b.Centres, " mm"))
	if err != nil {
		return 0, err
	}
	rad := deg * math.Pi / 180
	return (stackError/math.Cos(rad) + b.Error*math.Tan(rad)) / b.Centres * 180 / math.Pi, nil
}
