package choose

import (
	"math"

	"fettle/eval"
	"fettle/schema/model"
)

func chuckChoices(h *eval.Chucking) []Choice {
	s, c := h.Work.SetUp, &h.Choice
	var out []Choice
	add := func(what, item, why string) {
		out = append(out, Choice{Spot: h.Spot, What: what, Item: item, Why: why})
	}
	if c.Machine != nil && !s.Machine.Is() {
		add("machine", c.Machine.Path(), "the first that passes")
	}
	if !s.Hold.Is() {
		add("hold", c.HeldBy(), "the first that passes")
	}
	if c.Reversed && !s.JawsReversed.Is() {
		add("jaws", "turned round", "the way that holds it")
	}
	if !s.End.Is() {
		add("end held", c.End.String(), "the end that no step of this set-up makes")
	}
	if line := h.TurnsOn(); line != "" && !h.LineSaid() {
		add("turns about", line, "no step of this set-up says a line: the middle")
	}
	colletChoice(s.Hold.V, c, add)
	if v, ok := h.Carrier(); ok && c.Centres && !s.Driver.Is() {
		add("driver", v.Path(), "the first that goes on the work")
	}
	gripChoice(h, add)
	return out
}

func turnChoices(k *eval.Turn) []Choice {
	var out []Choice
	c, s, set := &k.Choice, k.Step.Step, k.Step.Work.SetUp
	add := func(what, item, why string) {
		out = append(out, Choice{Spot: k.Spot, What: what, Item: item, Why: why})
	}
	pinned := s.Tool.Is() || set.Tool.Is()
	if !s.By.Is() && !pinned {
		add("by", c.By, "what its kind calls for")
	}
	if !pinned && c.Tool.Cutter != nil {
		add("tool", c.Tool.Path(), "the first that passes")
	}
	memberChoice(s, set, c.Tool, add)
	mountChoice(s, set, c.Mounts, add)
	if !s.Holder.Is() && !set.Holder.Is() {
		names := ""
		for i, m := range c.Mounts {
			if i > 0 {
				names += ", "
			}
			names += m.Path()
		}
		if c.Post != nil {
			names = c.Post.Path()
		}
		if names != "" {
			add("holder", names, "the first that passes")
		}
	}
	if c.Speed > 0 && !s.Speed.Is() && !set.Speed.Is() {
		add("speed", model.Figure(c.Speed)+" rev/min", "the fastest of the machine not above the handbook's")
	}
	if c.Reverse && !s.Spindle.Is() {
		add("spindle", "reverse", "the hand of the tool")
	}
	for _, w := range c.Index {
		add("index", w, indexWhy(w))
	}
	if c.Slide > 0 && !s.TopSlide.Is() {
		add("top slide", model.Figure(c.Slide)+" deg", "half the included angle of the taper")
	}
	passes, cuts := k.Passes()
	oil, oiled := k.Oil()
	return append(out, feedChoices(k.Spot, k.Feeding(), passes, cuts, oil, oiled)...)
}

// mates tells, where one part of a fit was measured, between which sizes the other is to be made.
func mates(t *eval.Trace) []Choice {
	var out []Choice
	for _, j := range t.Joints {
		if j.Fit == nil {
			continue
		}
		if d, lim, ok := j.Fit.Mate(); ok && lim.Hi >= lim.Lo {
			out = append(out, Choice{Spot: j.Spot, What: "to make", Item: d.Path + " " + model.Figure(round(lim.Lo)) + " to " + model.Figure(round(lim.Hi)) + " mm",
				Why: "its mate was measured"})
		}
	}
	return append(out, pinChoices(t)...)
}

// pinChoices tells which length of pin is taken from the shop, where none is written.
func pinChoices(t *eval.Trace) (out []Choice) {
	for _, l := range t.PinLengths() {
		if !l.Chosen {
			continue
		}
		why := "the longest here that does not stand out of its two holes"
		if l.Length.V > l.Room+model.Grain {
			why = "the shortest here; it stands out of its two holes"
		}
		out = append(out, Choice{Spot: l.OneJoint.Spot, What: "length", Item: l.Named() + ", " + model.Figure(l.Length.V) + " mm long", Why: why})
	}
	return out
}

func round(x float64) float64 { return math.Round(x*1000) / 1000 }
