package eval

import (
	"math"
	"testing"

	"fettle/schema/drawing"
	"fettle/schema/model"

	"pgregory.net/rapid"
)

// bracket is sheet of a thickness with right-angled bends of one inside radius at places along it.
func bracket(long, thick, inside float64, at ...float64) *Part {
	m := &model.Part{Item: &model.Item{Kind: "part", Label: "b"}}
	for i, x := range at {
		f := &model.Feature{Item: &model.Item{Kind: "bend", Label: string(rune('a' + i))}}
		f.At = model.Sure([]model.Position{{Coords: []model.Coordinate{{Datum: model.Ref{Face: model.Left}, Size: drawing.Size{Nominal: x}}}}})
		f.InsideRadius = model.Sure(drawing.Size{Nominal: inside})
		m.Features = append(m.Features, f)
	}
	m.Length, m.Width, m.Thickness = model.Sure(sized(long)), model.Sure(sized(20)), model.Sure(sized(thick))
	return Ready(&model.Build{}, m)
}

// What a right-angled bend takes off the outsides of its two legs: the table of DIN 6935 (from memory), in
// tenths of a millimetre.
func TestBendTakes(t *testing.T) {
	for _, c := range []struct{ thick, inside, takes float64 }{
		{1, 1, 1.9}, {1, 1.6, 2.1}, {1, 2.5, 2.4}, {1.5, 1.6, 2.9}, {1.5, 2.5, 3.2}, {2, 2.5, 4.0}, {2, 4, 4.5}, {1, 4, 3.0},
	} {
		p := bracket(100, c.thick, c.inside, 50)
		s := p.FlatSheets()
		if len(s) != 1 || !s[0].Flat.Is() {
			t.Fatalf("%+v: %+v", c, s)
		}
		if got := 100 - s[0].Flat.V; math.Abs(got-c.takes) > 0.05 {
			t.Errorf("sheet of %v with %v inside: a bend takes %.3f, the table has %v", c.thick, c.inside, got, c.takes)
		}
	}
}

// Law: a sheet with several bends is shorter by what each takes; its straights and what the bends take up
// of flat sheet make its length; legs over their outsides make the drawing's.
func TestFlatSheetAddsUp(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		thick := rapid.SampledFrom([]float64{0.5, 1, 1.5, 2}).Draw(r, "thick")
		inside := thick * rapid.Float64Range(0.3, 4).Draw(r, "inside")
		n := rapid.IntRange(1, 4).Draw(r, "bends")
		at, x := []float64{}, 0.0
		for range n {
			x += rapid.Float64Range(25, 60).Draw(r, "leg")
			at = append(at, x)
		}
		long := x + 30
		s := bracket(long, thick, inside, at...).FlatSheets()[0]
		one := 100 - bracket(100, thick, inside, 50).FlatSheets()[0].Flat.V
		if math.Abs(s.Flat.V-(long-float64(n)*one)) > 1e-9 {
			r.Fatalf("flat it is %v", s.Flat.V)
		}
		set := inside + thick
		sum := float64(n) * (2*set - one) // what the bends take up
		for _, k := range s.Straights() {
			sum += k.V
		}
		if math.Abs(sum-s.Flat.V) > 1e-9 {
			r.Fatalf("its pieces make %v, it has %v", sum, s.Flat.V)
		}
		drawn := s.Folds[0].Leg[0]
		for _, f := range s.Folds {
			drawn += f.Leg[1]
		}
		if math.Abs(drawn-long) > 1e-9 {
			r.Fatalf("its legs make %v", drawn)
		}
	})
}
