package sheet

import (
	"fmt"
	"math"

	"fettle/eval"
	"fettle/schema/model"
)

// teeth says what an operation on teeth wants besides plate and depth: which teeth the cutter is to be for,
// how cutter or table lean, the wheels that turn the piece as the table goes, and how a hollow comes out.
func teeth(k *eval.Cut, put func(a, b string)) {
	for i := range k.Works {
		w := &k.Works[i]
		f := w.Target.Form
		if w.Wrong == "" && !k.Choice.ByHand {
			slanting(k, f, put)
		}
		if f == nil || f.Tooth == nil || w.Wrong != "" {
			continue
		}
		t := f.Tooth
		if len(w.Moves) == 0 {
			put("gaps deep", model.Figure(tidy(w.Depth))+" mm from the outside")
		}
		if v := t.Virtual(); t.Lean != 0 && v != t.Count && t.Module > 0 {
			put("cutter for", fmt.Sprintf("%d teeth: %d that lean %s degrees", v, t.Count, model.Figure(math.Round(math.Abs(t.Lean)*1e4)/1e4)))
		}
		if words, _, ok := k.LeansBy(f); ok {
			put("leans", words)
			if k.LevelSpindle() {
				put("first", "the middle of the cutter's width over the axis and over the middle of the teeth, the table square; then swing it")
			} else {
				put("first", "the middle of the cutter's width at the height of the axis and in front of the middle of the teeth, set after it leans")
			}
		}
		if h, lacks, wrong, ok := k.Helix(f); ok {
			put("lead of the helix", model.Figure(tidy(h.Lead))+" mm")
			switch {
			case wrong != "":
				put("MISSING", wrong)
			case len(lacks) > 0:
				put("wheels", "not known: "+lacks[0].Fact)
			case h.Found:
				put("wheels", h.Words())
				put("try the hand", "draw a pencil line along the blank with the spindle still; an idler more or less turns it round")
			}
		}
		throat(k, w, put)
	}
}

// slanting says how an angle cutter stands to a gap whose sides lean: where the steep side of a ratchet's lies, and what
// its point leaves of a floor.
func slanting(k *eval.Cut, f *eval.Form, put func(a, b string)) {
	s, c := f.Section(), k.Choice.Tool.Cutter
	if s == nil || c == nil || c.Kind != "angle_cutter" {
		return
	}
	put("edges of the cutter", model.Figure(math.Round(s.Included()*1e3)/1e3)+" degrees apart, as the sides of the gap are drawn")
	if s.Ratchet && f.Tooth != nil {
		by := s.Beside(f.Tooth.On)
		words := "in the middle of the piece: its line goes through the axis"
		switch {
		case by > model.Grain:
			words = model.Figure(tidy(by)) + " mm beside the axis, towards its own tooth"
		case by < -model.Grain:
			words = model.Figure(tidy(-by)) + " mm beside the axis, towards the gap"
		}
		put("steep side", words)
	}
	if w := s.Floor(); w > model.Grain {
		put("floor", model.Figure(tidy(w))+" mm wide: the point goes along either side of it, and what stands between goes first, with a saw or a disc")
	}
}

// planedTeeth says how gaps are planed on a lathe.
func planedTeeth(w *eval.Turning, put func(a, b string)) {
	t := w.Target.Form.Tooth
	put("along", model.Figure(tidy(w.X1-w.X0))+" mm in strokes of the saddle, the spindle held from turning at every gap")
	put("gaps", fmt.Sprintf("%d, %s mm deep from the surface, %s mm wide on the pitch circle: a bit ground to the gap", t.Count, model.Figure(tidy(w.Off)), model.Figure(tidy(w.Width))))
	put("floor at", "⌀"+model.Figure(tidy(2*t.Root))+" mm")
}

// toothWords says what teeth are, for the drawing.
func toothWords(t *eval.Toothing) string {
	words := fmt.Sprintf("%d teeth", t.Count)
	if t.Module > 0 {
		words += ", module " + model.Figure(t.Module)
	}
	if t.Form == "cycloidal" {
		words += ", cycloidal"
	}
	if t.Lean != 0 {
		hand := "right"
		if t.Lean < 0 {
			hand = "left"
		}
		words += ", " + model.Figure(math.Round(math.Abs(t.Lean)*1e4)/1e4) + "° " + hand
	}
	if t.Throat != nil {
		words += ", throated R" + model.Figure(tidy(t.Throat.Drive.ThroatRadius))
	}
	return words
}

// throat says how the teeth of a throated wheel are gashed, and finished.
func throat(k *eval.Cut, w *eval.Working, put func(a, b string)) {
	t := w.Target.Form.Tooth
	if t.Throat == nil {
		return
	}
	d := t.Throat.Drive
	put("fed in", "over the middle of the rim, and not along it")
	if !eval.Hollows(k.Choice.Tool.Cutter) {
		return
	}
	if k.Freely(w.Target.Form) {
		put("turned by", "the tool itself, the worm of the head out of mesh")
	}
	put("until", "the tips in the middle of the rim measure ⌀"+model.Figure(tidy(d.Throat))+" mm; hollow of radius "+model.Figure(tidy(d.ThroatRadius))+
		" mm, axes "+model.Figure(tidy(d.Centre))+" mm apart in the end")
}
