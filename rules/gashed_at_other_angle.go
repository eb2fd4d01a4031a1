package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "gashed-at-other-angle",
	Title: "the teeth of a worm wheel lean at another angle than the worm's thread",
	Why: `With their axes at right angles the teeth of the wheel lean as the worm's thread does at its pitch circle: the tangent is
starts times module over the worm's pitch diameter. At another angle the thread rides on the corners of the teeth, and binds as soon as
that comes to more than the play. Set the head or the table over to the lead angle, or gash straight and turn the worm's axis.`,
	Rows: []string{"H11", "H12"},
	Source: []string{"lead angle of a worm: any gear text; the worm stands over a chord of 2 sqrt(m (d + m)) of the wheel's width: geometry",
		"a play of 0.04 modules where none is written: common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleWorm("right", "worm  = part.screw.worm.thread\n    helix = 10"),
	Sound:     exampleWorm("right", "worm  = part.screw.worm.thread\n    helix = 5.71"),
	OnJoint:   gashedAtOtherAngle,
})

func gashedAtOtherAngle(j *eval.Joint, a *Ask) {
	for _, g := range j.Gashes() {
		lead, ok := Need(a, g.Lead)
		if !ok {
			continue
		}
		off := g.Off(lead)
		if off <= g.Play+1e-6 {
			a.Clear(Bound(round(off), round(g.Play), "mm"), "the lean of the teeth of "+j.Item.Path())
			continue
		}
		f := a.Say(j.Item.Path()+"+"+g.Of, g.Said, "%s is %s degrees, and the lead of %s is %s degrees: over the %s that they touch the teeth run %s off, and have %s of play",
			g.Of, figure(round(g.At)), j.Mesh.Pinion.Name, figure(round(lead)), mm(round(g.Over)), mm(round(off)), mm(round(g.Play)))
		f.Margin = Bound(round(off), round(g.Play), "mm")
		f.Also = []finding.Note{{Place: j.Mesh.Pinion.Feature.Item.At, Says: "the worm"}}
	}
}
