package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "footstock-not-at-height",
	Title: "the footstock holds the free end at another height than the dividing head",
	Why: `Between a head and a footstock of another height the work lies aslant: teeth and flats come out deeper at one end than at the
other. Pack the lower one by the difference, or set the work level by an indicator along its top.`,
	Rows:      []string{"A13"},
	Source:    []string{"look-up: the two centre heights as the shop declares them; over the piece's length: geometry", "a hundredth of a millimetre: our own"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleFootstock("79.5"),
	Sound:     exampleFootstock("80"),
	OnHold:    footstockNotAtHeight,
})

// exampleFootstock cuts a wheel on a head of 80 mm centre height, its end in a footstock of another.
func exampleFootstock(height string) string {
	return replaced(exampleWheel("", "support = { by = dividing_head.own }", "", ""), "  stands_up     = false", "  stands_up     = false\n  footstock     = { centre_height = "+height+" }")
}

// alikeHeight is how nearly head and footstock must be alike, mm.
const alikeHeight = 0.01

func footstockNotAtHeight(h *eval.Holding, a *Ask) {
	d := h.Choice.Divided
	if d == nil || d.Head == nil || d.Upright || !d.Foot || h.Work.SetUp.Within.Is() {
		return // set level to what the set-up says
	}
	head, ok := Need(a, d.Head.CentreHeight)
	foot, ok2 := Need(a, d.Head.Footstock.CentreHeight)
	if !ok || !ok2 {
		return
	}
	off := round(abs(head - foot))
	if off <= alikeHeight+0.0005 {
		a.Clear(Bound(off, alikeHeight, "mm"), "the footstock of "+d.Head.Path()+" against its head")
		return
	}
	word := "lower"
	if foot > head {
		word = "higher"
	}
	f := a.Say(d.Head.Path()+".footstock.centre_height", h.Place("support", "hold"), "the footstock of %s is %s %s than its head: %s lies aslant by as much from end to end", d.Head.Path(), mm(off), word, h.Part.Label)
	f.Margin = Bound(off, alikeHeight, "mm")
	f.Also = []finding.Note{{Place: d.Head.CentreHeight.At, Says: "the head"}, {Place: d.Head.Footstock.CentreHeight.At, Says: "its footstock"}}
}
