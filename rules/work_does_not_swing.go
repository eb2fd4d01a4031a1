package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "work-does-not-swing",
	Title: "the work is larger than the lathe turns over its bed",
	Why: `What stands out of the chuck turns right round above the bed. A lathe with a gap takes more beside
its headstock, as far as the gap is long.`,
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
	d := 2 * h.Outside(h.Before.Profile).Most()
	swing, ok := Need(a, m.Swing)
	if !ok || d == 0 {
		return
	}
	if d <= swing+0.0005 {
		a.Clear(Bound(round(d), swing, "mm"), "the work over the bed of "+m.Path())
		return
	}
	if m.Gap.Said {
		over, ok := Need(a, m.Gap.Swing)
		long, ok2 := Need(a, m.Gap.Length)
		reach, ok3 := Need(a, h.FromNose(h.LargerThan(swing)))
		if !ok || !ok2 || !ok3 || d <= over+0.0005 && reach <= long+0.0005 {
			a.Clear(Bound(round(d), over, "mm"), "the work in the gap of "+m.Path())
			return
		}
	}
	f := a.Say(m.Path()+".swing+"+h.Part.Label, h.Place("machine"), "%s swings %s over its bed, and %s stands out of %s with a diameter of %s mm",
		m.Path(), mm(swing), h.Part.Label, h.Choice.HeldBy(), figure(round(d)))
	f.Margin = Bound(round(d), swing, "mm")
	f.Also = []finding.Note{{Place: m.Swing.At, Says: "the swing"}}
}
