package rules

import (
	"fettle/eval"
	"fettle/eval/reckon/cutting"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "mandrel-unscrews",
	Title: "the cut undoes work screwed on a mandrel, or the nut that clamps it",
	Why: `Work on a mandrel is held back by the cut, and what holds it is dragged along: seen from the tailstock the work lags behind
a spindle that runs anticlockwise, which is forward, and so screws itself up on a right-hand thread against its shoulder; a
right-hand nut on the free end is drawn up in the same way. In reverse, or with a left-hand thread running forward, both come
undone.`,
	Rows:      []string{"C15", "C20"},
	Source:    []string{"the same reasoning as for nuts of arbors, checked in eval/reckon/cutting; principle of a screwed spindle nose: common practice"},
	Level:     finding.Danger,
	Judgement: finding.Fact,
	Caution: "Work that comes off a turning mandrel is thrown. Do not run against the thread, turn it over by hand first, stand out of its " +
		"plane, and follow the machine's manual.",
	Trips:  exampleScrewed(`spindle = "reverse"`),
	Sound:  exampleScrewed(`spindle = "forward"`),
	OnTurn: mandrelUnscrews,
})

// exampleScrewed turns a disc that is clamped by a right-hand nut.
func exampleScrewed(more string) string {
	return replaced(exampleNut("M10", "outside.waist"), "      makes = outside.waist\n", "      makes = outside.waist\n      "+more+"\n")
}

func mandrelUnscrews(k *eval.Turn, a *Ask) {
	h := k.Hold
	m := h.Choice.Mandrel
	if m == nil || h.Unplayed != "" || k.Choice.ByHand || k.Choice.By == "planing" || k.Choice.NoTool != "" {
		return
	}
	kind, ok := Need(a, m.Sort)
	if !ok {
		return
	}
	thread, at := m.Nut.V, m.Nut.At
	switch {
	case kind == "screwed":
		t, ok := Need(a, m.Thread)
		a.Asks("does the cut screw the work up on %s, or off it?", m.Path())
		if !ok {
			return
		}
		thread, at = t, m.Thread.At
	case kind == "glue" || !m.Nut.Is():
		return
	}
	hand := cutting.HandOf(thread.Left)
	if cutting.Nut(cutting.FreeEnd(!k.Choice.Reverse), hand, false, cutting.NoKey) != cutting.Loosens {
		a.Clear(finding.Margin{}, "")
		return
	}
	if kind == "screwed" && h.NutAtEnd() { // a nut run up against the work locks it
		a.Asks("is the nut of %s run up hard against the work, so that the cut cannot unscrew it?", m.Path())
		a.Lack(model.Lack{Fact: "whether the nut of " + m.Path() + " locks the work on its thread", At: m.Nut.At})
		return
	}
	undone(k, m, kind, thread, at, a)
}

func undone(k *eval.Turn, m *model.Mandrel, kind string, thread drawing.Thread, at text.Place, a *Ask) {
	running, cure, handed := "forward", "reverse", "right-hand"
	if k.Choice.Reverse {
		running, cure = cure, running
	}
	if thread.Left {
		handed = "left-hand"
	}
	what := k.Part.Label + " is screwed on " + m.Path() + " by " + thread.String() + ", " + handed
	does := "the cut holds it back, and that unscrews it"
	if kind != "screwed" {
		what = k.Part.Label + " is clamped on " + m.Path() + " by a nut " + thread.String() + ", " + handed
		does = "the cut holds the work back, the work drags the nut, and that undoes it"
	}
	f := a.Say(m.Path()+".thread+"+running, k.Place("spindle", "tool"), "%s, and the spindle runs %s: %s; running %s draws it up", what, running, does, cure)
	f.Also = []finding.Note{{Place: at, Says: "the thread"}}
}
