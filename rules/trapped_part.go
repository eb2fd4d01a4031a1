package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "trapped-part",
	Title: "the hole cannot get to its seat: the shaft's part is larger on both sides of it",
	Why: `A ring goes on from an end. With a flange on either side of its seat the part can be drawn and not be put together:
split it, screw or press one flange on, or open the hole.`,
	Rows:      []string{"F16"},
	Source:    []string{"finished diameters of a turned part on both sides of the seat against the largest limit of a closed hole"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleFlanges(12),
	Sound:     exampleFlanges(8),
	OnJoint:   trappedPart,
})

// exampleFlanges is a pin of 12 mm with a seat of 8 mm in its middle and a diameter on its left.
func exampleFlanges(left float64) string {
	s := examplePin(`"8 H7"`, `"8 g6"`, `"H7/g6"`)
	s = replaced(s, "    from     = 0\n    to       = 20\n", "    from     = 5\n    to       = 26\n")
	return replaced(s, "  outside \"seat\" {", `  outside "left" {
    from     = 0
    to       = 5
    diameter = `+figure(left)+`
  }

  outside "seat" {`)
}

func trappedPart(j *eval.Joint, a *Ask) {
	f := j.Fit
	if f == nil {
		return
	}
	left, right, ok := f.Passage()
	if !ok {
		return
	}
	hole, ok := Need(a, f.Hole.Limits)
	if !ok {
		return
	}
	least := math.Min(left, right)
	if least <= hole.Hi+0.001 {
		a.Clear(Bound(round(least), round(hole.Hi), "mm"), "the way of "+f.Hole.Path+" onto "+f.Shaft.Path)
		return
	}
	m := a.Say(f.Hole.Path+"+"+f.Shaft.Path, j.Item.At, "%s of %s must go onto %s, and %s is %s on its left and %s on its right: it cannot be put there",
		f.Hole.Path, span(hole), f.Shaft.Path, f.Shaft.Part.Path(), mm(round(left)), mm(round(right)))
	m.Margin = Bound(round(least), round(hole.Hi), "mm")
	m.Also = both(f)
}
