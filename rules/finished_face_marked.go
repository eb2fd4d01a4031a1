package rules

import (
	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "finished-face-marked",
	Title: "hard jaws grip a finished surface that must look well or fit",
	Why: `Hardened jaws press marks into a turned surface. Where a finish or close limits are asked of it they show, or the fit is spoilt.
Copper or brass between, bored soft jaws, a split bush or a collet leave none; so does a grip somewhere else.`,
	Rows:      []string{"C21"},
	Source:    []string{"common practice"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     exampleMarkedSeat(""),
	Sound:     exampleMarkedSeat("\n    between = \"copper\""),
	OnChuck:   finishedFaceMarked,
})

// exampleMarkedSeat turns one end to a fit, and grips it there to face the other.
func exampleMarkedSeat(more string) string {
	s := exampleTurned(`
  outside "seat" {
    from     = 35
    diameter = "16 h8"
  }
`, replaced(inThree, `"left"`, `"right"`)+more, `
    operation {
      makes = face.left
    }`)
	return replaced(s, "  setup \"turn\"", "  setup \"first\" {\n"+inThree+"\n\n    operation {\n      makes = face.right\n    }\n    operation {\n      makes = outside.seat\n    }\n  }\n\n  setup \"turn\"")
}

func finishedFaceMarked(h *eval.Chucking, a *Ask) {
	c := &h.Choice
	if c.Chuck == nil {
		return
	}
	for _, z := range h.Touches {
		f := z.Form
		if f == nil {
			continue
		}
		why := ""
		switch d := f.Feature.Diameter.V; {
		case d.Tol.Kind == drawing.Class || d.Tol.Kind == drawing.Deviations:
			why = "the limits of " + d.Written
		case h.Part.Part.Finish.Is():
			why = "a finish of " + h.Part.Part.Finish.V
		default:
			continue
		}
		if c.Soft || c.Between != "" || c.Bush != nil || c.Nut != nil {
			a.Clear(finding.Margin{}, "")
			continue
		}
		a.Say(h.Work.SetUp.Path()+"+"+f.Name(), h.Place("hold", "grip", "stick_out"), "the hard jaws of %s grip %s, finished with %s; they leave marks without copper between, soft jaws or a bush",
			c.Chuck.Path(), f.Name(), why)
	}
}
