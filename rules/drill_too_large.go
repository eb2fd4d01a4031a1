package rules

import (
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "drill-too-large",
	Title: "the drill is larger than the machine is said to take in steel",
	Why: `A small head with plastic gears strips them, and a belt slips, long before the drill is hurt. Open the hole
up in steps, bore it, or use another machine.`,
	Rows:      []string{"A22"},
	Source:    []string{"the maker's or owner's figure, as declared"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Mounting,
	Trips:     exampleLargeDrill("mild steel", 13),
	Sound:     exampleLargeDrill("mild steel", 8),
	OnCut:     drillTooLarge,
	OnTurn:    asCut(drillTooLarge),
})

// exampleLargeDrill drills a metal on a machine that takes 10 mm in steel.
func exampleLargeDrill(metal string, d float64) string {
	return replaced(replaced(replaced(exampleHole("tool  = drill.jobbers["+figure(d)+"]", "holder = drill_chuck.keyed"), "diameter = 6", "diameter = "+figure(d)), `material = "brass"`, `material = "`+metal+`"`), "    hold      = vise.small", "    machine   = mill.light\n    hold      = vise.small") +
		"\nmill \"light\" {\n  taper         = \"MT3\"\n  drawbars      = [\"M12\"]\n  speeds        = [200, 400, 800]\n  travel        = [200, 100, 150]\n  nose_to_table = [40, 300]\n  largest_drill = 10\n}\n"
}

func drillTooLarge(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	m := k.Hold.Choice.Machine
	if c == nil || m == nil || c.Kind != "drill" || k.Choice.ByHand || !m.LargestDrill.Is() {
		return
	}
	group, ok := Need(a, k.MaterialGroup())
	if !ok {
		return
	}
	if !strings.Contains(group, "steel") && !strings.Contains(group, "stainless") {
		return
	}
	if had := hadBefore(k); had >= m.LargestDrill.V {
		return
	}
	d, most := k.Choice.Tool.Size, m.LargestDrill.V
	if d <= most+0.0005 {
		a.Clear(Bound(d, most, "mm"), k.ToolPath()+" on "+m.Path())
		return
	}
	f := a.Say(m.Path()+".largest_drill+"+k.ToolPath(), k.Place("tool", "machine"), "%s in steel on %s, which is said to take %s at most: open it up in steps, or bore it",
		k.ToolPath(), m.Path(), mm(most))
	f.Margin = Bound(d, most, "mm")
}

// hadBefore is the diameter of the hole before this cut.
func hadBefore(k *eval.Cut) float64 {
	had := 0.0
	for _, w := range k.Works {
		had = max(had, w.Had)
	}
	return had
}
