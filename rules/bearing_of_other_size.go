package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "bearing-of-other-size",
	Title: "a ball bearing is given other sizes than its number has, or than the part or the fit that it is bought for",
	Why: `The number of a ball bearing settles bore, outside and width. Where the drawing has another figure the seat is made to
the wrong one of the two: measure the bearing before the seat is cut.`,
	Rows:      []string{"G11", "I7"},
	Source:    []string{"ISO 15 (from memory): boundary dimensions of radial ball bearings by their number"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleNumbered("10"),
	Sound:     exampleNumbered("8"),
	OnBuild:   bearingOfOtherSize,
})

// exampleNumbered is a bearing 608 with a bore that is written as well.
func exampleNumbered(bore string) string {
	return `recipe "example" {
  units = "mm"
}

part "race" {
  bought = bearings.small
}

bearings "small" {
  code = "608"
  bore = ` + bore + `
}
`
}

func bearingOfOtherSize(t *eval.Trace, a *Ask) {
	for _, b := range t.Build.Shop.Bearings {
		std, ok := handbook.BearingOf(b.Code.V)
		if !ok {
			continue
		}
		for _, s := range []struct {
			name  string
			has   model.Known[float64]
			wants []float64
		}{{"bore", b.Bore, []float64{std.Bore}}, {"outside", b.Outside, []float64{std.Outside}}, {"width", b.Width, []float64{std.Open, std.Shielded}}} {
			switch {
			case !s.has.Said():
			case abs(s.has.V-s.wants[0]) < sameSize || abs(s.has.V-s.wants[len(s.wants)-1]) < sameSize:
				a.Clear(finding.Margin{}, "")
			default:
				std := mm(s.wants[0])
				if other := s.wants[len(s.wants)-1]; other != s.wants[0] {
					std += ", with shields " + mm(other)
				}
				f := a.Say(b.Path()+"."+s.name, s.has.At, "%s is called %s, whose %s is %s; here it is written as %s", b.Path(), b.Code.V, s.name, std, mm(round(s.has.V)))
				f.Also = []finding.Note{{Place: b.Code.At, Says: "its number"}}
			}
		}
	}
	for _, p := range t.Parts {
		partAsBearing(t, p, a)
	}
	for _, j := range t.Joints {
		if j.Fit != nil {
			engagedOverWidth(t, j, a)
		}
	}
}

// sameSize is how near two lengths of a bearing must lie to be one, mm: what is written in inches is rounded.
const sameSize = 0.01

// partAsBearing compares what a part that is bought as a bearing says of itself.
func partAsBearing(t *eval.Trace, p *eval.PartTrace, a *Ask) {
	m := p.Part.Part
	b, ok := model.Find(t.Build.Shop.Bearings, m.Bought.As.V.Item)
	if !ok || m.Bought.As.V.Item == nil {
		return
	}
	for _, s := range []struct {
		name, of string
		has      float64
		said     bool
		wants    model.Known[float64]
	}{{"diameter", "outside", m.Diameter.V.Nominal, m.Diameter.Said(), b.Outside}, {"length", "width", m.Length.V.Nominal, m.Length.Said(), b.Width}} {
		if !s.said || !s.wants.Is() {
			continue
		}
		if abs(s.has-s.wants.V) < sameSize {
			a.Clear(finding.Margin{}, "")
			continue
		}
		at := m.Item.Attr(s.name).Value.At
		f := a.Say(m.Path()+"."+s.name, at, "the %s of %s is %s; the %s of %s, which it is bought as, is %s", s.name, m.Path(), mm(round(s.has)), s.of, b.Path(), mm(round(s.wants.V)))
		f.Spots = []finding.Spot{{Part: m.Label}}
	}
}

// engagedOverWidth finds a fit that is said to be longer than the bearing in it is wide.
func engagedOverWidth(t *eval.Trace, j *eval.Joint, a *Ask) {
	long, ok := j.Fit.Model.Engaged.Get()
	s, seated := j.Fit.RingSeat(t)
	if !ok || !seated {
		return
	}
	wide, ok := Need(a, s.Width.Size)
	switch {
	case !ok:
	case long <= wide.Nominal+sameSize:
		a.Clear(Bound(round(long), round(wide.Nominal), "mm"), "what "+j.Item.Path()+" has engaged")
	default:
		f := a.Say(j.Item.Path()+".engaged", j.Fit.Model.Engaged.At, "%s has %s engaged, and %s is %s wide", j.Item.Path(), mm(round(long)), s.Thing.Item.Path(), mm(round(wide.Nominal)))
		f.Margin = Bound(round(long), round(wide.Nominal), "mm")
		f.Spots = []finding.Spot{j.Spot}
	}
}
