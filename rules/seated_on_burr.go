package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "seated-on-burr",
	Title: "the piece sits or is gripped on a burr that an earlier cut left",
	Why: `A burr under the piece is a shim: it tilts the work by its height over the width of the seat, and one at the
fixed jaw throws it out of square. A file before the piece is turned over takes a minute.`,
	Rows:      []string{"C14"},
	Source:    []string{"a burr under or against a jaw throws the work out of true and is pressed into it: a printed work on milling", "heights: common practice"},
	Limits:    []string{"burr"},
	Level:     finding.Advice,
	Judgement: finding.Thumb,
	Trips:     exampleTurnedOver(""),
	Sound:     exampleTurnedOver("  bench \"edges\" {\n    deburr {}\n  }\n\n"),
	OnHold:    seatedOnBurr,
})

// exampleTurnedOver mills the top, then turns the piece over onto it.
func exampleTurnedOver(between string) string {
	return `recipe "example" {
  units = "mm"
}

part "block" {
  material = "brass"
  length   = 40
  width    = 30
  height   = 20

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 1, bottom = 1 }
  }

  hole "pin" {
    into     = "top"
    at       = { left = 20, front = 2 }
    diameter = 2
    depth    = 5
  }

  setup "top" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 10

    operation {
      makes = face.top
    }
    operation {
      makes = hole.pin
    }
  }

` + between + `  setup "bottom" {
    hold      = vise.small
    up        = "bottom"
    jaws      = "back"
    parallels = 10

    operation {
      makes = face.bottom
    }
  }
}
`
}

func seatedOnBurr(h *eval.Holding, a *Ask) {
	if h.Jaws() == nil && h.Choice.Plate == nil || len(h.Before.Faces) == 0 {
		return
	}
	type touch struct {
		says, at string
		c        model.Known[eval.Contact]
	}
	all := []touch{{"the fixed jaw presses on a burr", "jaws", h.Fixed}}
	for _, s := range h.Seats {
		all = append(all, touch{"the piece sits with a burr on " + s.Name, "parallels", s.Contact})
	}
	if p := h.Choice.Plate; p != nil {
		all = []touch{{"the piece lies with a burr on the upright of " + p.Path(), "back", h.OnPlate}}
	}
	asked := false
	for _, t := range all {
		c, ok := t.c.Get()
		if !ok || !c.Touches {
			continue
		}
		asked = true
		for _, b := range h.BurrsOn(c) {
			a.Say(h.Work.SetUp.Path()+"+"+b.Edge, h.Place(t.at, "hold"),
				"%s: %s, left by %s and not taken off, usually up to %s high; deburr before this set-up",
				t.says, b.Edge, b.By.Step, mm(a.Limit("burr")))
			return
		}
	}
	if asked {
		a.Clear(finding.Margin{}, "")
	}
}
