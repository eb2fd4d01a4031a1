package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "jaws-do-not-fit-section",
	Title: "square bar in three jaws, or hexagon in four",
	Why: `Three jaws that close together touch a square at two corners and a flat, four touch a hexagon at two flats and two
corners: the bar sits off the middle and slips. A split bush or a collet block with a hole of that shape holds it in any chuck.`,
	Rows:      []string{"C12"},
	Source:    []string{"geometry of jaws and section"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     squareBar(inThree),
	Sound:     squareBar(inFour),
	OnChuck:   jawsDoNotFitSection,
})

// squareBar turns a round end on square bar.
func squareBar(holding string) string {
	return replaced(replaced(exampleWaist(holding, ""), "diameter = 20", "square = 20"), ", outside = 1", "")
}

func jawsDoNotFitSection(h *eval.Chucking, a *Ask) {
	c := h.Choice.Chuck
	if c == nil || h.Choice.Bush != nil {
		return
	}
	for _, z := range h.Touches {
		if z.Flats == 0 {
			continue
		}
		jaws, ok := Need(a, c.Jaws)
		if !ok {
			return
		}
		if z.Flats%jaws == 0 {
			a.Clear(finding.Margin{}, "")
			continue
		}
		word := map[int]string{4: "square", 6: "hexagon"}[z.Flats]
		a.Say(c.Path()+"+"+h.Part.Label, h.Place("hold"), "%s has %d jaws, and %s bar lies between them: they do not touch it alike; a split bush with a hole of that shape, or a chuck of %s jaws, would hold it",
			c.Path(), jaws, word, map[int]string{4: "four", 6: "three"}[z.Flats])
		return
	}
}
