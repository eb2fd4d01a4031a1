package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "bore-does-not-fit",
	Title: "the bore of a saw or cutter is not the seat of its arbor",
	Why: `A disc cutter runs true only on a seat of its own bore. A smaller bore does not go on; a larger
one runs out by half the difference, and the saw cuts with one side. A bush, another saw or an
arbor turned for it are the ways out.`,
	Rows:      []string{"B4"},
	Source:    []string{"bores and seats as declared; H7 on h6 in ISO 240: from memory"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Deaf:      Holding,
	Trips:     replaced(exampleSlit("holder = arbor.stub"), "slitting_saw.fine", "slitting_saw.small"),
	Sound:     exampleSlit("holder = arbor.stub"),
	OnCut:     boreDoesNotFit,
})

func boreDoesNotFit(k *eval.Cut, a *Ask) {
	joints(k, a, []string{"bore"}, func(l eval.Link) {
		a.Say(pathOf(l.Upper)+"+"+pathOf(l.Lower), k.Place("tool", "holder"), "the seat of %s is %s, and %s is %s",
			pathOf(l.Upper), l.Takes, boreOf(l), l.Has)
	})
}

// boreOf names what of the cutter does not fit.
func boreOf(l eval.Link) string {
	if len(l.Has) > 4 && l.Has[len(l.Has)-4:] == "wide" {
		return pathOf(l.Lower)
	}
	return "the bore of " + pathOf(l.Lower)
}
