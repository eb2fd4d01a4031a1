package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "work-does-not-swing",
	Title: "the work is larger than the lathe turns over its bed",
	Why: `What stands out of the chuck turns right round above the bed. A lathe with a gap takes more beside
its headstock, as far as the gap is long. The corners of an angle plate on a faceplate swing as well.`,
	Rows:      []string{"A6"},
	Source:    []string{"definition of the swing of a lathe; geometry"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     replaced(exampleWaist(inThree, ""), "diameter = 20", "diameter = 251"),
	Sound:     exampleWaist(inThree, ""),
	OnChuck:   workDoesNotSwing,
})

func workDoesNotSwing(h *eval.Chucking, a *Ask) {
	m := h.Choice.Machine
	if m == nil {
		return
	}
	if s, ok := h.Shelf(); ok {
		if d, ok := Need(a, s.Swings()); ok {
			doesNotSwing(h, a, d, h.Choice.AnglePlate.Path(), h.PlateFromNose())
		}
	}
	if d := 2 * h.Outside(h.Before.Profile).Most(); d > 0 {
		doesNotSwing(h, a, d, h.Part.Label, h.FromNose(h.LargerThan(m.Swing.V)))
	}
}

// doesNotSwing compares the circle that a thing sweeps, which reaches so far from the nose of the spindle, with
// the bed.
func doesNotSwing(h *eval.Chucking, a *Ask, d float64, what string, reaches model.Known[float64]) {
	m := h.Choice.Machine
	swing, ok := Need(a, m.Swing)
	if !ok {
		return
	}
	if d <= swing+0.0005 {
		a.Clear(Bound(round(d), swing, "mm"), "the "+swungAs(h, what)+" over the bed of "+m.Path())
		return
	}
	if m.Gap.Said {
		over, ok := Need(a, m.Gap.Swing)
		long, ok2 := Need(a, m.Gap.Length)
		reach, ok3 := Need(a, reaches)
		if !ok || !ok2 || !ok3 || d <= over+0.0005 && reach <= long+0.0005 {
			a.Clear(Bound(round(d), over, "mm"), "the "+swungAs(h, what)+" in the gap of "+m.Path())
			return
		}
	}
	cause, says := m.Path()+".swing+"+what, what+" stands out of "+h.Choice.HeldBy()+" with a diameter of "+figure(round(d))+" mm"
	if what != h.Part.Label {
		says = "the corners of " + what + " on " + h.Choice.HeldBy() + " sweep " + mm(round(d))
	}
	f := a.Say(cause, h.Place("machine"), "%s swings %s over its bed, and %s", m.Path(), mm(swing), says)
	f.Margin = Bound(round(d), swing, "mm")
	f.Also = []finding.Note{{Place: m.Swing.At, Says: "the swing"}}
}

// swungAs names what swings.
func swungAs(h *eval.Chucking, what string) string {
	if what == h.Part.Label {
		return "work"
	}
	return "corners of " + what
}
