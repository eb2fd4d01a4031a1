package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "centre-hole-missing",
	Title: "a centre is to hold an end that has no centre hole",
	Why: `A centre wants a 60 degree seat in the end, drilled while the piece was held short. Later there is often neither metal for
it nor a way to hold the piece true.`,
	Rows:      []string{"C17"},
	Source:    []string{"order of work as written"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Shifted:   true,
	Trips:     centred(""),
	Sound:     centred("    operation {\n      makes = centre_hole.end\n    }"),
	OnChuck:   centreHoleMissing,
})

// centred turns a piece with a centre at its end, its seat drilled in a holding before or not.
func centred(step string) string {
	s := replaced(exampleWaist(inThree+"\n    support = { by = centre.live, at = \"right\" }", ""), "  outside \"waist\"", "  centre_hole \"end\" {\n    into = \"right\"\n    size = 2\n  }\n\n  outside \"waist\"")
	return replaced(s, "  setup \"turn\"", "  setup \"first\" {\n"+inThree+"\n\n    operation {\n      makes = face.right\n    }\n"+step+"\n  }\n\n  setup \"turn\"")
}

func centreHoleMissing(h *eval.Chucking, a *Ask) {
	var ends []model.Face
	if h.Choice.Centres {
		ends = []model.Face{model.Left, model.Right}
	} else if s := h.Choice.Support; s != nil && s.Centre != nil && !s.Middle && !s.Centre.Pipe.Is() {
		ends = []model.Face{h.Choice.End.Opposite()}
	}
	for _, f := range ends {
		if h.Seated(f) {
			a.Clear(finding.Margin{}, "")
			continue
		}
		a.Say(h.Part.Label+".face."+f.String()+".centre", h.Place("support", "hold"), "a centre is to hold the %s end of %s, and no centre hole is drilled there before", f, h.Part.Label)
	}
}
