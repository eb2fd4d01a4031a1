package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "packing-not-alike",
	Title: "the spacer at the other end of the jaws is not as thick as the piece",
	Why: `A spacer keeps the moving jaw level when the work sits at one end. One that is thicker takes all of the grip and the
work is loose; one that is thinner does nothing until the jaw has racked.`,
	Rows:      []string{"C1"},
	Source:    []string{"the jaw turns by the difference over the distance of work and spacer: derived", "a strip of card takes up less than 0.1 mm: common practice"},
	Limits:    []string{"packing_match"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Shifted:   true,
	Trips:     replaced(exampleSlit(""), "along     = -12", "along     = 35\n    packing   = { left = 12.5 }"),
	Sound:     replaced(exampleSlit(""), "along     = -12", "along     = 35\n    packing   = { left = 12 }"),
	OnHold:    packingNotAlike,
})

func packingNotAlike(h *eval.Holding, a *Ask) {
	if h.Jaws() == nil || h.Choice.RoundBar > 0 {
		return
	}
	across, most := round(h.Hi[1]-h.Lo[1]), a.Limit("packing_match")
	for _, p := range h.Work.SetUp.Packing {
		for _, end := range []struct {
			name string
			k    model.Known[float64]
		}{{"left", p.Left}, {"right", p.Right}} {
			wide, ok := end.k.Get()
			if !ok {
				continue
			}
			off := round(abs(wide - across))
			if off <= most+0.0005 {
				a.Clear(Bound(off, most, "mm"), "the packing at the "+end.name+" end of the jaws")
				continue
			}
			says := "the jaws close on it and the piece is loose"
			if wide < across {
				says = "the jaw racks before it is touched"
			}
			f := a.Say(h.Work.SetUp.Path()+".packing."+end.name, end.k.At,
				"the packing at the %s end of the jaws is %s wide and the piece is %s: %s; usually they are alike within %s",
				end.name, mm(wide), mm(across), says, mm(most))
			f.Margin = Bound(off, most, "mm")
		}
	}
}
