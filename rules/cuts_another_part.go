package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "cuts-another-part",
	Title: "a cut on joined parts goes into one of which nothing is made",
	Why: `What lies behind a hole or beside a slot is cut as well once parts are together: the point of a drill that comes through
one plate marks the next, a boring tool takes its half of both. Where that is meant, the other part has the feature too, and the
step names both. Where it is not, it is drilled before the parts are joined, or the tool stops short.`,
	Rows:      []string{"C8", "F19"},
	Source:    []string{"what the solid of the other part loses"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleCheeks("part.upper.hole.pivot", ""),
	Sound:     exampleCheeks(bothPivots, "  apart = true\n"),
	OnCut:     cutsAnotherPart,
})

func cutsAnotherPart(k *eval.Cut, a *Ask) {
	strays, asked := k.Strays()
	if !asked {
		return
	}
	for _, s := range strays {
		f := a.Say(s.Part.Path()+"+"+targetName(k), k.Place("makes"), "making %s takes %s mm³ off %s as well, and this step makes nothing of that part",
			targetName(k), figure(round(s.Takes)), s.Part.Path())
		f.Also = []finding.Note{{Place: s.Part.Item.At, Says: "the part that is cut too"}}
	}
	a.Clear(finding.Margin{}, "")
}
