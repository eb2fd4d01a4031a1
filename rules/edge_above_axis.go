package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "edge-above-axis",
	Title: "the shank of a lathe tool is higher than the axis lies above the tool post's seat",
	Why: `The edge of a lathe tool is at the top of its shank, and is to stand at the height of the axis. A lower shank is packed up; a higher
one cannot go down: it rubs below its edge and leaves a pip when it faces. Grind a step under it, or take a smaller one.`,
	Rows:      []string{"B11"},
	Source:    []string{"look-up: shank and tool_height as the shop declares them; a tool whose edge is ground below the top of its shank: not said by the language"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleOnSeat("12"),
	Sound:     exampleOnSeat("8"),
	OnTurn:    edgeAboveAxis,
})

// exampleOnSeat turns with a tool of a shank, on a lathe whose axis lies 10 mm above the seat.
func exampleOnSeat(shank string) string {
	return exampleWaist(inOwn, "tool  = turning_tool.own") + replaced(repeating("0.01", "0.01"), "  repeats  ", "  tool_height      = 10\n  repeats  ") + `
turning_tool "own" {
  of    = "HSS"
  shank = ` + shank + `
  reach = 25
}
`
}

func edgeAboveAxis(k *eval.Turn, a *Ask) {
	c, m := k.Choice.Tool.Cutter, k.Lathe()
	if c == nil || m == nil || k.Choice.Post == nil || k.Unplayed != "" || c.Inside.V || !oneOf(c.Kind, "turning_tool", "parting_tool", "threading_tool") {
		return
	}
	high, shank := m.ToolHeight, c.Shank
	if !high.Is() || !shank.Is() || shank.V.Diameter <= 0 {
		return // most lathes have posts for what is used on them: it is not asked for
	}
	if shank.V.Diameter <= high.V+0.0005 {
		a.Clear(Bound(shank.V.Diameter, high.V, "mm"), "the shank of "+c.Path()+" on "+m.Path())
		return
	}
	f := a.Say(c.Path()+".shank+"+m.Path(), k.Place("tool", "holder"), "%s has a shank %s high, and the axis of %s lies %s above the seat of its tool post: its edge stands %s too high",
		c.Path(), mm(shank.V.Diameter), m.Path(), mm(high.V), mm(round(shank.V.Diameter-high.V)))
	f.Margin = Bound(shank.V.Diameter, high.V, "mm")
	f.Also = []finding.Note{{Place: shank.At, Says: "its shank"}, {Place: high.At, Says: "the seat"}}
}
