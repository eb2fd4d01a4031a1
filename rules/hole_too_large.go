package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/handbook"
)

var _ = enter(Rule{
	Name:  "hole-too-large",
	Title: "the tool makes the hole larger than the drawing lets it be",
	Why: `Metal that a drill took out does not come back. A drill taken from the wrong place of the index, or by its name in the
other system of units, is the usual cause; and a drill never cuts smaller than it is.`,
	Rows:      []string{"I9"},
	Source:    []string{"the size of the tool against the limits of the drawing; where it has none against ISO 2768-v, the coarsest"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Holding | Mounting,
	Trips:     replaced(exampleHole("tool  = drill.jobbers[6.5]"), "diameter = 6", `diameter = "6 H13"`),
	Sound:     replaced(exampleHole("tool  = drill.jobbers[6.1]"), "diameter = 6", `diameter = "6 H13"`),
	OnCut:     holeTooLarge,
	OnTurn:    asCut(holeTooLarge),
})

func holeTooLarge(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if k.Unplayed != "" || c == nil || c.Kind == "reamer" || oneOf(k.Choice.By, "spotting", "centring") {
		return // what a reamer makes has limits of its own
	}
	for i := range k.Works {
		w := &k.Works[i]
		f := w.Target.Form
		if f == nil || w.Target.Sub != "" || w.Wrong != "" || len(f.Mouths) == 0 && f.Feature.Kind != "bore" || f.Feature.Thread.Said || !f.Feature.Diameter.Is() {
			continue
		}
		d := round(w.Diameter)
		if k.Choice.By == "drilling" {
			d = max(d, round(k.Choice.Tool.Size)) // a drill is as wide as it is, whatever the step is to leave
		}
		if d <= f.Feature.Diameter.V.Nominal+0.0005 {
			a.Clear(finding.Margin{}, "")
			continue
		}
		most, coarsest := handbook.General("v", f.Feature.Diameter.V.Nominal)
		known := eval.LimitsOf(f.Feature.Diameter.V, k.Part.Build.Recipe.General, f.Feature.Item, "diameter")
		if !known.Is() && coarsest && d > f.Feature.Diameter.V.Nominal+most {
			a.Say(f.Name()+".diameter+"+k.Spot.String(), k.Place("tool", "to", "makes"), "%s makes %s %s mm wide, and %s is drawn: no general tolerance, not the coarsest of ISO 2768, lets it be so large", k.ToolPath(), f.Name(), figure(d), mm(round(f.Feature.Diameter.V.Nominal)))
			continue
		}
		lim, ok := Need(a, known)
		if !ok {
			continue
		}
		if d <= lim.Hi+0.0005 {
			a.Clear(Bound(d, round(lim.Hi), "mm"), f.Name()+" by "+k.ToolPath())
			continue
		}
		s := a.Say(f.Name()+".diameter+"+k.Spot.String(), k.Place("tool", "to", "makes"), "%s makes %s %s mm wide, and it is to be %s at most", k.ToolPath(), f.Name(), figure(d), mm(round(lim.Hi)))
		s.Margin = Bound(d, round(lim.Hi), "mm")
	}
}
