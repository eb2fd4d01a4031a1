package fit

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"

	"fettle/schema/handbook"
)

// ShaftFor gives the limits, mm, of the shaft to make for a hole that was measured, above 0 to
// 10,000 mm: with it the clearance stays from least to most, both within 100 mm. doubt is how far
// the measuring may be off, either way, 0 to 10 mm; it is taken off both ends. An error names the
// figure out of range, or says that the wish leaves no shaft.
func ShaftFor(hole, doubt, least, most float64) (lo, hi float64, err error) {
	if err := mate(hole, doubt, least, most); err != nil {
		return 0, 0, err
	}
	return hole + doubt - most, hole - doubt - least, nil
}

// HoleFor is the other way about: the limits of the hole, mm, for a shaft that was measured, with
// the same ranges and errors.
func HoleFor(shaft, doubt, least, most float64) (lo, hi float64, err error) {
	if err := mate(shaft, doubt, least, most); err != nil {
		return 0, 0, err
	}
	return shaft + doubt + least, shaft - doubt + most, nil
}

func mate(size, doubt, least, most float64) error {
	switch {
	case !(size > 0 && size <= 1e4):
		return fmt.Errorf("a measured size of %v mm: over 0 to 10000 is wanted", size)
	case !(doubt >= 0 && doubt <= 10):
		return fmt.Errorf("a doubt of %v mm: 0 to 10 is wanted", doubt)
	case !(least <= most && math.Abs(least) <= 100 && math.Abs(most) <= 100):
		return fmt.Errorf("clearances from %v to %v mm: they must run upward and lie within 100 mm", least, most)
	case 2*doubt > most-least+dust:
		return fmt.Errorf("a doubt of %v mm either way leaves nothing of clearances from %v to %v mm: measure more closely or allow more", doubt, least, most)
	}
	return nil
}

// Near is a pair of classes beside a wanted clearance. Clearances are mm.
type Near struct {
	Pair        string // "H7/g6"
	Least, Most float64
	Off         float64 // how far the two ends lie from those wanted, added up, mm
	Within      bool    // every clearance of the pair is a wanted one
}

// Letters of shafts and holes that are usual in workshops, looser first (ISO 286-1, table of
// preferred classes and those beside them).
var usual = []string{"c", "d", "e", "f", "g", "h", "js", "k", "m", "n", "p", "r", "s", "u"}

// Nearest lists the classes that make a wanted clearance, least to most within 100 mm, with a
// given class of the other part at a nominal size, mm, nearest first: "H7" asks for shafts, "h6"
// for holes. Grades 5 to 11 of the usual letters are tried. Those whose clearances all lie within
// the wanted ones come before others as near. An error for clearances out of range, for what
// Limits refuses, and where no class goes with the given one.
func Nearest(d *handbook.Deviations, nominal float64, given string, least, most float64) ([]Near, error) {
	if !(least <= most && math.Abs(least) <= 100 && math.Abs(most) <= 100) {
		return nil, fmt.Errorf("clearances from %v to %v mm: they must run upward and lie within 100 mm", least, most)
	}
	if _, _, err := Limits(d, nominal, given); err != nil {
		return nil, err
	}
	var out []Near
	for _, letter := range usual {
		for grade := 5; grade <= 11; grade++ {
			pair := given + "/" + letter + strconv.Itoa(grade)
			if !IsHole(given) {
				pair = capital(letter) + strconv.Itoa(grade) + "/" + given
			}
			a, b, err := Pair(d, nominal, pair)
			if err != nil {
				continue // the standard has no such class at this size
			}
			out = append(out, Near{pair, a, b, math.Abs(a-least) + math.Abs(b-most), a >= least-dust && b <= most+dust})
		}
	}
	if len(out) == 0 {
		return nil, errors.New("no class of ISO 286 goes with it at this size")
	}
	slices.SortStableFunc(out, func(a, b Near) int {
		switch gap := a.Off - b.Off; {
		case math.Abs(gap) > dust:
			return cmp.Compare(a.Off, b.Off)
		case a.Within != b.Within && a.Within:
			return -1
		case a.Within != b.Within:
			return 1
		}
		return 0
	})
	return out, nil
}

func capital(letter string) string {
	b := []byte(letter)
	for i := range b {
		b[i] -= 'a' - 'A'
	}
	return string(b)
}

// Basis gives the limits of a pair from a basic size, the tolerances of hole and shaft, and the
// allowance, which is the least clearance (below nought the greatest interference): the hole
// begins at the basic size on hole basis, the shaft ends at it on shaft basis (ISO 286-1, 3.4; all
// mm). Size above 0 to 10,000, tolerances 0 to 100, allowance within 100 either way; an error
// names them all with their ranges.
func Basis(size, holeWidth, shaftWidth, allowance float64, onHole bool) (holeLo, holeHi, shaftLo, shaftHi float64, err error) {
	if !(size > 0 && size <= 1e4) || !(holeWidth >= 0 && holeWidth <= 100) || !(shaftWidth >= 0 && shaftWidth <= 100) || !(math.Abs(allowance) <= 100) {
		return 0, 0, 0, 0, fmt.Errorf("size %v, tolerances %v and %v, allowance %v mm: over 0 to 10000, 0 to 100 and within 100 are wanted", size, holeWidth, shaftWidth, allowance)
	}
	if onHole {
		holeLo, shaftHi = size, size-allowance
	} else {
		shaftHi, holeLo = size, size+allowance
	}
	return holeLo, holeLo + holeWidth, shaftHi - shaftWidth, shaftHi, nil
}
