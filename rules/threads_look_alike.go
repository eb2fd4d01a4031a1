package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "threads-look-alike",
	Title: "two threads of the build look alike and do not fit each other",
	Why: `M6 and 1/4-20, M5 and 10-32, M6 and 0 BA start in each other's holes and jam or strip after two turns. Mark them,
or change one.`,
	Rows:      []string{"I2"},
	Source:    []string{"diameters closer than 6 % and pitches within 30 %: own limits; the pairs: from memory"},
	Limits:    []string{"twin_thread"},
	Level:     finding.Advice,
	Judgement: finding.Thumb,
	Trips:     exampleTwoThreads("10-32 UNF"),
	Sound:     exampleTwoThreads("M8"),
	OnBuild:   threadsLookAlike,
})

// exampleTwoThreads has an M5 thread and another in one part.
func exampleTwoThreads(other string) string {
	return replaced(exampleTap("4.2"), "  setup \"drill\"", `  hole "other" {
    into   = "top"
    at     = { left = 8, front = 15 }
    thread = { size = "`+other+`" }
  }

  setup "drill"`)
}

// pitchShare is how far the pitches of two threads may differ, as a share of the larger,
// and still be taken for each other. Own limit.
const pitchShare = 0.3

func threadsLookAlike(t *eval.Trace, a *Ask) {
	var all []*eval.Form
	for _, p := range t.Parts {
		for _, f := range p.Part.Forms {
			if th, ok := f.Feature.Thread.Size.Get(); ok && th.Diameter > 0 && th.Pitch > 0 {
				all = append(all, f)
			}
		}
	}
	share := a.Limit("twin_thread")
	said := map[[2]string]bool{}
	for i, f := range all {
		for _, g := range all[i+1:] {
			x, y := f.Feature.Thread.Size.V, g.Feature.Thread.Size.V
			if x.Same(y) || x.Left != y.Left || said[[2]string{x.String(), y.String()}] {
				continue
			}
			if math.Abs(x.Diameter-y.Diameter) > share*max(x.Diameter, y.Diameter) || math.Abs(x.Pitch-y.Pitch) > pitchShare*max(x.Pitch, y.Pitch) {
				a.Clear(finding.Margin{}, "")
				continue
			}
			said[[2]string{x.String(), y.String()}] = true
			m := a.Say("threads "+x.String()+"+"+y.String(), g.Feature.Item.At, "%s has %s and %s has %s: they look alike and usually start in each other's holes; mark them, or change one",
				f.Name(), x, g.Name(), y)
			m.Also = []finding.Note{{Place: f.Feature.Item.At, Says: f.Name()}}
		}
	}
}
