package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "screw-bottoms",
	Title: "the screw comes to the end of its thread before its head clamps",
	Why: `A screw that is too long for a blind hole stops against the last thread. It feels tight and holds nothing, or strips
the thread, or pushes through a thin floor.`,
	Rows:      []string{"D16"},
	Source:    []string{"arithmetic: length less what it passes, against the full thread in the hole"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleScrew("M5x20", "5.5", fullTen),
	Sound:     exampleScrew("M5x16", "5.5", fullTen),
	OnJoint:   screwBottoms,
})

func screwBottoms(j *eval.Joint, a *Ask) {
	s := j.Screw
	if s == nil || s.Into == nil || !s.Blind || !s.UnderHead() || len(s.Passes) == 0 {
		return
	}
	in, ok := Need(a, s.Stands())
	has, ok2 := Need(a, s.Has)
	if !ok || !ok2 {
		return
	}
	if in <= has+0.0005 {
		a.Clear(Bound(round(in), round(has), "mm"), j.Item.Path()+" in its thread")
		return
	}
	passes, _ := s.Stack.Get()
	f := a.Say(j.Item.Path()+"+bottoms", s.Model.Size.At, "%s is %s long and passes %s mm: %s mm of it go into %s, whose full thread is %s deep; it bottoms before its head clamps",
		j.Item.Path(), mm(s.Length), figure(round(passes)), figure(round(in)), s.Enters(), mm(has))
	f.Margin = Bound(round(in), round(has), "mm")
}
