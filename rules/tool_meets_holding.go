package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "tool-meets-holding",
	Title: "tool, collar, nut or holder runs into vise, parallels, clamps or table",
	Why: `Everything that turns with the tool sweeps its own width along the whole cut: the saw's nut below
it, the collar above, the chuck, the nose of the spindle. What stands in that way is struck, and
the machine does not stop by itself.`,
	Rows:      []string{"B3", "C6", "A15", "C8"},
	Source:    []string{"geometry of the dry run"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Caution:   "Turn the spindle once by hand through a full turn, along the whole cut, before starting.",
	Trips:     replaced(exampleSlit(""), "along     = -12", "along     = 10"),
	Sound:     exampleSlit(""),
	OnCut:     toolMeetsHolding,
})

func toolMeetsHolding(k *eval.Cut, a *Ask) {
	a.Asks("turn the spindle by hand along the whole cut: does anything touch %s?", holdingName(k.Hold))
	for _, n := range k.Near {
		if n.Piece || n.Sure < 0 && (drilledThrough(k, n) || jawsOfTeeth(k, n)) {
			continue
		}
		switch {
		case n.Sure < 0:
			f := a.Say(pathOf(n.BodyItem)+"+"+pathOf(n.ThingItem), k.Place("holder", "tool", "tool_out"),
				"%s runs into %s by %s mm, %s", n.Body, n.Thing, tenthUp(-n.Sure), whereIs(k.Hold, n.At))
			f.Says += cureMove(n)
			f.Margin = Room(n.Sure, 0)
		case n.Worst < 0 && len(n.Lacks) > 0:
			a.Lack(n.Lacks...)
		case len(n.Lacks) > 0:
			a.Clear(finding.Margin{}, "") // clear whatever the missing facts are; by how much is not known
		default:
			a.Clear(Room(n.Worst, 0), n.Body+" to "+n.Thing)
		}
	}
	cutUnderClamp(k, a)
}

// cutUnderClamp tells of metal that is to be cut away where the tip of a clamp presses on it, if the tool
// is not seen to strike that clamp already: how tall it is may not be known.
func cutUnderClamp(k *eval.Cut, a *Ask) {
	if k.Hold.Choice.Clamps == nil || k.Choice.ByHand || k.Choice.Tool.Cutter == nil {
		return
	}
	clamps := k.Hold.Choice.Clamps.Item
	for _, n := range k.Near {
		if n.ThingItem == clamps && n.Sure < 0 {
			return
		}
	}
	for _, tip := range k.Hold.Tips {
		if k.Before.Piece.Holds(tip) && !k.After.Piece.Holds(tip) {
			a.Say(pathOf(k.Choice.Tool.Cutter.Item)+"+"+pathOf(clamps), k.Place("holder", "tool", "tool_out"),
				"%s would cut away what a clamp presses on, %s: move the clamp first (a shift), or clamp elsewhere", k.ToolPath(), whereIs(k.Hold, k.Hold.Pose.Point(tip)))
			return
		}
	}
}
