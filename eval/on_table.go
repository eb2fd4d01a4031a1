package eval

import (
	"math"

	"fettle/eval/solid"
)

// Where a holding is said to stand on the table its middle is: in a vise the middle of the jaws' length and of
// what stands between them, else the middle of the piece. Places count from the table's left front corner.

// Middle is the middle of the holding, in its own frame, at the height of the table.
func (h *Holding) Middle() solid.Vec {
	m := solid.Vec{(h.Lo[0] + h.Hi[0]) / 2, (h.Lo[1] + h.Hi[1]) / 2, 0}
	if v := h.Choice.Vise; v != nil && v.JawWidth.Is() {
		m[0] = v.JawWidth.V / 2
	}
	return m
}

// TablePlaces is how far along and across the table the spindle's axis goes in a cut, from the table's left
// front corner: the least and the most of either. False where the holding's place is not written, or
// nothing moves.
func (k *Cut) TablePlaces() (lo, hi [2]float64, ok bool) {
	at, said := k.Hold.Work.SetUp.OnTable.Get()
	if !said || len(at) != 2 || k.LevelSpindle() {
		return lo, hi, false
	}
	mid := k.Hold.Middle()
	sin, cos := math.Sincos(k.Hold.Turned * math.Pi / 180)
	lo, hi = [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, w := range k.Works {
		for _, m := range w.Moves {
			for _, p := range [2]solid.Vec{m.From, m.To} {
				d := p.Sub(mid)
				for i, x := range [2]float64{at[0] + d[0]*cos - d[1]*sin, at[1] + d[0]*sin + d[1]*cos} {
					lo[i], hi[i] = min(lo[i], x), max(hi[i], x)
				}
			}
		}
	}
	return lo, hi, !math.IsInf(lo[0], 1)
}
