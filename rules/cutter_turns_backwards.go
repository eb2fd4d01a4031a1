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
	Trips:     exampleHole("tool  = drill.jobbers[6]", `spindle = "reverse"`),
	Sound:     exampleHole("tool  = drill.jobbers[6]", `spindle = "forward"`),
	OnCut:     cutterTurnsBackwards,
	OnTurn:    edgeLooksAway,
})

func cutterTurnsBackwards(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || k.Choice.ByHand && !k.Step.SaysSense() {
		return
	}
	if k.Choice.Turned && oneOf(c.Kind, "slitting_saw", "side_and_face_cutter") {
		if c.Marked.V == "one side" { // most are ground alike: not said, it is not asked
			f := a.Say(k.ToolPath()+".marked", k.Place("mounted", "tool"), "%s is ground for one side, and is mounted turned over: its teeth are wrong that way round", k.ToolPath())
			f.Also = []finding.Note{{Place: c.Marked.At, Says: "which way it goes on"}}
			return
		}
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

// axisBackwards asks it of a drill, tap or die on the axis of a lathe: with the spindle forward the work turns
// as if the tool turned clockwise in it.
func axisBackwards(k *eval.Turn, a *Ask) {
	if k.Choice.ByHand && !k.Step.SaysSense() {
		return
	}
	wants := k.Choice.CutsReverse()
	if wants == k.Choice.Reverse {
		a.Clear(finding.Margin{}, "")
		return
	}
	what, running, cure := "cuts right-handed", "in reverse", "forward"
	if wants {
		what, running, cure = "cuts left-handed", cure, running
		if k.Choice.Tool.Thread.Left {
			what = "cuts a left-hand thread"
		}
	}
	a.Say(k.ToolPath()+"+"+k.Spot.String()+".spindle", k.Place("spindle", "tool"), "%s %s and the spindle turns the work %s: it cuts backwards or not at all; turn it %s",
		k.ToolPath(), what, running, cure)
}

// edgeLooksAway asks of a tool in a post on a lathe whether the work comes down on its edge. In front of
// the axis the work comes down, behind it or in reverse it goes up; a tool that is upside down, or
// mounted so, has its edge below.
func edgeLooksAway(k *eval.Turn, a *Ask) {
	c := k.Choice.Tool.Cutter
	if k.Choice.OnAxis() && k.Unplayed == "" && k.Hold.Unplayed == "" {
		axisBackwards(k, a)
		return
	}
	if c == nil || k.Choice.Post == nil || k.Choice.ByHand || k.Unplayed != "" || k.Hold.Unplayed != "" || !oneOf(k.Choice.By, "turning", "facing", "grooving", "parting", "threading") {
		return
	}
	for _, w := range k.Works {
		if w.Inside {
			return // a bar in a bore may cut at its far side
		}
	}
	rear := k.Choice.Post.Place.V == "rear"
	below := c.UpsideDown.V != k.Choice.Turned
	up := rear != k.Choice.Reverse
	if below == up {
		a.Clear(finding.Margin{}, "")
		return
	}
	side, comes, edge := "in front of", "down", "below"
	if rear {
		side = "behind"
	}
	if up {
		comes = "up"
	}
	if !below {
		edge = "above"
	}
	a.Say(k.ToolPath()+"+"+k.Choice.Post.Path()+"+edge", k.Place("mounted", "spindle", "holder", "tool"), "%s has its edge %s, and stands in %s %s the axis, where the work comes %s: it rubs with its back; turn it over, or run the other way if the chuck cannot unscrew",
		k.ToolPath(), edge, k.Choice.Post.Path(), side, comes)
}
