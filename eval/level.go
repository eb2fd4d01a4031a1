package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// A level spindle points from the column towards the one who works at it, across the table's long
// way; its arbor lies over the table. A cut there is played in the frame of the spindle, in which it
// stands upright as on any other mill: x along the table, y downwards, z towards the column. The
// ways of the tool and the places where things meet are then put back into the frame of the holding.

// LevelSpindle says whether the operation is made on a machine whose spindle lies level.
func (k *Cut) LevelSpindle() bool {
	m := k.Choice.machine(k.Hold)
	return m != nil && m.Spindle.V == "level" && !k.Choice.ByHand && k.Step.Work.Kind == "setup"
}

// spindle is the pose from the frame of a holding to that of a level spindle.
func (h *Holding) spindle() solid.Pose {
	onTable := Lean{2, h.Turned}.pose()
	return after(solid.Attitude(solid.Vec{0, 1, 0}, solid.Vec{0, 0, -1}), onTable)
}

// playLevel plays an operation in the frame of a level spindle.
func (k *Cut) playLevel() {
	to := k.Hold.spindle()
	seen := *k.Hold
	seen.Pose = after(to, k.Hold.Pose)
	seen.Piece = k.Hold.Before.Piece.Placed(seen.Pose)
	for i := range 3 {
		seen.Lo[i], seen.Hi[i] = seen.Piece.Extent(i, -1), seen.Piece.Extent(i, 1)
	}
	seen.Obstacles = nil
	for _, o := range k.Hold.Obstacles {
		o.Least, o.Most, o.Hole = o.Least.Placed(to), o.Most.Placed(to), Hole{}
		seen.Obstacles = append(seen.Obstacles, o)
	}
	sub := *k
	sub.Hold, sub.level = &seen, true
	sub.playUpright()
	back := to.Inverse()
	for i := range sub.Works {
		w := &sub.Works[i]
		for n, m := range w.Moves {
			w.Moves[n] = solid.Move{From: back.Point(m.From), To: back.Point(m.To)}
		}
	}
	for i := range sub.Near {
		n := &sub.Near[i]
		n.At, n.Lift, n.Aside = back.Point(n.At), 0, 0 // both are ways in the spindle's frame
	}
	k.After, k.Works, k.Stack, k.Near, k.Unplayed = sub.After, sub.Works, sub.Stack, sub.Near, sub.Unplayed
}

// AxisHeights are the lowest and the highest place of a level spindle's axis above the table that
// an operation needs; not known where the holding's height is not. False where nothing moves.
func (k *Cut) AxisHeights() (low, high model.Known[float64], moves bool) {
	a, b := math.Inf(1), math.Inf(-1)
	for _, w := range k.Works {
		for _, m := range w.Moves {
			a, b = min(a, m.From[2], m.To[2]), max(b, m.From[2], m.To[2])
		}
	}
	if math.IsInf(a, 1) {
		return low, high, false
	}
	if !k.Hold.Seat.Is() {
		lack := model.Lacking[float64](k.Hold.Seat.Missing())
		return lack, lack, true
	}
	return model.Sure(a), model.Sure(b), true
}
