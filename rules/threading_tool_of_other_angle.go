package rules

import (
	"fettle/eval"
	"fettle/eval/reckon/thread"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "threading-tool-of-other-angle",
	Title: "the threading tool is ground for another form of thread",
	Why: `Metric and unified threads have flanks at 60 degrees, Whitworth forms at 55, BA at 47.5. A tool of the wrong angle cuts a
thread that looks right and holds on the tips of its flanks alone, or does not go together at all.`,
	Source:    []string{"60 degrees: ISO 68-1, ASME B1.1; 55 degrees: BS 84; 47.5 degrees: BS 93; 30 degrees: ISO 2901"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleThread("5/8-11 BSW"),
	Sound:     exampleThread("M16x2"),
	OnTurn:    threadingToolOfOtherAngle,
})

func threadingToolOfOtherAngle(k *eval.Turn, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || c.Kind != "threading_tool" || k.Choice.By != "threading" {
		return
	}
	t := k.Choice.Tool.Thread
	want, known := thread.Angle(t)
	if !known {
		return
	}
	angle, ok := Need(a, c.Angle)
	if !ok {
		return
	}
	if angle > want-0.25 && angle < want+0.25 {
		a.Clear(finding.Margin{}, "")
		return
	}
	f := a.Say(c.Path()+".angle+"+t.String(), k.Place("tool", "makes"), "%s has flanks at %s degrees, and %s is ground to %s", t, figure(want), c.Path(), figure(angle))
	f.Also = []finding.Note{{Place: c.Angle.At, Says: "its angle"}}
}
