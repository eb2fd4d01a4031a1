package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "quill-too-short",
	Title: "the quill has not the stroke for the depth of the hole",
	Why: `On a drill press, and on a mill with a round column, only the quill feeds. Its stroke must take the tool
from above the metal to its deepest place, point and all. Where it ends, table or head must be moved and the tool let down
again into the hole. A knee or a head on a dovetail feeds the rest.`,
	Rows:      []string{"A2"},
	Source:    []string{"arithmetic"},
	Limits:    []string{"room"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleQuill(40),
	Sound:     exampleQuill(50),
	OnCut:     quillTooShort,
})

// exampleQuill drills through a tall piece on a drill press whose quill has a stroke.
func exampleQuill(stroke float64) string {
	s := replaced(exampleHole("tool  = drill.jobbers[6]", "holder = drill_chuck.keyed"), "    hold      = vise.small", "    machine   = drill_press.pillar\n    hold      = vise.small")
	return replaced(s, "height   = 20", "height   = 40") + `
drill_press "pillar" {
  taper         = "MT3"
  speeds        = [300, 600, 1200]
  quill         = ` + figure(stroke) + `
  nose_to_table = [50, 500]
}
`
}

func quillTooShort(k *eval.Cut, a *Ask) {
	m := k.Hold.Choice.Machine
	if m == nil || k.Choice.Tool.Cutter == nil || k.Unplayed != "" || !alongAxis(k.Choice.By) ||
		m.Kind != "drill_press" && oneOf(m.Column.V, "dovetail", "knee") {
		return
	}
	down := k.Stroke()
	if down <= 0 {
		return
	}
	need := down + a.Limit("room")
	stroke, ok := Need(a, m.Quill)
	switch {
	case !ok, stroke <= 0: // without a quill the whole head feeds
		return
	case need <= stroke+0.0005:
		a.Clear(Bound(round(need), stroke, "mm"), "the stroke of "+k.ToolPath()+" on "+m.Path())
		return
	}
	if m.Kind != "drill_press" {
		if _, ok := Need(a, m.Column); !ok {
			return
		}
	}
	moves := "table"
	if m.Kind != "drill_press" {
		moves = "head"
	}
	f := a.Say(m.Path()+".quill+"+targetName(k), k.Place("tool", "makes"),
		"%s goes %s mm down for %s with its tip, and %s of room to begin with; the quill of %s has a stroke of %s: take it in two bites and move the %s in between",
		k.ToolPath(), tenth(down), targetName(k), mm(a.Limit("room")), m.Path(), mm(stroke), moves)
	f.Margin = Bound(round(need), stroke, "mm")
}

// alongAxis says whether the tool is fed along its own axis.
func alongAxis(by string) bool {
	return oneOf(by, "drilling", "reaming", "tapping", "counterboring", "boring")
}
