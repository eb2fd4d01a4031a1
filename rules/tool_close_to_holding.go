package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "tool-close-to-holding",
	Title: "something that turns passes close by vise, clamp or table",
	Why: `On paper it clears. A saw that wobbles, a jaw not quite where it was thought to be, or a piece
pushed on by a tenth uses the gap up.`,
	Rows:      []string{"B3", "C6"},
	Source:    []string{"common practice"},
	Limits:    []string{"room"},
	Level:     finding.Advice,
	Judgement: finding.Thumb,
	Trips:     replaced(exampleSlit(""), "along     = -12", "along     = 8"),
	Sound:     exampleSlit(""),
	OnCut:     toolCloseToHolding,
})

func toolCloseToHolding(k *eval.Cut, a *Ask) {
	room := a.Limit("room")
	for _, n := range k.Near {
		if n.Piece || n.Sure < 0 {
			continue
		}
		switch {
		case n.Sure < room-0.0005:
			passes := "passes " + n.Thing + " by " + hundredth(n.Sure) + " mm"
			if hundredth(n.Sure) == "0" {
				passes = "just touches " + n.Thing + " as it passes"
			}
			f := a.Say(pathOf(n.BodyItem)+"+"+pathOf(n.ThingItem), k.Place("holder", "tool"),
				"%s %s; usually %s mm at least are left", n.Body, passes, figure(room))
			f.Margin = Room(round(n.Sure), room)
		case n.Worst < room && len(n.Lacks) > 0:
			a.Lack(n.Lacks...)
		case len(n.Lacks) > 0:
			a.Clear(finding.Margin{}, "")
		default:
			a.Clear(Room(round(n.Sure), room), n.Body+" to "+n.Thing)
		}
	}
}
