package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "steady-out-of-range",
	Title: "the work does not fit the steady",
	Why: `The fingers of a steady go in and out only so far. Thicker work does not go in, thinner work is not reached; a place
further along, or a sleeve, may have the right diameter.`,
	Rows:      []string{"A21"},
	Source:    []string{"diameters as declared"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Shifted:   true,
	Trips:     replaced(exampleSteady("50", ""), "steady.bed", "steady.own") + "\nsteady \"own\" {\n  kind = \"fixed\"\n  bars = [20, 60]\n}\n",
	Sound:     exampleSteady("50", ""),
	OnChuck:   steadyOutOfRange,
})

func steadyOutOfRange(h *eval.Chucking, a *Ask) {
	z := h.Track()
	if z == nil || h.Choice.Machine == nil {
		return
	}
	s := h.Choice.Support.Steady
	bars, ok := Need(a, s.Bars)
	if !ok || len(bars) != 2 {
		return
	}
	d := round(2 * z.Most())
	if d >= bars[0]-0.0005 && d <= bars[1]+0.0005 {
		m := Room(d, bars[0])
		if bars[1]-d < d-bars[0] {
			m = Bound(d, bars[1], "mm")
		}
		a.Clear(m, "the work in "+s.Path())
		return
	}
	f := a.Say(s.Path()+".bars+"+h.Part.Label, h.Place("support", "hold"), "%s takes %s to %s mm, and %s is %s mm thick where it stands",
		s.Path(), figure(bars[0]), figure(bars[1]), h.Part.Label, figure(d))
	f.Also = []finding.Note{{Place: s.Bars.At, Says: "the diameters that its fingers reach"}}
}
