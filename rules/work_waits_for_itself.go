package rules

import (
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "work-waits-for-itself",
	Title: "stretches of work wait for each other in a ring",
	Why: `A part that serves as jig, mandrel or gauge must be made before what is made with it. Where each waits for the other
nobody can begin: split one of them, so that the feature that is needed is made in a set-up of its own.`,
	Rows:      []string{"F20"},
	Source:    []string{"order of work as written: after, the order of set-ups, holes spotted through others, mates tried on, things made as parts of the build"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleOrder("part.pin", "part.ring"),
	Sound:     exampleOrder("", "part.ring"),
	OnBuild:   workWaitsForItself,
})

func workWaitsForItself(t *eval.Trace, a *Ask) {
	rings := t.Rings()
	for _, ring := range rings {
		var says, cause []string
		for _, w := range ring {
			says = append(says, w.First.Path()+" before "+w.Then.Path()+" ("+w.Why+")")
			cause = append(cause, w.First.Path())
		}
		m := a.Say(strings.Join(cause, "+"), ring[0].Then.At, "this work waits for itself: %s", inWords(says))
		for _, w := range ring[1:] {
			m.Also = append(m.Also, finding.Note{Place: w.Then.At, Says: w.Why})
		}
	}
	if len(rings) == 0 && t.Ordered() {
		a.Clear(finding.Margin{}, "")
	}
}
