package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "nothing-says-how-they-fit",
	Title: "two parts that are put together have a hole and a shaft of one size, and nothing says how they fit",
	Why: `Drawn equal, a pin may run, slide, locate or be pressed; made equal it does whichever it likes. Say what is wanted
in a fit: the limits of both follow from it, and whether the hole is drilled or reamed.`,
	Rows:      []string{"E16"},
	Source:    []string{"an assembly of two parts that nothing in the recipe joins, with one hole and one turned outside of the same nominal size"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     exampleNoFit(),
	Sound: exampleNoFit() + "\n" + `fit "pin" {
  hole  = part.ring.hole.seat.diameter
  shaft = part.pin.outside.seat.diameter
  wants = "H7/g6"
}
`,
	OnJoint: nothingSaysHowTheyFit,
})

// exampleNoFit is a ring and a pin that are put together without a fit.
func exampleNoFit() string {
	s := examplePin("8", "8", `"H7/g6"`)
	return replaced(s, `fit "pin" {
  hole  = part.ring.hole.seat.diameter
  shaft = part.pin.outside.seat.diameter
  wants = "H7/g6"
}
`, `assembly "both" {
  of = [part.ring, part.pin]
}
`)
}

func nothingSaysHowTheyFit(j *eval.Joint, a *Ask) {
	o := j.Assembly
	if o == nil || len(o.Parts) != 2 {
		return
	}
	if o.Joined(j.Trace) {
		a.Clear(finding.Margin{}, "")
		return
	}
	hole, shaft, ok := o.Mates(j.Trace)
	if !ok {
		return
	}
	f := a.Say(hole.Path+"+"+shaft.Path, j.Item.At, "%s and %s are both %s, and nothing says how they fit: does the one run, slide, locate or press in the other, or is it glued? A fit says so",
		hole.Path, shaft.Path, mm(hole.Size.V.Nominal))
	f.Also = []finding.Note{{Place: hole.Size.At, Says: "the hole"}, {Place: shaft.Size.At, Says: "the shaft"}}
}
