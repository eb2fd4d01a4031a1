package rules

import (
	"fettle/eval"
	"fettle/eval/reckon/thread"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "screw-too-short",
	Title: "too little of the screw's thread is in its hole",
	Why: `A screw holds by the thread that is in use. About one diameter in steel, more in brass and aluminium, holds as well as
the screw itself; with less the thread strips first. A screw that does not reach its thread holds nothing.`,
	Rows:      []string{"D16", "D15"},
	Source:    []string{"one diameter in steel, 1.25 in iron and copper alloys, 1.5 in aluminium: common practice; arithmetic"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleScrew("M5x10", "5.5", fullTen),
	Sound:     exampleScrew("M5x16", "5.5", fullTen),
	OnJoint:   screwTooShort,
})

func screwTooShort(j *eval.Joint, a *Ask) {
	s := j.Screw
	if s == nil || s.Into == nil || !s.UnderHead() || len(s.Passes) == 0 {
		return
	}
	t, ok := Need(a, s.Thread)
	in, ok2 := Need(a, s.Engaged())
	if !ok || !ok2 {
		return
	}
	passes, _ := s.Stack.Get()
	if in <= 0.0005 {
		a.Say(j.Item.Path()+"+short", s.Model.Size.At, "%s is %s long and passes %s mm: it does not reach the thread of %s", j.Item.Path(), mm(s.Length), figure(round(passes)), s.Enters())
		return
	}
	if least, asked := s.Wanted(); asked && in < least-0.0005 {
		f := a.Say(j.Item.Path()+"+engaged", s.Model.Engaged.At, "%s is to have %s mm of thread in use, and has %s mm in %s", j.Item.Path(), figure(round(least)), figure(round(in)), s.Enters())
		f.Margin = Room(round(in), round(least))
		return
	}
	m, ok := Need(a, s.Part.Part.Material)
	if !ok {
		return
	}
	d, known := thread.LeastEngaged(m.Group)
	if !known {
		return
	}
	want := d * t.Diameter
	if in >= want-0.0005 {
		a.Clear(Room(round(in), round(want)), "the thread of "+j.Item.Path())
		return
	}
	f := a.Say(j.Item.Path()+"+short", s.Model.Size.At, "%s has %s mm of thread in %s; in %s usually %s mm (%s the diameter) hold as well as the screw",
		j.Item.Path(), figure(round(in)), s.Enters(), m.Written, figure(round(want)), times(d))
	f.Margin = Room(round(in), round(want))
}

// times words a multiple: "once", "1.25 times".
func times(x float64) string {
	if x == 1 {
		return "once"
	}
	return figure(x) + " times"
}
