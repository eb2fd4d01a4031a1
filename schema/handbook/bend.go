package handbook

import (
	"math"

	"fettle/schema/model"
)

// LeastBend gives the least inside radius of a bend in sheet, in thicknesses: the bend lying
// across the grain and along it. False where the handbook lacks the metal in that condition.
func LeastBend(m model.Material, condition string) (across, along float64, ok bool) {
	for _, exact := range [2]bool{true, false} {
		for _, r := range load("bend").rows {
			name := r.text("metal")
			if r.text("condition") == condition && (name == m.Name || !exact && Serves(model.Material{Name: name}, m)) {
				return r.number("across"), r.number("along"), true
			}
		}
	}
	return 0, 0, false
}

// BendConditions lists the conditions in which the handbook has a metal.
func BendConditions(m model.Material) []string {
	var out []string
	for _, r := range load("bend").rows {
		if r.text("metal") == m.Name || Serves(model.Material{Name: r.text("metal")}, m) {
			out = append(out, r.text("condition"))
		}
	}
	return out
}

// BendShare is where, in a bend of sheet, the layer lies that keeps its length: as a share of the
// thickness from the inside, for an inside radius and a thickness in one unit. DIN 6935 (from memory):
// half of 0.65 + 0.5 log10(radius/thickness), and half the thickness from five thicknesses on. False below a
// quarter of the thickness, where nobody prints a figure.
func BendShare(inside, thick float64) (float64, bool) {
	q := inside / thick
	switch {
	case !(q >= 0.25) || math.IsInf(q, 0):
		return 0, false
	case q > 5:
		return 0.5, true
	}
	return (0.65 + 0.5*math.Log10(q)) / 2, true
}
