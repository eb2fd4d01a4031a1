package sheet

import (
	"math"

	"fettle/eval"
	"fettle/schema/model"
)

// What to do where a size comes out otherwise than drawn. The sheet says which way there is metal
// left, and what the size has to go with; what to do about it is for the one who made it.

// otherwise says what a size beyond its limits means, of one that is within metal or around it.
func (m *maker) otherwise(f *eval.Form, attr string, l eval.Limits) string {
	within, ok := inside(f, attr)
	if !ok {
		return ""
	}
	lo, hi := model.Figure(l.Lo), model.Figure(l.Hi)
	left, gone := "over "+hi, "under "+lo
	if within {
		left, gone = "under "+lo, "over "+hi
	}
	s := left + ": metal is left, take it off before the piece is moved; " + gone + ": too much is off, stop and see whether "
	if mate := m.mate(f); mate != "" {
		return s + mate + " can be made to go with it"
	}
	return s + "the part can be used so"
}

// inside says whether metal lies around a size (a hole) or within it (an outside); false where it
// is neither.
func inside(f *eval.Form, attr string) (within, ok bool) {
	switch f.Feature.Kind {
	case "hole", "slot", "slit", "bore", "groove", "pocket", "keyway":
		return true, attr == "diameter" && f.Feature.Kind != "groove" || attr == "width"
	case "outside", "taper":
		return f.Lathe != nil && f.Lathe.Inside, attr == "diameter"
	}
	return false, false
}

// mate is what a feature is to fit, by the recipe's own words; "" where none is named.
func (m *maker) mate(f *eval.Form) string {
	for _, j := range m.c.Build.Fits {
		h, s := j.Hole.V.Item, j.Shaft.V.Item
		switch {
		case h != nil && s != nil && h == f.Feature.Item:
			return partly(s)
		case h != nil && s != nil && s == f.Feature.Item:
			return partly(h)
		}
	}
	return ""
}

// partly is a feature with its part: "outside.spigot of screw".
func partly(i *model.Item) string {
	p := i.Up("part")
	switch {
	case p == nil:
		return i.Path()
	case p == i:
		return i.Label
	}
	return i.Kind + "." + i.Label + " of " + p.Label
}

// tapped says what hole stands for a thread that is cut in it, and how deep each is.
func tapped(w *eval.Working, put func(a, b string)) {
	f := w.Target.Form
	if w.Target.Sub != "thread" || f == nil {
		return
	}
	if w.Had > 0 {
		s := "⌀" + model.Figure(tidy(w.Had)) + " mm"
		if w.HadDepth > 0 {
			s += ", " + model.Figure(tidy(w.HadDepth)) + " mm deep at full diameter"
		}
		put("in a hole of", s)
	}
	if w.Depth > 0 {
		put("full thread", model.Figure(tidy(w.Depth))+" mm deep"+point(w, "tapping"))
	}
}

// forThread says of a hole that is drilled which thread comes into it.
func forThread(t eval.Target, w *eval.Working, put func(a, b string)) {
	if t.Form == nil || t.Sub != "" || !t.Form.Feature.Thread.Said || !t.Form.Feature.Thread.Size.Is() {
		return
	}
	th := &t.Form.Feature.Thread
	s := th.Size.V.String()
	if th.Depth.Is() {
		s += ", " + model.Figure(th.Depth.V) + " mm deep"
	}
	if w.Depth > 0 {
		s += "; the hole " + model.Figure(tidy(w.Depth)) + " mm deep at full diameter"
	}
	put("for the thread", s)
}

// slide says how far the top slide is set over, and how far it must go.
func slide(k *eval.Turn, put func(a, b string)) {
	if k.Choice.Slide == 0 {
		return
	}
	s := model.Figure(math.Round(k.Choice.Slide*1e4)/1e4) + " degrees from the axis, half of the included angle"
	for i := range k.Works {
		w := &k.Works[i]
		if f := w.Target.Form; f == nil || f.Feature.Kind != "taper" || w.Wrong != "" {
			continue
		}
		s += "; it goes " + model.Figure(math.Round(w.TaperWay()*100)/100) + " mm along the slope"
		if mc := k.Lathe(); mc != nil && mc.TopSlide.Travel.Is() {
			s += " of the " + model.Figure(mc.TopSlide.Travel.V) + " mm that it has"
		}
	}
	put("top slide", s)
}

// slides says a cut in turns and lines of the lathe's own dials: the cross slide for what comes off
// a diameter, the top slide, set along the axis, for what comes off a length.
func (m *maker) slides(k *eval.Turn, w *eval.Turning, put func(a, b string)) {
	mc := k.Lathe()
	if mc == nil || k.Choice.Post == nil || w.Wrong != "" {
		return
	}
	if k.Choice.By == "facing" {
		if d, ok := m.dialOf(mc.TopSlide.Turn, mc.TopSlide.Division); ok && k.Choice.Slide == 0 {
			put("top slide, along the axis", d.reads(w.U1-w.U0)+" for the whole of it")
		}
		return
	}
	c := &mc.CrossSlide
	d, ok := m.dialOf(c.Turn, c.Division)
	if !ok || !c.Reads.Is() || !(w.Off > 0) {
		return
	}
	way := w.Off
	if c.Reads.V == "diameter" {
		way = 2 * w.Off
	}
	s := d.reads(way) + " in all from where it touches; its dial reads the " + c.Reads.V + ", one line " + d.size(d.line)
	if mc.Backlash.Bare.Is() {
		s += "; come to it going in, the slack is " + model.Figure(mc.Backlash.Bare.V) + " mm"
	}
	put("cross slide", s)
}
