package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "instrument-too-coarse",
	Title: "the instrument does not read finely enough for the limits",
	Why: `To say on which side of a limit a size lies, the instrument must show a good deal less than the
room between the limits. Which share is enough is a matter of judgement; the limits meant here are the whole
room from the lower to the upper.`,
	Rows: []string{"E3", "E2"},
	Source: []string{"ratios of 4 to 1 and 10 to 1 are in use, and are habit rather than clauses of a standard: MIL-HDBK-52; the ratio here: own",
		"ASME B89.7.3.1 compares whole widths"},
	Limits:    []string{"reading_share"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleMeasure("    deburr {}\n", "height   = \"20 ±0.01\"", 4),
	Sound:     exampleMeasure("    deburr {}\n", "height   = \"20 ±0.02\"", 4),
	OnMeasure: instrumentTooCoarse,
})

func instrumentTooCoarse(m *eval.Measurement, a *Ask) {
	if g, ok := m.Gauged(); ok && m.With == nil {
		gaugesTooCoarse(g, m, a)
		return
	}
	if m.Wrong != "" || m.With == nil || m.Tried || m.With.Kind == "plug_gauge" || m.Angle != (m.With.Kind == "protractor") {
		return
	}
	lim, ok := Need(a, m.Limits)
	step, ok2 := Need(a, m.Shows())
	if !ok || !ok2 || step <= 0 {
		return
	}
	want := a.Limit("reading_share") * step
	with := m.With.Path()
	if m.With.Kind == "telescopic_gauge" {
		with = "the micrometer over " + with
	}
	says, room := mm, Room(round(lim.Width()), round(want))
	if m.Angle {
		says, room.Unit = degrees, "deg"
	}
	if lim.Width() >= want-0.0005 {
		a.Clear(room, "the limits of "+m.Name+" against "+with)
		return
	}
	f := a.Say(m.With.Path()+".reads_to+"+m.Name, m.Place("with", "size"),
		"the limits of %s lie %s apart, and %s reads to %s: usually the limits are at least %s times that", m.Name, says(round(lim.Width())),
		with, says(round(step)), figure(a.Limit("reading_share")))
	f.Margin = room
}

// gaugesTooCoarse holds what the stacks of slip gauges are off against the limits that they are to tell.
func gaugesTooCoarse(g eval.Gauged, m *eval.Measurement, a *Ask) {
	lim, ok := Need(a, m.Limits)
	if !ok || g.Bore {
		return
	}
	if !g.Made {
		a.Lack(g.Set.Named.Missing()...)
		return
	}
	want := a.Limit("reading_share") * g.Off()
	if lim.Width() >= want-0.0005 {
		a.Clear(Room(round(lim.Width()), round(want)), "the limits of "+m.Name+" against "+g.Set.Path())
		return
	}
	f := a.Say(g.Set.Path()+".set+"+m.Name, m.Place("with", "size"), "the limits of %s lie %s apart, and %s makes %s and %s for them: usually the limits are at least %s times what a stack is off",
		m.Name, mm(round(lim.Width())), g.Set.Path(), mm(round(g.Least.Height)), mm(round(g.Most.Height)), figure(a.Limit("reading_share")))
	f.Margin = Room(round(lim.Width()), round(want))
}
