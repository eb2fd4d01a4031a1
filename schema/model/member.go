package model

import (
	"math"
	"strconv"

	"fettle/schema/drawing"
)

// Member names one size of a set as a recipe writes it: "drill.jobbers[7.8]", and where the
// set was written in inches "drill.jobbers[inch(19/64)]", which is what is stamped on it.
func (i *Item) Member(size float64) string {
	if i == nil {
		return ""
	}
	if i.Unit == drawing.Inch {
		return i.Path() + "[inch(" + Inches(size) + ")]"
	}
	return i.Path() + "[" + Figure(size) + "]"
}

// Inches prints a length of mm in inches as the trade says it: whole inches and a fraction down
// to 64ths where that is the size to a hundredth of a thou, "1 + 1/2", else at most five decimals.
func Inches(mm float64) string {
	in := mm / 25.4
	parts := math.Round(in * 64)
	if math.Abs(in*64-parts) > 64e-5 || parts < 1 || parts > 1e6 {
		x := math.Round(in*1e5) / 1e5
		if x == 0 {
			x = 0 // no minus before nought
		}
		return strconv.FormatFloat(x, 'f', -1, 64)
	}
	whole, over, under := int(parts)/64, int(parts)%64, 64
	for over > 0 && over%2 == 0 {
		over, under = over/2, under/2
	}
	fraction := strconv.Itoa(over) + "/" + strconv.Itoa(under)
	switch {
	case over == 0:
		return strconv.Itoa(whole)
	case whole == 0:
		return fraction
	}
	return strconv.Itoa(whole) + " + " + fraction
}
