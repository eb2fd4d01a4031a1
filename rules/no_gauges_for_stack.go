package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "no-gauges-for-stack",
	Title: "a tilt is to be set by a sine bar, and nothing is here to stand under its roller",
	Why: `A sine bar alone sets nothing: the height under one roller makes the angle. Slip gauges make it best; ground packing or a turned
plug that is measured serves where the angle is not close.`,
	Rows:      []string{"E12"},
	Source:    []string{"look-up in the shop; centres times the sine of the angle"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     replaced(exampleSine("error   = 0.005", "0.01"), "  set = \"M47\"\n", "  set = \"M47\"\n  state = \"lent out\"\n"),
	Sound:     exampleSine("error   = 0.005", "0.01"),
	OnHold:    noGaugesForStack,
})

func noGaugesForStack(h *eval.Holding, a *Ask) {
	s, ok := h.SineSet()
	switch {
	case !ok:
	case !s.Bar.Here():
		f := a.Say(s.Bar.Path()+".state", h.Place("tilt"), "%s is not here: its state is %q", s.Bar.Path(), s.Bar.State.V)
		f.Also = []finding.Note{{Place: s.Bar.State.At, Says: "its state"}}
	case s.Made:
		a.Clear(finding.Margin{}, "")
	default:
		a.Say(h.Work.SetUp.Path()+".tilt+gauges", h.Place("tilt"), "%s wants %s under one roller for %s degrees, and no slip gauges are here that make it",
			s.Bar.Path(), mm(math.Round(s.Wants*1000)/1000), figure(s.Angle))
	}
}
