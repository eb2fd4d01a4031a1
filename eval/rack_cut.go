package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// How the gaps of a rack are cut: a disc cutter stands square to its spindle and goes along the gap, so that
// the rack runs along the spindle. On a level spindle it lies across the table with its teeth up, and the cross
// slide sets it from gap to gap; on an upright one it stands on end with its teeth to the side, and the height
// does. Notches with upright sides are also milled by an end mill that points into the face. Nothing divides:
// every place is set by the dial, counted from the first, so that rounding to its lines does not add up.

// mostRackGaps bounds how many gaps of a rack are moved through on paper: the first, the last, and so many
// between that the tool passes all that could stand in its way (our own choice).
const mostRackGaps = 24

// racked cuts the gaps of a rack.
func (k *Cut) racked(t Target) {
	f, r := t.Form, t.Form.Rack
	down := k.gapDepth(r.Deep)
	w := Working{Target: t, Entry: f.Into, Depth: down}
	hand := k.Choice.ByHand || k.Step.Work.Kind != "setup"
	if !hand && k.Choice.NoTool == "" && k.Hold.Unplayed == "" {
		w.Wrong = k.rackWrong(f, down)
	}
	w.Facing = w.Wrong == ""
	if w.Facing && !hand && k.Choice.Tool.Size > 0 {
		k.rackMoves(&w, down)
	}
	for i := range r.Count {
		w.Took = append(w.Took, f.gapAt(i, down, k.Part.outward())...)
	}
	fs := k.Part.change(k.After, f)
	fs.Twice = fs.Twice || fs.Finished
	fs.Begun, fs.Depth, fs.ByProcess, fs.By, fs.Turns = true, down, k.Choice.By, k.Spot, r.Count
	fs.Finished = down >= r.Deep-model.Grain
	w.Final = fs.Finished
	k.took(w)
}

// gapDepth is how deep the step brings gaps that are to be so deep.
func (k *Cut) gapDepth(deep float64) float64 {
	st := k.Step.Step
	switch {
	case st == nil:
	case st.DownTo.Depth.Is():
		return min(deep, st.DownTo.Depth.V)
	case st.Leaves.Is():
		return max(0, deep-st.Leaves.V)
	}
	return deep
}

// rackWrong says why a rack is not made so; "" if it is.
func (k *Cut) rackWrong(f *Form, down float64) string {
	r, c := f.Rack, k.Choice.Tool.Cutter
	axis, square := k.alongSpindle()
	closed := model.NoFace
	for _, sign := range [2]float64{-1, 1} {
		if face := model.FaceOn(r.Lie, sign); !f.Open[face] {
			closed = face
		}
	}
	mill := c != nil && (c.Kind == "end_mill" || c.Kind == "slot_drill")
	switch {
	case !square:
		return "no side of the part stands along the spindle"
	case k.disc() && axis != r.Run:
		return "a disc stands square to its spindle, and a rack runs along it: on a level spindle it lies across the table, on an upright one it stands on end"
	case !k.disc() && !mill:
		return k.Choice.Tool.Path() + " is no disc that goes along the gaps of a rack"
	case mill && r.leans():
		return k.uprightSides(&r.Section)
	case mill && (axis != f.Into.Face.Axis() || k.Hold.Pose.Dir(Normal(f.Into.Face))[2] < 0.5):
		return "an end mill points into the face of a rack, and that does not look at the spindle"
	case closed != model.NoFace:
		return "towards the " + closed.String() + " its gaps end in the metal, and the cutter does not run out there"
	case k.disc() && min(r.At(0)-r.Walls[0], r.Walls[1]-r.At(r.Count-1)) < c.Width.Or(0)/2-model.Grain:
		return k.Choice.Tool.Path() + ", " + model.Figure(c.Width.V) + " mm wide, goes into the wall at the end of the rack: the middle of a gap lies " +
			model.Figure(round3(min(r.At(0)-r.Walls[0], r.Walls[1]-r.At(r.Count-1)))) + " mm from it"
	case k.uprightDisc() && r.leans() && down >= r.Deep-model.Grain:
		return k.uprightSides(&r.Section)
	}
	return ""
}

// rackMoves is the way of the tool through the gaps of a rack.
func (k *Cut) rackMoves(w *Working, down float64) {
	f, r := w.Target.Form, w.Target.Form.Rack
	wide := r.Section.Opening()
	if c := k.Choice.Tool.Cutter; k.disc() && c.Width.Is() {
		wide = c.Width.V
	}
	every := max(1, (r.Count+mostRackGaps-2)/(mostRackGaps-1))
	run := 0.0
	for i := 0; i < r.Count; i++ {
		if i%every != 0 && i != r.Count-1 {
			continue
		}
		g := *f
		g.Lo[r.Run], g.Hi[r.Run] = r.At(i)-wide/2, r.At(i)+wide/2
		n := f.Into.Face.Axis()
		if f.Into.Face.Sign() > 0 {
			g.Lo[n] = f.Into.At - down
		} else {
			g.Hi[n] = f.Into.At + down
		}
		if k.disc() {
			k.bladeMoves(w, &g, r.Run)
			run = w.Run
			continue
		}
		moves, way := k.straightMoves(&g, f.Into, k.Choice.Tool.Size/2)
		w.Moves = append(w.Moves, moves...)
		run, w.Deep = way, down
	}
	w.Run = run * float64(r.Count)
}

// SetBy is the axis of the machine, 0 along the table, 1 across it, 2 up, that a rack is set along from gap to
// gap as it is held; -1 where none lies so.
func (k *Cut) SetBy(f *Form) int { return k.machineAxis(f.Rack.Run, 3) }

// machineAxis is which of the first n axes of the machine an axis of the part lies along as it is held; -1
// where none.
func (k *Cut) machineAxis(axis, n int) int {
	var along solid.Vec
	along[axis] = 1
	d := k.Hold.Pose.Dir(along)
	if k.Hold.Turned != 0 {
		d = Lean{2, k.Hold.Turned}.pose().Dir(d)
	}
	for i := range n {
		if math.Abs(d[i]) > 1-1e-9 {
			return i
		}
	}
	return -1
}
