package eval

import (
	"fettle/eval/solid"
	"fettle/schema/model"
)

// A cutter that has metal on one side of it alone cuts against the feed or with it, by which way it goes.
// Seen from above a spindle that runs forward turns clockwise, so that a tooth that looks along n moves
// along (ny, -nx). The work is fed against the teeth, conventionally, where the tool goes that way past the
// metal, and with them, a climb cut, where it goes the other way. A slot that is as wide as the cutter has
// metal on both sides, and is neither.

// Begins is the side of the part, as it lies, at which the cut must begin to be conventional; false where
// the metal stands on both sides of the tool, or the spindle lies level.
func (k *Cut) Begins() (model.Face, bool) {
	if k.LevelSpindle() || k.Unplayed != "" || k.Choice.Tool.Cutter == nil || k.Choice.ByHand {
		return model.NoFace, false
	}
	side := model.NoFace
	for i := range k.Works {
		n, ok := k.metalSide(&k.Works[i])
		if !ok {
			return model.NoFace, false
		}
		way := solid.Vec{n[1], -n[0], 0}
		if k.Choice.Reverse {
			way = way.Times(-1)
		}
		at := k.Hold.FaceTo(way.Times(-1))
		if side != model.NoFace && at != side {
			return model.NoFace, false
		}
		side = at
	}
	return side, side != model.NoFace
}

// metalSide is the level direction in which the metal lies from the tool, in the machine's frame.
func (k *Cut) metalSide(w *Working) (solid.Vec, bool) {
	f := w.Target.Form
	look := model.NoFace // the open side, where the tool stands
	switch {
	case k.Choice.By != "milling" && k.Choice.By != "sawing", w.Wrong != "":
	case f == nil && w.Target.Face != model.NoFace:
		look = w.Target.Face
	case f == nil:
	case f.Feature.Kind == "slit" || f.Feature.Kind == "split":
		if k.Step.Step != nil && k.Step.Step.Along.Is() {
			look = w.Entry.Face
		}
	case f.Feature.Kind == "step" && w.Entry.Face == f.Into.Face:
		look = f.Side
	}
	if look == model.NoFace {
		return solid.Vec{}, false
	}
	n := k.Hold.Pose.Dir(Normal(look)).Times(-1)
	level := n[2] < model.Grain && n[2] > -model.Grain
	return n, level
}

// Starts is the side at which the cut is said to begin; NoFace where none is written.
func (k *Cut) Starts() model.Face {
	if k.Step.Step == nil {
		return model.NoFace
	}
	return k.Step.Step.Starts.V.Face
}

// Climbs says whether the work is fed with the teeth: said so, or begun at the side that makes it so.
func (k *Cut) Climbs() (climbs, bySide bool) {
	if k.Choice.Climb {
		return true, false
	}
	at := k.Starts()
	if at == model.NoFace {
		return false, false
	}
	side, ok := k.Begins()
	bySide = ok && at == side.Opposite()
	return bySide, bySide
}
