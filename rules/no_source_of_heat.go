package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "no-source-of-heat",
	Title: "nothing that is here makes a red heat",
	Why: `Hardening, annealing steel and silver soldering want a torch or a furnace. An iron, a hotplate or the kitchen's
oven serves for soft solder, for tempering and for shrinking on, and nothing is said of those.`,
	Rows:      []string{"F11"},
	Source:    []string{"soft solder flows below 450 °C, hard solder above: ISO 857-2, from memory", "a look-up in the shop"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleBlock("silver steel", exampleHeats("    does = \"harden\"\n    with = torch.lent\n")),
	Sound:     exampleBlock("silver steel", exampleHeats("    does = \"harden\"\n")),
	OnHeat:    noSourceOfHeat,
})

// redHeat is from where on neither iron nor oven serves, degrees Celsius: the border between
// soft and hard solder of ISO 857-2, from memory; itself in.
const redHeat = 450

func noSourceOfHeat(h *eval.Heating, a *Ask) {
	shop := &h.Build.Shop
	switch {
	case h.Pinned && h.Source != nil && !h.Source.Here():
		a.Say(h.Source.Path(), h.Place("with"), "%s, with which %s is to be done, is not here: %s", h.Source.Path(), heatName(h), h.Source.State.V)
	case h.Source != nil:
		a.Clear(finding.Margin{}, "")
	case shop.Label == "" && len(shop.All) == 0:
		a.Lack(model.Lack{Fact: "shop", At: h.SetUp.At})
	case h.Least == 0:
		a.Lack(h.Lacks...)
	case h.Least >= redHeat:
		a.Say("heat", h.Place("does"), "%s wants %s °C at least, and no torch or furnace is here", heatName(h), figure(h.Least))
	}
}
