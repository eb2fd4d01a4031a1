// Package fit turns the classes of ISO 286 into deviations and pairs of parts into
// clearances. The tables are data, looked up and never worked out from the formulas behind
// them: the printed tables are rounded in places where the formulas are not.
//
// Lengths are millimetres. A clearance is the hole less the shaft on diameter; below nought
// it is an interference.
//
// Where a function gives an error, it names the figure that is out of range or what does not go
// together; what is not a number is out of every range.
package fit

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"fettle/schema/drawing"
	"fettle/schema/handbook"
)

// Limits gives the lower and upper deviation of a class, "H7" or "g6", at a nominal size, mm,
// above 0 to 500. Other sizes, words that are no class, letters and grades that the standard does
// not give at that size, and a missing table are an error that says so.
//
// ISO 286-1, 4.3: one deviation comes from the letter, the other lies the standard tolerance away
// from it; js and JS have half of it on each side.
func Limits(d *handbook.Deviations, nominal float64, letters string) (lo, hi float64, err error) {
	if d == nil {
		return 0, 0, errors.New("no table of deviations is given")
	}
	if !drawing.IsClass(letters) {
		return 0, 0, fmt.Errorf("%q is not a tolerance class of ISO 286", letters)
	}
	if !(nominal > 0 && nominal <= 500) {
		return 0, 0, fmt.Errorf("tolerance classes are tabled for sizes over 0 up to 500 mm, not for %v mm", nominal)
	}
	letter, grade := split(letters)
	width, ok := d.Grade(nominal, grade)
	if !ok {
		return 0, 0, fmt.Errorf("ISO 286 gives no grade %s at %v mm", letters[len(letter):], nominal)
	}
	if strings.EqualFold(letter, "js") {
		return -width / 2000, width / 2000, nil
	}
	um, upper, ok := d.Fundamental(letter, nominal, grade)
	if !ok {
		return 0, 0, fmt.Errorf("ISO 286 gives no %s at %v mm", letters, nominal)
	}
	if upper {
		return micrometres(um - width), micrometres(um), nil
	}
	return micrometres(um), micrometres(um + width), nil
}

// micrometres brings a sum of tabled figures, which have one decimal at most, to mm without
// the dust of float64.
func micrometres(um float64) float64 { return math.Round(um*10) / 10 / 1000 }

// split parts a class that IsClass found right.
func split(letters string) (letter string, grade int) {
	n := strings.IndexAny(letters, "0123456789")
	letter = letters[:n]
	if letters[n:] == "01" {
		return letter, handbook.Grade01
	}
	grade, _ = strconv.Atoi(letters[n:])
	return letter, grade
}

// IsHole says whether a class is for inside surfaces: capitals (ISO 286-1). Whether it is a class
// at all is not asked.
func IsHole(letters string) bool { return letters != "" && letters[0] >= 'A' && letters[0] <= 'Z' }

// Kind is what two parts of a pair do.
type Kind uint8

const (
	Clearance    Kind = iota + 1 // the shaft always goes in
	Transition                   // some pairs go, some must be pressed
	Interference                 // the shaft is always larger
)

// String writes a kind for a sentence; "unknown" for what is none.
func (k Kind) String() string {
	switch k {
	case Clearance:
		return "clearance"
	case Transition:
		return "transition"
	case Interference:
		return "interference"
	}
	return "unknown"
}

// Play gives the least and greatest clearance, mm, of a hole and a shaft from their limits of
// size, mm, by definition (ISO 286-1, 3.3). A bare formula, which refuses nothing.
func Play(holeLo, holeHi, shaftLo, shaftHi float64) (least, most float64) {
	return holeLo - shaftHi, holeHi - shaftLo
}

// KindOf names the fit that a least and a greatest clearance, mm, make. A least clearance of
// nought is still a clearance fit, a greatest of nought an interference fit (ISO 286-1, 3.3: "in
// the extreme case, equal to"). What is no number makes no kind (0, "unknown").
func KindOf(least, most float64) Kind {
	switch {
	case math.IsNaN(least) || math.IsNaN(most):
		return 0
	case least >= -dust:
		return Clearance
	case most <= dust:
		return Interference
	}
	return Transition
}

// dust is below any tabled figure, in mm, and above the error of a float64 sum.
const dust = 1e-9

// ParsePair takes "H7/g6" apart: the hole in capitals first, then the shaft; blanks about them are
// passed over. What is not two classes in that order is an error that says how to write it.
func ParsePair(s string) (hole, shaft string, err error) {
	h, sh, ok := strings.Cut(s, "/")
	hole, shaft = strings.TrimSpace(h), strings.TrimSpace(sh)
	switch {
	case !ok:
		return "", "", fmt.Errorf("%q is not a fit: write the hole and the shaft, as in H7/g6", s)
	case !drawing.IsClass(hole) || !drawing.IsClass(shaft):
		return "", "", fmt.Errorf("%q is not a fit of ISO 286, such as H7/g6", s)
	case !IsHole(hole) || IsHole(shaft):
		return "", "", fmt.Errorf("%q: the hole comes first, in capitals, then the shaft in small letters", s)
	}
	return hole, shaft, nil
}

// Pair gives the least and greatest clearance, mm, of a fit such as "H7/g6" at a nominal size, mm,
// above 0 to 500, to 0.0001 mm. An error for what ParsePair or Limits refuses.
func Pair(d *handbook.Deviations, nominal float64, pair string) (least, most float64, err error) {
	hole, shaft, err := ParsePair(pair)
	if err != nil {
		return 0, 0, err
	}
	holeLo, holeHi, errHole := Limits(d, nominal, hole)
	shaftLo, shaftHi, errShaft := Limits(d, nominal, shaft)
	if err := errors.Join(errHole, errShaft); err != nil {
		return 0, 0, err
	}
	least, most = Play(holeLo, holeHi, shaftLo, shaftHi)
	return math.Round(least*1e4) / 1e4, math.Round(most*1e4) / 1e4, nil
}

// Grade gives the coarsest grade, 01 to 18, whose standard tolerance is not wider than a
// tolerance, mm, at a nominal size, mm, which is how fine the work must be (ISO 286-1). Grade 01
// is handbook.Grade01. False where even the finest is wider, where the size has no grades, and
// where a figure is no number.
func Grade(d *handbook.Deviations, nominal, width float64) (grade int, ok bool) {
	if d == nil || math.IsNaN(width) {
		return 0, false
	}
	for g := handbook.Grade01; g <= 18; g++ {
		um, there := d.Grade(nominal, g)
		if !there || um/1000 > width+dust {
			break
		}
		grade, ok = g, true
	}
	return grade, ok
}
