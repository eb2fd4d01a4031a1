package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "axis-out-of-reach",
	Title: "a level spindle does not come low enough, or high enough, over the work",
	Why: `Under a level spindle the work goes up to the cutter: between table and axis stand the vise, the piece and half the cutter. What
the knee gives is from the lowest to the highest place of the axis above the table, and no quill makes up for it.`,
	Rows:      []string{"A1"},
	Source:    []string{"geometry of the dry run"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleLevel("axis_to_table = [20, 90]", ""),
	Sound:     exampleLevel("axis_to_table = [20, 250]", ""),
	OnCut:     axisOutOfReach,
})

func axisOutOfReach(k *eval.Cut, a *Ask) {
	m := k.Hold.Choice.Machine
	if m == nil || k.Unplayed != "" || k.Choice.Tool.Cutter == nil || !k.LevelSpindle() {
		return
	}
	lo, hi, moves := k.AxisHeights()
	if !moves {
		return
	}
	low, ok := Need(a, lo)
	high, ok2 := Need(a, hi)
	r, ok3 := Need(a, m.AxisToTable)
	if !ok || !ok2 || !ok3 || len(r) != 2 {
		return
	}
	at := k.Place("hold", "tool")
	switch {
	case low < r[0]-0.0005:
		f := a.Say(m.Path()+".axis_to_table+low", at, "%s needs the spindle's axis %s above the table, and that of %s comes no lower than %s: a larger cutter, or packing under the work", targetName(k), mm(round(low)), m.Path(), mm(r[0]))
		f.Margin = Room(round(low), r[0])
	case high > r[1]+0.0005:
		f := a.Say(m.Path()+".axis_to_table+high", at, "%s needs the spindle's axis %s above the table, and that of %s comes no higher than %s: hold the work lower, or take a smaller cutter", targetName(k), mm(round(high)), m.Path(), mm(r[1]))
		f.Margin = Bound(round(high), r[1], "mm")
	default:
		a.Clear(Room(round(low), r[0]), "the axis of "+m.Path()+" above its lowest place")
		a.Clear(Bound(round(high), r[1], "mm"), "the axis of "+m.Path()+" above the table")
	}
}
