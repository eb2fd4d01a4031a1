package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "packing-moves-piece",
	Title: "packing that is changed within one holding is too high or too low for the room under the piece",
	Why: `While clamps and packing are shifted the piece is to stay where it was set: its noughts hold no longer than that. Packing that
is higher than the room under it lifts the piece, packing that is lower all over lets it down when the clamps are tightened, and all
that is cut afterwards lies so much too deep or too high.`,
	Rows:      []string{"E6"},
	Source:    []string{"geometry of the dry run"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Shifted:   true,
	Trips:     exampleRepacked("12"),
	Sound:     exampleRepacked("10"),
	OnHold:    packingMovesPiece,
})

// exampleRepacked drills two holes in a block on packing of 10 mm, which is changed between them.
func exampleRepacked(under string) string {
	return `recipe "example" {
  units = "mm"
}

part "block" {
  material = "brass"
  length   = 60
  width    = 40
  height   = 20

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  hole "first" {
    into     = "top"
    at       = { left = 10, front = 10 }
    diameter = 5
    depth    = 8
  }

  hole "second" {
    into     = "top"
    at       = { right = 10, front = 10 }
    diameter = 5
    depth    = 8
  }

  setup "drill" {
    machine = mill.bench
    hold    = clamps.set
    up      = "top"
    back    = "back"
    packing = { under = 10 }

    operation {
      makes = hole.first
    }
    shift {
      packing = { under = ` + under + ` }
    }
    operation {
      makes = hole.second
    }
  }
}
`
}

func packingMovesPiece(h *eval.Holding, a *Ask) {
	for _, p := range h.Repacked() {
		over := round(p.Over)
		cause := h.Work.SetUp.Path() + "+" + h.Spot.Step + "+" + figure(over)
		switch {
		case over > 0.0005:
			a.Say(cause, p.Place, "this packing is %s higher than the room under the piece, which is lifted by it; what is cut afterwards comes out as much too deep: packing as high as before, or a set-up of its own", mm(over))
		case over < -0.0005 && p.Leaves:
			a.Say(cause, p.Place, "this packing ends %s below the piece, and nothing else bears it: it comes down when the clamps are tightened, and what is cut afterwards comes out as much too high: packing as high as before, or a set-up of its own", mm(-over))
		default:
			a.Clear(finding.Margin{}, "")
		}
	}
}
