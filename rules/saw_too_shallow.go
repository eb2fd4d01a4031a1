package rules

import (
	"fettle/eval"
	"fettle/eval/reckon/cutting"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "saw-too-shallow",
	Title: "the saw does not reach so deep inside its collar, nut or screw head",
	Why: `A saw cuts no deeper than from its rim to whatever clamps it: half the difference of the two
diameters, less a little room. Plunged, it must go deeper in the middle than at the ends by its own arc. A
larger saw, a slimmer collar, cuts from both sides, or a hacksaw and a file are the ways out.`,
	Rows: []string{"B2"},
	Source: []string{"half the difference of the diameters less 0.5 to 1 mm: common practice, geometry",
		"a plunged saw leaves an arc: R - sqrt(R² - a²) over a half length a"},
	Limits:    []string{"flange_gap"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     replaced(exampleSlit(""), "depth = 10", "depth = 18.6"),
	Sound:     replaced(exampleSlit(""), "depth = 10", "depth = 17.5"),
	OnCut:     sawTooShallow,
})

// clampDiameter is the largest thing that grips the cutter.
func clampDiameter(h *model.Holder) model.Known[float64] {
	return model.Both(h.Collar, h.Clamp.Diameter, func(c, d float64) float64 { return max(c, d) })
}

// sawTooShallowFor is by how much the depth of a saw cut passes what the saw reaches inside
// its collar; 0 or less where it does not, or where that is not known.
func sawTooShallowFor(k *eval.Cut) float64 {
	h := k.Stack.Holder
	if h == nil || h.Kind != "arbor" || k.Choice.By != "sawing" {
		return 0
	}
	d, ok := clampDiameter(h).Get()
	if !ok || k.Choice.Tool.Size <= 0 {
		return 0
	}
	over := 0.0
	for _, w := range k.Works {
		if w.Facing {
			over = max(over, w.Reach-cutting.SawReach(k.Choice.Tool.Size, d, 0))
		}
	}
	return over
}

func sawTooShallow(k *eval.Cut, a *Ask) {
	h := k.Stack.Holder
	if h == nil || h.Kind != "arbor" || k.Choice.By != "sawing" || k.Unplayed != "" {
		return
	}
	if c := k.Choice.Tool.Cutter; c == nil || k.Choice.Tool.Size <= 0 {
		if c != nil {
			Need(a, c.Diameter)
		}
		return
	}
	for _, w := range k.Works {
		if !w.Facing {
			continue
		}
		d, ok := Need(a, clampDiameter(h))
		if !ok {
			continue
		}
		reach := cutting.SawReach(k.Choice.Tool.Size, d, a.Limit("flange_gap"))
		if w.Reach <= reach+0.0005 {
			a.Clear(Bound(round(w.Reach), round(reach), "mm"), "the depth of "+w.Target.Name()+" inside the collar of "+h.Path())
			continue
		}
		arc := ""
		if w.Reach > w.Depth+0.005 {
			arc = " (" + mm(round(w.Depth)) + " at its ends and the saw's own arc in the middle)"
		}
		f := a.Say(k.ToolPath()+"+"+h.Path()+".collar", k.Place("tool", "holder", "makes"),
			"%s is to go %s deep%s; inside the %s mm of %s it reaches %s mm less %s of room: a saw of %s mm at least would do",
			k.ToolPath(), mm(round(w.Reach)), arc, figure(d), h.Path(), figure(round(reach+a.Limit("flange_gap"))), mm(a.Limit("flange_gap")),
			tenthUp(2*(w.Reach+a.Limit("flange_gap"))+d))
		f.Margin = Bound(round(w.Reach), round(reach), "mm")
	}
}
