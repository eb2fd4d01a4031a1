package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "screw-does-not-pass",
	Title: "the hole that a screw should pass is smaller than the screw",
	Why: `A clearance hole must be larger than the screw over its thread, by enough to line up with the hole beyond it. One of the
tapping size cuts a thread of its own, and the parts are held apart.`,
	Rows:      []string{"D25", "I7"},
	Source:    []string{"geometry"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleScrew("M5x16", "4.9", fullTen),
	Sound:     exampleScrew("M5x16", "5.5", fullTen),
	OnJoint:   screwDoesNotPass,
})

func screwDoesNotPass(j *eval.Joint, a *Ask) {
	s := j.Screw
	if s == nil || len(s.Passes) == 0 {
		return
	}
	t, ok := Need(a, s.Thread)
	if !ok {
		return
	}
	for _, p := range s.Passes {
		if p.Hole == nil {
			continue
		}
		d, ok := Need(a, p.Hole.Diameter)
		if !ok {
			continue
		}
		if d.Nominal >= t.Diameter-0.0005 {
			a.Clear(Room(round(d.Nominal), round(t.Diameter)), j.Item.Path()+" through "+p.Hole.Item.Path())
			continue
		}
		f := a.Say(j.Item.Path()+"+"+p.Hole.Item.Path(), p.Hole.Diameter.At, "%s is %s mm over its thread, and %s is %s", j.Item.Path(), figure(round(t.Diameter)), p.Hole.Item.Path(), mm(d.Nominal))
		f.Margin = Room(round(d.Nominal), round(t.Diameter))
		f.Also = []finding.Note{{Place: s.Model.Size.At, Says: "the screw"}}
	}
}
