package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
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
	if m.With.Kind == "plug_gauge" || m.Runs || m.Tried {
		return
	}
	r, ok := Need(a, m.With.Range)
	if !ok || len(r) != 2 {
		return
	}
	size := m.Size.Nominal
	if size < r[0]-0.0005 || size > r[1]+0.0005 {
		a.Say(m.With.Path()+".range+"+m.Name, m.Place("with", "size"), "%s is %s, and %s measures from %s to %s",
			m.Name, mm(size), m.With.Path(), figure(r[0]), mm(r[1]))
		return
	}
	a.Clear(finding.Margin{Has: r[1] - size, Wants: 0, Unit: "mm"}, "the range of "+m.With.Path())
}
