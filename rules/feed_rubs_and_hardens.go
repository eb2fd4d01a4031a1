package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "feed-rubs-and-hardens",
	Title: "a feed is written that is so fine that the metal hardens under the tool",
	Why: `Plain stainless steel hardens where a tool rubs on it, and the next lip has to cut what the last one hardened: the tool goes
blunt, and then nothing goes on. Keep it cutting: a sharp tool, slow, with a feed that is felt, never idling in the hole. A free-cutting
kind (303) forgives more.`,
	Rows:      []string{"G8"},
	Source:    []string{"the least of the printed feeds by process, tool, metal and diameter; 304 hardens under a dull or idling tool: common practice; half of the least that is printed: own limit"},
	Limits:    []string{"feed_under"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleStainless("stainless 304", "0.01 mm/rev"),
	Sound:     exampleStainless("stainless 304", "0.1 mm/rev"),
	OnCut: func(k *eval.Cut, a *Ask) {
		feedRubs(k.Feeding(), k.Choice.By, k.MaterialGroup(), k.Spot, k.ToolPath(), k.Choice.ByHand, a)
	},
	OnTurn: func(k *eval.Turn, a *Ask) {
		feedRubs(k.Feeding(), k.Choice.By, k.MaterialGroup(), k.Spot, k.ToolPath(), k.Choice.ByHand, a)
	},
})

// exampleStainless drills a hole in another metal with a feed that is written.
func exampleStainless(metal, feed string) string {
	return replaced(exampleFed(feed), `material = "brass"`, `material = "`+metal+`"`)
}

func feedRubs(f eval.Feeding, by string, metal model.Known[string], spot finding.Spot, tool string, byHand bool, a *Ask) {
	if !f.Said.Is() || byHand || by != "drilling" || f.Lead > 0 || f.Printed.None() || f.Printed.PerTooth {
		return
	}
	if group, ok := Need(a, metal); !ok || group != "stainless_304" {
		return
	}
	fed, ok := f.PerTurn()
	if !ok {
		return
	}
	least := a.Limit("feed_under") * f.Printed.Lo
	if fed >= least*(1-1e-9) {
		a.Clear(Room(round(fed), round(least)), "the feed of "+tool)
		return
	}
	m := a.Say(tool+".rubs+"+spot.String(), f.Said.At, "%s is fed %s mm/rev, and usually at least %s mm/rev keeps it cutting: below that it rubs, and this steel hardens under it", tool, figure(round(fed)), figure(round(least)))
	m.Margin = Room(round(fed), round(least))
}
