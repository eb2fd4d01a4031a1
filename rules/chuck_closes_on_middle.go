package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "chuck-closes-on-middle",
	Title: "a chuck that closes on the middle is to hold work set over to one side",
	Why: `The jaws of a self-centring chuck move together: what they grip comes to the middle. A line beside it wants jaws that move
one by one, a faceplate, or packing under one jaw.`,
	Rows:      []string{"C12", "A7"},
	Source:    []string{"geometry: how far the sides of the work lie from the line that turns; common practice"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleBoss("chuck.own", "15") + selfCentringFour("false"),
	Sound:     exampleBoss("chuck.own", "15") + selfCentringFour("true"),
	OnChuck:   chuckClosesOnMiddle,
})

// selfCentringFour is a chuck of four jaws that move together, or one by one.
func selfCentringFour(independent string) string {
	return `
chuck "own" {
  jaws        = 4
  independent = ` + independent + `
  diameter    = 150
  length      = 90
  bore        = 40
  grips       = [6, 120]
  jaw_length  = 30
  jaw_out     = 200
  mounts      = "M39x4"
}
`
}

func chuckClosesOnMiddle(h *eval.Chucking, a *Ask) {
	c := h.Choice.Chuck
	if c == nil || len(h.JawsAt) == 0 || len(h.Work.SetUp.Packing) > 0 {
		return
	}
	near, far := h.JawsAt[0], h.JawsAt[len(h.JawsAt)-1]
	if far-near <= sameSides {
		a.Clear(finding.Margin{}, "")
		return
	}
	alone, ok := Need(a, c.Independent)
	switch {
	case !ok:
	case alone:
		a.Clear(finding.Margin{}, "")
	default:
		a.Say(c.Path()+".independent+"+h.Work.SetUp.Path(), h.Place("hold"), "the jaws of %s move together, and where they grip %s its sides lie %s to %s mm from the line that turns",
			c.Path(), h.Part.Label, figure(round(near)), figure(round(far)))
	}
}

// sameSides is how much the sides of work may differ in their distance and a self-centring chuck
// still holds it: what jaws give, mm. Common practice.
var sameSides = math.Nextafter(0.1, 1)
