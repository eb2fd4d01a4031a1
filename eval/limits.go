// Package eval makes a build on paper: it takes a model and a full set of choices and
// plays every set-up on a solid of the piece. What it records (the moments, each with the
// piece before and after) is all that rules, choices and drawings read.
//
// Frames. A part's frame is the drawing's: x from left to right, y from front to back, z
// from bottom to top, its origin at the left, front, bottom corner of the finished
// envelope. A machine's frame has X along the table to the right, Y towards the column,
// Z up, with Z = 0 on the table; in a vise X = 0 is the left end of the jaws and Y = 0 the
// face of the fixed jaw. All lengths are millimetres.
package eval

import (
	"math"

	"fettle/eval/reckon/fit"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Limits are the sizes between which a dimension is right, both in.
type Limits struct{ Lo, Hi float64 }

// Width is the tolerance: the room between the limits.
func (l Limits) Width() float64 { return l.Hi - l.Lo }

// LimitsOf resolves the notation of a dimension: figures as written, a class by ISO 286,
// else the general tolerance of the recipe. Without any the limits are not known.
func LimitsOf(s drawing.Size, general model.General, of *model.Item, attr string) model.Known[Limits] {
	switch s.Tol.Kind {
	case drawing.Deviations:
		return model.Sure(Limits{s.Nominal + s.Tol.Lo, s.Nominal + s.Tol.Hi})
	case drawing.Class:
		lo, hi, err := fit.Limits(handbook.ISO286(), s.Nominal, s.Tol.Letters)
		if err == nil {
			return model.Known[Limits]{V: Limits{s.Nominal + lo, s.Nominal + hi}, From: model.Handbook}
		}
	default:
		if half, ok := generalHalf(s, general); ok {
			return model.Sure(Limits{s.Nominal - half, s.Nominal + half})
		}
	}
	k := model.Known[Limits]{Of: of, Attr: attr + " (its limits)"}
	if of != nil {
		k.At = of.At
	}
	return k
}

func generalHalf(s drawing.Size, g model.General) (float64, bool) {
	switch {
	case g.From == model.Unknown:
		return 0, false
	case g.Class != "":
		return handbook.General(g.Class, s.Nominal)
	case g.Either > 0:
		return g.Either, true
	case s.Decimals >= 0 && s.Decimals < len(g.Places) && g.Places[s.Decimals] > 0:
		return g.Places[s.Decimals], true
	}
	return 0, false
}

// near says that two lengths are the same place.
func near(a, b float64) bool { return math.Abs(a-b) < model.Grain }
