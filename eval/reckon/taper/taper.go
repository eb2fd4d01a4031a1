// Package taper is the arithmetic of cones and angles: how a lathe is set to turn a taper, sine bars
// and the slip gauges under them, and measuring over rollers and balls.
//
// Lengths are millimetres, angles degrees at the edges and radians inside. A taper is said on
// diameter, per mm of length; angles of cones are included angles unless a name says half.
//
// Where a comment names no source, a formula is the definition of its words or plain trigonometry.
//
// Where a function gives an error, it names the figure that is out of range or what does not go
// together; what is not a number is out of every range.
package taper

import (
	"fmt"
	"math"
)

// The ranges taken.
const (
	LeastRatio  = 1e-5 // mm on diameter for each mm of length
	MostRatio   = 20
	MostLength  = 1e5 // mm
	leastLength = 1e-3
)

// Taper is a taper on diameter. The zero Taper is none.
type Taper struct{ ratio float64 }

// in holds a figure to its range, both ends in; what is no number is in none.
func in(name string, x, least, most float64, unit string) error {
	if !(x >= least && x <= most) {
		return fmt.Errorf("%s: %v%s is not from %v to %v%s", name, x, unit, least, most, unit)
	}
	return nil
}

func length(name string, x float64) error { return in(name, x, leastLength, MostLength, " mm") }

func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// OnDiameter is a taper of so many mm on diameter for each mm of length: 0.05 is 1:20. From
// LeastRatio to MostRatio. With the error for others the taper means nothing.
func OnDiameter(ratio float64) (Taper, error) {
	return Taper{ratio}, in("a taper on diameter", ratio, LeastRatio, MostRatio, " for each mm")
}

// PerFoot is a taper in inches on diameter for each foot of length, in the range of OnDiameter
// times 12. With the error for others the taper means nothing.
func PerFoot(inches float64) (Taper, error) { return OnDiameter(inches / 12) }

// OneIn is a taper of one on diameter in n of length: 1:n, n from 0.05 to 100,000; an error for
// others.
func OneIn(n float64) (Taper, error) {
	if err := in("1 in", n, 1/MostRatio, 1/LeastRatio, ""); err != nil {
		return Taper{}, err
	}
	return OnDiameter(1 / n)
}

// Included is a cone of an included angle, 0.001 to 168 degrees; an error for others. The ratio is
// 2 tan(angle/2).
func Included(deg float64) (Taper, error) {
	if err := in("an included angle", deg, 1e-3, 168, " degrees"); err != nil {
		return Taper{}, err
	}
	return OnDiameter(2 * math.Tan(deg/2*math.Pi/180))
}

// Ends is the cone between two diameters, a length apart along the axis, mm. Which is the larger
// does not matter; alike they make no taper. Its angle from two measurements is exact: halving
// atan((D-d)/l), as is sometimes done, is not. Diameters are 0 to MostLength, the length 0.001 to
// MostLength; an error names the figure out of range, or the taper that is.
func Ends(one, other, apart float64) (Taper, error) {
	err := first(in("a diameter", one, 0, MostLength, " mm"), in("a diameter", other, 0, MostLength, " mm"), length("length", apart))
	if err != nil {
		return Taper{}, err
	}
	return OnDiameter(math.Abs(one-other) / apart)
}

// Ratio gives the taper on diameter, mm for each mm of length; 0 where there is no taper.
func (t Taper) Ratio() float64 { return t.ratio }

// PerFoot gives inches on diameter for each foot; 0 where there is no taper.
func (t Taper) PerFoot() float64 { return 12 * t.ratio }

// OneIn gives n of 1:n; 0 where there is no taper.
func (t Taper) OneIn() float64 {
	if t.ratio == 0 {
		return 0
	}
	return 1 / t.ratio
}

// Half gives half the included angle, degrees: what the top slide is set to from the lathe's axis.
// A taper of T inches to the foot has T = 24 tan(half).
func (t Taper) Half() float64 { return math.Atan(t.ratio/2) * 180 / math.Pi }

// Included gives the included angle, degrees.
func (t Taper) Included() float64 { return 2 * t.Half() }

// Across gives what the diameter changes over a length, both mm. A bare formula, which refuses
// nothing.
func (t Taper) Across(length float64) float64 { return t.ratio * length }

// Zero says what the scale of a top slide counts from.
type Zero uint8

const (
	FromAxis Zero = iota // 0 where the slide moves along the lathe's axis
	FromFace             // 0 where it moves square to the axis
)

// Slide gives what the scale of the top slide reads, degrees: half the included angle on a scale that
// has its nought along the axis, 90 less that on one that has it square to the axis (Jones, Turning
// and Boring, on angles given from axis or face).
func (t Taper) Slide(zero Zero) float64 {
	if zero == FromFace {
		return 90 - t.Half()
	}
	return t.Half()
}

// SlideWay gives how far the top slide moves to turn a cone of a length along the axis, mm: the
// length over the cosine of half the angle. A slide with less travel cannot turn it in one go.
// With the error for a length outside 0.001 to MostLength it means nothing.
func (t Taper) SlideWay(along float64) (float64, error) {
	return along / math.Cos(t.half()), length("length of the cone", along)
}

// SlideReach gives the longest cone along the axis, mm, that a top slide of a travel turns in one
// go. With the error for a travel outside 0.001 to MostLength it means nothing.
func (t Taper) SlideReach(travel float64) (float64, error) {
	return travel * math.Cos(t.half()), length("travel of the top slide", travel)
}

func (t Taper) half() float64 { return math.Atan(t.ratio / 2) }

// SetOver gives how far the tailstock is set over for work of a whole length between centres, mm:
// half the taper times the whole length, not the length of the taper. That is the trade's rule
// (Machinery Repairman; Rose). The work's own length, and not its shadow along the bed, lies
// between the centres: exactly it is the whole length times the sine of half the angle, which is
// less by a share of taper²/8, 0.03 % at 1:20; centre holes that no longer bear square cost more
// than that. With the error for a length outside 0.001 to MostLength mm both mean nothing.
func (t Taper) SetOver(whole float64) (rule, exact float64, err error) {
	return t.ratio / 2 * whole, whole * math.Sin(t.half()), length("whole length between centres", whole)
}

// SetOverReach gives the steepest taper that a tailstock which can be set over so far turns on
// work of a whole length, by the trade's rule. Both are mm, 0.001 to MostLength; an error names
// the one that is not, or the taper that is out of range.
func SetOverReach(most, whole float64) (Taper, error) {
	if err := first(length("set-over", most), length("whole length between centres", whole)); err != nil {
		return Taper{}, err
	}
	return OnDiameter(2 * most / whole)
}
