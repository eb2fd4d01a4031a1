package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "spindle-turns-one-way",
	Title: "the spindle is to run in reverse, and the machine does not",
	Why: `Left-hand drills, left-hand threads and saws turned over for the sake of their nut want the spindle in
reverse. Many small machines have no switch for it.`,
	Rows:      []string{"B12"},
	Source:    []string{"the machine as declared"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleOneWay("left"),
	Sound:     exampleOneWay("right"),
	OnCut:     spindleTurnsOneWay,
	OnTurn:    latheTurnsOneWay,
})

// exampleOneWay drills with a drill of a hand on a mill that has no reverse.
func exampleOneWay(hand string) string {
	return replaced(exampleHole("tool  = drill.own", "holder = drill_chuck.keyed"), "    hold      = vise.small", "    machine   = mill.plain\n    hold      = vise.small") + `
drill "own" {
  diameter = 6
  of       = "HSS"
  hand     = "` + hand + `"
}

mill "plain" {
  taper         = "MT3"
  drawbars      = ["M12"]
  speeds        = [200, 400, 800]
  reverse       = false
  travel        = [200, 100, 150]
  nose_to_table = [40, 300]
}
`
}

func spindleTurnsOneWay(k *eval.Cut, a *Ask) {
	m := k.Hold.Choice.Machine
	if m == nil || k.Choice.Tool.Cutter == nil || k.Choice.ByHand {
		return
	}
	// that it turns the wrong way is another rule's
	runsOneWay(m, k.Choice.Reverse && k.Choice.CutsReverse(), k.ToolPath(), k.Place("spindle", "mounted", "tool"), a)
}

func latheTurnsOneWay(k *eval.Turn, a *Ask) {
	m := k.Hold.Choice.Machine
	if m == nil || k.Choice.Tool.Cutter == nil || k.Choice.ByHand || k.Unplayed != "" {
		return
	}
	wants := k.Choice.Reverse && (!k.Choice.OnAxis() || k.Choice.CutsReverse())
	runsOneWay(m, wants, k.ToolPath(), k.Place("spindle", "mounted", "tool"), a)
}

func runsOneWay(m *model.Machine, reverse bool, tool string, at text.Place, a *Ask) {
	if !reverse {
		a.Clear(finding.Margin{}, "")
		return
	}
	yes, ok := Need(a, m.Reverse)
	switch {
	case !ok:
	case yes:
		a.Clear(finding.Margin{}, "")
	default:
		f := a.Say(m.Path()+".reverse", at, "%s is to run in reverse, and %s runs forward only", tool, m.Path())
		f.Also = []finding.Note{{Place: m.Reverse.At, Says: "it has no reverse"}}
	}
}
