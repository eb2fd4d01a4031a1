package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "sine-bar-not-close-enough",
	Title: "an angle that is set by a sine bar may be further off than it is to be",
	Why: `The stack under the roller is only as near as the blocks that are here make it, and an error of the bar's own centres counts
the more the steeper it stands. Take another set of gauges, a longer bar, or set the other angle and turn the work over.`,
	Rows:      []string{"E12"},
	Source:    []string{"angle = arcsin(stack / centres), to first order: error of the stack over centres and cosine, error of the centres over centres times tangent", "ISO 2768-1, general tolerance of angles (from memory)"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleSine("error   = 0.05", "0.01"),
	Sound:     exampleSine("error   = 0.005", "0.01"),
	OnHold:    sineBarNotCloseEnough,
})

// exampleSine is a block that leans on a sine bar of 100 mm.
func exampleSine(bar, within string) string {
	return exampleTilted("30", "    within = "+within+"\n    tilt = { about = \"y\", by = 30, set_by = sine_bar.hundred }\n    parallels = 4\n", "") + `
sine_bar "hundred" {
  centres = 100
  ` + bar + `
}

slip_gauges "box" {
  set = "M47"
}
`
}

func sineBarNotCloseEnough(h *eval.Holding, a *Ask) {
	s, ok := h.SineSet()
	if !ok || !s.Made {
		return
	}
	for _, l := range h.AngleLimits() {
		seconds := func(deg float64) float64 { return math.Round(deg * 3600) }
		off, whole := s.Off.Get()
		switch {
		case s.Certain > l.Most || whole && off > l.Most:
			f := a.Say(h.Work.SetUp.Path()+".tilt+"+s.Bar.Path(), h.Place("tilt"), "%s at %s degrees on %s of %s: %s",
				s.Bar.Path(), figure(s.Angle), s.Stack.Set.Path(), mm(math.Round(s.Stack.Height*1e5)/1e5), angleOff(&s, whole))
			f.Says += ", and " + l.What + " leaves " + figure(seconds(l.Most)) + " (" + l.Why + ")"
			f.Margin = Bound(max(s.Certain, off)*3600, l.Most*3600, "seconds of arc")
			f.Also = []finding.Note{{Place: s.Bar.Centres.At, Says: "the sine bar"}}
			return
		case whole:
			a.Clear(Bound(off*3600, l.Most*3600, "seconds of arc"), "the angle on "+s.Bar.Path())
		default:
			a.Lack(s.Off.Missing()...)
		}
	}
}

// angleOff words how far an angle may be off, and of what.
func angleOff(s *eval.SineSet, whole bool) string {
	stack := "the stack is " + mm(math.Round(math.Abs(s.Stack.Off)*1e5)/1e5) + " off"
	if !whole {
		return stack + ", which is " + figure(math.Round(s.Certain*3600)) + " seconds of arc, besides the error of the bar"
	}
	return stack + " and the centres by " + mm(s.Bar.Error.V) + " at most, together " + figure(math.Round(s.Off.V*3600)) + " seconds of arc"
}
