package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "inside-teeth-foul",
	Title: "the teeth of an inside wheel foul those of its pinion",
	Why: `In an inside wheel the pinion's teeth pass those of the wheel twice: where they mesh, and beside it, where their corners can meet if
the wheel has only a few teeth more than its pinion. And a pinion of few teeth has no flank where the wheel's tips would touch it. Fewer
teeth in the pinion, more in the wheel, a shift outwards, or shorter tips.`,
	Rows:      []string{"H7", "H18"},
	Source:    []string{"interference of inside wheels: gear handbooks (formulas from memory); reckon/gear, Interferes, turns a pinion in its wheel step by step"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleInside(40, 36),
	Sound:     exampleInside(80, 20),
	OnJoint:   insideTeethFoul,
})

// exampleInside is a ring with so many teeth of module 1 in its bore, and its pinion.
func exampleInside(ring, pinion int) string {
	s := exampleWheels("on     = bore.ring\n    count  = "+figure(float64(ring))+"\n    module = 1", "count  = "+figure(float64(pinion))+"\n    module = 1", "")
	s = replaced(s, "  diameter = 22\n", "  diameter = "+figure(float64(pinion+2))+"\n")
	return replaced(s, "  diameter = 42\n  length   = 8\n", "  diameter = "+figure(float64(ring+20))+`
  length   = 8

  bore "ring" {
    into     = "right"
    diameter = `+figure(float64(ring-2))+`
  }
`)
}

func insideTeethFoul(j *eval.Joint, a *Ask) {
	o := j.Mesh
	if o == nil || !o.Wheel.Inside || o.IsWorm {
		return
	}
	for _, in := range o.Insides() {
		cause := o.Wheel.Name + "+" + o.Pinion.Name + "+inside"
		switch {
		case in.Cross && in.Tips < 0:
			a.Say(cause, placeIn(j, "wheel"), "%s has %d teeth and %s %d: beside the mesh their corners meet, by %s deg of a turn of the wheel",
				o.Wheel.Name, o.Wheel.Count.V, o.Pinion.Name, o.Pinion.Count.V, hundredth(-in.Tips))
			return
		case in.Involute < -0.0005:
			a.Say(cause, placeIn(j, "wheel"), "the tips of %s reach %s farther than the flanks of %s go: they dig into the feet of its %d teeth",
				o.Wheel.Name, mm(round(-in.Involute)), o.Pinion.Name, o.Pinion.Count.V)
			return
		}
		a.Clear(finding.Margin{}, "")
	}
}
