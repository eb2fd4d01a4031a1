package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:      "round-bar-not-here",
	Title:     "no round bar of that diameter is in the drawer or among the stock",
	Why:       `The bar at the moving jaw may be any straight piece of rod; one that is written with its size must be there. The nearest does as well where the jaws open far enough.`,
	Rows:      []string{"B18", "C13"},
	Source:    []string{"look-up in the shop"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleSquare("    round_bar = 7"),
	Sound:     exampleSquare("    round_bar = 8"),
	OnHold:    roundBarNotHere,
})

func roundBarNotHere(h *eval.Holding, a *Ask) {
	rb := h.Work.SetUp.RoundBar
	want, written := rb.Diameter.Get()
	if r := rb.Of.V; rb.Of.Is() && r.Has {
		want, written = r.Size, true
	}
	if h.Choice.Vise == nil || !written || want <= 0 {
		return
	}
	shop := &h.Part.Build.Shop
	best, found := 0.0, false
	see := func(d float64) {
		if !found || abs(d-want) < abs(best-want)-model.Same {
			best, found = d, true
		}
	}
	for _, b := range shop.RoundBars {
		if b.Here() && !b.Diameter.Is() {
			a.Lack(b.Diameter.Missing()...) // it may be just that one
		}
		if d, ok := b.Diameter.V.Nearest(want); ok && b.Here() {
			see(d)
		}
	}
	for _, s := range shop.Stock {
		if s.Round.Is() && s.Here() {
			see(s.Round.V.Nominal)
		}
	}
	switch {
	case !found:
		a.Lack(model.Lack{Fact: "the shop's round bars"})
	case abs(best-want) < model.Grain:
		a.Clear(finding.Margin{}, "")
	case a.lacking():
	default:
		a.Say("round_bar+"+model.Figure(want), h.Place("round_bar"), "there is no round bar of %s; the nearest is %s", mm(want), mm(best))
	}
}
