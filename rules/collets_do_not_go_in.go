package rules

import (
	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "collets-do-not-go-in",
	Title: "collets that are to hold the work do not go in the spindle of the lathe",
	Why: `Collets sit in a chuck of their system, and that chuck in the spindle by its own taper. One that was bought for the mill often
has another taper than the lathe's spindle; a sleeve, or a chuck for the lathe's nose, is wanted.`,
	Rows:      []string{"B7", "B11"},
	Source:    []string{"look-up in the shop; a chuck sits in the taper that its shank has"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleInCollets("MT3"),
	Sound:     exampleInCollets("MT4"),
	OnHold:    colletsDoNotGoInHead,
	OnChuck:   colletsDoNotGoIn,
})

// exampleInCollets turns the end of a bar of 12 mm in collets whose chuck has a taper.
func exampleInCollets(shank string) string {
	return `recipe "example" {
  units = "mm"
}

part "pin" {
  material = "mild steel"
  diameter = 12
  length   = 60

  blank {
    over = { left = 1, right = 1, outside = 0 }
  }

  outside "waist" {
    from     = 40
    diameter = 10
  }

  setup "turn" {
    machine   = lathe.centre
    hold      = collets.own[12]
    end       = "left"
    stick_out = 30

    operation {
      makes = outside.waist
    }
  }
}

collets "own" {
  system = "ER32"
}

collet_chuck "own" {
  system = "ER32"
  shank  = "` + shank + `"
}
`
}

func colletsDoNotGoIn(h *eval.Chucking, a *Ask) {
	if m := h.Choice.Machine; m != nil {
		colletsIn(h, m.Item, m.Taper, a)
	}
}

// colletsDoNotGoInHead asks the same of a dividing head.
func colletsDoNotGoInHead(h *eval.Holding, a *Ask) {
	if d := h.Choice.Divided; d != nil && d.Head != nil && h.Carried != nil {
		colletsIn(h.Carried, d.Head.Item, d.Head.Taper, a)
	}
}

func colletsIn(h *eval.Chucking, on *model.Item, socket model.Known[drawing.Taper], a *Ask) {
	co := h.Choice.Collets
	if co == nil {
		return
	}
	fits, chuck := h.ColletSeat(socket)
	yes, ok := Need(a, fits)
	switch {
	case !ok:
	case yes:
		a.Clear(finding.Margin{}, "")
	default:
		f := a.Say(co.Path()+"+"+on.Path(), h.Place("hold", "machine"), "%s go in %s, whose shank is %s, and the spindle of %s takes %s",
			co.Path(), chuck.Path(), chuck.Shank.V.Taper, on.Path(), socket.V)
		f.Also = []finding.Note{{Place: chuck.Shank.At, Says: "its shank"}, {Place: socket.At, Says: "the spindle"}}
	}
}
