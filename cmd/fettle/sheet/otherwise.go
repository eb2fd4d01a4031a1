package sheet

import (
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
