package rules

import (
	"fettle/eval"
	"fettle/eval/reckon/cutting"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "feed-too-coarse",
	Title: "a feed is written that is coarser than any that is printed for tool and metal",
	Why: `Each tooth or lip takes what it is fed. Above what is printed the tool breaks, or the machine stalls or is pushed away. What is
printed is mostly for heavier machines than a small workshop has.`,
	Rows:      []string{"H10"},
	Source:    []string{"the printed feeds of reckon/cutting, by process, tool, metal and diameter; the greatest of any source is the limit"},
	Limits:    []string{"feed_over"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleFed("0.6 mm/rev"),
	Sound:     exampleFed("0.1 mm/rev"),
	OnCut: func(k *eval.Cut, a *Ask) {
		feedTooCoarse(k.Feeding(), k.Spot, k.ToolPath(), k.Choice.ByHand, a)
	},
	OnTurn: func(k *eval.Turn, a *Ask) {
		feedTooCoarse(k.Feeding(), k.Spot, k.ToolPath(), k.Choice.ByHand, a)
	},
})

// exampleFed drills a hole with a feed that is written.
func exampleFed(feed string) string { return exampleHole(`feed = "` + feed + `"`) }

func feedTooCoarse(f eval.Feeding, spot finding.Spot, tool string, byHand bool, a *Ask) {
	if !f.Said.Is() || byHand {
		return
	}
	if lead, ok := f.PerTurn(); ok && f.Lead > 0 {
		if abs(lead-f.Lead) > 0.005*f.Lead {
			a.Say(tool+".feed+"+spot.String(), f.Said.At, "%s is fed %s mm a turn, and its thread takes it along by %s mm: the thread is torn", tool, figure(round(lead)), figure(round(f.Lead)))
			return
		}
		a.Clear(finding.Margin{}, "")
		return
	}
	if f.Coarse.None() {
		return
	}
	fed, ok := f.PerTurn()
	over := "mm/rev"
	if f.Coarse.PerTooth {
		fed, ok = f.PerTooth()
		over = "mm/tooth"
	}
	if !ok {
		return
	}
	most := a.Limit("feed_over") * f.Coarse.Hi
	if fed <= most*(1+1e-9) {
		a.Clear(Bound(round(fed), round(most), over), "the feed of "+tool)
		return
	}
	m := a.Say(tool+".feed+"+spot.String(), f.Said.At, "%s is fed %s %s; usually it is at most %s (%s)", tool, figure(round(fed)), over, figure(round(most)), coarsest(f.Coarse))
	m.Margin = Bound(round(fed), round(most), over)
}

// coarsest is the source of the greatest of printed feeds.
func coarsest(f cutting.Feed) string {
	for _, s := range f.Says {
		if s.Value >= f.Hi {
			return s.Source
		}
	}
	return ""
}
