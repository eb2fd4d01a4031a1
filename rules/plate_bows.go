package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "plate-bows",
	Title: "a thin plate is squeezed by its edges while its broad side is milled flat",
	Why: `Jaws bow a thin plate as a hand bows a playing card. It is milled flat while it is bowed, and is hollow or round
when it is let go. Clamps that press it down, tape or glue on a flat plate, or working it in thicker stock and
cutting it free last leave it as it was cut.`,
	Rows: []string{"C2"},
	Source: []string{"a plate bows with the square of its span over its thickness: derived",
		"ten times as wide as thick: common practice, to be set by the shop"},
	Limits:    []string{"plate_bow"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     examplePlate(3),
	Sound:     examplePlate(6),
	OnHold:    plateBows,
})

// examplePlate faces a plate 40 mm wide and so thick, with half a millimetre over its top.
func examplePlate(height float64) string {
	return `recipe "example" {
  units = "mm"
}

part "plate" {
  material = "brass"
  length   = 60
  width    = 40
  height   = ` + model.Figure(height) + `

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0.5, bottom = 0 }
  }

  setup "flat" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 16

    operation {
      makes = face.top
    }
  }
}
`
}

func plateBows(h *eval.Holding, a *Ask) {
	if h.Jaws() == nil || h.Fixed.Is() && !h.Fixed.V.Touches {
		return
	}
	flat := milledFlat(h)
	if flat == "" {
		return
	}
	thick, span := round(h.Hi[2]-h.Lo[2]), round(h.Hi[1]-h.Lo[1])
	most := a.Limit("plate_bow")
	if span <= most*thick+0.0005 {
		a.Clear(Bound(span, most*thick, "mm"), "the width squeezed of the plate in "+h.Choice.Vise.Path())
		return
	}
	f := a.Say(h.Work.SetUp.Path()+"+plate", h.Place("jaws", "hold"),
		"%s squeezes a plate %s thick across %s, %s times its thickness; usually %s times at most: it bows, and %s is flat only while it is held; "+
			"hold it down on something flat, or work it at least %s mm thick and cut it free last",
		h.Choice.Vise.Path(), mm(thick), mm(span), tenth(span/thick), figure(most), flat, tenthUp(span/most))
	f.Margin = Bound(span, most*thick, "mm")
}

// milledFlat names the first broad flat that is milled on what looks up: the face itself, or
// the floor of a pocket or step.
func milledFlat(h *eval.Holding) string {
	for _, st := range h.Work.Steps {
		if st.Kind != "operation" {
			continue
		}
		for _, t := range st.Makes {
			switch {
			case t.Form == nil && t.Face == h.Choice.Up:
				return "the " + t.Face.String() + " face"
			case t.Form != nil && t.Form.Into.Face == h.Choice.Up && !t.Form.Through &&
				(t.Form.Feature.Kind == "pocket" || t.Form.Feature.Kind == "step"):
				return "the floor of " + t.Form.Name()
			}
		}
	}
	return ""
}
