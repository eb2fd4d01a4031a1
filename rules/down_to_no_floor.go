package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "down-to-no-floor",
	Title: "the face that an operation is to go down to does not lie below where the tool goes in",
	Why: `A depth is taken straight down from the face that the tool enters. A face that stands on edge there, or lies at or above
that face, gives none: another face is meant, or the tool comes in from another side.`,
	Rows:      []string{"I6"},
	Source:    []string{"geometry of the drawing"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleDownTo("face.left"),
	Sound:     exampleDownTo("step.ledge.floor"),
	Together:  true,
	OnPart:    downToNoFloor,
})

// exampleDownTo drills a hole down to a face of a block with a ledge of 8 mm.
func exampleDownTo(face string) string {
	return replaced(exampleHole("down_to = "+face), "  setup \"drill\"", `  step "ledge" {
    into  = "top"
    side  = "front"
    width = 5
    depth = 8
  }

  setup "ledge" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 10

    operation {
      makes = step.ledge
    }
  }

  setup "drill"`)
}

func downToNoFloor(p *eval.PartTrace, a *Ask) {
	for _, st := range p.Part.Steps() {
		if st.Step == nil || !st.Step.DownTo.Face.Is() {
			continue
		}
		if st.Amiss == "" {
			a.Clear(finding.Margin{}, "")
			continue
		}
		f := a.Say(st.Work.SetUp.Path()+"."+st.Spot.Step+".down_to", st.Step.DownTo.Face.At, "the operation is to go down to %s, and %s", st.Step.DownTo.Face.V.Path(), st.Amiss)
		f.Spots[0] = st.Spot
	}
}
