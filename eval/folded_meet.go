package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// LegsMeet are two legs of sheet that would lie in one place as it is folded.
type LegsMeet struct {
	One, Two [2]*Form // the bends at the ends of either leg; nil at an end of the sheet
	Deep     float64  // how far along one of them the other reaches through it, mm
}

// meetLines is along how many lines, spread over its width, a leg is looked at.
const meetLines = 9

// LegsMeet lists the legs of folded sheet that run through each other: the middle layer of one lies, along
// lines over its width, in metal of the other. Two that share a bend are not compared. It is in trouble
// only where metal surely lies in metal; legs that cross beside these lines are not found.
func (t *PartTrace) LegsMeet() (out []LegsMeet) {
	b := t.End.Bent
	if b == nil || t.Lies == nil || t.Lies.Folded == nil {
		return nil
	}
	w, lumps := t.Lies.Folded, t.End.Piece.Lumps()
	thick := w.Drawn.Size[2]
	for i := range w.Legs {
		for j := range w.Legs {
			if i == j || w.beside(i, j) || i >= len(lumps) || j >= len(lumps) {
				continue
			}
			if deep := w.through(b, lumps, i, j, thick); deep > thick/2 && !listed(out, w.bendsOf(i), w.bendsOf(j)) {
				out = append(out, LegsMeet{One: w.bendsOf(i), Two: w.bendsOf(j), Deep: deep})
			}
		}
	}
	return out
}

func listed(all []LegsMeet, i, j [2]*Form) bool {
	for _, m := range all {
		if m.One == i && m.Two == j || m.One == j && m.Two == i {
			return true
		}
	}
	return false
}

// beside says whether two legs meet at a bend.
func (w *Folding) beside(i, j int) bool {
	for n := range w.Bends {
		k := &w.Bends[n]
		if k.Near == i && k.Far == j || k.Near == j && k.Far == i {
			return true
		}
	}
	return false
}

// bendsOf are the bends at the lower and the higher end of a leg along its axis; of the base, which lies
// along both, those along the first that has any.
func (w *Folding) bendsOf(i int) (out [2]*Form) {
	axis := w.Legs[i].Axis
	if i == 0 && len(w.Along[0].Sheet.Folds) == 0 {
		axis = 1
	}
	for n := range w.Bends {
		if k := &w.Bends[n]; k.Axis == axis && (k.Near == i || k.Far == i) {
			end := 0
			if away := k.Sign > 0; away == (k.Near == i) {
				end = 1
			}
			out[end] = k.Form
		}
	}
	return out
}

// through is how far, along the middle layer of one leg, metal of it lies in metal of another.
func (w *Folding) through(b *Bent, lumps []*solid.Piece, i, j int, thick float64) (deep float64) {
	l := &w.Legs[i]
	a := 1 - l.Axis
	for n := range meetLines {
		var from, dir solid.Vec
		dir[l.Axis], from[l.Axis], from[2] = 1, l.Lo[l.Axis], thick/2
		from[a] = l.Lo[a] + (l.Hi[a]-l.Lo[a])*(float64(n)+0.5)/meetLines
		from, dir = b.Poses[i].Point(from), b.Poses[i].Dir(dir)
		for _, x := range lumps[i].Line(from, dir) {
			for _, y := range lumps[j].Line(from, dir) {
				deep = math.Max(deep, math.Min(x.B, y.B)-math.Max(x.A, y.A))
			}
		}
	}
	return math.Round(deep/model.Grain) * model.Grain
}
