package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "deep-hole-wanders",
	Title: "a long thin hole is drilled in one go from the solid",
	Why: `A drill that is long for its thickness bends off its line and comes out somewhere else. Begin with a short one, clear the
chips every diameter or so, drill from both ends where the middle may be larger, or use a D-bit or a boring bar.`,
	Rows:      []string{"D11"},
	Source:    []string{"eight to ten diameters for a plain twist drill, common practice; the upper is taken, and pecks begin at two to three"},
	Limits:    []string{"deep_hole"},
	Level:     finding.Advice,
	Judgement: finding.Thumb,
	Deaf:      Holding | Mounting,
	Trips:     replaced(exampleHole(), "diameter = 6", "diameter = 1.9"),
	Sound:     replaced(exampleHole(), "diameter = 6", "diameter = 2.5"),
	OnCut:     deepHoleWanders,
	OnTurn:    asCut(deepHoleWanders),
})

func deepHoleWanders(k *eval.Cut, a *Ask) {
	if k.Choice.By != "drilling" || k.Choice.Tool.Cutter == nil || k.Unplayed != "" {
		return
	}
	for i := range k.Works {
		w := &k.Works[i]
		if w.Target.Sub != "" || w.Had > 0 || w.Wrong != "" || !(w.Diameter > 0) || !(w.Depth > 0) {
			continue // a hole that is opened out leads its drill
		}
		ratio, limit := w.Depth/w.Diameter, a.Limit("deep_hole")
		if ratio <= limit+1e-6 {
			a.Clear(Bound(round(ratio), limit, "diameters"), w.Target.Name()+" drilled in one go")
			continue
		}
		f := a.Say(w.Target.Name()+"+deep", k.Place("tool", "makes"), "%s is drilled %s mm deep and %s mm wide from the solid: %s diameters; usually up to %s go well, and a longer one wanders off its line",
			w.Target.Name(), figure(round(w.Depth)), figure(round(w.Diameter)), tenthUp(ratio), figure(limit))
		f.Margin = Bound(round(ratio), limit, "diameters")
		return
	}
}
