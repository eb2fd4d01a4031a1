// Package heat is what warmth does to lengths: how much a part grows, how wrong a reading is
// that was taken warm, and how hot or cold two parts must be to go together or come apart.
//
// Lengths are millimetres, temperatures degrees Celsius, expansion per kelvin. All sizes are
// meant at 20 degrees, the reference temperature of ISO 1:2016. The expansion of a metal is a
// band, so each answer is one. It is taken as steady with temperature: figures of the
// handbook hold near 20 degrees, and a steel at 200 grows some 5 % more than they say (from
// memory), which errs to the side of asking for more heat than is needed.
//
// Where a comment names no source, a formula follows from dL = a L dT, see Growth.
//
// Where a function gives an error, it names the figure that is out of range or what does not go
// together; what is not a number is out of every range.
package heat

import (
	"cmp"
	"fmt"
	"math"

	"fettle/schema/handbook"
)

// Reference is the temperature at which a size is what it is: ISO 1:2016.
const Reference = 20.0

// Body is something of a metal at a temperature, even throughout: -200 to 1600 degrees, of an
// expansion from above 0 to 0.001 a kelvin.
type Body struct {
	Expansion handbook.Band // 1/K
	At        float64       // degrees
}

// Bounds of what is taken: nothing in a workshop is colder than frozen air or hotter than
// molten iron, longer than 100 m, or grows more than a tenth of a percent a degree.
const (
	coldest, hottest = -200, 1600
	longest          = 1e5
	steepest         = 1e-3
)

func (b Body) check(of string) error {
	if !(b.At >= coldest && b.At <= hottest) {
		return fmt.Errorf("the temperature of the %s must lie from %d to %d degrees, not %v", of, coldest, hottest, b.At)
	}
	if e := b.Expansion; !(e.Lo >= 0 && e.Hi >= e.Lo && e.Hi > 0 && e.Hi <= steepest) {
		return fmt.Errorf("the expansion of the %s must lie over 0 up to %v a degree, not %v to %v", of, steepest, e.Lo, e.Hi)
	}
	return nil
}

func checkLength(of string, mm float64) error {
	if !(mm > 0 && mm <= longest) {
		return fmt.Errorf("the %s must lie over 0 up to %v mm, not %v", of, float64(longest), mm)
	}
	return nil
}

// strain is how much of its size at 20 degrees the body has gained; below nought when cold.
func (b Body) strain() handbook.Band { return b.Expansion.Times(b.At - Reference) }

// Growth gives by how much a length, above 0 to 100 m, grows between two temperatures, mm; below
// nought where it gets colder. dL = a L dT (seen: D. A. Swyt, J. Res. NIST 99 (1994) 31). An error
// names the figure out of range.
func Growth(length float64, expansion handbook.Band, from, to float64) (handbook.Band, error) {
	for _, t := range []float64{from, to} {
		if err := (Body{expansion, t}).check("part"); err != nil {
			return handbook.Band{}, err
		}
	}
	if err := checkLength("length", length); err != nil {
		return handbook.Band{}, err
	}
	return expansion.Times(length * (to - from)), nil
}

// Misreading gives by how much an instrument reads a part longer than it will be at 20 degrees,
// mm. Both grow, so a part measured with an instrument of its own metal at its own temperature is
// read right however warm the shop is; a brass part and a steel micrometer disagree even after a
// day side by side.
//
// An instrument at 20 degrees whose mark stands at s shows s; grown by g it shows s where the
// length is s (1+g). So a part of length L grown by w reads L (1+w)/(1+g), and is misread by L
// (w-g)/(1+g). The length is above 0 to 100 m; an error names the figure out of range.
func Misreading(length float64, work, instrument Body) (handbook.Band, error) {
	if err := cmp.Or(checkLength("length", length), work.check("work"), instrument.check("instrument")); err != nil {
		return handbook.Band{}, err
	}
	w, g := work.strain(), instrument.strain()
	off := func(w, g float64) float64 { return length * (w - g) / (1 + g) }
	return handbook.Band{Lo: off(w.Lo, g.Hi), Hi: off(w.Hi, g.Lo)}, nil
}

// At20 gives the length that a part will have at 20 degrees from what an instrument read, mm,
// above 0 to 100 m: the reading times (1+g)/(1+w). It undoes Misreading. An error names the figure
// out of range.
func At20(reading float64, work, instrument Body) (handbook.Band, error) {
	if err := cmp.Or(checkLength("reading", reading), work.check("work"), instrument.check("instrument")); err != nil {
		return handbook.Band{}, err
	}
	w, g := work.strain(), instrument.strain()
	return handbook.Band{Lo: reading * (1 + g.Lo) / (1 + w.Hi), Hi: reading * (1 + g.Hi) / (1 + w.Lo)}, nil
}

// Truth is an answer that a band may leave open.
type Truth uint8

const (
	Open Truth = iota // the band of the metal straddles the border
	Yes
	No
)

// Spoils says whether a misreading, within 100 m, takes more than a third of a tolerance, above 0
// to 100 m, which is when it is worth a thought: yes where the tolerance is under three times the
// least misreading of the band, no where it is not under three times the most. On the border is
// no. The third is a rule derived with the reference of thermal checks, no standard's. An error
// names the figure out of range.
func Spoils(tolerance float64, misreading handbook.Band) (Truth, error) {
	if !(tolerance > 0 && tolerance <= longest) {
		return Open, fmt.Errorf("the tolerance must lie over 0 up to %v mm, not %v", float64(longest), tolerance)
	}
	if !(math.Abs(misreading.Lo) <= longest && math.Abs(misreading.Hi) <= longest) {
		return Open, fmt.Errorf("the misreading must lie within %v mm either way, not from %v to %v", float64(longest), misreading.Lo, misreading.Hi)
	}
	small, large := math.Abs(misreading.Lo), math.Abs(misreading.Hi)
	if small > large {
		small, large = large, small
	}
	if misreading.Lo < 0 && misreading.Hi > 0 {
		small = 0
	}
	switch {
	case tolerance < 3*small:
		return Yes, nil
	case tolerance >= 3*large:
		return No, nil
	}
	return Open, nil
}
