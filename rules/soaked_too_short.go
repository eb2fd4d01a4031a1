package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "soaked-too-short",
	Title: "the work is not kept at heat long enough for its thickness",
	Why: `The middle of a piece is hot later than its skin, and steel takes time to change. Quenched too soon it is hard outside and soft
within, and is more apt to crack.`,
	Rows:      []string{"F10"},
	Source:    []string{"for each mm of thickness 0.8 to 1 minute to harden, 1.2 to 2.4 to temper, anneal or relieve: common practice; the maker's sheet goes before it"},
	Limits:    []string{"soak_share"},
	Level:     finding.Advice,
	Judgement: finding.Thumb,
	Trips:     exampleBlock("silver steel", exampleHeats("    does = \"harden\"\n    soak = 5\n", "    does        = \"temper\"\n    temperature = \"straw\"\n")),
	Sound:     exampleBlock("silver steel", exampleHeats("    does = \"harden\"\n    soak = 20\n", "    does        = \"temper\"\n    temperature = \"straw\"\n")),
	OnHeat:    soakedTooShort,
})

func soakedTooShort(h *eval.Heating, a *Ask) {
	s, ok := h.Soak()
	if !ok || !s.Said.Is() || s.Colour {
		return
	}
	said, least := s.Said.V, round(a.Limit("soak_share")*s.Least)
	if said >= least-1e-6 {
		a.Clear(finding.Margin{Has: said, Wants: least, Unit: "min"}, "the time at heat of "+heatName(h))
		return
	}
	f := a.Say(heatName(h)+".soak", s.Said.At, "%s keeps a piece %s thick at heat for %s minutes; usually it is %s to %s", heatName(h), mm(round(s.Thick)), figure(said), figure(round(s.Least)), figure(round(s.Most)))
	f.Margin = finding.Margin{Has: said, Wants: least, Unit: "min"}
}
