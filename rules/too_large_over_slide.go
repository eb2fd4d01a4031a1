package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "too-large-over-slide",
	Title: "the outside that is turned does not pass over the cross slide",
	Why: `Work may swing over the bed and yet not over the cross slide, which must come along beneath it when its outside is turned.
Then only a short rim can be turned, from beside the slide, with the tool as far out as it goes.`,
	Rows:      []string{"A6"},
	Source:    []string{"the swing over the cross slide, as declared; definition; a rim as short as the tool stands out is turned from beside it: common practice"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleOverSlide(160),
	Sound:     exampleOverSlide(110),
	OnTurn:    tooLargeOverSlide,
})

// exampleOverSlide turns 20 mm of a piece so thick in a chuck of four jaws.
func exampleOverSlide(d float64) string {
	s := exampleTurned(`
  outside "rim" {
    from     = 30
    diameter = `+figure(d-4)+`
  }
`, inFour, `
    operation {
      makes = outside.rim
    }`)
	return replaced(replaced(s, "diameter = 20", "diameter = "+figure(d)), "outside = 1", "outside = 0")
}

func tooLargeOverSlide(k *eval.Turn, a *Ask) {
	m := k.Lathe()
	if m == nil || k.Hold.Unplayed != "" {
		return
	}
	for _, w := range k.Works {
		if w.Inside || w.Wrong != "" || k.By(w.Target) != "turning" || !(w.Had > 0) {
			continue
		}
		d := round(2 * w.Had)
		swing, ok := Need(a, m.SwingOverSlide)
		if !ok {
			return
		}
		if d <= swing+0.0005 {
			a.Clear(Bound(d, swing, "mm"), "the work over the cross slide of "+m.Path())
			continue
		}
		// Beside the slide, towards the headstock, the tool can stand out as far as it stands out of
		// its holder; the slide then stays clear of a short rim.
		over := round(k.Hold.LargerThan(swing-0.001) - math.Max(w.U0, 0))
		reach, ok := Need(a, k.Choice.Tool.Reach())
		if !ok {
			continue
		}
		if over <= reach+0.0005 {
			a.Clear(Bound(over, reach, "mm"), "a rim beside the cross slide of "+m.Path())
			continue
		}
		f := a.Say(m.Path()+".swing_over_slide+"+k.Part.Label, k.Place("makes"), "%s is turned where the work is %s mm thick, and %s swings %s mm over its cross slide; beside the slide the tool, %s mm out, does not reach over the %s mm of it",
			w.Target.Name(), figure(d), m.Path(), figure(swing), figure(reach), figure(over))
		f.Margin = Bound(d, swing, "mm")
		f.Also = []finding.Note{{Place: m.SwingOverSlide.At, Says: "the swing over the slide"}}
	}
}
