package rules

import (
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "halves-not-marked",
	Title: "several parts are sawn in two, and nothing tells their pieces apart",
	Why: `Each cap fits only the base that it was sawn from and bored with. Of several alike the pieces are mixed up on the bench; a figure
stamped on both pieces beside the joint, before the saw, keeps pairs and directions together.`,
	Rows:      []string{"F4"},
	Source:    []string{"common practice"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     exampleHalves("\n  quantity = 2\n", "screws", "saw", "bore"),
	Sound:     exampleHalves("", "screws", "saw", "bore"),
	OnPart:    halvesNotMarked,
})

func halvesNotMarked(p *eval.PartTrace, a *Ask) {
	splits := p.Part.Splits()
	if len(splits) == 0 {
		return
	}
	n := p.Part.Quantity.Or(1)
	if n < 2 || marked(p) {
		a.Clear(finding.Margin{}, "")
		return
	}
	a.Say(p.Part.Label+"."+splits[0].Name(), splits[0].Feature.Item.At, "%d of %s are sawn in two and put together again, and no step marks which pieces belong together: stamp both sides of the joint before the saw", n, p.Part.Label)
}

// marked says whether anything is stamped on the part.
func marked(p *eval.PartTrace) bool {
	for _, w := range p.Part.Work {
		if w.SetUp.Marks.Is() || strings.Contains(w.SetUp.By.Or(""), "stamping") {
			return true
		}
		for _, st := range w.Steps {
			if st.Step != nil && (st.Step.StampedFigures.Is() || st.Step.By.V == "stamping") {
				return true
			}
		}
	}
	return false
}
