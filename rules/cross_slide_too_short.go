package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "cross-slide-too-short",
	Title: "the cross slide runs out of travel before the cut ends",
	Why: `A facing or a parting cut goes in from the outside of the work to its middle, or to its bore, with the tool where it stands:
half the diameter of travel. Turning down and grooving go from the metal that is there to the smallest diameter. What the
slide cannot give is faced in two goes with the tool moved in its post, which leaves a ring where they meet, or with the top
slide set square to the bed.`,
	Rows:      []string{"A6"},
	Source:    []string{"arithmetic: the way on radius against the travel declared"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleCross("10"),
	Sound:     exampleCross("40"),
	OnTurn:    crossSlideTooShort,
})

// exampleCross faces bar of 25 mm on a small lathe with so much travel of its cross slide.
func exampleCross(travel string) string {
	return replaced(exampleTurned("", inThree, `
    operation {
      makes = face.right
    }`), "lathe.centre", "lathe.own") + `
lathe "own" {
  swing            = 120
  swing_over_slide = 70
  bore             = 26
  headstock        = 200
  nose             = "M39x4"
  speeds           = [100, 200, 400, 800]
  cross_slide      = { travel = ` + travel + ` }
}
`
}

func crossSlideTooShort(k *eval.Turn, a *Ask) {
	m := k.Lathe()
	if m == nil || k.Hold.Unplayed != "" || k.Unplayed != "" {
		return
	}
	for _, w := range k.Works {
		far, near, ok := k.CrossWay(&w)
		way := round(far - near)
		if !ok || way <= 0 {
			continue
		}
		travel, ok := Need(a, m.CrossSlide.Travel)
		if !ok {
			return
		}
		if way <= travel+0.0005 {
			a.Clear(Bound(way, travel, "mm"), "the way of the cross slide for "+w.Target.Name())
			continue
		}
		f := a.Say(m.Path()+".cross_slide+"+k.Part.Label, k.Place("makes"), "%s wants %s mm of the cross slide, from %s mm diameter to %s, and that of %s travels %s%s",
			w.Target.Name(), figure(way), figure(round(2*far)), acrossTo(near), m.Path(), mm(travel), topSlideSquare(k, way))
		f.Margin = Bound(way, travel, "mm")
		f.Also = []finding.Note{{Place: m.CrossSlide.Travel.At, Says: "its travel"}}
	}
}

// acrossTo says how far in a cut goes.
func acrossTo(near float64) string {
	if near < 0.0005 {
		return "the middle"
	}
	return mm(round(2 * near))
}

// topSlideSquare says whether the top slide set square to the bed has the travel for a facing cut.
func topSlideSquare(k *eval.Turn, way float64) string {
	if t := k.Lathe().TopSlide.Travel; k.Choice.By == "facing" && t.Is() && way <= t.V {
		return "; the top slide set square to the bed travels " + mm(t.V)
	}
	return ""
}
