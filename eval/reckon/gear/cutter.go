package gear

import (
	"fmt"
	"math"
)

// Range is the wheels that a form cutter is for, fewest and most teeth; Most 0: on to the rack.
type Range struct{ Least, Most int }

// Has says whether a number of teeth is in it, both ends in.
func (r Range) Has(teeth int) bool { return teeth >= r.Least && (r.Most == 0 || teeth <= r.Most) }

// String writes "26 to 34", "12", or "135 to rack".
func (r Range) String() string {
	switch {
	case r.Most == 0:
		return fmt.Sprintf("%d to rack", r.Least)
	case r.Least == r.Most:
		return fmt.Sprint(r.Least)
	}
	return fmt.Sprintf("%d to %d", r.Least, r.Most)
}

// eight and fifteen are the ranges of the sets of eight and of fifteen cutters from the rack
// down. Old handbooks, from memory; the ends of the eight confirmed.
var (
	eight = []Range{{135, 0}, {55, 134}, {35, 54}, {26, 34}, {21, 25}, {17, 20}, {14, 16}, {12, 13}}

	fifteen = []Range{{135, 0}, {80, 134}, {55, 79}, {42, 54}, {35, 41}, {30, 34}, {26, 29}, {23, 25},
		{21, 22}, {19, 20}, {17, 18}, {15, 16}, {14, 14}, {13, 13}, {12, 12}}
)

// Series is a way to number a set of cutters.
type Series struct {
	Name      string
	FromSmall bool // number 1 is the cutter for 12 teeth, not the rack's
	Half      bool // fifteen cutters, by half numbers
}

// AllSeries lists the four ways. The same ranges carry opposite numbers in them, which is why a
// number alone chooses no cutter.
func AllSeries() []Series {
	return []Series{
		{"eight, from the rack", false, false}, {"eight, from the pinion", true, false},
		{"fifteen, from the rack", false, true}, {"fifteen, from the pinion", true, true},
	}
}

func (s Series) ranges() ([]Range, float64) {
	if s.Half {
		return fifteen, 0.5
	}
	return eight, 1
}

// Number gives the cutter of a series for a number of teeth, its number and its range (handbooks,
// see eight and fifteen); false below 12, where there is none.
func (s Series) Number(teeth int) (number float64, r Range, ok bool) {
	all, step := s.ranges()
	for i, r := range all {
		if r.Has(teeth) {
			return s.at(i, len(all), step), r, true
		}
	}
	return 0, Range{}, false
}

// Range gives what a number of a series stands for; false where the series has no such number.
func (s Series) Range(number float64) (Range, bool) {
	all, step := s.ranges()
	for i, r := range all {
		if s.at(i, len(all), step) == number {
			return r, true
		}
	}
	return Range{}, false
}

// at is the number of the cutter that stands at a place, counted from the rack.
func (s Series) at(i, n int, step float64) float64 {
	if s.FromSmall {
		i = n - 1 - i
	}
	return 1 + float64(i)*step
}

// Whole rounds a virtual number of teeth to the nearest whole one, which ranges are made of; half
// a tooth goes up. Beyond a million it is a rack: a million. What is no number has no teeth: 0.
func Whole(virtual float64) int {
	switch {
	case !(virtual > -1e6):
		return 0
	case virtual >= 1e6:
		return 1e6
	}
	return int(math.Floor(virtual + 0.5))
}

// EqualError gives the number of teeth for which cutter k of n is exact, in a set spaced so that
// each is wrong by as much at the ends of its range, from fewest to most teeth (most may be
// infinite, a rack; then the last cutter is exact for the rack, infinite): a n/(n - k + a k/most).
// Willis, as given by Rose, Modern Machine-Shop Practice. n from 2 to 1000, k from 1 to n, fewest
// from 3 and below most; an error names what is not.
func EqualError(k, n int, fewest, most float64) (float64, error) {
	switch {
	case n < 2 || n > 1000:
		return 0, fmt.Errorf("a set of %d cutters: from 2 to 1000", n)
	case k < 1 || k > n:
		return 0, fmt.Errorf("cutter %d of %d: from 1 to %d", k, n, n)
	case !(fewest >= 3 && fewest < most):
		return 0, fmt.Errorf("cutters from %v to %v teeth: the fewest is 3 or more, and less than the most", fewest, most)
	}
	x := float64(n-k) + fewest*float64(k)/most
	return fewest * float64(n) / x, nil
}

// Cutter is a form cutter as it is marked; what is not marked is nought.
type Cutter struct {
	Module   float64 // mm; of a diametral pitch 25.4/DP
	Pressure float64 // degrees
	Teeth    Range   // printed on it; Least 0: not printed
	Form     string  // "involute" or "cycloidal"
}

// Fit is whether a cutter serves.
type Fit uint8

const (
	NotKnown Fit = iota
	No
	Yes
)

// nearTwin is how close two modules are called near twins, as a share: DP 24 and module 1.06 are.
const nearTwin = 0.03

// Serves says whether a cutter cuts the teeth of a wheel, module mm and pressure angle degrees,
// with why in words. What is not marked on it is never guessed; a clear no goes before what is not
// known. Modules a millionth apart are the same, angles a billionth of a degree. Figures of the
// wheel that are no number are not known.
func (c Cutter) Serves(module, pressure float64, teeth int) (Fit, string) {
	return c.serves(module, pressure, c.Teeth.Has(teeth), fmt.Sprint(teeth))
}

// ServesRack says the same of a rack, whose teeth are those of a wheel without end: only a range that goes on
// to the rack has them.
func (c Cutter) ServesRack(module, pressure float64) (Fit, string) {
	return c.serves(module, pressure, c.Teeth.Most == 0, "a rack")
}

func (c Cutter) serves(module, pressure float64, has bool, what string) (Fit, string) {
	if fit, why := c.pitch(module); fit != Yes {
		return fit, why
	}
	switch {
	case c.Pressure != 0 && math.Abs(c.Pressure-pressure) > 1e-9:
		return No, fmt.Sprintf("its pressure angle is %v degrees, not %v", c.Pressure, pressure)
	case math.IsNaN(pressure):
		return NotKnown, "the wheel's pressure angle is not known"
	case c.Form != "" && c.Form != "involute":
		return No, "its teeth are " + c.Form
	case c.Teeth.Least > 0 && !has:
		return No, fmt.Sprintf("it is for %v teeth, not %s", c.Teeth, what)
	case c.Teeth.Least == 0:
		return NotKnown, "read the range of teeth printed on it: a number alone does not say"
	case !(c.Pressure > 0):
		return NotKnown, "its pressure angle is not known: it is printed on it"
	}
	return Yes, fmt.Sprintf("it is for %v teeth", c.Teeth)
}
