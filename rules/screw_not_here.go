package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "screw-not-here",
	Title: "a screw of that length is not in the shop",
	Why: `A build waits for a bought thing that nobody ordered. Where the shop lists its screws of that thread and head, and none is
of the length, the nearest are named.`,
	Rows:      []string{"G11", "D16"},
	Source:    []string{"look-up in the shop"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     exampleScrew("M5x16", "5.5", fullTen) + boxOfScrews("[12, 20]"),
	Sound:     exampleScrew("M5x16", "5.5", fullTen) + boxOfScrews("[12, 16, 20]"),
	OnJoint:   screwNotHere,
})

func boxOfScrews(lengths string) string {
	return "\nscrews \"box\" {\n  thread  = \"M5\"\n  head    = \"cap\"\n  lengths = " + lengths + "\n}\n"
}

func screwNotHere(j *eval.Joint, a *Ask) {
	s := j.Screw
	if s == nil || s.Length == 0 || !s.Thread.Is() {
		return
	}
	var near []*model.Screws
	build := s.Model.Item
	for _, b := range a.build.Shop.Screws {
		t, ok := b.Thread.Get()
		if !ok || !b.Here() || !t.Same(s.Thread.V) || b.Head.Is() && s.Model.Head.Is() && b.Head.V != s.Model.Head.V {
			continue
		}
		if !b.Lengths.Is() {
			a.Lack(b.Lengths.Missing()...)
			return
		}
		if b.Lengths.V.Has(s.Length) {
			a.Clear(finding.Margin{}, "")
			return
		}
		near = append(near, b)
	}
	if len(near) == 0 {
		return // the shop lists no such screws at all: nothing says that it has none
	}
	b := near[0]
	n, _ := b.Lengths.V.Nearest(s.Length)
	f := a.Say(build.Path()+"+length", s.Model.Size.At, "%s has no %s of %s; the nearest is %s", b.Path(), s.Thread.V, mm(s.Length), mm(n))
	f.Also = []finding.Note{{Place: b.Lengths.At, Says: "the lengths that are here"}}
}
