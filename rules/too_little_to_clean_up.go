package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "too-little-to-clean-up",
	Title: "there is less metal over a raw face than usually cleans it up",
	Why: `Under a sawn, rolled or cast skin the metal is not flat. A face that is to be machined all over
wants enough over it for the cutter to come under the deepest place; a sawn end also for the slope of the saw cut.`,
	Rows:      []string{"G1", "G2"},
	Source:    []string{"drawn to 0.5, hot-rolled 1 to 3, cast 2 to 3, sawn ends 1 to 2 mm a face: common practice"},
	Limits:    []string{"clean_up_drawn", "clean_up_black", "clean_up_cast", "clean_up_sawn"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleCleanUp(0.6),
	Sound:     exampleCleanUp(1),
	OnPart:    tooLittleToCleanUp,
})

// exampleCleanUp mills a sawn end with so much metal over it.
func exampleCleanUp(over float64) string {
	s := replaced(exampleHole(), "left = 0, right = 0", "left = 0, right = "+figure(over))
	s = replaced(s, "over = {", "skin = { right = \"sawn\" }\n    over = {")
	return s[:len(s)-2] + `
  setup "end" {
    hold  = vise.small
    up    = "right"
    jaws  = "back"

    operation {
      makes = face.right
    }
  }
}
`
}

func tooLittleToCleanUp(p *eval.PartTrace, a *Ask) {
	if p.Start == nil {
		return
	}
	for _, f := range model.Faces {
		over, ok := p.Part.Blank.Over[f].Get()
		if !ok || !p.Part.Machined(f) {
			continue
		}
		skin, ok := Need(a, p.Part.Blank.Skin[f])
		if !ok || skin == "ground" {
			continue
		}
		limit := "clean_up_" + skin
		want := a.Limit(limit)
		if over >= want-0.0005 {
			a.Clear(Room(over, want), "metal over the "+f.String()+" face of "+p.Part.Label)
			continue
		}
		at := p.Part.At
		if b := p.Part.Part.Blank; b != nil {
			at = b.Item.At
			if k := b.Over.On(f); k.Said() {
				at = k.At
			}
		}
		m := a.Say(p.Part.Label+".blank.over."+f.String(), at, "%s over the %s face of %s, which is %s; usually %s at least is wanted to clean it up (%s)",
			mm(over), f, p.Part.Label, skin, mm(want), limit)
		m.Margin = Room(over, want)
	}
}
