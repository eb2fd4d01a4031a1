package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "cutter-too-wide",
	Title: "the cutter is wider than what it is to make, or leaves a corner larger than allowed",
	Why: `A cutter makes nothing narrower than itself, and leaves its own radius in every inside corner. A saw
cuts its thickness, and what it wobbles more.`,
	Rows:      []string{"B15", "B6"},
	Source:    []string{"geometry"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Deaf:      Mounting,
	Trips:     replaced(exampleSlot(""), "slot_drill.two[6]", "slot_drill.two[8]"),
	Sound:     exampleSlot(""),
	OnCut:     cutterTooWide,
})

func cutterTooWide(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || k.Unplayed != "" {
		return
	}
	for _, w := range k.Works {
		f := w.Target.Form
		if f == nil || len(f.Mouths) > 0 || !w.Facing {
			continue
		}
		switch {
		case f.Seat != nil:
			seatSize(k, a, f)
		case k.Bladed():
			bladeWidth(k, a, f)
		case k.Choice.By == "sawing":
			sawWidth(k, a, f)
		case oneOf(f.Feature.Kind, "slot", "pocket", "keyway", "groove") && k.Choice.By == "milling" && w.Entry.Face == f.Into.Face:
			millWidth(k, a, f)
		}
	}
}

func millWidth(k *eval.Cut, a *Ask, f *eval.Form) {
	d := k.Choice.Tool.Size
	width := f.Width
	if lim, ok := eval.LimitsOf(f.Feature.Width.V, k.Part.Build.Recipe.General, f.Feature.Item, "width").Get(); ok && f.Feature.Width.Is() {
		width = lim.Hi
	}
	if d > width+0.0005 {
		m := a.Say(k.ToolPath()+"+"+f.Name(), k.Place("tool"), "%s is %s across and %s is %s wide", k.ToolPath(), mm(d), f.Name(), mm(round(f.Width)))
		m.Margin = Bound(d, round(width), "mm")
		return
	}
	if r, ok := f.Feature.Corner.Get(); ok && f.Feature.Kind == "pocket" && d/2 > r+0.0005 {
		m := a.Say(k.ToolPath()+"+"+f.Name()+".corner", k.Place("tool"), "%s leaves corners of %s in %s, where %s at most is allowed", k.ToolPath(), mm(d/2), f.Name(), mm(r))
		m.Margin = Bound(d/2, r, "mm")
		return
	}
	a.Clear(Bound(d, round(width), "mm"), k.ToolPath()+" in "+f.Name())
}

func sawWidth(k *eval.Cut, a *Ask, f *eval.Form) {
	c := k.Choice.Tool.Cutter
	w, ok := Need(a, c.Width)
	size := f.Feature.Width
	if f.Feature.Kind == "split" {
		size = f.Feature.Kerf
	}
	if !ok || !size.Is() {
		return
	}
	lim, ok := eval.LimitsOf(size.V, k.Part.Build.Recipe.General, f.Feature.Item, "width").Get()
	if !ok {
		// Without limits only a plain difference of sizes can be told.
		if w > size.V.Nominal+0.0005 {
			a.Say(k.ToolPath()+"+"+f.Name(), k.Place("tool"), "%s is %s thick, and %s is %s wide", k.ToolPath(), mm(w), f.Name(), mm(size.V.Nominal))
			return
		}
		a.Clear(finding.Margin{}, "")
		return
	}
	cuts := w + c.Wobble.Or(0)
	switch {
	case cuts > lim.Hi+0.0005:
		m := a.Say(k.ToolPath()+"+"+f.Name(), k.Place("tool"), "%s cuts %s wide, and %s may be %s at most", k.ToolPath(), mm(round(cuts)), f.Name(), mm(round(lim.Hi)))
		m.Margin = Bound(round(cuts), round(lim.Hi), "mm")
	case w < lim.Lo-0.0005 && !c.Wobble.Is():
		m := a.Say(k.ToolPath()+"+"+f.Name(), k.Place("tool"), "%s is %s thick, and %s is to be %s at least: one pass does not make it", k.ToolPath(), mm(w), f.Name(), mm(round(lim.Lo)))
		m.Margin = Room(w, round(lim.Lo))
	default:
		a.Clear(Bound(round(cuts), round(lim.Hi), "mm"), k.ToolPath()+" in "+f.Name())
	}
}

// bladeWidth compares the width of a disc with that of the slot that it mills.
func bladeWidth(k *eval.Cut, a *Ask, f *eval.Form) {
	if !oneOf(f.Feature.Kind, "slot", "keyway") {
		return
	}
	w, ok := Need(a, k.Choice.Tool.Cutter.Width)
	if !ok {
		return
	}
	width := f.Width
	if lim, ok := eval.LimitsOf(f.Feature.Width.V, k.Part.Build.Recipe.General, f.Feature.Item, "width").Get(); ok && f.Feature.Width.Is() {
		width = lim.Hi
	}
	if w > width+0.0005 {
		m := a.Say(k.ToolPath()+"+"+f.Name(), k.Place("tool"), "%s is %s wide, and %s is %s wide", k.ToolPath(), mm(w), f.Name(), mm(round(f.Width)))
		m.Margin = Bound(w, round(width), "mm")
		return
	}
	a.Clear(Bound(w, round(width), "mm"), k.ToolPath()+" in "+f.Name())
}

// seatSize compares a cutter for half-round keys with the seat: it leaves its own width and its own arc.
func seatSize(k *eval.Cut, a *Ask, f *eval.Form) {
	c := k.Choice.Tool.Cutter
	if c.Kind != "keyseat_cutter" {
		return
	}
	w, ok := Need(a, c.Width)
	if !ok {
		return
	}
	d := k.Choice.Tool.Size
	width := f.Width
	if lim, ok := eval.LimitsOf(f.Feature.Width.V, k.Part.Build.Recipe.General, f.Feature.Item, "width").Get(); ok {
		width = lim.Hi
	}
	switch {
	case w > width+0.0005:
		m := a.Say(k.ToolPath()+"+"+f.Name(), k.Place("tool"), "%s is %s wide, and %s is %s wide", k.ToolPath(), mm(w), f.Name(), mm(round(f.Width)))
		m.Margin = Bound(w, round(width), "mm")
	case abs(d-f.Seat.Diameter) > 0.0005:
		a.Say(k.ToolPath()+"+"+f.Name()+".diameter", k.Place("tool"), "%s is %s across, and the key of %s wants a seat cut by one %s across", k.ToolPath(), mm(d), f.Name(), mm(f.Seat.Diameter))
	default:
		a.Clear(Bound(w, round(width), "mm"), k.ToolPath()+" in "+f.Name())
	}
}
