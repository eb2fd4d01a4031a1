package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// A disc cutter on an arbor (a side and face cutter, or a saw that mills a slot) cuts with its rim,
// and the sides follow. It stands square to the axis of the spindle, so that a slot's walls, or the
// wall or the floor of a step, lie square to it, and it runs right along: what stops short of an
// edge would end in the cutter's own arc.

// bladed says whether the tool is a disc that mills along.
func (k *Cut) bladed() bool {
	c := k.Choice.Tool.Cutter
	if c == nil || k.Choice.By != "milling" {
		return false
	}
	return c.Kind == "side_and_face_cutter" || c.Kind == "slitting_saw"
}

// Bladed says whether a disc cutter mills along with its rim.
func (k *Cut) Bladed() bool { return k.bladed() }

// blade mills a slot or a step with a disc; false where the tool is none.
func (k *Cut) blade(t Target) bool {
	if !k.bladed() {
		return false
	}
	f := t.Form
	fs := k.Part.change(k.After, f)
	shape := k.trimmed(f)
	w := Working{Target: t, Entry: f.Into, Through: f.Through, Depth: shape.Depth.V}
	w.Took = shape.removal(k.Part.outward(), 0)
	axis, square := k.alongSpindle()
	switch {
	case f.Skew != nil:
		w.Wrong = "a disc runs along a way of the table, and it runs aslant of them"
	case !square:
		w.Wrong = "none of its walls stands square to the spindle"
	case f.Feature.Kind == "pocket":
		w.Wrong = "a disc leaves no room with closed ends"
	case axis == f.Into.Face.Axis() && f.Feature.Kind == "step":
		w.Entry = Plane{f.Side, k.Part.FaceAt(f.Side), f.Side.String()}
	case axis != f.Across:
		w.Wrong = "a disc stands square to the spindle and runs along its slot; here the slot runs along the spindle"
		if axis == f.Into.Face.Axis() {
			w.Wrong = "a disc cuts with its rim, and the spindle points into " + w.Entry.Name
		}
	}
	w.Facing = w.Wrong == ""
	if w.Facing {
		k.bladeMoves(&w, shape, axis)
	}
	k.straightDone(fs, f, shape, w)
	return true
}

// alongSpindle is the axis of the part that lies along the spindle; false where none does.
func (k *Cut) alongSpindle() (int, bool) {
	for i := range 3 {
		if math.Abs(k.Hold.Pose.Dir(Normal(model.FaceOn(i, 1)))[2]) > 1-1e-9 {
			return i, true
		}
	}
	return 0, false
}

// bladeMoves are the ways of a disc through the room of a form, square to an axis of the part: side
// by side where the room is wider than the disc.
func (k *Cut) bladeMoves(w *Working, f *Form, axis int) {
	e := w.Entry.Face.Axis()
	s := sawCut{radius: k.Choice.Tool.Size / 2, across: axis, along: 3 - axis - e, entry: w.Entry, travels: true}
	s.width = k.Choice.Tool.Cutter.Width.Or(f.Hi[axis] - f.Lo[axis])
	s.depth = f.Hi[e] - f.Lo[e]
	lo, hi := k.Before.Bounds()
	s.lo, s.hi = max(lo[s.along], f.Lo[s.along]-k.Part.outward()), min(hi[s.along], f.Hi[s.along]+k.Part.outward())
	w.Deep, w.Reach = s.depth, s.depth
	w.Run = s.hi - s.lo + 2*beyondMiddle(2*s.radius, s.depth)
	if f.runsOut() && s.radius > 0 {
		// Full depth from end to end, and beyond either end the cutter's own arc.
		w.Took = append(w.Took, f.arcs(s.radius)...)
		s.lo, s.hi = f.Lo[s.along]+beyondMiddle(2*s.radius, s.depth)+beyond, f.Hi[s.along]-beyondMiddle(2*s.radius, s.depth)-beyond
		w.Run = f.Hi[s.along] - f.Lo[s.along] + s.depth
		s.mid = (f.Lo[axis] + f.Hi[axis]) / 2
		w.Moves = s.moves(k)
		return
	}
	for _, sign := range [2]float64{-1, 1} {
		if face := model.FaceOn(s.along, sign); !f.Open[face] {
			w.Wrong = "towards the " + face.String() + " it stops short of the edge, and a disc " + model.Figure(2*s.radius) + " mm across ends there in an arc " +
				model.Figure(math.Round(beyondMiddle(2*s.radius, s.depth)*10)/10) + " mm long"
			w.Facing = false
			return
		}
	}
	first, last := f.Lo[axis]+s.width/2, f.Hi[axis]-s.width/2
	switch low, high := f.Open[model.FaceOn(axis, -1)], f.Open[model.FaceOn(axis, 1)]; {
	case first <= last:
	case low && !high:
		first = last // it stands out over the open side
	case high && !low:
		last = first
	default:
		first = (f.Lo[axis] + f.Hi[axis]) / 2
		last = first
	}
	for _, mid := range [2]float64{first, last} {
		s.mid = mid
		w.Moves = append(w.Moves, s.moves(k)...)
		if near(first, last) {
			break
		}
	}
	if n := math.Ceil((f.Hi[axis]-f.Lo[axis])/s.width - model.Same); n > 1 {
		w.Run *= n
	}
}

// bladeFace is the way of a disc over a face that stands along the spindle: its rim cuts, pass
// beside pass; false where the tool is none or the face lies otherwise.
func (k *Cut) bladeFace(f model.Face, at float64, up solid.Vec) ([]solid.Move, float64, bool) {
	if !k.bladed() || math.Abs(up[2]) > 1e-6 {
		return nil, 0, false
	}
	r, wide := k.Choice.Tool.Size/2, k.Choice.Tool.Cutter.Width.Or(0)
	axis, sign := 0, up[0]
	if math.Abs(up[1]) > 0.5 {
		axis, sign = 1, up[1]
	}
	var v solid.Vec
	v[f.Axis()] = at
	level := k.Hold.Pose.Point(v)[axis] + sign*r
	lo, hi := k.Hold.Lo, k.Hold.Hi
	pass := func(z float64) solid.Move {
		var m solid.Move
		m.From[axis], m.To[axis] = level, level
		m.From[2], m.To[2] = z, z
		m.From[1-axis], m.To[1-axis] = lo[1-axis]-r, hi[1-axis]+r
		return m
	}
	run := hi[1-axis] - lo[1-axis] + 2*r
	if wide <= 0 || wide >= hi[2]-lo[2] {
		return []solid.Move{pass((lo[2]+hi[2])/2 - wide/2)}, run, true
	}
	return []solid.Move{pass(lo[2]), pass(hi[2] - wide)}, run * math.Ceil((hi[2]-lo[2])/wide-model.Same), true
}
