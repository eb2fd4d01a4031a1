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
thread that looks right and holds on the tips of its flanks alone, or does not go together at all. A worm has twice its pressure
angle between its flanks: 40 degrees, or 29 of old ones.`,
	Source: []string{"60 degrees: ISO 68-1, ASME B1.1; 55 degrees: BS 84; 47.5 degrees: BS 93; 30 degrees: ISO 2901",
		"a worm in its axial section: twice the pressure angle, geometry of the straight-sided rack"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Holding | Mounting,
	Trips:     exampleThread("5/8-11 BSW"),
	Sound:     exampleThread("M16x2"),
	OnTurn:    threadingToolOfOtherAngle,
})

func threadingToolOfOtherAngle(k *eval.Turn, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || c.Kind != "threading_tool" || k.Choice.By != "threading" {
		return
	}
	name, want, known := flanks(k)
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
	f := a.Say(c.Path()+".angle+"+name, k.Place("tool", "makes"), "%s has flanks at %s degrees, and %s is ground to %s", name, figure(want), c.Path(), figure(angle))
	f.Also = []finding.Note{{Place: c.Angle.At, Says: "its angle"}}
}

// flanks is the thread or worm of an operation, and the angle between its flanks in degrees.
func flanks(k *eval.Turn) (name string, angle float64, known bool) {
	for _, w := range k.Works {
		if f := w.Target.Form; f != nil && f.Feature.Kind == "worm" {
			return f.Name(), 2 * f.Feature.PressureAngle.Or(20), true
		}
	}
	t := k.Choice.Tool.Thread
	angle, known = thread.Angle(t)
	return t.String(), angle, known
}
