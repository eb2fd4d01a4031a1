package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "worm-of-other-hand",
	Title: "worm and wheel are not of one hand",
	Why: `With their axes at right angles a right-hand worm wants teeth that lean right-handed. Gashed the other way the wheel
does not go into mesh. Cut the one again that is easier to cut.`,
	Rows:      []string{"H11"},
	Source:    []string{"axes at right angles: worm and wheel of the same hand (from memory; geometry of the common tangent)"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleWorm("left", "module = 1\n    hand   = \"right\""),
	Sound:     exampleWorm("left", "module = 1\n    hand   = \"left\""),
	OnJoint:   wormOfOtherHand,
})

func wormOfOtherHand(j *eval.Joint, a *Ask) {
	o := j.Mesh
	if o == nil || !o.IsWorm {
		return
	}
	if !o.Wheel.HandSaid && o.Wheel.Worm == nil {
		return // gashed straight, by what is written
	}
	if o.Wheel.Hand == o.Pinion.Hand || o.Wheel.Hand == "straight" {
		a.Clear(finding.Margin{}, "")
		return
	}
	f := a.Say(o.Wheel.Name+"+"+o.Pinion.Name, placeIn(j, "wheel"), "%s is %s-hand and the teeth of %s are %s-hand: at right angles both must be of one hand",
		o.Pinion.Name, o.Pinion.Hand, o.Wheel.Name, o.Wheel.Hand)
	f.Also = []finding.Note{{Place: o.Pinion.Feature.Item.At, Says: "the worm"}, {Place: o.Wheel.Feature.Item.At, Says: "the wheel"}}
}
