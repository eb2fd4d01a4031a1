package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "work-meets-column",
	Title: "piece or vise reaches farther behind the spindle than the column allows",
	Why: `The column stands so far behind the spindle and no farther. A long piece across the table, or the fixed
jaw, meets it before the front of the work comes under the tool. Turn the work round, or let it hang out to the front.`,
	Rows:      []string{"A5"},
	Source:    []string{"arithmetic; what is not known of the vise behind its jaws is left out"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleDeep(180),
	Sound:     exampleDeep(130),
	OnCut:     workMeetsColumn,
})

// exampleDeep drills a hole near the front of a piece that lies clamped across the table.
func exampleDeep(width float64) string {
	return replaced(replaced(replaced(exampleHole("tool  = drill.jobbers[6]"), "width    = 30", "width    = "+figure(width)), "front = 15", "front = 10"),
		"hold      = vise.small\n    up        = \"top\"\n    jaws      = \"back\"\n    parallels = 10",
		"hold    = clamps.set\n    up      = \"top\"\n    back    = \"back\"\n    packing = { under = 10 }\n    clamps  = [{ at = { left = 5, back = 15 }, tip = 8 }]")
}

func workMeetsColumn(k *eval.Cut, a *Ask) {
	m := k.Hold.Choice.Machine
	if m == nil || k.Unplayed != "" || k.Choice.Tool.Cutter == nil || len(k.Works) == 0 || k.LevelSpindle() {
		return
	}
	behind := k.Behind()
	if behind < 80 {
		return // no machine is so shallow
	}
	throat, ok := Need(a, m.Throat)
	if !ok {
		return
	}
	if behind <= throat+0.0005 {
		a.Clear(Bound(round(behind), throat, "mm"), "what stands behind the spindle of "+m.Path())
		return
	}
	f := a.Say(m.Path()+".throat+"+k.Hold.Work.SetUp.Path(), k.Hold.Place("hold", "jaws", "back"),
		"with the spindle over %s, %s mm of piece or vise lie behind it, and the column of %s stands at %s", targetName(k), tenth(behind), m.Path(), mm(throat))
	f.Margin = Bound(round(behind), throat, "mm")
}
