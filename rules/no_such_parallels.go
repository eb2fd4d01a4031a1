package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:      "no-such-parallels",
	Title:     "no pair of parallels of that height is in the drawer",
	Why:       `A height that is written down must be there as a pair. The nearest pair may do: the grip and the room for the tool change by the difference.`,
	Rows:      []string{"B17"},
	Source:    []string{"look-up in the shop"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     replaced(exampleSlit(""), "parallels = 12", "parallels = 11"),
	Sound:     exampleSlit(""),
	OnHold:    noSuchParallels,
})

func noSuchParallels(h *eval.Holding, a *Ask) {
	p := h.Work.SetUp.Parallels
	if h.Choice.Vise == nil || !p.Height.Is() && !p.Of.Is() {
		return
	}
	if p.Height.Is() && p.Height.V == 0 { // on the bed
		a.Clear(finding.Margin{}, "")
		return
	}
	if h.Choice.Pair != nil && h.Choice.Pair.Heights.V.Has(h.Choice.Height) {
		a.Clear(finding.Margin{}, "")
		return
	}
	shop := h.Part.Build.Shop
	if shop.Label == "" && len(shop.Parallels) == 0 {
		a.Lack(model.Lack{Fact: "the shop's parallels"})
		return
	}
	best, found := 0.0, false
	var of *model.Item
	for _, s := range shop.Parallels {
		if n, ok := s.Heights.V.Nearest(h.Choice.Height); ok && s.Here() && (!found || abs(n-h.Choice.Height) < abs(best-h.Choice.Height)) {
			best, found, of = n, true, s.Item
		}
	}
	says := "there is no pair of parallels " + mm(h.Choice.Height) + " high"
	switch {
	case found:
		says += "; the nearest pair is " + asMarked(h.Part, of, best)
	default:
		says += ", nor any other"
	}
	a.Say("parallels+"+model.Figure(h.Choice.Height), h.Place("parallels"), "%s", says)
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}
