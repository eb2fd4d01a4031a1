package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:      "support-at-held-end",
	Title:     "a centre or steady is to support the end that is in the jaws",
	Why:       `The tailstock stands at the free end, and the end in the jaws is held already. One of the two ends is written wrongly.`,
	Rows:      []string{"A10"},
	Source:    []string{"geometry of the dry run"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Shifted:   true,
	Trips:     exampleSupportedAt("left"),
	Sound:     exampleSupportedAt("right"),
	OnChuck:   supportAtHeldEnd,
})

// exampleSupportedAt turns a waist with a centre at one end of the work.
func exampleSupportedAt(end string) string {
	s := exampleWaist(inThree+"\n    support = { by = centre.live, at = \""+end+"\" }", "")
	return replaced(s, "  setup \"turn\"", `  centre_hole "right" {
    into = "right"
    size = 2
  }

  setup "centre" {
`+inThree+`

    operation {
      makes = centre_hole.right
    }
  }

  setup "turn"`)
}

func supportAtHeldEnd(h *eval.Chucking, a *Ask) {
	at := h.Work.SetUp.Support.AtEnd
	end, ok := model.ParseFace(at.V)
	if !at.Is() || !ok || h.Unplayed != "" || h.Choice.Centres || h.Choice.Support == nil || end.Axis() != h.About.Along {
		return
	}
	if end != h.Choice.End {
		a.Clear(finding.Margin{}, "")
		return
	}
	a.Say(h.Work.SetUp.Path()+".support", at.At, "the support is to stand at the %s end, and that end is in %s", end, h.Choice.HeldBy())
}
