package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "not-made-from-there",
	Title: "the work of this holding cannot get at it",
	Why: `The end in the jaws cannot be faced, drilled or bored, and nothing beside the axis is made by turning. It belongs in
another holding.`,
	Rows:      []string{"C9", "I6"},
	Source:    []string{"geometry; order of work as written"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleTurned("", inThree, "    operation {\n      makes = face.left\n    }"),
	Sound:     exampleTurned("", inThree, "    operation {\n      makes = face.right\n    }"),
	OnTurn:    notMadeFromThere,
})

func notMadeFromThere(k *eval.Turn, a *Ask) {
	if k.Hold.Unplayed != "" {
		return
	}
	for _, w := range k.Works {
		if w.Wrong == "" {
			a.Clear(finding.Margin{}, "")
			continue
		}
		a.Say(k.Hold.Work.SetUp.Path()+"+"+w.Target.Name(), k.Place("makes"), "%s cannot be made in this holding: %s", w.Target.Name(), w.Wrong)
	}
}
