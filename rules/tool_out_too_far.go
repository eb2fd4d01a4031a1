package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:      "tool-out-too-far",
	Title:     "the tool is written to stand out farther than it is long",
	Why:       `What stands out of the holder is not in it. A tool written to stand out its whole length or more is held by nothing.`,
	Rows:      []string{"A15"},
	Source:    []string{"arithmetic; lengths of drills: ISO 235 and its fellows, in the handbook"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Deaf:      Mounting,
	Trips:     exampleHole("tool  = drill.jobbers[6]", "holder = drill_chuck.keyed", "tool_out = 95"),
	Sound:     exampleHole("tool  = drill.jobbers[6]", "holder = drill_chuck.keyed", "tool_out = 65"),
	OnCut:     toolOutTooFar,
})

func toolOutTooFar(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || k.Choice.Out <= 0 || k.Stack.Holder != nil && k.Stack.Holder.Kind == "arbor" {
		return
	}
	overall, ok := Need(a, k.Stack.Overall)
	if !ok {
		return
	}
	if k.Choice.Out < overall-0.0005 {
		a.Clear(Bound(k.Choice.Out, overall, "mm"), k.ToolPath()+" standing out")
		return
	}
	f := a.Say(k.ToolPath()+".overall+"+k.Spot.String()+".tool_out", k.Place("tool_out"),
		"%s is %s long, and is to stand out by %s: nothing of it is left to hold it by", k.ToolPath(), mm(overall), mm(k.Choice.Out))
	f.Margin = Bound(k.Choice.Out, overall, "mm")
}
