package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:      "round-bar-not-here",
	Title:     "no round bar of that diameter is in the drawer or among the stock",
	Why:       `The bar at the moving jaw may be any straight piece of rod; one that is written with its size must be there, or one within a tenth of it: 1/4 inch for 6 mm.`,
	Rows:      []string{"B18", "C13"},
	Source:    []string{"look-up in the shop"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleSquare("    round_bar = 7"),
	Sound:     exampleSquare("    round_bar = 8"),
	OnHold:    roundBarNotHere,
})

// nearBar is the share of its size by which a round bar may differ from the one that is written:
// it has only to be straight, and to fall between jaw and piece. Common practice.
const nearBar = 0.1

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
	var of *model.Item
	see := func(d float64, i *model.Item) {
		if !found || abs(d-want) < abs(best-want)-model.Same {
			best, found, of = d, true, i
		}
	}
	for _, b := range shop.RoundBars {
		if b.Here() && !b.Diameter.Is() {
			a.Lack(b.Diameter.Missing()...) // it may be just that one
		}
		if d, ok := b.Diameter.V.Nearest(want); ok && b.Here() {
			see(d, b.Item)
		}
	}
	for _, s := range shop.Stock {
		if s.Round.Is() && s.Here() {
			see(s.Round.V.Nominal, s.Item)
		}
	}
	switch {
	case !found:
		a.Lack(model.Lack{Fact: "the shop's round bars"})
	case abs(best-want) <= nearBar*want+model.Same:
		a.Clear(finding.Margin{}, "")
	case a.lacking():
	default:
		a.Say("round_bar+"+model.Figure(want), h.Place("round_bar"), "there is no round bar of %s; the nearest is %s", mm(want), asMarked(h.Part, of, best))
	}
}
