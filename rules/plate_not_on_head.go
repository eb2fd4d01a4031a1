package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:      "plate-not-on-head",
	Title:     "the plate that is written does not fit the dividing head",
	Why:       `Plates of one maker do not go on the head of another: bore, screws and the pin's reach differ.`,
	Rows:      []string{"H1"},
	Source:    []string{"look-up in the shop"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleWheel("", "", "index = { count = 60, plate = dividing_plate.other }", otherPlate),
	Sound:     exampleWheel("", "", "index = { count = 60, plate = dividing_plate.own }", otherPlate),
	OnCut:     plateNotOnHead,
})

const otherPlate = `
dividing_plate "other" {
  circles = [21, 24, 27, 30]
}
`

func plateNotOnHead(k *eval.Cut, a *Ask) {
	on := k.Hold.Choice.Divided
	if on == nil || on.Head == nil || k.Step.Step == nil || !k.Step.Step.Index.Plate.Is() {
		return
	}
	want := k.Step.Step.Index.Plate
	fits, ok := Need(a, on.Head.Plates)
	if !ok {
		return
	}
	var names []string
	for _, r := range fits {
		if r.Item != nil && r.Item == want.V.Item {
			a.Clear(finding.Margin{}, "")
			return
		}
		names = append(names, r.Path())
	}
	takes := "no plate"
	if len(names) > 0 {
		takes = inWords(names)
	}
	f := a.Say(on.Head.Path()+"+"+want.V.Path(), k.Place("index.plate", "index"), "%s does not go on %s, which takes %s", want.V.Path(), on.Head.Path(), takes)
	f.Also = []finding.Note{{Place: on.Head.Plates.At, Says: "the plates that fit it"}}
}

// plateOf finds the plate that an index names.
func plateOf(k *eval.Cut) (*model.DividingPlate, bool) {
	return model.Find(k.Part.Build.Shop.Plates, k.Step.Step.Index.Plate.V.Item)
}
