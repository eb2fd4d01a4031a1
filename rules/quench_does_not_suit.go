package rules

import (
	"slices"
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "quench-does-not-suit",
	Title: "the quench cracks the steel, or leaves it soft",
	Why: `An oil-hardening steel cracks in water; a water-hardening one stays soft in air. Each steel is quenched as its
maker says. Hot oil can burn: a lid, room for the flame, and the piece under at once.`,
	Rows:      []string{"F10", "G8"},
	Source:    []string{"quench by steel: handbook, from memory of EN ISO 4957 and makers' sheets"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleBlock("gauge plate", exampleHeats("    does   = \"harden\"\n    quench = \"water\"\n")),
	Sound:     exampleBlock("gauge plate", exampleHeats("    does   = \"harden\"\n    quench = \"oil\"\n")),
	OnHeat:    quenchDoesNotSuit,
})

func quenchDoesNotSuit(h *eval.Heating, a *Ask) {
	q, said := h.SetUp.Quench.Get()
	if h.Does != "harden" || !said {
		return
	}
	for _, p := range h.Of {
		if _, ok := Need(a, p.Part.Material); !ok {
			continue
		}
		m, ok := p.Metal()
		if !ok || !m.Hardens() {
			continue
		}
		suits := strings.Join(m.Suits, " or ")
		if suits == "" {
			suits = "what its maker says"
		}
		name := p.Part.Material.V.Name
		switch {
		case slices.Contains(m.Cracks, q):
			a.Say(p.Part.Item.Path()+"+quench", h.Place("quench"), "%s is quenched in %s; it cracks in %s", name, suits, q)
		case slices.Contains(m.Soft, q):
			how := "in " + q
			if q == "none" {
				how = "not quenched"
			}
			a.Say(p.Part.Item.Path()+"+quench", h.Place("quench"), "%s is quenched in %s; %s it stays soft", name, suits, how)
		case slices.Contains(m.Suits, q):
			a.Clear(finding.Margin{}, "")
		}
	}
}
