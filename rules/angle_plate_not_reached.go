package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "angle-plate-not-reached",
	Title: "no metal of the work lies on the upright of the angle plate that it is clamped to",
	Why: `Clamps hold work to an angle plate only where a face of it lies on the upright. Work that stands higher than the upright, lies
beyond its end or has that face cut away is pressed on nothing, and falls off or is bent.`,
	Rows:      []string{"A14"},
	Source:    []string{"geometry of the dry run"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleOnPlate("[100, 60, 40]", "    packing = { under = 50 }\n"),
	Sound:     exampleOnPlate("[100, 60, 40]", ""),
	OnHold:    anglePlateNotReached,
})

// exampleOnPlate mills a step into the upper end of a block that stands 50 mm high against an angle plate of
// the recipe's own.
func exampleOnPlate(size, more string) string {
	return `recipe "example" {
  units = "mm"
}

part "block" {
  material = "brass"
  length   = 50
  width    = 30
  height   = 16

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  step "end" {
    into  = "right"
    side  = "top"
    width = 5
    depth = 4
  }

  setup "mill" {
    machine = mill.bench
    hold    = [clamps.set, angle_plate.own]
    up      = "right"
    back    = "bottom"
` + more + `
    operation {
      makes = step.end
    }
  }
}

angle_plate "own" {
  size      = ` + size + `
  thickness = 10
}
`
}

func anglePlateNotReached(h *eval.Holding, a *Ask) {
	p, free := h.Choice.Plate, h.Work.SetUp.Free
	if p == nil {
		if free.V > 0 {
			a.Say(h.Work.SetUp.Path()+".free", free.At, "the piece is to hang %s above the table, and no angle plate is written that holds it there", mm(free.V))
		}
		return
	}
	c, ok := Need(a, h.OnPlate)
	if !ok {
		return
	}
	if c.Touches && c.Area > 0.01 {
		a.Clear(finding.Margin{}, "")
		return
	}
	r := c.Rect
	lies := "where that face is cut away"
	switch {
	case round(h.Lo[2]-r.Hi[1]) == 0:
		lies = "no lower than its upper end"
	case h.Lo[2] > r.Hi[1]:
		lies = mm(round(h.Lo[2]-r.Hi[1])) + " above its upper end"
	case h.Hi[0] <= r.Lo[0]+0.0005:
		lies = "beyond its left end"
	case h.Lo[0] >= r.Hi[0]-0.0005:
		lies = "beyond its right end"
	}
	a.Say(p.Path()+"+"+h.Work.SetUp.Path(), h.Place("packing", "free", "along", "back", "hold"), "nothing of the %s face lies on the upright of %s: the piece lies %s", h.Choice.Back, p.Path(), lies)
}
