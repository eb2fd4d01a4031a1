package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
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
	if s := h.Choice.Support; z == nil && s != nil && s.Steady != nil && s.Steady.Sort.V == "travelling" {
		travels(h, s.Steady, a)
		return
	}
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

// travels asks of a steady that goes with the saddle whether the work as it is put up goes into it: its
// fingers run on what the tool has just turned, which is thinner.
func travels(h *eval.Chucking, s *model.Steady, a *Ask) {
	bars, ok := Need(a, s.Bars)
	if !ok || len(bars) != 2 {
		return
	}
	d := round(2 * h.Outside(h.Before.Profile).Most())
	if d <= bars[1]+0.0005 {
		a.Clear(Bound(d, bars[1], "mm"), "the work in "+s.Path())
		return
	}
	f := a.Say(s.Path()+".bars+"+h.Part.Label, h.Place("support", "hold"), "%s goes with the saddle along %s, which is %s thick, and takes %s at the most", s.Path(), h.Part.Label, mm(d), mm(bars[1]))
	f.Margin = Bound(d, bars[1], "mm")
	f.Also = []finding.Note{{Place: s.Bars.At, Says: "the diameters that its fingers reach"}}
}
