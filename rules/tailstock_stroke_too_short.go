package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "tailstock-stroke-too-short",
	Title: "the quill of the tailstock does not go as deep as the hole",
	Why: `The quill pushes a drill as far as its stroke; beyond that the drill is drawn back, the tailstock moved up and clamped again,
and the hole picked up where it ended. A reamer or tap leaves a mark there.`,
	Rows:      []string{"A2"},
	Source:    []string{"stroke as declared against the depth with the tool's tip; common practice"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     exampleAxisHole("90"),
	Sound:     exampleAxisHole("30"),
	OnTurn:    tailstockStrokeTooShort,
})

// exampleAxisHole drills a hole of 8 mm so deep in the end of a piece of 120 mm.
func exampleAxisHole(depth string) string {
	return replaced(exampleTurned(`
  hole "axis" {
    into     = "right"
    diameter = 8
    depth    = `+depth+`
  }
`, inThree, `
    operation {
      makes = hole.axis
    }`), "length   = 60", "length   = 120")
}

func tailstockStrokeTooShort(k *eval.Turn, a *Ask) {
	m := k.Lathe()
	if m == nil || k.Hold.Unplayed != "" || !k.InTailstock() || !oneOf(k.Choice.By, "drilling", "reaming", "counterboring") {
		return
	}
	for _, w := range k.Works {
		if !w.Inside || w.Wrong != "" || w.Target.Form == nil {
			continue
		}
		deep := round(w.Stroke())
		travel, ok := Need(a, m.Tailstock.Travel)
		if !ok {
			return
		}
		if deep <= travel+0.0005 {
			a.Clear(Bound(deep, travel, "mm"), "the depth of "+w.Target.Name()+" against the stroke of the tailstock")
			continue
		}
		f := a.Say(m.Path()+".tailstock+"+w.Target.Name(), k.Place("makes"), "%s goes in %s mm with its tip for %s, and the quill of %s goes %s mm: it takes more than one bite",
			k.ToolPath(), figure(deep), w.Target.Name(), m.Path(), figure(travel))
		f.Margin = Bound(deep, travel, "mm")
		f.Also = []finding.Note{{Place: m.Tailstock.Travel.At, Says: "its stroke"}}
	}
}
