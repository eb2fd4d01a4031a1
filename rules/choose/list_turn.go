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
		add("end", c.End.String()+" end held", "the end that no step of this set-up makes")
	}
	if line := h.TurnsOn(); line != "" && !h.LineSaid() {
		add("turns about", line, "no step of this set-up says a line: the middle")
	}
	switch {
	case c.Centres, c.Faceplate != nil:
	case !s.StickOut.Is() && c.Deeper:
		add("stick-out", model.Figure(h.Free)+" mm", "what is left beside the usual grip; the tool's holder must stand clear of the jaws")
	case !s.StickOut.Is() && !c.Gripped:
		add("stick-out", model.Figure(h.Free)+" mm", "the least that all its work needs")
	case !s.StickOut.Is():
		add("stick-out", model.Figure(h.Free)+" mm", "worked out from the grip")
	case h.JawLength.Is():
		add("grip", model.Figure(h.Contact)+" mm", "worked out from the stick-out")
	}
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
	return out
}

func round(x float64) float64 { return math.Round(x*1000) / 1000 }
