package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "blank-above-centre-height",
	Title: "the blank is too large to turn on the dividing head above the table",
	Why: `With its axis level a piece turns only where its radius is less than the height of the axis above the table. Blocks of
one height under head and footstock, a rotary table lying flat, or a blank that hangs over the end of the table are the ways out.`,
	Rows:      []string{"A13"},
	Source:    []string{"geometry"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     replaced(exampleWheel("", "", "", ""), "centre_height = 80", "centre_height = 15"),
	Sound:     exampleWheel("", "", "", ""),
	OnHold:    blankAboveCentreHeight,
})

func blankAboveCentreHeight(h *eval.Holding, a *Ask) {
	d := h.Choice.Divided
	if d == nil || d.Upright || d.Leans() || h.Carried == nil {
		return
	}
	r := h.Carried.Outside(h.Carried.Before.Profile).Most()
	height, ok := Need(a, d.CentreHeight())
	if !ok || r == 0 {
		return
	}
	if r < height-0.0005 {
		a.Clear(Bound(round(r), height, "mm"), "the radius of the blank on "+d.Item().Path())
		return
	}
	blocks := ""
	if d.Blocks > 0 {
		blocks = " with its blocks of " + mm(d.Blocks)
	}
	f := a.Say(d.Item().Path()+".centre_height+"+h.Part.Label, h.Place("blocks", "hold"),
		"the axis of %s lies %s above the table%s, and %s has a radius of %s mm: blocks more than %s mm high under head and footstock would do, or the blank beyond the end of the table",
		d.Item().Path(), mm(height), blocks, h.Part.Label, figure(round(r)), figure(round(r-height+d.Blocks)))
	f.Margin = Bound(round(r), height, "mm")
}
