package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Tee slots and dovetails are cut in two goes. A plain cutter first takes what can be reached
// from above: the throat of a slot, or what lies beside the top of a tongue. An undercutter,
// whose head is wider than its neck, then runs in from an open end and takes the rest. Each
// go takes only what its tool takes; the feature is finished when both have been.

// Undercut is what a tee slot or dovetail has besides its straight room.
type Undercut struct {
	Foot   float64 // of a tee slot: width of the foot; of a dovetail: width at its wide place
	Height float64 // of a tee slot: of the foot above the floor; of a dovetail: its depth
	Angle  float64 // of a dovetail: between floor and flank, radians; 0 of a tee slot
	Tongue bool    // metal left standing
	Middle float64 // where its middle line lies across it
}

// teeSlot shapes a tee slot; what is not written of depth and foot is the standard's.
func (p *Part) teeSlot(f *Form) {
	m := f.Feature
	u := &Undercut{Foot: m.FootWidth.V.Nominal, Height: m.FootHeight.V.Nominal}
	foot, height, depth, ok := handbook.TeeSlot(m.Width.V.Nominal)
	if !m.FootWidth.Is() {
		u.Foot = foot
	}
	if !m.FootHeight.Is() {
		u.Height = height
	}
	if !m.Depth.Is() {
		f.Through, f.Depth = false, model.Known[float64]{V: depth, From: model.Handbook}
	}
	if !ok && (!m.FootWidth.Is() || !m.FootHeight.Is() || !m.Depth.Is()) {
		f.lack(m.FootWidth.Missing())
		f.lack(m.FootHeight.Missing())
		f.lack(m.Depth.Missing())
		return
	}
	if f.Through || u.Height >= f.Depth.V-model.Grain || u.Foot <= m.Width.V.Nominal+model.Grain {
		f.Wrong = "its foot is not a wider room below its throat"
		return
	}
	f.Under = u
	p.channel(f)
	u.Middle = (f.Lo[f.Across] + f.Hi[f.Across]) / 2
}

// dovetail shapes a dovetail slot or tongue.
func (p *Part) dovetail(f *Form) {
	why := p.overRollers(f)
	m := f.Feature
	angle, ok := m.Angle.Get()
	switch {
	case why != "":
		f.Wrong = why
		return
	case !ok || !m.Sort.Is() || !m.Width.Is():
		f.lack(m.Angle.Missing())
		f.lack(m.Sort.Missing())
		f.lack(m.Width.Missing())
		return
	case f.Through || !(angle >= 30 && angle < 90):
		f.Wrong = "a dovetail has a floor, and 30 to 90 degrees between floor and flank"
		return
	}
	u := &Undercut{Height: f.Depth.V, Angle: angle * math.Pi / 180, Tongue: m.Sort.V == "tongue"}
	u.Foot = m.Width.V.Nominal + 2*f.Depth.V/math.Tan(u.Angle)
	f.Under = u
	p.channel(f)
	u.Middle = (f.Lo[f.Across] + f.Hi[f.Across]) / 2
	if u.Tongue && f.Wrong == "" && len(f.Lacks) == 0 {
		f.Lo[f.Across], f.Hi[f.Across] = p.Low[f.Across], p.High()[f.Across]
		f.Open[model.FaceOn(f.Across, 1)], f.Open[model.FaceOn(f.Across, -1)] = true, true
	}
}

// undercutter says whether a tool has a head wider than its neck.
func undercutter(c *model.Cutter) bool {
	if c == nil {
		return false
	}
	switch c.Kind {
	case "tee_slot_cutter", "dovetail_cutter", "keyseat_cutter":
		return true
	}
	return false
}

// lane is the frame of an undercut form from its first end, over by how much each open end
// is overrun, and its length.
func (k *Cut) lane(f *Form, over float64) (solid.Frame, float64) {
	lo, hi := f.Lo[f.Along], f.Hi[f.Along]
	if f.Open[model.FaceOn(f.Along, -1)] {
		lo -= over
	}
	if f.Open[model.FaceOn(f.Along, 1)] {
		hi += over
	}
	var at, u solid.Vec
	at[f.Into.Face.Axis()], at[f.Across], at[f.Along] = f.Into.At, f.Under.Middle, lo
	u[f.Along] = 1
	return solid.On(at, u, Normal(f.Into.Face)), hi - lo
}

// undercut makes a tee slot or dovetail as far as the tool does.
func (k *Cut) undercut(t Target) {
	f := t.Form
	fs := k.Part.change(k.After, f)
	w := Working{Target: t, Entry: f.Into, Depth: f.Depth.V, Deep: f.Depth.V}
	w.Facing = k.Hold.Pose.Dir(Normal(f.Into.Face))[2] > 0.5
	out := k.Part.outward()
	fr, length := k.lane(f, out)
	narrow := f.Feature.Width.V.Nominal
	under := undercutter(k.Choice.Tool.Cutter) || k.Choice.Tool.Cutter == nil && fs.Begun
	reach := out + k.Part.Size[f.Across]
	var err error
	switch u := f.Under; {
	case !under && u.Tongue:
		d := k.Stack.Diameter.Or(0)
		w.Took = []solid.Removal{{Take: fr.Block(solid.Vec{0, -reach, -f.Depth.V}, solid.Vec{length, -u.Foot / 2, out}), By: f.Name()},
			{Take: fr.Block(solid.Vec{0, u.Foot / 2, -f.Depth.V}, solid.Vec{length, reach, out}), By: f.Name()},
			{Take: fr.Block(solid.Vec{0, -reach, 0}, solid.Vec{length, reach, out}), By: f.Name()}}
		w.Moves = k.lanes(f, u.Foot/2+d/2, -u.Foot/2-d/2)
	case !under:
		w.Took = fr.Slot(length, narrow, f.Depth.V, out, !f.Open[model.FaceOn(f.Along, -1)], !f.Open[model.FaceOn(f.Along, 1)], f.Name())
		w.Moves = k.lanes(f, 0)
	case u.Angle == 0:
		// The foot alone: that the neck finds its throat open is what the rules ask.
		foot := fr.TeeSlot(length, narrow, f.Depth.V, u.Foot, u.Height, 0, f.Name())
		w.Took, w.Moves = foot[1:], k.lanes(f, 0)
		w.Deep = u.Height
	case u.Tongue:
		w.Took, err = fr.Tongue(length, narrow, f.Depth.V, u.Angle, reach, 0, f.Name())
		d := k.Stack.Diameter.Or(0)
		w.Moves = k.lanes(f, narrow/2+d/2, -narrow/2-d/2)
	default:
		w.Took, err = fr.Dovetail(length, narrow, f.Depth.V, u.Angle, 0, f.Name())
		w.Moves = k.lanes(f, 0)
	}
	if err != nil {
		w.Wrong = err.Error()
	}
	if !w.Facing {
		w.Moves = nil
	}
	w.Run = length
	if fs.Finished {
		fs.Twice = true
	}
	fs.Finished = fs.Finished || under
	fs.Begun, fs.Depth, fs.ByProcess, fs.By = true, f.Depth.V, k.Choice.By, k.Spot
	w.Final = fs.Finished
	k.took(w)
	k.straightBurrs(f, f)
}

// lanes are passes along an undercut form at its floor, at the given distances beside its
// middle line: in from beyond an open end where there is one, else down into it.
func (k *Cut) lanes(f *Form, aside ...float64) []solid.Move {
	d := k.Stack.Diameter.Or(0)
	if d == 0 {
		return nil
	}
	var moves []solid.Move
	lo, hi := f.Lo[f.Along]+d/2, f.Hi[f.Along]-d/2
	if f.Open[model.FaceOn(f.Along, -1)] {
		lo -= d + k.Part.outward()
	}
	if f.Open[model.FaceOn(f.Along, 1)] {
		hi += d + k.Part.outward()
	}
	if lo > hi {
		lo, hi = (lo+hi)/2, (lo+hi)/2
	}
	first, last := lo, hi
	if !f.Open[model.FaceOn(f.Along, -1)] && f.Open[model.FaceOn(f.Along, 1)] {
		first, last = hi, lo // it enters at the open end
	}
	for _, x := range aside {
		at := func(along float64) solid.Vec {
			var v solid.Vec
			v[f.Along], v[f.Across] = along, f.Under.Middle+x
			v[f.Into.Face.Axis()] = f.Into.At - f.Into.Face.Sign()*f.Depth.V
			return k.Hold.Pose.Point(v)
		}
		above := at(first)
		above[2] = k.Hold.Hi[2] + k.Part.Build.Thumbs["room"].Or(1)
		moves = append(moves, solid.Move{From: above, To: at(first)})
		if first != last {
			moves = append(moves, solid.Move{From: at(first), To: at(last)})
		}
	}
	return moves
}
