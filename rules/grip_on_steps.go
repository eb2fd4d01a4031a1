package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "grip-on-steps",
	Title: "more than one diameter lies between the jaws, and none is named",
	Why: `Jaws touch only the largest diameter between them. A short collar there is all that holds, and it is easily taken for
the whole length of the jaw. Say with on = … which surface is gripped, or let the piece in less far.`,
	Rows:      []string{"C10", "C11"},
	Source:    []string{"geometry"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     stepped(""),
	Sound:     stepped("    on      = face.outside"),
	OnChuck:   gripOnSteps,
})

// stepped holds the piece over a shoulder.
func stepped(more string) string {
	s := exampleWaist(replaced(inThree, "= 20", "= 24")+"\n"+more, "")
	s = replaced(s, "  outside \"waist\"", "  outside \"neck\" {\n    from     = 0\n    to       = 10\n    diameter = 18\n  }\n\n  outside \"waist\"")
	return replaced(s, "  setup \"turn\"", `  setup "first" {
    machine = lathe.centre
    hold    = chuck.three
    end     = "right"
    grip    = 25

    operation {
      makes = outside.neck
    }
  }

  setup "turn"`)
}

// mostly is the share of what lies between the jaws that they touch at least where nothing is said:
// a matter of judgement.
const mostly = 0.8

func gripOnSteps(h *eval.Chucking, a *Ask) {
	if h.Choice.Chuck == nil || len(h.Touches) == 0 {
		return
	}
	// A chamfer or a short spigot within the jaws is no matter where they touch most of the rest.
	if !h.Step || h.Contact > mostly*h.Held || h.Choice.On != nil || h.Work.SetUp.GripOn.Is() {
		a.Clear(finding.Margin{}, "")
		return
	}
	a.Say(h.Choice.HeldBy()+"+"+h.Work.SetUp.Path(), h.Place("grip", "stick_out", "hold"), "%s touches %s on %s mm only, where it is %s mm; the rest between the jaws is smaller",
		h.Choice.HeldBy(), h.Part.Label, tenth(h.Contact), figure(round(h.Gripped)))
}
