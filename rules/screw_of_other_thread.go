package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "screw-of-other-thread",
	Title: "the screw and its hole have different threads",
	Why: `A screw of another thread does not go in, or goes in for two turns and strips. Coarse and fine, metric and inch, right
and left are told apart by nothing but their names.`,
	Rows:      []string{"I2", "D16"},
	Source:    []string{"look-up in the tables of threads"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleScrew("M5x0.5x16", "5.5", fullTen),
	Sound:     exampleScrew("M5x16", "5.5", fullTen),
	OnJoint:   screwOfOtherThread,
})

func screwOfOtherThread(j *eval.Joint, a *Ask) {
	s := j.Screw
	if s == nil || s.Into == nil || !s.Into.Thread.Size.Is() {
		return
	}
	t, ok := Need(a, s.Thread)
	if !ok {
		return
	}
	if t.Same(s.Takes) {
		a.Clear(finding.Margin{}, "")
		return
	}
	f := a.Say(j.Item.Path()+"+thread", s.Model.Size.At, "%s is %s, and %s has the thread %s", j.Item.Path(), t, s.Enters(), s.Takes)
	f.Also = []finding.Note{{Place: s.Into.Thread.Size.At, Says: "the thread of the hole"}}
}
