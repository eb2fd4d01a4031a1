package rules

import (
	"fettle/eval"
	"fettle/eval/reckon/fit"
	"fettle/schema/finding"
	"fettle/schema/handbook"
)

var _ = enter(Rule{
	Name:      "instrument-out-of-range",
	Title:     "the size lies outside what the instrument measures",
	Why:       `A micrometer covers its 25 mm and no more; a caliper its beam. One that does not reach the size is of no use at the moment it is wanted.`,
	Rows:      []string{"E10"},
	Source:    []string{"ranges as declared; steps of 25 mm: DIN 863"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleMeasure("    deburr {}\n", "height   = 26", 4),
	Sound:     exampleMeasure("    deburr {}\n", "height   = 20", 4),
	OnMeasure: instrumentOutOfRange,
})

func instrumentOutOfRange(m *eval.Measurement, a *Ask) {
	if m.Wrong != "" || m.With == nil {
		return
	}
	if m.Runs || m.Tried || m.Angle != (m.With.Kind == "protractor") {
		return
	}
	if m.With.Kind == "plug_gauge" {
		plugTries(m, a)
		return
	}
	r, ok := Need(a, m.With.Range)
	if !ok || len(r) != 2 {
		return
	}
	size := m.Size.Nominal
	if size < r[0]-0.0005 || size > r[1]+0.0005 {
		says := mm
		if m.Angle {
			says = degrees
		}
		a.Say(m.With.Path()+".range+"+m.Name, m.Place("with", "size"), "%s is %s, and %s measures from %s to %s",
			m.Name, says(size), m.With.Path(), figure(r[0]), says(r[1]))
		return
	}
	unit := "mm"
	if m.Angle {
		unit = "deg"
	}
	a.Clear(finding.Margin{Has: r[1] - size, Wants: 0, Unit: unit}, "the range of "+m.With.Path())
}

// plugTries asks whether a plug gauge of that size is here, and whether it tries the limits that are asked for.
// A pin without limits says only that it goes in.
func plugTries(m *eval.Measurement, a *Ask) {
	sizes, ok := Need(a, m.With.Diameter)
	if !ok || !m.Inside || m.Depth {
		return
	}
	size := m.Size.Nominal
	near, ok := sizes.Nearest(size)
	if !ok {
		return
	}
	if abs(near-size) > plugSame {
		f := a.Say(m.With.Path()+".diameter+"+m.Name, m.Place("with", "size"), "%s is %s, and the nearest of %s is %s", m.Name, mm(size), m.With.Path(), mm(near))
		f.Also = []finding.Note{{Place: m.With.Diameter.At, Says: "the sizes that are here"}}
		return
	}
	class, pair := m.With.Limits.Get()
	lim, asked := m.Limits.Get()
	if !pair || !asked {
		a.Clear(finding.Margin{}, "")
		return
	}
	lo, hi, err := fit.Limits(handbook.ISO286(), near, class)
	if err != nil {
		return
	}
	if abs(near+lo-lim.Lo) <= 0.001 && abs(near+hi-lim.Hi) <= 0.001 {
		a.Clear(finding.Margin{}, "")
		return
	}
	f := a.Say(m.With.Path()+".limits+"+m.Name, m.Place("with", "size"), "%s tries %s, %s to %s, and %s is to be %s to %s", m.With.Path(), class, figure(round(near+lo)), mm(round(near+hi)), m.Name, figure(round(lim.Lo)), mm(round(lim.Hi)))
	f.Also = []finding.Note{{Place: m.With.Limits.At, Says: "what it tries"}}
}

// plugSame is how near a plug gauge must be to the size of a hole, mm.
const plugSame = 0.005
