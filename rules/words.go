package rules

import (
	"math"
	"strconv"
	"strings"

	"fettle/eval"
	"fettle/schema/model"
)

// asCut puts a rule about cuts to operations on a lathe as well.
func asCut(check func(*eval.Cut, *Ask)) func(*eval.Turn, *Ask) {
	return func(k *eval.Turn, a *Ask) { check(k.AsCut(), a) }
}

func pathOf(i *model.Item) string {
	if i == nil {
		return "-"
	}
	return i.Path()
}

// holdingName is what holds the piece, in a sentence.
func holdingName(h *eval.Holding) string {
	switch {
	case h.Choice.Vise != nil:
		return h.Choice.Vise.Path()
	case h.Choice.Clamps != nil:
		return h.Choice.Clamps.Path()
	}
	return "the holding"
}

// tenthUp prints a length that must be made up, to a tenth and never too small.
func tenthUp(x float64) string {
	return strconv.FormatFloat(math.Ceil(x*10-1e-6)/10, 'f', -1, 64)
}

// tenth prints a length that was worked out from geometry, to a tenth.
func tenth(x float64) string { return strconv.FormatFloat(math.Round(x*10)/10, 'f', -1, 64) }

// cureMove says how much to move for a meeting to be clear.
func cureMove(n eval.Near) string {
	switch {
	case n.Lift > 0 && n.Aside > 0:
		return "; it is clear " + tenthUp(n.Lift) + " mm higher or " + tenthUp(n.Aside) + " mm aside"
	case n.Lift > 0:
		return "; it is clear " + tenthUp(n.Lift) + " mm higher"
	}
	return ""
}

// whereIs names a place of the machine's frame as it is found with a rule: from the left
// end of the jaws, or of the piece, and above the table.
func whereIs(h *eval.Holding, at [3]float64) string {
	s := tenth(at[0]) + " mm from the left end of the jaws"
	switch {
	case h.Upright != nil && h.Seat.Is():
		return tenth(at[2]) + " mm above the table"
	case h.Upright != nil:
		return "as it leans"
	case h.Choice.Vise == nil && at[0] < h.Lo[0]-0.05:
		s = tenth(h.Lo[0]-at[0]) + " mm beyond the left end of the piece"
	case h.Choice.Vise == nil:
		s = tenth(at[0]-h.Lo[0]) + " mm from the left end of the piece"
	case tenth(at[0]) == "0":
		s = "at the left end of the jaws"
	case at[0] < -0.05:
		s = tenth(-at[0]) + " mm beyond the left end of the jaws"
	}
	if h.Seat.Is() {
		s += " and " + tenth(at[2]) + " mm above the table"
	}
	return s
}

// drilledThrough says whether a meeting is a tip coming out below, which another rule
// speaks of.
func drilledThrough(k *eval.Cut, n eval.Near) bool {
	if k.Choice.Tool.Cutter == nil || n.BodyItem != k.Choice.Tool.Cutter.Item {
		return false
	}
	for _, w := range k.Works {
		if w.Through && w.Target.Form != nil && len(w.Target.Form.Mouths) > 0 {
			return true
		}
	}
	return false
}

// hundredth prints a share, or a small gap, to a hundredth.
func hundredth(x float64) string { return strconv.FormatFloat(math.Round(x*100)/100, 'f', -1, 64) }

// round brings a figure to the grain that is printed.
func round(x float64) float64 { return math.Round(x*1000) / 1000 }

// inWords lists words as a sentence does: "front, back and top".
func inWords(words []string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:last], ", ") + " and " + words[last]
}
