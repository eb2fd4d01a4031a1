package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "mill-in-drill-chuck",
	Title: "a milling cutter held in a drill chuck",
	Why: `The jaws of a drill chuck hold a hard shank on three short lines and are made to be pushed
lengthways. A cut from the side lets the cutter creep out and dig in, and can shake the chuck off
its own taper.`,
	Rows:      []string{"B9"},
	Source:    []string{"common practice"},
	Level:     finding.Danger,
	Judgement: finding.Fact,
	Caution:   "A cutter that creeps out digs in and can throw the work. Use a collet or a side-lock holder, and follow the machine's manual.",
	Trips:     exampleSlot("holder = drill_chuck.keyed"),
	Sound:     exampleSlot("holder = [collet_chuck.er, collets.er[10]]"),
	OnCut:     millInDrillChuck,
})

func millInDrillChuck(k *eval.Cut, a *Ask) {
	h := k.Stack.Holder
	if h == nil || k.Choice.Tool.Cutter == nil || !wantsDrawbar(k) {
		return
	}
	if h.Kind != "drill_chuck" {
		a.Clear(finding.Margin{}, "")
		return
	}
	a.Say(h.Path()+"+"+k.Choice.By, k.Place("holder", "tool"), "%s is held in %s and pushed sideways: it will creep out; hold it in a collet",
		k.ToolPath(), h.Path())
}
