package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "drill-starts-on-slope",
	Title: "a drill begins on a slope, with nothing flat or spotted under its point",
	Why: `On a slope one lip cuts before the point has hold: the drill bends downhill, the hole starts beside its place and runs crooked,
and a thin drill breaks. A flat milled there first with an end mill or slot drill, or a short stiff centre drill, gives the point hold.`,
	Rows:      []string{"D9"},
	Source:    []string{"from 5 to 10 degrees of slope: common practice; here from 10 on, where all who name a figure agree"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleTilted("30", "", ""),
	Sound:     replaced(exampleTilted("30", "", ""), "    operation {", "    operation {\n      makes = hole.oil\n      by    = \"spotting\"\n    }\n    operation {"),
	OnCut:     drillStartsOnSlope,
})

// slope is the lean from which a drill skids for certain, degrees: the end of the band in use.
const slope = 10

func drillStartsOnSlope(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || c.Kind != "drill" || k.Choice.By != "drilling" || k.Unplayed != "" {
		return
	}
	for _, w := range k.Works {
		f := w.Target.Form
		if f == nil || w.Wrong != "" || w.Target.Sub != "" || f.Slope() == 0 {
			continue
		}
		s := k.Part.Feature(k.Before, f)
		switch leans := round(f.Slope()); {
		case s.Begun || s.Spotted:
			a.Clear(finding.Margin{}, "")
		case leans >= slope:
			m := a.Say(k.Spot.Part+"."+f.Name()+".tilted", k.Place("tool", "makes"), "%s begins on a slope of %s degrees with nothing flat or spotted there: one lip cuts before the point has hold; mill a flat for it first, or spot it with a centre drill",
				k.ToolPath(), figure(leans))
			m.Margin = Bound(leans, slope, "deg")
		default:
			a.Clear(Bound(leans, slope, "deg"), "the slope under "+k.ToolPath())
		}
	}
}
