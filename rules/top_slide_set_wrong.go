package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "top-slide-set-wrong",
	Title: "the top slide is set to another angle than half of what the taper has, or is set over besides the tailstock",
	Why: `A taper is given by its included angle or its ratio on diameter; the top slide goes along one side of it, so it is set to
half. With the tailstock set over as well, both slopes add up.`,
	Rows: []string{"A20"},
	Source: []string{"geometry: the slide lies along one side of the cone",
		"a twentieth of a millimetre on diameter over the taper: what a slide is set to by indicator, common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleSlideSet("6"),
	Sound:     exampleSlideSet("3"),
	OnTurn:    topSlideSetWrong,
})

// exampleSlideSet turns a taper of 6 degrees included with the top slide set to an angle.
func exampleSlideSet(by string) string {
	return replaced(exampleTaper("80", "30"), "      makes = taper.nose", "      makes     = taper.nose\n      top_slide = "+by)
}

func topSlideSetWrong(k *eval.Turn, a *Ask) {
	if k.Hold.Unplayed != "" || k.Step.Step == nil || !k.Step.Step.TopSlide.Is() {
		return
	}
	set := math.Abs(k.Step.Step.TopSlide.V)
	for _, w := range k.Works {
		f := w.Target.Form
		if f == nil || f.Feature.Kind != "taper" || w.Wrong != "" {
			continue
		}
		cause := f.Name() + "+top_slide"
		if over := k.Hold.Work.SetUp.SetOver.Or(0); over != 0 && set > 0 {
			a.Say(cause, k.Place("top_slide"), "the tailstock is set over by %s mm for %s, and the top slide is set to %s degrees besides: one of them turns it",
				figure(math.Abs(over)), f.Name(), figure(set))
			continue
		} else if over != 0 {
			continue
		}
		half, long := f.Half*180/math.Pi, w.X1-w.X0
		off := 2 * long * math.Abs(math.Tan(math.Min(set, 89)*math.Pi/180)-math.Tan(f.Half))
		if off <= setOverGrain+1e-9 {
			a.Clear(Bound(round(off), setOverGrain, "mm"), "the angle of the top slide for "+f.Name())
			continue
		}
		says := a.Say(cause, k.Place("top_slide"), "%s wants the top slide set to %s degrees from the axis, half of its %s, and it is set to %s: over its %s mm the diameter comes %s mm off",
			f.Name(), figure(round(half)), figure(round(2*half)), figure(set), figure(round(long)), figure(round(off)))
		says.Margin = Bound(round(off), setOverGrain, "mm")
	}
}
