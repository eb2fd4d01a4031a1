package eval

import (
	"fettle/eval/solid"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// How gaps of teeth are cut. A disc cutter stands beside the blank on an upright spindle: its plane is
// level, the middle of its width at the height of the axis, and it goes along the axis at full depth.
// Where the gaps lean it leans by as much; how a leaning spindle clears what stands about is not
// reckoned, and no way of the tool is recorded then. Helical gaps turn the piece by wheels between the
// table's screw and the head. A throated wheel is gashed by a disc that is fed in over the middle of the
// rim, and finished, hollow and all, by a hob, a tap of the worm's pitch, or a fly cutter ground to the
// worm's thread. Teeth in a bore are planed gap by gap, the piece held still in between.

// disc says whether the tool of the cut is a disc that turns level.
func (k *Cut) disc() bool {
	c := k.Choice.Tool.Cutter
	if c == nil {
		return false
	}
	switch c.Kind {
	case "gear_cutter", "slitting_saw", "side_and_face_cutter", "fly_cutter":
		return true
	case "angle_cutter":
		return c.Bore.Is()
	}
	return false
}

// plunges says whether the tool of the cut is fed in over the middle of the rim and not along it.
func (k *Cut) plunges(f *Form) bool { return f.Tooth.Throat != nil }

// IsHob says whether a cutter is a hob.
func IsHob(c *model.Cutter) bool { return c.Kind == "gear_cutter" && c.ReamerKind.V == "hob" }

// Hollows says whether a tool leaves the hollow of a throated wheel with its gaps.
func Hollows(c *model.Cutter) bool {
	return c != nil && (c.Kind == "tap" || c.Kind == "fly_cutter" || IsHob(c))
}

// Freely says whether the tool turns the wheel that it cuts: a hob, or a tap in place of one.
func (k *Cut) Freely(f *Form) bool { return Freely(f, k.Choice.Tool.Cutter) }

// Freely says whether a tool turns the wheel that it cuts.
func Freely(f *Form, c *model.Cutter) bool {
	return f != nil && f.Tooth != nil && f.Tooth.Throat != nil && Hollows(c) && c.Kind != "fly_cutter"
}

// toothed marks an outside that has teeth: nothing grips there any more.
func (p Profile) toothed(f *Form, by finding.Spot) Profile {
	if f.Tooth.Inside {
		return p
	}
	return p.marked(f.Lo[0], f.Hi[0], func(z *Zone) { z.Spoilt, z.By = "toothed", by })
}

// toothed cuts the gaps of teeth; false where they are made as any other feature on the round is.
func (k *Cut) toothed(t Target) bool {
	f, d := t.Form, k.Hold.Choice.Divided
	switch {
	case k.Choice.NoTool != "" || k.Hold.Carried == nil && k.Hold.Unplayed != "":
		// Played as if done: what is missing is told of, and no more follows from it.
		fs := k.Part.change(k.After, f)
		fs.Begun, fs.Finished, fs.ByProcess, fs.By, fs.Turns = true, true, k.Choice.By, k.Spot, len(f.Spins)
		return true
	case f.Tooth.Inside:
		k.tookGaps(Working{Target: t, Entry: f.Into, Wrong: k.insideWrong(f)}, f.Tooth.Deep)
		return true
	case f.Tooth.Section != nil && k.Choice.ByHand:
		k.tookGaps(Working{Target: t, Entry: f.Into}, f.Tooth.Deep)
		return true
	case d != nil && k.Hold.Carried != nil && (k.disc() || f.Tooth.Throat != nil && Hollows(k.Choice.Tool.Cutter)):
		k.discTeeth(t)
		return true
	case f.Tooth.Lean == 0 && f.Tooth.Throat == nil && f.Tooth.Section == nil || k.Choice.ByHand:
		return false
	}
	w := Working{Target: t, Entry: f.Into, Wrong: "nothing here turns the piece from gap to gap"}
	switch {
	case d == nil:
	case f.Tooth.Lean == 0 && f.Tooth.Throat == nil:
		w.Wrong = k.uprightSides(f.Tooth.Section)
	default:
		w.Wrong = "its gaps lean or are throated, and " + k.Choice.Tool.Path() + " is no disc, hob or tap that cuts them"
	}
	k.tookGaps(w, f.Tooth.Deep)
	return true
}

// discTeeth cuts the gaps with a disc, the piece turned on between.
func (k *Cut) discTeeth(t Target) {
	f, d := t.Form, k.Hold.Choice.Divided
	w := Working{Target: t, Entry: f.Into, Level: true}
	w.Run = (f.Hi[0] - f.Lo[0]) * float64(f.Tooth.Count)
	if d.Upright {
		w.Wrong = "a disc on an upright spindle cuts along an axis that lies level, and this one stands upright"
	}
	down := f.Tooth.Deep
	if st := k.Step.Step; st != nil {
		switch {
		case st.DownTo.Depth.Is():
			down = min(down, st.DownTo.Depth.V)
		case st.Leaves.Is():
			down = max(0, down-st.Leaves.V)
		}
	}
	if w.Wrong == "" && f.Tooth.Section != nil && down >= f.Tooth.Deep-model.Grain && k.uprightDisc() {
		w.Wrong = k.uprightSides(f.Tooth.Section)
	}
	if w.Wrong == "" && k.Choice.Tool.Size > 0 {
		if f.Tooth.Lean == 0 {
			w.Moves = k.discMoves(f, down)
		}
		side := 270.0 // the machine's front
		switch {
		case k.level:
			side = 0 // the disc stands over the piece
		case k.Hold.Carried.Sign < 0:
			side = 90
		}
		turn := towards(f.Spins[0] - side)
		w.Turn = &turn
	}
	k.tookGaps(w, down)
}

// tookGaps takes all gaps, so deep, and notes what has become of the teeth.
func (k *Cut) tookGaps(w Working, down float64) {
	f := w.Target.Form
	w.Depth, w.Facing = down, w.Wrong == ""
	w.Took = append(w.Took, k.Part.gaps(f, down)...)
	fs := k.Part.change(k.After, f)
	fs.Twice = fs.Twice || fs.Finished
	fs.Begun, fs.Depth, fs.ByProcess, fs.By, fs.Turns = true, down, k.Choice.By, k.Spot, len(f.Spins)
	fs.Finished = down >= f.Tooth.Deep-model.Grain
	if f.Tooth.Throat != nil {
		fs.Finished = fs.Finished && (Hollows(k.Choice.Tool.Cutter) || k.Choice.ByHand)
		if fs.Finished {
			w.Took = append(w.Took, k.hollowed(f)...)
		}
	}
	w.Final = fs.Finished
	k.took(w)
}

// gaps is what all gaps take, so deep, in the part's frame.
func (p *Part) gaps(f *Form, down float64) []solid.Removal {
	var out []solid.Removal
	one := f.gap(down, p.outward())
	for _, s := range f.Spins {
		back := towards(s).Inverse()
		if f.Tooth.Inside && !p.Own(f.About) {
			back = after(f.About.Pose().Inverse(), back)
		}
		for _, r := range one {
			out = append(out, turnedBack(r, back))
		}
	}
	return out
}

// uprightDisc says whether the tool is a disc with parallel sides.
func (k *Cut) uprightDisc() bool {
	c := k.Choice.Tool.Cutter
	return c != nil && (c.Kind == "slitting_saw" || c.Kind == "side_and_face_cutter")
}

// uprightSides says that a tool leaves the sides of a gap upright, and what is wanted.
func (k *Cut) uprightSides(s *GapSection) string {
	return "its sides lean apart by " + model.Figure(round3(s.Included())) + " degrees, and " + k.Choice.Tool.Path() + " does not leave them so: an angle cutter of as many degrees goes along there"
}

// hollowed takes the hollow round a throated rim, and turns the half section to it.
func (k *Cut) hollowed(f *Form) []solid.Removal {
	st := f.hollow()
	for i := range len(st) - 1 {
		k.After.Profile = k.After.Profile.turned(st[i].X, st[i+1].X, st[i].R, st[i+1].R, Zone{By: k.Spot})
	}
	m, err := solid.Axle{}.Profile(k.Before.Piece.Blank(), f.Name(), st...)
	if err != nil {
		return nil
	}
	return []solid.Removal{m}
}

// insideWrong says why teeth in a bore are not made so; "" if they are.
func (k *Cut) insideWrong(f *Form) string {
	if k.Step.Work.Kind != "setup" || k.Choice.ByHand {
		return ""
	}
	says := "its gaps lie in a bore of " + model.Figure(2*f.Tooth.On) + " mm, where no cutter on a spindle comes"
	if c := k.Choice.Tool.Cutter; c != nil && k.disc() && k.Choice.Tool.Size > 0 {
		says = k.Choice.Tool.Path() + ", " + model.Figure(k.Choice.Tool.Size) + " mm across, stands with its arbor square to the axis: in a bore of " +
			model.Figure(2*f.Tooth.On) + " mm, " + model.Figure(f.Tooth.X1-f.Tooth.X0) + " mm long, the arbor would go through the rim"
	}
	return says + "; they are planed gap by gap on a lathe that divides by its spindle, or broached"
}

// discMoves is the way of the disc's lower face in the machine's frame: in at the free end of the
// teeth, and along to their held end. The disc stands in front of the piece, on a level spindle over it.
func (k *Cut) discMoves(f *Form, down float64) []solid.Move {
	r := k.Choice.Tool.Size / 2
	a, b := k.Hold.Pose.Point(solid.Vec{f.Hi[0], 0, 0}), k.Hold.Pose.Point(solid.Vec{f.Lo[0], 0, 0})
	if a[0] < b[0] {
		a, b = b, a
	}
	if k.plunges(f) {
		a = a.Add(b).Times(0.5)
		b = a
	}
	half := k.Choice.Tool.Cutter.Width.V / 2
	y := -(f.Hi[2] - down + r)
	a[1], b[1] = a[1]+y, b[1]+y
	a[2], b[2] = a[2]-half, b[2]-half
	out := a
	out[1] -= down + k.Part.outward()
	return []solid.Move{{From: out, To: a}, {From: a, To: b}}
}
