package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "held-by-taper-alone",
	Title: "a holder without a drawbar is pushed sideways",
	Why: `A taper holds by friction against a push along its axis. A cut from the side shakes it loose: the
chuck or arbor drops out while it turns. A tang only drives; it does not hold.`,
	Rows:      []string{"B8"},
	Source:    []string{"self-holding tapers want a drawbar for milling: several printed works on machine tools"},
	Level:     finding.Danger,
	Judgement: finding.Fact,
	Deaf:      Holding,
	Caution:   "A holder that drops out is thrown while it turns. Use one that a drawbar pulls in, and follow the machine's manual.",
	Trips:     exampleSlit("holder = arbor.own") + ownArbor("MT3", "tang"),
	Sound:     exampleSlit("holder = arbor.own") + ownArbor("MT3", "M12"),
	OnCut:     heldByTaperAlone,
})

func heldByTaperAlone(k *eval.Cut, a *Ask) {
	if !wantsDrawbar(k) {
		return
	}
	a.Asks("does a drawbar pull %s into the spindle?", mountName(k))
	joints(k, a, []string{"drawbar"}, func(l eval.Link) {
		if l.Why == "" {
			a.Clear(finding.Margin{}, "")
			return
		}
		why := "it has a " + l.Has + " and no thread for a drawbar"
		switch {
		case l.Has == "plain":
			why = "its end is plain, without a thread for a drawbar"
		case l.Has != "tang":
			why = l.Why
		}
		a.Say(pathOf(l.Lower)+".tail", k.Place("holder", "tool"), "%s is held by its taper alone (%s), and %s pushes it sideways",
			pathOf(l.Lower), why, k.Choice.By)
	})
}

func mountName(k *eval.Cut) string {
	if len(k.Choice.Mounts) > 0 {
		return pathOf(k.Choice.Mounts[0].Item())
	}
	return k.ToolPath()
}
