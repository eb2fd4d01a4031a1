package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "measured-over-burr",
	Title: "the size is taken over a burr",
	Why: `Every cut leaves a burr where the tool came out, a few hundredths high and more. An anvil that
stands on one reads too large by its height, on both sides by twice that. It matters only where the anvil
lies: a place clear of burrs and larger than the anvil is as good as a deburred edge.`,
	Rows: []string{"E9"},
	Source: []string{"no choice of speed and feed prevents burrs: published measurements; that an edge burr lifts an anvil by its height: derived",
		"heights: common practice, no table was found"},
	Limits:    []string{"burr", "burr_limits"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleMeasure("", "height   = \"20 ±0.04\"", 4),
	Sound:     exampleMeasure("    deburr {}\n", "height   = \"20 ±0.04\"", 4),
	OnMeasure: measuredOverBurr,
})

func measuredOverBurr(m *eval.Measurement, a *Ask) {
	if m.Wrong != "" || m.With == nil || m.Faces[0] == 0 {
		return
	}
	lim, ok := m.Limits.Get()
	if !ok {
		Need(a, m.Limits)
		return
	}
	if lim.Width() >= a.Limit("burr_limits")-0.0005 {
		a.Clear(finding.Margin{}, "")
		return
	}
	spare, ok := Need(a, m.Clear)
	if !ok {
		return
	}
	if len(spare.Burrs) == 0 {
		a.Clear(finding.Margin{}, "")
		return
	}
	b := spare.Burrs[0]
	f := a.Say(m.Spot.Part+"."+m.Name+"+"+b.Edge, m.Place("size", "with"),
		"wherever the anvils of %s are put, they stand on a burr: %s, left by %s and not taken off; it usually adds up to %s mm, and the limits of %s leave %s mm",
		m.With.Path(), b.Edge, b.By.Step, figure(a.Limit("burr")), m.Name, figure(round(lim.Width())))
	f.Margin = finding.Margin{Has: round(lim.Width()), Wants: a.Limit("burr_limits"), Unit: "mm"}
}
