package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "motor-too-weak",
	Title: "the motor does not turn that drill at that speed",
	Why: `A drill in the solid takes power by its torque and its speed. A small motor stalls, or blows its fuse, and the drill is left
standing in the hole. A lower speed, a smaller drill first, or a finer feed asks for less.`,
	Rows: []string{"A22"},
	Source: []string{"torque of a drill: the least that the tables and formulas of eval/reckon/cutting give, each with its source, at the least feed printed",
		"three quarters of the motor's power come to the spindle: common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Mounting,
	Trips:     exampleWeak("60"),
	Sound:     exampleWeak("600"),
	OnCut:     motorTooWeak,
	OnTurn:    asCut(motorTooWeak),
})

// exampleWeak drills 12 mm in steel on a mill with a motor of so many watts.
func exampleWeak(watts string) string {
	return replaced(exampleLargeDrill("mild steel", 12), "largest_drill = 10", "power         = "+watts)
}

func motorTooWeak(k *eval.Cut, a *Ask) {
	t, m := k.Choice.Tool, k.Hold.Choice.Machine
	if t.Cutter == nil || t.Cutter.Kind != "drill" || m == nil || k.Choice.ByHand || k.Choice.Speed <= 0 || k.Unplayed != "" || !m.Power.Is() {
		return // without the figure the largest drill speaks, where it is declared
	}
	if hadBefore(k) > eval.WebShare*t.Size {
		return // opened out: it takes less, and by how much no table says
	}
	group, ok := Need(a, k.MaterialGroup())
	if !ok {
		return
	}
	feed, ok := eval.DrillFeed(k.Step.Step, t, group)
	if !ok {
		return
	}
	watts, ok := eval.DrillWatts(t, group, feed, k.Choice.Speed)
	if !ok {
		return
	}
	wants, has := float64(int(watts+0.5)), m.Power.V
	if wants <= has {
		a.Clear(Bound(wants, has, "W"), t.Path()+" on the motor of "+m.Path())
		return
	}
	f := a.Say(m.Path()+".power+"+t.Path(), k.Place("speed", "tool", "machine"), "%s at %s rev/min and %s mm a turn asks for %s W of the motor at the least, and that of %s has %s W",
		t.Path(), figure(k.Choice.Speed), figure(feed), figure(wants), m.Path(), figure(has))
	f.Margin = Bound(wants, has, "W")
	f.Also = []finding.Note{{Place: m.Power.At, Says: "its power"}}
}
