package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "cut-sets-piece-free",
	Title: "a cut goes right through and leaves a piece that nothing holds",
	Why: `Depths that meet, or a groove that reaches the bore, cut the work in two while the tool turns. What
no jaw holds any longer tips into the cutter, is caught and thrown, and breaks the tool. Parting off
and a declared split are meant; elsewhere a web left standing until the end, or a holding that
grips both pieces, is the cure.`,
	Rows:      []string{"C10"},
	Source:    []string{"geometry of the dry run"},
	Level:     finding.Danger,
	Judgement: finding.Fact,
	Caution: "Work that comes loose under a turning tool is caught and thrown. Stop the machine before anything is taken out; " +
		"follow the machine's manual.",
	Trips:  replaced(exampleSlot(""), "depth = 4\n  }", "depth = 20\n  }"),
	Sound:  exampleSlot(""),
	OnCut:  cutSetsPieceFree,
	OnTurn: turnSetsPieceFree,
})

func cutSetsPieceFree(k *eval.Cut, a *Ask) {
	pieces := k.Freed()
	var free []string
	for _, p := range pieces {
		if !p.Held {
			d := p.Hi.Sub(p.Lo)
			free = append(free, figure(round(d[0]))+" by "+figure(round(d[1]))+" by "+mm(round(d[2])))
		}
	}
	switch len(free) {
	case 1:
		a.Say(k.Spot.Step, k.Place("makes"), "the piece is cut in two, and the part of %s no longer sits between both jaws of %s", free[0], k.Hold.Choice.Vise.Path())
	case 2:
		a.Say(k.Spot.Step, k.Place("makes"), "the piece is cut in two, and neither part, %s and %s, sits between both jaws of %s any longer", free[0], free[1], k.Hold.Choice.Vise.Path())
	}
	if k.Hold.Jaws() != nil && len(k.Works) > 0 {
		a.Clear(finding.Margin{}, "")
	}
}

func turnSetsPieceFree(k *eval.Turn, a *Ask) {
	x0, x1, ok := k.Freed()
	if !ok {
		if len(k.Works) > 0 {
			a.Clear(finding.Margin{}, "")
		}
		return
	}
	at := x0
	if k.Hold.Sign < 0 {
		at = x1
	}
	a.Say(k.Spot.Step+"+free", k.Place("makes"),
		"the piece is cut in two at %s mm along the axis, and the %s mm from there to the free end are no longer held by %s",
		figure(round(at)), figure(round(x1-x0)), k.Hold.Choice.HeldBy())
}
