package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "cutter-turns-backwards",
	Title: "the spindle turns the tool against its cutting edges",
	Why: `A tool cuts one way round only. A right-hand one wants the spindle forward, clockwise seen from the spindle;
a left-hand one, or a saw turned over on its arbor, wants it in reverse. Run the other way the teeth rub with their
backs: the edges are gone in a moment, and thin teeth break.`,
	Rows:      []string{"B12"},
	Source:    []string{"right hand of rotation: clockwise seen from the spindle, as the trade says it (ISO 3002-1: from memory)"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleHole("tool = drill.jobbers[6]", `spindle = "reverse"`),
	Sound:     exampleHole("tool = drill.jobbers[6]", `spindle = "forward"`),
	OnCut:     cutterTurnsBackwards,
})

func cutterTurnsBackwards(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || k.Choice.ByHand {
		return
	}
	wants := k.Choice.CutsReverse()
	if wants == k.Choice.Reverse {
		a.Clear(finding.Margin{}, "")
		return
	}
	running, cure := "forward", "in reverse"
	if k.Choice.Reverse {
		running, cure = cure, running
	}
	what, also := "cuts right-handed", ""
	switch {
	case k.Stack.Holder != nil && k.Stack.Holder.Kind == "arbor" && k.Choice.Turned:
		what, also = "is turned over on its arbor", ", or put it on as usual"
	case k.Stack.Holder != nil && k.Stack.Holder.Kind == "arbor":
		what, also = "sits on its arbor as usual", `, or turn it over and write mounted = "turned over"`
	case k.Choice.Tool.Thread.Left:
		what = "cuts a left-hand thread"
	case c.Hand.V == "left":
		what = "cuts left-handed"
	}
	a.Say(k.ToolPath()+"+"+k.Spot.String()+".spindle", k.Place("spindle", "mounted", "tool"),
		"%s %s and the spindle runs %s: its teeth point backwards; run it %s%s", k.ToolPath(), what, running, cure, also)
}
