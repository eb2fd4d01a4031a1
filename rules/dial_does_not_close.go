package rules

import (
	"fmt"
	"math"

	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "dial-does-not-close",
	Title: "the lines of a machine's dial do not make up its turn",
	Why: `Lines times what one stands for is what a turn stands for: the lead of the screw, twice the lead on a slide that reads diameter,
360 degrees over the ratio on a rotary table. A dial with 50 lines on a screw of 40 thousandths stayed on a machine for
years. Measure the way of one turn with an indicator, and count the lines.`,
	Rows:      []string{"H13"},
	Source:    []string{"arithmetic; reckon/dial"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleHole() + dialOf("division = 0.02, turn = 2.032, lines = 100"),
	Sound:     exampleHole() + dialOf("division = 0.02, turn = 2, lines = 100"),
	OnShop:    dialDoesNotClose,
})

// dialOf is a lathe with a dial on its cross slide.
func dialOf(says string) string {
	return `
lathe "own" {
  swing       = 180
  cross_slide = { ` + says + ` }
}
`
}

func dialDoesNotClose(b *model.Build, a *Ask) {
	for _, m := range b.Shop.Machines {
		for _, d := range [4]struct {
			name string
			dial model.Dial
		}{{"x", m.Dials.X}, {"y", m.Dials.Y}, {"z", m.Dials.Z}, {"quill", m.Dials.Quill}} {
			closes(m.Path()+".dials."+d.name, d.dial.Division, d.dial.Turn, d.dial.Lines, a)
		}
		closes(m.Path()+".cross_slide", m.CrossSlide.Division, m.CrossSlide.Turn, m.CrossSlide.Lines, a)
		closes(m.Path()+".top_slide", m.TopSlide.Division, m.TopSlide.Turn, model.Known[int]{}, a)
	}
	for _, t := range b.Shop.Tables {
		tableDial(t, a)
	}
}

// nearWhole is how far the lines of a turn may be from a whole number: what a figure written to
// six places loses.
const nearWhole = 1e-4

// closes holds one dial against its turn. A dial of which a turn is not declared says nothing.
func closes(name string, division, turn model.Known[float64], lines model.Known[int], a *Ask) {
	if !division.Is() || !turn.Is() || !(division.V > 0) {
		return
	}
	wants := turn.V / division.V
	switch {
	case lines.Is() && math.Abs(float64(lines.V)-wants) > nearWhole*wants:
		f := a.Say(name, lines.At, "%s has %d lines of %s: together %s, and its turn is %s", name, lines.V, fine(division.V), mm(round(float64(lines.V)*division.V)), mm(turn.V))
		f.Margin = finding.Margin{Has: float64(lines.V), Wants: round(wants), Unit: "lines"}
	case math.Abs(wants-math.Round(wants)) > nearWhole*wants:
		a.Say(name, division.At, "a line of %s stands for %s and its turn for %s: that is %s lines, no whole number", name, fine(division.V), mm(turn.V), figure(round(wants)))
	default:
		a.Clear(finding.Margin{}, "")
	}
}

// fine prints what a line stands for, to four figures: a thousandth of an inch is 0.0254 mm.
func fine(x float64) string { return fmt.Sprintf("%.4g mm", x) }

// tableDial holds the dial of a rotary table against its worm.
func tableDial(t *model.RotaryTable, a *Ask) {
	if !t.Ratio.Is() || !t.Dial.Division.Is() || !(t.Dial.Division.V > 0) || !(t.Ratio.V > 0) {
		return
	}
	wants := 360 / t.Ratio.V / t.Dial.Division.V
	if math.Abs(wants-math.Round(wants)) > nearWhole*wants {
		a.Say(t.Path()+".dial", t.Dial.Division.At, "a turn of the handle of %s (%s to 1) is %s deg, and a line of its dial %s deg: that is %s lines, no whole number",
			t.Path(), figure(t.Ratio.V), figure(round(360/t.Ratio.V)), fmt.Sprintf("%.4g", t.Dial.Division.V), figure(round(wants)))
		return
	}
	a.Clear(finding.Margin{}, "")
}
