package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
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
	made := faceSquared(h)
	if h.Choice.Vise == nil || made == model.NoFace {
		return
	}
	fixed, moving := h.Choice.Back, h.Choice.Back.Opposite()
	was := h.Before.Faces[moving]
	switch {
	case h.Before.Faces[fixed].Skin != "" || was.Skin == "":
		return // no good face to keep flat yet, or both are good
	case h.Work.Facing == model.NoFace && math.Abs(was.At-h.Part.FaceAt(moving)) < 0.001 && !oneOf(was.Skin, "sawn", "black", "cast"):
		return // it stays as the stock was drawn or ground
	case h.Choice.RoundBar > 0:
		a.Clear(finding.Margin{}, "")
		return
	}
	a.Say(h.Work.SetUp.Path()+".round_bar", h.Place("round_bar", "hold"),
		"while the %s face is squared, the good %s face lies on the fixed jaw and the %s face, still %s, on the moving jaw with no round bar between: it will not come out square",
		made, fixed, moving, was.Skin)
}

// faceSquared is the outer face that a holding makes in a machine: of a square_up its own, else the one
// that looks up.
func faceSquared(h *eval.Holding) model.Face {
	if h.Work.Facing != model.NoFace {
		return h.Work.Facing
	}
	for _, st := range h.Work.Steps {
		if st.Step == nil || oneOf(st.Step.By.V, "filing", "scraping") {
			continue
		}
		for _, t := range st.Makes {
			if t.Form == nil && t.Member == 0 && t.Face != model.NoFace && t.Face == h.Choice.Up {
				return t.Face
			}
		}
	}
	return model.NoFace
}
