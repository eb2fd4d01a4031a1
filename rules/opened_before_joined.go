package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:      "opened-before-joined",
	Title:     "a joint is taken apart at a bench before anything has joined it",
	Why:       `What is not joined cannot be opened: either the order of the benches is another, or another joint is meant.`,
	Rows:      []string{"F16"},
	Source:    []string{"order of work as written"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleOpened("opens", "joins"),
	Sound:     exampleOpened("joins", "opens"),
	OnBuild:   openedBeforeJoined,
})

// exampleOpened does one thing and then the other with the same fit.
func exampleOpened(first, then string) string {
	s := replaced(exampleOnShaft("collar", "wheel"), "    joins = [fit.collar]", "    "+first+" = [fit.collar]")
	return replaced(s, "    joins = [fit.wheel]", "    "+then+" = [fit.collar]")
}

func openedBeforeJoined(t *eval.Trace, a *Ask) {
	for _, o := range t.Openings() {
		switch {
		case o.Joined:
			a.Clear(finding.Margin{}, "")
		case o.Later:
			f := a.Say(o.Bench.Path()+".opens+"+o.Ref.Path(), o.Ref.At, "%s is opened here, and it is joined only afterwards", o.Ref.Path())
			f.Spots = []finding.Spot{{SetUp: o.Bench.Kind + " " + o.Bench.Label}}
		}
	}
}
