package rules

import (
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "hardened-not-tempered",
	Title: "a piece is hardened and never tempered",
	Why: `Tool steel straight from the quench is brittle as glass and under stress: it chips at its edges and can crack
hours later. It is tempered at once, most tools at straw to blue, gauges at 150 °C or so.`,
	Rows:      []string{"F10"},
	Source:    []string{"common practice"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     exampleBlock("silver steel", exampleHeats("    does = \"harden\"\n")),
	Sound:     exampleBlock("silver steel", exampleHeats("    does = \"harden\"\n", "    does        = \"temper\"\n    temperature = \"straw\"\n")),
	OnPart:    hardenedNotTempered,
})

func hardenedNotTempered(p *eval.PartTrace, a *Ask) {
	if p.End == nil {
		return
	}
	m, known := p.Part.Metal()
	if known && !m.Hardens() {
		return // metal-does-not-harden speaks of it
	}
	// A drawing that says hardened and not tempered is taken at its word.
	if c := strings.ToLower(p.Part.Condition.V); strings.Contains(c, "hardened") && !strings.Contains(c, "temper") {
		return
	}
	for i, t := range p.End.Treated {
		if t.Does != "harden" {
			continue
		}
		drawn := false
		for _, later := range p.End.Treated[i+1:] {
			switch later.Does {
			case "temper", "anneal", "harden", "stress relieve", "blue":
				drawn = drawn || !eval.Apart(t.Zone, later.Zone)
			}
		}
		if drawn {
			a.Clear(finding.Margin{}, "")
			continue
		}
		if _, ok := Need(a, p.Part.Part.Material); ok {
			a.Say(p.Part.Item.Path()+"+"+t.Spot.SetUp, t.At, "%s is hardened and not tempered afterwards", p.Part.Label)
		}
	}
}
