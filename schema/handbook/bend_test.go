package handbook

import "testing"

// Along the grain a bend is never tighter than across it; a harder metal never bends tighter.
func TestBends(t *testing.T) {
	order := map[string]int{"annealed": 0, "half hard": 1, "bright drawn": 1, "hard": 2, "hardened and tempered": 2}
	type row struct {
		hard          int
		across, along float64
	}
	seen := map[string][]row{}
	for _, r := range load("bend").rows {
		one := row{order[r.text("condition")], r.number("across"), r.number("along")}
		if _, ok := order[r.text("condition")]; !ok || one.across > one.along {
			t.Errorf("%s %s: %v", r.text("metal"), r.text("condition"), one)
		}
		for _, o := range seen[r.text("metal")] {
			if (o.hard < one.hard) != (o.across <= one.across && o.along <= one.along) && o.hard != one.hard {
				t.Errorf("%s: %v and %v", r.text("metal"), o, one)
			}
		}
		seen[r.text("metal")] = append(seen[r.text("metal")], one)
		if _, ok := Material(r.text("metal")); !ok {
			t.Errorf("%s is no material", r.text("metal"))
		}
	}
	m, _ := Material("CW508L")
	if a, b, ok := LeastBend(m, "hard"); !ok || a != 1 || b != 3 {
		t.Errorf("%v %v %v", a, b, ok)
	}
	if _, _, ok := LeastBend(m, ""); ok {
		t.Error("no condition has a radius")
	}
}
