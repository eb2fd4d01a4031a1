package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "holder-meets-piece",
	Title: "shank, holder, collar or nut runs into the piece itself",
	Why: `The cutting edge makes its own room; the shank behind it, the chuck or the collar do not. Where
metal stands higher beside the cut than the tool sticks out, or a saw must go deeper than its
collar allows, the holder rubs, burns and pushes the work out of its holding.`,
	Rows:      []string{"A15", "A16", "A17", "B2", "B3"},
	Source:    []string{"geometry of the dry run"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleBesideWall(20),
	Sound:     exampleBesideWall(35),
	OnCut:     holderMeetsPiece,
})

// exampleBesideWall drills down in a step, so far from the wall that stands beside it.
func exampleBesideWall(from float64) string {
	return `recipe "example" {
  units = "mm"
}

part "block" {
  material = "brass"
  length   = 60
  width    = 50
  height   = 45

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  step "low" {
    into  = "top"
    side  = "front"
    width = 40
    depth = 35
  }

  hole "pin" {
    into     = step.low.floor
    at       = { left = 30, back = ` + figure(from) + ` }
    diameter = 3
    depth    = 5
  }

  setup "mill" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"

    operation {
      makes = step.low
    }
    operation {
      makes    = hole.pin
      tool     = drill.jobbers[3]
      holder   = drill_chuck.keyed
      tool_out = 33
    }
  }
}
`
}

func holderMeetsPiece(k *eval.Cut, a *Ask) {
	for _, n := range k.Near {
		switch {
		case !n.Piece, isNeck(n.Body): // of the neck of an undercutter another rule speaks
		case n.Sure < 0.0005 && sawTooShallowFor(k) > 0 && n.BodyItem == k.Stack.Holder.Item:
			// the saw does not reach so deep inside its collar: another rule
		case n.Sure < 0:
			f := a.Say(pathOf(n.BodyItem)+"+piece", k.Place("tool_out", "holder", "tool"),
				"%s runs into the piece by %s mm, %s", n.Body, tenthUp(-n.Sure), whereIs(k.Hold, n.At))
			f.Says += cureMove(n)
			f.Margin = Room(n.Sure, 0)
		case n.Worst < 0 && len(n.Lacks) > 0:
			a.Lack(n.Lacks...)
		default:
			if n.Worst < 5 && len(n.Lacks) == 0 { // it was not looked at farther out
				a.Clear(Room(n.Worst, 0), n.Body+" to the piece")
			} else {
				a.Clear(finding.Margin{}, "")
			}
		}
	}
}
