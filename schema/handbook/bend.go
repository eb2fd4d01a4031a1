package handbook

import "fettle/schema/model"

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
