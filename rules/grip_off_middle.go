package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "grip-off-middle",
	Title: "the piece is gripped near one end of the jaws",
	Why: `The screw pulls the moving jaw in its middle. Work near one end racks the jaw by the play of its
guide: it grips along one edge only, and the piece turns or flies out. A spacer as thick as the
work at the other end makes the jaws close level, at half the force on the work.`,
	Rows: []string{"C1"},
	Source: []string{"the jaw yaws by its guide's clearance over its length, and equal packing cures it: derived; packing advice seen in writing on vises",
		"work within the middle half of the jaw: common practice"},
	Limits:    []string{"jaw_off_middle"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Shifted:   true,
	Trips:     replaced(exampleSlit(""), "along     = -12", "along     = 35"),
	Sound:     exampleSlit(""),
	OnHold:    gripOffMiddle,
})

func gripOffMiddle(h *eval.Holding, a *Ask) {
	v := h.Jaws()
	if v == nil {
		return
	}
	fixed, ok := Need(a, h.Fixed)
	moving, ok2 := Need(a, h.Moving)
	if !ok || !ok2 || !fixed.Touches || !moving.Touches {
		return
	}
	left, right := math.Max(fixed.Left, moving.Left), math.Min(fixed.Right, moving.Right)
	if left >= right {
		return
	}
	width := v.JawWidth.V
	off := math.Abs((left+right)/2 - width/2)
	want := a.Limit("jaw_off_middle") * width
	if off <= want+0.0005 {
		a.Clear(Bound(off, want, "mm"), "the grip off the middle of "+v.Path())
		return
	}
	side, other := "left", "right"
	if left+right > width {
		side, other = other, side
	}
	for _, p := range h.Work.SetUp.Packing {
		if other == "left" && p.Left.Is() || other == "right" && p.Right.Is() {
			a.Clear(finding.Margin{}, "")
			return
		}
	}
	f := a.Say(h.Work.SetUp.Path()+".along", h.Place("along", "hold"),
		"%s grips the piece %s mm off the middle of its %s mm jaws, towards the %s; usually %s mm at most: "+
			"put a spacer as thick as the piece at the %s end", v.Path(), tenth(off), model.Figure(width), side, tenth(want), other)
	f.Margin = Bound(off, want, "mm")
}
