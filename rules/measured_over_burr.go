package rules

import (
	"strings"

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

// exampleMeasure drills a piece so narrow that no anvil finds room beside the hole, and
// takes its height.
func exampleMeasure(before, height string, hole float64) string {
	s := replaced(exampleHole(), "height   = 20", height)
	s = replaced(s, "width    = 30", "width    = 6")
	s = replaced(s, "length   = 40", "length   = 8")
	s = replaced(s, "{ left = 20, front = 15 }", "{ left = 4, front = 3 }")
	s = replaced(s, "diameter = 6", "diameter = "+figure(hole))
	s = replaced(s, "  setup \"drill\"", "  bench \"try\" {\n    deburr {}\n  }\n\n  setup \"drill\"")
	return strings.TrimSuffix(s, "}\n") + "\n  bench \"measure\" {\n" + before + `    measure {
      size = height
      with = micrometer.first
    }
  }
}
`
}

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
