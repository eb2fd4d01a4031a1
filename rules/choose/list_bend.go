package choose

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// flatChoices tells how large the sheet of a bent part is before it is folded, and what its bends were
// reckoned with.
func flatChoices(p *eval.Part) (out []Choice) {
	spot := finding.Spot{Part: p.Label}
	hundredths := func(x float64) string { return model.Figure(math.Round(x*100) / 100) }
	for _, pat := range p.FlatSheets() {
		for _, f := range pat.Folds {
			if f.Inside.From == model.Chosen {
				out = append(out, Choice{Spot: spot, What: "inside radius", Item: f.Form.Name() + " " + hundredths(f.Inside.V) + " mm", Why: "the least that the handbook allows for the metal"})
			}
			if a := f.Form.Feature.Angle.V; a > 90 && a <= 180 {
				out = append(out, Choice{Spot: spot, What: "legs", Item: "either leg of " + f.Form.Name() + " to the outermost place of the bend", Why: "over 90 degrees their outsides meet far off (DIN 6935, from memory)"})
			}
		}
		if flat, ok := pat.Flat.Get(); ok {
			out = append(out, Choice{Spot: spot, What: "flat sheet", Item: hundredths(flat) + " mm for a " + [2]string{"length", "width"}[pat.Axis] + " of " + hundredths(pat.Drawn) + " mm over the outsides of its legs",
				Why: "bends take up less than the outsides count (DIN 6935, from memory)"})
		}
	}
	return out
}
