package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fettle/eval"
	"fettle/schema/model"
)

// What the shop says of its things that asks for a hand or an eye at the machine. What is said of
// handling is common practice.

// lathed says what else belongs to a holding on a lathe: what drives it, the centre, what stands behind
// the spindle, weights, and how it is stopped.
func lathed(c *eval.Chucking, put func(a, b string)) {
	if c.Choice.Centres || c.Choice.Mandrel != nil && c.Work.SetUp.Driver.Is() {
		if d, ok := c.Carrier(); ok {
			s := d.Path()
			if w := d.Swing; w.Is() {
				s += ", whose tail sweeps ⌀" + model.Figure(w.V) + " mm"
			}
			put("driven by", s)
		}
	}
	if s := c.Choice.Support; s != nil && s.Centre != nil && s.Centre.Live.Is() {
		if s.Centre.Live.V {
			put("its centre", "turns with the work")
		} else {
			put("its centre", "stands still: grease its point, and ease it as the work grows warm")
		}
	}
	u := c.Work.SetUp
	if by := u.SetOver.Or(0); by != 0 {
		towards := "towards you"
		if by < 0 {
			towards = "away from you"
		}
		put("tailstock", "set over "+length(math.Abs(by))+" "+towards+", measured with an indicator; set it back afterwards")
	}
	if r := u.Behind; r.Is() {
		put("behind the spindle", r.V.Path())
	}
	if s := u.Catcher; s.Is() && s.V != "" {
		put("caught by", s.V)
	}
	if r := u.Balance; r.Is() {
		s := r.V.Path()
		if w, ok := model.Find(c.Part.Build.Shop.Weights, r.V.Item); ok && w.Masses.Is() {
			s += " (" + inKilograms(w.Masses.V) + ")"
		}
		put("balanced by", s)
	}
	if m := c.Choice.Machine; m != nil && m.ToolHeight.Is() {
		put("tool height", "the axis lies "+length(m.ToolHeight.V)+" above the seat of the tool post: what a shank is lower goes under it")
	}
	if m := c.Choice.Machine; m != nil && m.Brake.V && m.Nose.Is() && m.Nose.V.Screwed() && !m.NoseLock.V {
		put("stopping", "brake gently, or let it run out: "+c.Choice.HeldBy()+" is screwed on without a lock, and a hard brake unscrews it")
	}
}

func inKilograms(masses []float64) string {
	var s []string
	for _, m := range masses {
		s = append(s, model.Figure(m)+" kg")
	}
	return strings.Join(s, ", ")
}

// gripped is what the jaws hold by.
func gripped(c *eval.Chucking) string {
	s := "⌀" + model.Figure(c.Gripped) + " mm, over " + model.Figure(c.Contact) + " mm"
	if n := len(c.JawsAt); n > 0 { // each jaw stands at its own distance: it is no diameter
		return "the jaws " + model.Figure(tidy(c.JawsAt[0])) + " to " + model.Figure(tidy(c.JawsAt[n-1])) + " mm from the axis, over " + model.Figure(c.Contact) + " mm"
	}
	if c.Inside {
		return "the bore of " + s + ", the jaws opened"
	}
	return s
}

// clampedBy says what a set of clamps is bolted down with.
func clampedBy(c *model.Clamps, put func(a, b string)) {
	var s []string
	if c.Studs.Is() {
		s = append(s, "studs "+c.Studs.V.String())
	}
	if c.Slot.Is() {
		s = append(s, "tee nuts for slots of "+length(c.Slot.V))
	}
	put("bolted with", strings.Join(s, ", "))
}

// byHand says what a tap or hand reamer is turned with, and how a split die is set.
func byHand(shop *model.Shop, t eval.Pick, hand bool, put func(a, b string)) {
	c := t.Cutter
	if c == nil || !hand {
		return
	}
	switch c.Kind {
	case "tap", "reamer":
		h := eval.Wrench(shop, t)
		if h == nil {
			return
		}
		s := h.Path()
		if h.Swing.Is() {
			s += ", whose handle sweeps ⌀" + model.Figure(h.Swing.V) + " mm"
		}
		put("turned with", s)
	case "die":
		switch {
		case c.Split.V:
			put("the die", "is split: open it for the first cut, then close it until a nut or the mate goes on")
		case c.Split.Is():
			put("the die", "is not split: it cuts its one size")
		}
	}
}

// asOf says when the figures of the shop were last true, and which of its things say an earlier day.
func asOf(s *model.Shop) string {
	type old struct{ path, day string }
	var older []old
	for _, i := range s.All {
		if a := i.Attr("as_of"); a != nil && a.Value.Text != "" && (s.AsOf == "" || a.Value.Text < s.AsOf) {
			older = append(older, old{i.Path(), a.Value.Text})
		}
	}
	out := ""
	if s.AsOf != "" {
		out = " It was last gone through on " + s.AsOf + "."
	}
	if len(older) == 0 {
		return out
	}
	slices.SortStableFunc(older, func(a, b old) int { return strings.Compare(a.day, b.day) })
	var say []string
	for _, o := range older[:min(len(older), 4)] {
		say = append(say, o.path+" of "+o.day)
	}
	if n := len(older) - len(say); n > 0 {
		say = append(say, fmt.Sprintf("%d more", n))
	}
	return out + " Older figures: " + strings.Join(say, ", ") + "."
}

// tapWord says which tap of a set goes in, or which ones after another; nothing of other tools.
func tapWord(t eval.Pick) (word, says string) {
	turn := t.TapsInTurn()
	if len(turn) > 1 {
		return "taps", strings.Join(turn, ", then ")
	}
	return "tap", strings.Join(turn, "")
}
