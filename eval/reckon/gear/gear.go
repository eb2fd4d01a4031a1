// Package gear is the arithmetic of toothed wheels: spur and helical, outside and inside, worm
// and wheel, straight bevel. It gives what is turned, what is cut, and what is measured after.
//
// Lengths are millimetres; angles are degrees in structs and radians within functions. The
// pitch is the module, normal to the tooth; a diametral pitch of P teeth to the inch is the
// module 25.4/P exactly (ISO 54 and the inch of ISO 31-1).
//
// All of it hangs on one figure, the thickness of the tooth on the reference circle, measured
// square to the tooth: pi/2 modules, and 2 x tan(a) more for a profile shift of x, less what is
// thinned away for backlash. Span, pins, chord, centre distance and backlash follow from it,
// and a span or pin measurement leads back to it. The formulas are those of ISO 21771 and of
// the gear handbooks; figures are float64 and, where nothing else is said, right to 1e-9 of
// their size. Angles found from an involute are right to 1e-12 rad (see AngleOf).
//
// Where a function gives an error, it names the figure that is out of range or what does not go
// together; what is not a number is out of every range.
package gear

import (
	"fmt"
	"math"
)

// Depth says how deep teeth are: multiples of the module, and a fixed clearance besides. Wheels
// take addenda of 0.3 to 2, whole depths from twice the addendum to 4, and 0 to 5 mm more.
type Depth struct {
	Name     string
	Addendum float64 // from the reference circle out
	Whole    float64 // tip to root
	Extra    float64 // mm more at the root
	Source   string
}

// Clearance is what is left between tip and root of a pair of a module in mm, in mm. A bare
// formula, which refuses nothing.
func (d Depth) Clearance(module float64) float64 {
	return (d.Whole-2*d.Addendum)*module + d.Extra
}

var (
	// Inch is the older full depth: the clearance is a twentieth of the circular pitch.
	Inch = Depth{"2.157", 1, 2 + math.Pi/20, 0,
		"full depth 2.157/DP: Machinery's Handbook, 14 1/2 degree full-depth teeth (formula from memory)"}
	// Metric is the full depth of ISO 53, and of the coarse 20 and 25 degree inch teeth.
	Metric = Depth{"2.25", 1, 2.25, 0,
		"full depth 2.25 m or 2.25/DP: ISO 53 basic rack; ANSI B6.1, 20 and 25 degrees (from memory)"}
	// Fine is some metric practice below module 1.25.
	Fine = Depth{"2.4", 1, 2.4, 0, "2.4 m below module 1.25: some metric practice"}
	// FineInch is for 20 DP and finer.
	FineInch = Depth{"2.2+0.002in", 1, 2.2, 0.002 * 25.4,
		"2.2/DP + 0.002 in: ANSI B6.7, 20 DP and finer (from memory)"}
	// Stub is the short tooth.
	Stub = Depth{"stub", 0.8, 1.8, 0, "stub teeth 1.8/DP: ANSI B6.1, 20 degree stub (from memory)"}
)

// Depths lists the systems of depth that may be asked for by name, each with its source.
func Depths() []Depth { return []Depth{Inch, Metric, Fine, FineInch, Stub} }

// UsualDepth is the depth where none is asked for: 2.157 modules at 14.5 degrees, 2.25 at any
// other angle. Both are in print for both, so an answer names the one it used. Whether the angle
// is one is not asked. Their sources stand in Inch and Metric.
func UsualDepth(pressure float64) Depth {
	if math.Abs(pressure-14.5) < 1e-9 {
		return Inch
	}
	return Metric
}

// or gives the depth that is meant at a pressure angle: the zero Depth is UsualDepth.
func (d Depth) or(pressure float64) Depth {
	if d.Addendum == 0 && d.Whole == 0 && d.Extra == 0 {
		return UsualDepth(pressure)
	}
	return d
}

func (d Depth) check() error {
	return first(within("an addendum of", d.Addendum, 0.3, 2, " modules"), within("a whole depth of", d.Whole, 2*d.Addendum, 4, " modules"),
		within("a clearance besides of", d.Extra, 0, 5, " mm"))
}

// Module gives the module, mm, of a diametral pitch, and the other way about: each is 25.4 by the
// other (ISO 54 and the inch of ISO 31-1). A bare formula: no number where the pitch is not above
// 0.
func Module(diametral float64) float64 {
	if !(diametral > 0) {
		return math.NaN()
	}
	return 25.4 / diametral
}

func rad(deg float64) float64 { return deg * math.Pi / 180 }
func deg(rad float64) float64 { return rad * 180 / math.Pi }

// within gives an error that names the figure and its range, both ends in, where it lies outside
// or is no number.
func within(what string, x, least, most float64, unit string) error {
	if x >= least && x <= most {
		return nil
	}
	return fmt.Errorf("%s %v%s: it must be from %v to %v%s", what, x, unit, least, most, unit)
}

func first(errs ...error) error {
	for _, e := range errs {
		if e != nil {
			return e
		}
	}
	return nil
}
