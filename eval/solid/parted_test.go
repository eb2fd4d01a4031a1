package solid

import "testing"

// A slot right through parts a block into two of its own volumes, by hand; one that leaves a skin of
// 0.01 mm does not, and a cut made before is no business of a later one.
func TestParted(t *testing.T) {
	block := Raw(Box(Vec{0, 0, 0}, Vec{40, 30, 20}))
	slot := func(z float64) Removal { return Removal{Take: Box(Vec{-1, 12, z}, Vec{41, 18, 21}), By: "slot"} }
	p := block.Cut(slot(-1))
	a, b, ok := p.Parted(0)
	if !ok {
		t.Fatal("a slot right through parts nothing")
	}
	near(t, "one part", a.Volume(), 40*12*20, 1e-3)
	near(t, "the other", b.Volume(), 40*12*20, 1e-3)
	if _, _, ok := block.Cut(slot(0.01)).Parted(0); ok {
		t.Error("a skin of 0.01 mm is taken for none")
	}
	later := p.Cut(Removal{Take: Cylinder(Vec{10, 5, -1}, Vec{10, 5, 21}, 2), By: "hole"})
	if _, _, ok := later.Parted(1); ok {
		t.Error("a hole is said to part what a slot parted before")
	}
	if _, _, ok := p.Parted(7); ok {
		t.Error("parted by removals that are not there")
	}
}
