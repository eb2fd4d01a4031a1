package eval

import (
	"math"

	"fettle/schema/model"
)

// RunOut is the room between the inner end of a thread and the shoulder it runs towards, mm: up
// to where the work becomes thicker than the thread, or the groove before it begins to end. False
// where there is no shoulder in front of the jaws.
func (k *Turn) RunOut(w *Turning) (room float64, shoulder bool) {
	inner := w.X0
	if k.Hold.Sign < 0 {
		inner = w.X1
	}
	start := k.Hold.At(inner)
	nearest := math.Inf(1)
	for _, z := range k.Before.Profile {
		a, b := k.Hold.At(z.X0), k.Hold.At(z.X1)
		far := math.Max(a, b)
		if far > start+model.Grain || z.Most() <= math.Max(w.R0, w.R1)+model.Grain {
			continue
		}
		nearest = math.Min(nearest, start-far)
	}
	if math.IsInf(nearest, 1) {
		return 0, false
	}
	// A groove there is room to run out into from its own outer end on.
	for _, z := range k.Before.Profile {
		a, b := k.Hold.At(z.X0), k.Hold.At(z.X1)
		if z.Spoilt == "grooved" && math.Min(a, b) >= start-nearest-model.Grain && math.Max(a, b) <= start+model.Grain+(b-a) {
			return math.Max(nearest, math.Abs(b-a)), true
		}
	}
	return nearest, true
}

// TaperWay is how far the top slide must go to turn a taper, mm: along the slope, and as much again
// as usual to run in and out at both ends.
func (w *Turning) TaperWay() float64 {
	return math.Hypot(w.X1-w.X0, w.R1-w.R0)
}

// BedNeeded is the length of the bed that a tool in the tailstock takes up, from the spindle nose:
// what holds the work, the work as it stands out, and the tool with its holder in front of the
// tailstock's quill. The tool is in front of the work; it goes in by the quill's stroke.
func (k *Turn) BedNeeded() model.Known[float64] {
	if !k.InTailstock() {
		return model.Known[float64]{}
	}
	tool := k.AsCut().Stack.Overall
	holder := model.Sure(0.0)
	for _, m := range k.Choice.Mounts {
		if m.Holder != nil {
			holder = m.Holder.Out
		}
	}
	grasped := grasp * k.Choice.Tool.Size
	tip := model.Both(tool, holder, func(t, h float64) float64 { return math.Max(t-grasped, 0) + h })
	return model.Both(k.Hold.Front(), tip, func(f, t float64) float64 { return f + k.Hold.Free + t })
}

// Reach is how far a lathe tool stands out of its holder.
func (t Pick) Reach() model.Known[float64] {
	if t.Cutter == nil {
		return model.Known[float64]{}
	}
	return t.Cutter.Reach
}
