package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/handbook"
)

var _ = enter(Rule{
	Name:  "speed-too-fast",
	Title: "even the slowest speed of the spindle, or the speed written, is too fast for the tool",
	Why: `The edge of a large saw, cutter, drill or reamer runs fast at a low speed of the spindle. Above
what its steel stands in that metal it turns blue and is blunt within a turn or two.`,
	Rows: []string{"B5", "J2"},
	Source: []string{"cutting speeds: cautious figures within the spread of printed tables, warned of from half as much again; see the handbook's table of speeds",
		"the factor of one and a half: own"},
	Limits:    []string{},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Mounting,
	Trips:     replaced(exampleHole("tool  = drill.jobbers[6]", "speed = 1800"), `material = "brass"`, `material = "silver steel"`),
	Sound:     replaced(exampleHole("tool  = drill.jobbers[6]", "speed = 600"), `material = "brass"`, `material = "silver steel"`),
	OnCut:     speedTooFast,
	OnTurn:    turnedTooFast,
})

func speedTooFast(k *eval.Cut, a *Ask) {
	t := k.Choice.Tool
	if t.Cutter == nil || k.Choice.ByHand || t.Size <= 0 || k.Hold.Unplayed != "" {
		return
	}
	group, ok := Need(a, k.MaterialGroup())
	if !ok {
		return
	}
	m := k.Hold.Choice.Machine
	if k.Choice.Speed == 0 {
		if m != nil {
			Need(a, m.Speeds)
		}
		return
	}
	row, ok := handbook.Speed(eval.Process(k.Choice.By, k.Choice.Tool.Cutter), t.Cutter.Of.Or("HSS"), group)
	if !ok {
		return
	}
	turns, says, cause := turnsAt(k) // below its slowest the spindle does not go
	v := k.SurfaceSpeed() * turns / k.Choice.Speed
	if v <= row.Warn+1e-6 {
		a.Clear(Bound(v, row.Warn, "m/min"), "the edge of "+k.ToolPath())
		return
	}
	if !t.Cutter.Of.Is() {
		// Of edges that may be carbide, only what is too fast for carbide too is certain.
		if c, ok := handbook.Speed(eval.Process(k.Choice.By, k.Choice.Tool.Cutter), "carbide", group); !ok || v <= c.Warn+1e-6 {
			Need(a, t.Cutter.Of)
			return
		}
	}
	rev := row.Pick * 1000 / 3.141592653589793 / t.Size
	f := a.Say(cause, k.Place("speed", "tool"), "%s runs the edge of %s at %s m/min; in this metal %s m/min is a cautious figure, or %s rev/min",
		says, k.ToolPath(), tenth(v), tenth(row.Pick), tenth(rev))
	f.Margin = Bound(v, row.Warn, "m/min")
}
