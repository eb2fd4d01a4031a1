package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "tower-too-tall",
	Title: "vise, piece, tool and holder together do not go under the spindle, or do not reach up to it",
	Why: `Table furniture, parallels, work, tool and holder stand one on another, and the tool must also
clear the top of the work to begin. The most that the nose can stand above the table is soon used
up by a drill in a chuck; and a short tool may not come down to low work.`,
	Rows:      []string{"A1", "A2"},
	Source:    []string{"arithmetic; collets give more height than holders: a guide to small mills"},
	Limits:    []string{"room"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleTall(150),
	Sound:     exampleTall(60),
	OnCut:     towerTooTall,
})

// exampleTall drills a piece that stands so tall in the vise.
func exampleTall(height float64) string {
	return replaced(replaced(exampleHole("tool  = drill.jobbers[6]", "holder = drill_chuck.keyed"), "height   = 20", "height   = "+figure(height)),
		`diameter = 6`, "diameter = 6\n    depth    = 10")
}

func towerTooTall(k *eval.Cut, a *Ask) {
	m := k.Hold.Choice.Machine
	if m == nil || k.Choice.Tool.Cutter == nil || k.Choice.ByHand || k.Unplayed != "" {
		return
	}
	t := k.Tower()
	if t.Low.From == 0 && len(t.Low.Lacks) == 0 {
		return // nothing moves
	}
	low, ok := Need(a, t.Low)
	if !ok {
		return
	}
	high := t.High.V
	r, ok := Need(a, m.NoseToTable)
	if !ok || len(r) != 2 {
		return
	}
	least := r[0]
	if low < least {
		q, ok := Need(a, m.Quill)
		if !ok {
			return
		}
		least -= q
	}
	switch {
	case high > r[1]+0.0005:
		f := a.Say(pathOf(m.Item)+".nose_to_table+"+holdingName(k.Hold), k.Place("holder", "tool"),
			"with %s the nose of %s would have to stand %s mm above the table to clear the work; it goes up to %s: %s mm too tall",
			k.ToolPath(), m.Path(), tenth(high), mm(r[1]), tenthUp(high-r[1]))
		f.Margin = Bound(high, r[1], "mm")
	case low < least-0.0005:
		f := a.Say(pathOf(m.Item)+".nose_to_table+low", k.Place("holder", "tool"),
			"with %s the nose of %s would have to come down to %s mm above the table; with its quill it comes to %s: %s mm too short",
			k.ToolPath(), m.Path(), tenth(low), mm(least), tenthUp(least-low))
		f.Margin = Room(low, least)
	default:
		a.Clear(Bound(high, r[1], "mm"), "the nose of "+m.Path()+" above the table")
		a.Clear(Room(low, least), "the nose of "+m.Path()+" above its lowest")
	}
}
