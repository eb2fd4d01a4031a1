package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "rough-at-moving-jaw",
	Title: "a raw face at the moving jaw, and no round bar, while a block is squared",
	Why: `A raw face is not parallel to the good one opposite. Pressed flat by the moving jaw it turns the good
face away from the fixed jaw, and the next face comes out of square. A round bar presses along one line and lets the
good face lie flat.`,
	Rows:      []string{"C13"},
	Source:    []string{"round bar at the moving jaw, good face to the fixed jaw: printed workshop courses"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleSquare("    round_bar = 0"),
	Sound:     exampleSquare(""),
	OnHold:    roughAtMovingJaw,
})

// exampleSquare squares a block up.
func exampleSquare(attr string) string {
	return `recipe "example" {
  units = "mm"
}

part "block" {
  material = "brass"
  length   = 40
  width    = 20
  height   = 15

  blank {
    over = { left = 1, right = 1, front = 1, back = 1, top = 1, bottom = 1 }
    skin = { left = "sawn", right = "sawn", front = "drawn", back = "drawn", top = "drawn", bottom = "drawn" }
  }

  square_up {
    hold = vise.small
` + attr + `
  }
}
`
}

func roughAtMovingJaw(h *eval.Holding, a *Ask) {
	if h.Choice.Vise == nil || h.Work.Facing == 0 {
		return
	}
	fixed, moving := h.Choice.Back, h.Choice.Back.Opposite()
	if h.Before.Faces[fixed].Skin != "" || h.Before.Faces[moving].Skin == "" {
		return // no good face to keep flat yet, or both are good
	}
	if h.Choice.RoundBar > 0 {
		a.Clear(finding.Margin{}, "")
		return
	}
	a.Say(h.Work.SetUp.Path()+".round_bar", h.Place("round_bar", "hold"),
		"while the %s face is squared, the good %s face lies on the fixed jaw and the %s face, still %s, on the moving jaw with no round bar between: it will not come out square",
		h.Work.Facing, fixed, moving, h.Before.Faces[moving].Skin)
}
