package eval

import (
	"math"

	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Passes is in how many goes a depth is taken, mm on one side; on a lathe on the radius, or along the
// axis of an end that is faced.
type Passes struct {
	Said   model.Known[float64] // the depth of each, as written
	Deep   float64              // what comes off in all
	Usual  float64              // the greatest depth of one that is usual where nothing is written; 0: no table says
	Source string               // of that
}

// Each is how deep one pass goes: as written, else as is usual; 0 where nobody says.
func (p Passes) Each() float64 {
	if p.Said.Is() {
		return p.Said.V
	}
	return p.Usual
}

// Count is how many passes there are, the last as deep as is left; 0 where nobody says.
func (p Passes) Count() int {
	each := p.Each()
	if !(each > 0) || !(p.Deep > 0) || p.Deep/each > 10000 {
		return 0
	}
	return int(math.Ceil(p.Deep/each - model.Grain))
}

func saidCut(st *Step) model.Known[float64] {
	if st.Step == nil {
		return model.Known[float64]{}
	}
	return st.Step.Cut
}

// Passes is how the depth of a milled or sawn thing is taken; false of what has none.
func (k *Cut) Passes() (Passes, bool) {
	out := Passes{Said: saidCut(k.Step)}
	cu := k.Choice.Tool.Cutter
	if cu == nil || k.Unplayed != "" || k.Step.Work.Kind != "setup" {
		return out, false
	}
	kind := ""
	for i := range k.Works {
		w := &k.Works[i]
		deep, of := k.takes(w)
		if w.Wrong == "" && deep > out.Deep+model.Grain {
			out.Deep, kind = deep, of
		}
	}
	if !(out.Deep > 0) {
		return out, false
	}
	switch cu.Kind { // sunk to its floor once, and fed along there: its head is as high as what it cuts
	case "tee_slot_cutter", "dovetail_cutter", "keyseat_cutter":
		return out, out.Said.Is()
	}
	if k.Choice.By == "milling" {
		_, out.Usual, out.Source, _ = handbook.PassDepth(kind, cu.Of.Or("HSS"), k.Part.Makes(k.Step).MetalGroup(), k.Choice.Tool.Size)
	}
	return out, true
}

// takes is how deep the tool goes into the metal for one target, and what sort of cut it is.
func (k *Cut) takes(w *Working) (deep float64, kind string) {
	f := w.Target.Form
	switch {
	case k.Choice.By != "milling" && k.Choice.By != "sawing":
		return 0, ""
	case f == nil && k.Part.Joined():
		return w.Deep, "face"
	case f == nil && w.Target.Face != model.NoFace:
		return math.Abs(k.Before.Faces[w.Target.Face].At - k.After.Faces[w.Target.Face].At), "face"
	case f == nil || len(f.Mouths) > 0:
		return 0, ""
	case w.Reach > 0:
		return w.Reach, "saw"
	}
	if had := k.Part.Feature(k.Before, f); had.Begun && had.Depth > 0 && had.Depth < w.Deep-model.Grain {
		return w.Deep - had.Depth, "slot"
	}
	return w.Deep, "slot"
}

// Passes is how what comes off on a lathe is taken; false of what has none.
func (k *Turn) Passes() (Passes, bool) {
	out := Passes{Said: saidCut(k.Step)}
	cu := k.Choice.Tool.Cutter
	if cu == nil || k.Unplayed != "" || cu.Kind != "turning_tool" && cu.Kind != "boring_bar" {
		return out, false
	}
	switch k.Choice.By {
	case "turning", "boring", "facing":
	default:
		return out, false
	}
	for i := range k.Works {
		if k.Works[i].Wrong == "" {
			out.Deep = math.Max(out.Deep, k.Works[i].Off)
		}
	}
	if !(out.Deep > model.Grain) || math.IsInf(out.Deep, 1) {
		return out, false
	}
	_, out.Usual, out.Source, _ = handbook.PassDepth("turning", cu.Of.Or("HSS"), k.Part.Makes(k.Step).MetalGroup(), 0)
	return out, true
}
