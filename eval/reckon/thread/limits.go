package thread

import (
	"fmt"
	"math"
	"strings"

	"fettle/schema/drawing"
	"fettle/schema/handbook"
)

// Limits of size of threads by class.
//
// Metric (ISO 965-1, trapezoidal with ISO 2903): a class is a grade and a letter, for pitch diameter and then,
// if it differs, for the crest: 6g, 5g6g, 6H. The tables for grade 6 (and grade 5 of the nut's
// minor diameter) are data; other grades, and pitches that the tables lack, come from the
// formulas of the standard, rounded to the series R40 of preferred numbers as it says. The
// formulas and the steps between grades are from memory of ISO 965-1; they meet the tables.
//
// Unified (ASME B1.1), Whitworth (BS 84) and BA (BS 93) have formulas, in inches or mm.

// Limits are the limits of a thread, mm; a figure of 0 is a side that the standard leaves free.
type Limits struct {
	Class            string
	Inside           bool // of the nut
	MajorLo, MajorHi float64
	PitchLo, PitchHi float64
	MinorLo, MinorHi float64 // of the nut; of the screw MinorHi is what its root must not pass
	Source           string
	FromTable        bool // every figure stands in the tables; else some come from formulas
}

// Classes lists the classes that LimitsOf knows for a series, the usual ones first, screws then
// nuts; none for a series without limits here.
func Classes(series string) []string {
	switch series {
	case "M":
		return []string{"6g", "6h", "4h", "8g", "6e", "6f", "6H", "5H", "4H", "7H", "6G"}
	case "Tr":
		return []string{"7e", "8e", "7H", "8H"}
	case "UN", "UNC", "UNF", "UNEF":
		return []string{"2A", "1A", "3A", "2B", "1B", "3B"}
	case "BSW", "BSF":
		return []string{"medium bolt", "close bolt", "free bolt", "medium nut", "normal nut"}
	case "BA":
		return []string{"normal bolt", "normal nut"}
	}
	return nil
}

// UsualClasses gives the usual classes of a thread: 6g and 6H, below M1.6 6h and 5H (pitch 0.2:
// 4H), 2A and 2B, medium, normal (common practice, and ISO 965-1 for the small metric ones). Empty
// where the series has none here. Diameter and pitch are not asked for their range.
func UsualClasses(t drawing.Thread) (screw, nut string) {
	switch {
	case t.Series == "M":
		screw, nut = "6g", "6H"
		if t.Diameter < 1.6-1e-9 {
			screw = "6h"
		}
		switch {
		case math.Abs(t.Pitch-0.2) < 1e-9:
			nut = "4H"
		case math.Abs(t.Pitch-0.25) < 1e-9 || math.Abs(t.Pitch-0.3) < 1e-9 && t.Diameter < 1.6:
			nut = "5H"
		}
		return screw, nut
	case t.Series == "Tr":
		return "7e", "7H"
	case strings.HasPrefix(t.Series, "UN"):
		return "2A", "2B"
	case t.Series == "BSW" || t.Series == "BSF":
		return "medium bolt", "medium nut"
	case t.Series == "BA":
		return "normal bolt", "normal nut"
	}
	return "", ""
}

// LimitsOf gives the limits of a thread in a class, mm, by the standards named above; Source says
// which. An error for a series without limits here, a class that the series has not, a diameter or
// pitch that is not known or out of range (LeastDiameter to MostDiameter, LeastPitch to
// MostPitch), and a pitch that leaves no core.
func LimitsOf(t drawing.Thread, class string) (Limits, error) {
	if err := outside(t); err != nil {
		return Limits{}, err
	}
	if _, ok := known(t); !ok {
		return Limits{}, fmt.Errorf("%s has no limits here: its diameter and pitch must be known", t)
	}
	switch {
	case t.Series == "M" || t.Series == "Tr":
		return metric(t, class)
	case strings.HasPrefix(t.Series, "UN"):
		return unified(t, class)
	case t.Series == "BSW" || t.Series == "BSF":
		return whitworthLimits(t, class)
	case t.Series == "BA":
		return baLimits(t, class)
	}
	return Limits{}, fmt.Errorf("no limits are known here for the series %s", t.Series)
}

// grades of a metric class: of the pitch diameter and of the crest, and the letter.
func grades(class string) (pitch, crest int, letter string, ok bool) {
	digits := func(s string) bool { return len(s) == 2 && s[0] >= '3' && s[0] <= '9' }
	switch {
	case digits(class):
		return int(class[0] - '0'), int(class[0] - '0'), class[1:], true
	case len(class) == 4 && digits(class[:2]) && digits(class[2:]) && class[1] == class[3]:
		return int(class[0] - '0'), int(class[2] - '0'), class[1:2], true
	}
	return 0, 0, "", false
}

// Steps of the grades against grade 6 (ISO 965-1, from memory).
var (
	screwPitch = map[int]float64{3: 0.5, 4: 0.63, 5: 0.8, 6: 1, 7: 1.25, 8: 1.6, 9: 2}
	nutPitch   = map[int]float64{4: 0.85, 5: 1.06, 6: 1.32, 7: 1.7, 8: 2.12}
	screwMajor = map[int]float64{4: 0.63, 6: 1, 8: 1.6}
	nutMinor   = map[int]float64{4: 0.63, 5: 0.8, 6: 1, 7: 1.25, 8: 1.6}
)

func metric(t drawing.Thread, class string) (Limits, error) {
	pitch, crest, letter, ok := grades(class)
	if t.Series == "Tr" && ok {
		// ISO 2903 gives the crests one grade: 4 (from memory)
		crest = 4
	}
	shift, known := deviation(letter, t.Pitch)
	inside := letter == "H" || letter == "G"
	steps, crests := screwPitch, screwMajor
	if inside {
		steps, crests = nutPitch, nutMinor
	}
	if !ok || !known || steps[pitch] == 0 || crests[crest] == 0 {
		return Limits{}, fmt.Errorf("%q is no class of a metric thread that is known here: write one such as 6g or 5g6g of the screw, 6H of the nut", class)
	}
	effective, nut, root, _ := Diameters(t)
	td2, table := pitchWidth(t, pitch, inside)
	tc, crestTable := crestWidth(t.Pitch, crest, inside)
	l := Limits{Class: class, Inside: inside, Source: "ISO 965-1", FromTable: table && crestTable && (letter == "g" || letter == "h" || letter == "H")}
	if t.Series == "Tr" {
		l.Source = "from memory: ISO 2903"
	}
	if inside {
		l.MajorLo = t.Diameter + shift + 2*rootRoom(t)
		l.PitchLo, l.PitchHi = effective+shift, effective+shift+td2
		l.MinorLo, l.MinorHi = nut+shift, nut+shift+tc
		return l, nil
	}
	crestShift := shift
	if t.Series == "Tr" {
		crestShift = 0 // ISO 2903: the crest of the screw is at h
		nut = root - 2*rootRoom(t)
	}
	l.MajorLo, l.MajorHi = t.Diameter-crestShift-tc, t.Diameter-crestShift
	l.PitchLo, l.PitchHi = effective-shift-td2, effective-shift
	l.MinorHi = nut - crestShift
	return l, nil
}

// rootRoom is the clearance at the root of trapezoidal threads by pitch, mm: 0.15 to 1.5, 0.25 to 5,
// 0.5 to 12, 1 above (ISO 2904, from memory). Other forms have none.
func rootRoom(t drawing.Thread) float64 {
	switch {
	case t.Series != "Tr":
		return 0
	case t.Pitch <= 1.5:
		return 0.15
	case t.Pitch <= 5:
		return 0.25
	case t.Pitch <= 12:
		return 0.5
	}
	return 1
}

// deviation of a letter, mm away from the metal of the basic size: g from the table, others by
// formula (ISO 965-1, from memory).
func deviation(letter string, pitch float64) (mm float64, ok bool) {
	switch letter {
	case "h", "H":
		return 0, true
	case "g", "G":
		if row, ok := handbook.Tolerances(pitch); ok {
			return row.G / 1000, true
		}
		return r40(15+11*pitch) / 1000, true
	case "f":
		return r40(30+11*pitch) / 1000, true
	case "e":
		return r40(50+11*pitch) / 1000, true
	}
	return 0, false
}

// pitchWidth is the tolerance of the pitch diameter, mm, and whether it is the table's.
func pitchWidth(t drawing.Thread, grade int, inside bool) (mm float64, table bool) {
	screw, nut := handbook.PitchTolerance(t.Diameter, t.Pitch)
	switch {
	case inside && grade == 6 && nut > 0:
		return nut / 1000, true
	case !inside && grade == 6 && screw > 0:
		return screw / 1000, true
	}
	base := screw
	if base == 0 {
		base = r40(90 * math.Pow(t.Pitch, 0.4) * math.Pow(meanDiameter(t.Diameter), 0.1))
	}
	if inside {
		return r40(base*nutPitch[grade]) / 1000, false
	}
	return r40(base*screwPitch[grade]) / 1000, false
}

// crestWidth is the tolerance of the nut's minor or the screw's major diameter, mm.
func crestWidth(pitch float64, grade int, inside bool) (mm float64, table bool) {
	row, _ := handbook.Tolerances(pitch)
	switch {
	case inside && grade == 5 && row.Nut5 > 0:
		return row.Nut5 / 1000, true
	case inside && grade == 6 && row.Nut6 > 0:
		return row.Nut6 / 1000, true
	case !inside && grade == 6 && row.Major6 > 0:
		return row.Major6 / 1000, true
	case inside && pitch <= 0.8+1e-9:
		return r40((433*pitch-190*math.Pow(pitch, 1.22))*nutMinor[grade]) / 1000, false
	case inside:
		return r40(230*math.Pow(pitch, 0.7)*nutMinor[grade]) / 1000, false
	}
	return r40((180*math.Pow(pitch, 2.0/3)-3.15/math.Sqrt(pitch))*screwMajor[grade]) / 1000, false
}

// meanDiameter is the geometric mean of the step of ISO 965-1 that a diameter lies in.
func meanDiameter(d float64) float64 {
	steps := []float64{0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45, 90, 180, 355}
	for n := 1; n < len(steps); n++ {
		if d <= steps[n]+1e-9 {
			return math.Sqrt(steps[n-1] * steps[n])
		}
	}
	return d
}

// r40 rounds to the preferred numbers of the series R40 (ISO 3), in whole micrometres.
func r40(um float64) float64 {
	if um <= 0 {
		return 0
	}
	power := math.Pow(10, math.Floor(math.Log10(um)))
	best, gap := um, math.Inf(1)
	for _, p := range preferred {
		if g := math.Abs(p*power - um); g < gap {
			best, gap = p*power, g
		}
	}
	return math.RoundToEven(best)
}

var preferred = []float64{1, 1.06, 1.12, 1.18, 1.25, 1.32, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2, 2.12, 2.24, 2.36, 2.5, 2.65, 2.8, 3, 3.15, 3.35,
	3.55, 3.75, 4, 4.25, 4.5, 4.75, 5, 5.3, 5.6, 6, 6.3, 6.7, 7.1, 7.5, 8, 8.5, 9, 9.5, 10}
