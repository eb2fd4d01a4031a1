package solid

import (
	"math"
	"math/rand"
	"testing"
)

func loopsArea(ls []Loop) (sum float64) {
	for _, l := range ls {
		sum += l.Area
	}
	return sum
}

// Sections whose areas and outlines plane geometry gives.
func TestSections(t *testing.T) {
	block := Raw(Box(Vec{}, Vec{60, 40, 20}))
	hole := Removal{Take: Cylinder(Vec{30, 20, -1}, Vec{30, 20, 21}, 7), By: "hole"}
	bar := Raw(Cylinder(Vec{}, Vec{50, 0, 0}, 10))
	cone := Raw(Cone(Vec{}, Vec{0, 0, 10}, 10, 0))
	for _, c := range []struct {
		what          string
		p             *Piece
		at, n         Vec
		loops, sides  int
		area, largest float64
	}{
		{"a block across", block, Vec{0, 0, 7}, Vec{0, 0, 1}, 1, 4, 2400, 2400},
		{"its top face", block, Vec{0, 0, 20}, Vec{0, 0, 1}, 1, 4, 2400, 2400},
		{"what is above its top face", block, Vec{0, 0, 20}, Vec{0, 0, -1}, 0, 0, 0, 0},
		{"a hole", block.Cut(hole), Vec{0, 0, 7}, Vec{0, 0, 1}, 2, 5, 2400 - math.Pi*49, 2400},
		{"along the hole", block.Cut(hole), Vec{0, 20, 0}, Vec{0, -1, 0}, 2, 8, 20 * 46, 20 * 23},
		{"beside the middle of the hole", block.Cut(hole), Vec{0, 25, 0}, Vec{0, 1, 0}, 2, 8, 20 * (60 - 2*math.Sqrt(24)), 20 * (30 - math.Sqrt(24))},
		{"slanting through a bar", bar, Vec{25, 0, 0}, Vec{3, 4, 0}, 1, 1, math.Pi * 100 / 0.6, math.Pi * 100 / 0.6},
		// A cone cut along its slope is a parabola, 2/3 of width times height: the plane goes
		// through its axis at half its height.
		{"a cone along its slope", cone, Vec{0, 0, 5}, Vec{1, 0, 1}, 1, 2, 2.0 / 3 * 2 * math.Sqrt(75) * 7.5 * math.Sqrt2, 2.0 / 3 * 2 * math.Sqrt(75) * 7.5 * math.Sqrt2},
		{"a cone through its point", cone, Vec{}, Vec{0, 1, 0}, 1, 3, 100, 100},
	} {
		ls, err := c.p.Section(c.at, c.n)
		if err != nil {
			t.Errorf("%s: %v", c.what, err)
			continue
		}
		sides, largest := 0, 0.0
		for _, l := range ls {
			sides += len(l.Sides)
			largest = max(largest, l.Area)
		}
		if len(ls) != c.loops || sides != c.sides {
			t.Errorf("%s: %d loops of %d sides, want %d of %d", c.what, len(ls), sides, c.loops, c.sides)
		}
		near(t, c.what, loopsArea(ls), c.area, 1e-5*max(1, c.area))
		near(t, c.what+", largest loop", largest, c.largest, 1e-5*max(1, c.area))
	}
}

// Law 4: the loops of a section close, and have the area that rays across it add up to.
func TestSectionsAgreeWithRays(t *testing.T) {
	r := rand.New(rand.NewSource(24))
	worst, n := 0.0, 0
	for i := range 200 {
		p := randomPiece(r, 2+r.Intn(14))
		normal := along(r.Intn(3))
		if i%2 == 0 {
			normal = Vec{r.NormFloat64(), r.NormFloat64(), r.NormFloat64()}.Unit()
		}
		at := Vec{20 + 60*r.Float64(), 10 + 40*r.Float64(), 5 + 20*r.Float64()}
		ls, err := p.Section(at, normal)
		if err != nil {
			t.Errorf("piece %d at %v square to %v: %v", i, at, normal, err)
			continue
		}
		n += len(ls)
		want := areaByRays(p, at, normal)
		off := math.Abs(loopsArea(ls)-want) / max(want, 100)
		if worst = max(worst, off); off > 2e-4 {
			t.Errorf("piece %d at %v square to %v: %.4f mm², by rays %.4f", i, at, normal, loopsArea(ls), want)
		}
	}
	t.Logf("%d loops, worst relative difference %.2g", n, worst)
}

// areaByRays adds up the metal on 8,000 rows across a section.
func areaByRays(p *Piece, at, normal Vec) float64 {
	a, b := screen(normal)
	right, up := a.Times(0.8).Add(b.Times(0.6)), b.Times(0.8).Sub(a.Times(0.6)) // along no outline
	const span, rows = 140.0, 8000
	sum := 0.0
	for k := range rows {
		y := (float64(k)+0.5)/rows*2*span - span
		for _, s := range p.Line(at.Add(up.Times(y)), right) {
			sum += s.Len() * 2 * span / rows
		}
	}
	return sum
}

// Law 5: sections square to the height have the area that the piece's volume is added up from.
func TestSectionsAgreeWithPiece(t *testing.T) {
	r := rand.New(rand.NewSource(25))
	for i := range 100 {
		p := randomPiece(r, 2+r.Intn(14))
		z := 3 + 24*r.Float64()
		ls, err := p.Section(Vec{0, 0, z}, Vec{0, 0, 1})
		if err != nil {
			t.Errorf("piece %d: %v", i, err)
			continue
		}
		s := scenes.Get().(*scene)
		s.body = nil
		s.near(p, p.blank.lo, p.blank.hi)
		var pl plane
		pl.section(s, z)
		want := pl.area()
		scenes.Put(s)
		near(t, "area", loopsArea(ls), want, 2e-4*want)
	}
}

func TestNoSection(t *testing.T) {
	p := Raw(Box(Vec{}, Vec{60, 40, 20}))
	for _, n := range []Vec{{}, {math.NaN(), 0, 1}, {math.Inf(1), 0, 0}, {1e300, 1e300, 0}} {
		if _, err := p.Section(Vec{}, n); err == nil {
			t.Errorf("a section square to %v", n)
		}
		if _, err := p.Seen(n); err == nil {
			t.Errorf("seen from %v", n)
		}
	}
	if ls, err := (Raw(Shape{})).Section(Vec{}, Vec{0, 0, 1}); len(ls) != 0 || err != nil {
		t.Errorf("a section of nothing: %v %v", ls, err)
	}
	if es, err := (Raw(Shape{})).Seen(Vec{0, 0, 1}); len(es) != 0 || err != nil {
		t.Errorf("edges of nothing: %v %v", es, err)
	}
}
