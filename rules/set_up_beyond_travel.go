package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "set-up-beyond-travel",
	Title: "the places of one holding lie farther apart than the table travels",
	Why: `Each cut by itself is within the travel of the table, but not all of them from one place of the vise or
the clamps. The work has to be moved along in between and found again: two set-ups, with the second placed from what the first made.`,
	Rows:      []string{"A4"},
	Source:    []string{"arithmetic"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleFarHoles(330),
	Sound:     exampleFarHoles(260),
	Together:  true,
	OnPart:    setUpBeyondTravel,
})

// exampleFarHoles drills two holes so far apart, one operation each.
func exampleFarHoles(apart float64) string {
	s := replaced(exampleHole(), "length   = 40", "length   = 360")
	s = replaced(s, "left = 20", "left = 10")
	s = replaced(s, "  setup \"drill\"", `  hole "far" {
    into     = "top"
    at       = { left = `+figure(10+apart)+`, front = 15 }
    diameter = 6
  }

  setup "drill"`)
	return replaced(s, "      makes = hole.pin\n    }\n", `      makes = hole.pin
    }
    operation {
      makes = hole.far
    }
`)
}

func setUpBeyondTravel(p *eval.PartTrace, a *Ask) {
	for _, s := range p.Stretches() {
		m := s.Hold.Choice.Machine
		if m == nil || m.Kind == "drill_press" || s.Hold.Unplayed != "" {
			continue
		}
		var cuts []*eval.Cut
		for _, mo := range s.Moments {
			if k := mo.Cut; k != nil && k.Choice.Tool.Cutter != nil && k.Unplayed == "" {
				cuts = append(cuts, k)
			}
		}
		if len(cuts) > 1 {
			spanOf(s.Hold, cuts, a)
		}
	}
}

// spanOf looks for the first operation whose places are out of reach of an earlier one's.
// What a single operation wants alone is not said here.
func spanOf(h *eval.Holding, cuts []*eval.Cut, a *Ask) {
	all := tableSpan(h, cuts)
	if all[0] < 0.001 && all[1] < 0.001 {
		return
	}
	m := h.Choice.Machine
	t, ok := Need(a, m.Travel)
	if !ok || len(t) < 2 {
		return
	}
	for i, axis := range []string{"along the table", "across the table"} {
		if all[i] <= t[i]+0.0005 {
			a.Clear(Bound(round(all[i]), t[i], "mm"), "travel of "+m.Path()+" "+axis+" for "+h.Work.Spot.SetUp)
			continue
		}
		for n := range cuts {
			if tableSpan(h, cuts[n:n+1])[i] > t[i]+0.0005 {
				break // that operation alone is too long
			}
			span := tableSpan(h, cuts[:n+1])[i]
			if span <= t[i]+0.0005 {
				continue
			}
			f := a.Say(pathOf(m.Item)+".travel+"+h.Work.SetUp.Path(), cuts[n].Place("makes"),
				"%s and what comes before it in this holding want %s mm of travel %s; %s has %s: move the work in between, in a set-up of its own",
				targetName(cuts[n]), tenth(span), axis, m.Path(), mm(t[i]))
			f.Spots[0], f.Margin = cuts[n].Spot, Bound(round(span), t[i], "mm")
			break
		}
	}
}

// tableSpan is how far the table travels along and across for some cuts; a vise that stands
// across the table changes the two.
func tableSpan(h *eval.Holding, cuts []*eval.Cut) [2]float64 {
	x, y := eval.Span(cuts)
	if h.Turned == 90 || h.Turned == 270 {
		x, y = y, x
	}
	return [2]float64{x, y}
}
