package rules

import (
	"fmt"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:      "circle-not-on-plate",
	Title:     "the circle of holes that is written is on no plate of the head",
	Why:       `A table of settings from a book is for the plates of that book's head. The circle must be on a plate that is here.`,
	Rows:      []string{"H1"},
	Source:    []string{"look-up in the shop"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleWheel("", "", "index = { count = 60, circle = 21 }", ""),
	Sound:     exampleWheel("", "", "index = { count = 60, circle = 18 }", ""),
	OnCut:     circleNotOnPlate,
})

func circleNotOnPlate(k *eval.Cut, a *Ask) {
	on := k.Hold.Choice.Divided
	if on == nil || on.Head == nil || k.Step.Step == nil || !k.Step.Step.Index.Circle.Is() {
		return
	}
	want := k.Step.Step.Index.Circle.V
	var plates []*model.DividingPlate
	if k.Step.Step.Index.Plate.Is() {
		if p, ok := plateOf(k); ok {
			plates = append(plates, p)
		}
	} else {
		fits, ok := Need(a, on.Head.Plates)
		if !ok {
			return
		}
		for _, r := range fits {
			if p, ok := model.Find(k.Part.Build.Shop.Plates, r.Item); ok {
				plates = append(plates, p)
			}
		}
	}
	says := ""
	for i, p := range plates {
		if i > 0 {
			says += ", "
		}
		var has []int
		for _, c := range p.Circles.V {
			if int(c) == want {
				a.Clear(finding.Margin{}, "")
				return
			}
			has = append(has, int(c))
		}
		says += p.Path() + " has " + inCounts(has)
	}
	if len(plates) == 0 {
		return
	}
	a.Say(on.Head.Path()+fmt.Sprint(want), k.Place("index.circle", "index"), "no circle of %d holes is there: %s", want, says)
}
