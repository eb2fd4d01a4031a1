package reckon

import (
	"fmt"
	"math"
	"math/big"
	"strconv"

	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Ask is one question: the words behind a subject, its flags, and the shop. Each is asked for
// by its name in the subject ("SIZE", "hole"); false is "not given". A name that the subject
// does not declare, or declares as another kind, is a broken promise of ours and panics.
type Ask struct {
	Units drawing.Unit // what a bare length means
	of    *Subject
	words []string // as typed
	said  map[string]said
	shop  *shop // nil: none
}

func (a Ask) get(name string, kinds ...Kind) (said, bool) {
	w := a.of.want(name)
	ok := w != nil
	if ok {
		ok = false
		for _, k := range kinds {
			ok = ok || w.Kind == k
		}
	}
	if !ok {
		panic(fmt.Sprintf("%s is asked for %q, which it does not declare so", a.of.Name, name))
	}
	s, given := a.said[name]
	return s, given
}

// Text gives words as they stand; "" where none were given.
func (a Ask) Text(name string) string {
	if s, ok := a.get(name, Text, OneOf); ok {
		return s.texts[0]
	}
	return ""
}

// Texts gives a list of words.
func (a Ask) Texts(name string) []string {
	s, _ := a.get(name, Texts)
	return s.texts
}

// Yes says whether a flag was given, and not with =no.
func (a Ask) Yes(name string) bool {
	s, _ := a.get(name, YesNo)
	return s.yes
}

// Whole gives a whole number.
func (a Ask) Whole(name string) (int, bool) {
	s, ok := a.get(name, Whole)
	if !ok {
		return 0, false
	}
	return whole(s.exact[0]), true
}

// Wholes gives a list of whole numbers, in the order given.
func (a Ask) Wholes(name string) ([]int, bool) {
	s, ok := a.get(name, Wholes)
	var out []int
	for _, v := range s.exact {
		out = append(out, whole(v))
	}
	return out, ok
}

func whole(v *big.Rat) int { return int(v.Num().Int64()) }

// Number gives a pure number.
func (a Ask) Number(name string) (float64, bool) {
	s, ok := a.get(name, Number)
	return first(s), ok
}

// Length gives a length or a pitch, mm.
func (a Ask) Length(name string) (float64, bool) {
	s, ok := a.get(name, Length, Pitch)
	return first(s), ok
}

// Exact gives a number, a length or a pitch (mm) without the error of a float64.
func (a Ask) Exact(name string) (*big.Rat, bool) {
	s, ok := a.get(name, Number, Length, Pitch)
	if !ok {
		return nil, false
	}
	return new(big.Rat).Set(s.exact[0]), true
}

// Lengths gives a list of lengths, mm, in the order given.
func (a Ask) Lengths(name string) ([]float64, bool) {
	s, ok := a.get(name, Lengths)
	var out []float64
	for _, v := range s.exact {
		mm, _ := v.Float64()
		out = append(out, mm)
	}
	return out, ok
}

// Sizes gives a drawer of sizes, mm.
func (a Ask) Sizes(name string) (model.Sizes, bool) {
	s, ok := a.get(name, Sizes)
	return s.sizes, ok
}

// Angle gives an angle, degrees.
func (a Ask) Angle(name string) (float64, bool) {
	s, ok := a.get(name, Angle)
	return s.deg, ok
}

// Written gives a word or flag as it was typed; "" where it was not given.
func (a Ask) Written(name string) string { return a.said[name].written }

// All says whether tables are to be shown at their full length.
func (a Ask) All() bool { return a.Yes("all") }

func first(s said) float64 {
	if len(s.exact) == 0 {
		return 0
	}
	x, _ := s.exact[0].Float64()
	return x
}

// Says writes a length for a sentence in both units, the one that was asked in first:
// "12.018 mm (0.47315 in)".
func (a Ask) Says(mm float64) string {
	if a.Units == drawing.Inch {
		return inches(mm) + " in (" + millimetres(mm) + " mm)"
	}
	return millimetres(mm) + " mm (" + inches(mm) + " in)"
}

// Span is Says of two lengths: "0.006 to 0.035 mm (0.00024 to 0.00138 in)".
func (a Ask) Span(lo, hi float64) string {
	mm, in := millimetres(lo)+" to "+millimetres(hi)+" mm", inches(lo)+" to "+inches(hi)+" in"
	if a.Units == drawing.Inch {
		return in + " (" + mm + ")"
	}
	return mm + " (" + in + ")"
}

// millimetres writes a length to a tenth of a micrometre.
func millimetres(mm float64) string { return round(mm, 4) }

// inches writes a length given in mm to a hundred-thousandth of an inch.
func inches(mm float64) string { return round(mm/25.4, 5) }

// signed writes a deviation with its sign: +0.018, -0.006, 0.
func signed(mm float64) string {
	if s := millimetres(mm); mm > 0 && s != "0" {
		return "+" + s
	}
	return millimetres(mm)
}

// round writes a figure with so many decimals at most, no trailing noughts and no minus
// before nought.
func round(x float64, decimals int) string {
	scale := math.Pow(10, float64(decimals))
	r := math.Round(x*scale) / scale
	if r == 0 {
		r = 0
	}
	return strconv.FormatFloat(r, 'f', -1, 64)
}
