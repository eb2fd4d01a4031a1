package eval

import (
	"math"
	"testing"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// spandrel is the volume of the ring between a square corner and the quarter circle in it, by the
// theorem of Pappus: its section is r²(1 - π/4), and its centroid lies r(10 - 3π)/(3(4 - π)), that
// is 0.2234 r, from either leg (areas and centroids of plane figures, common handbook table).
// towards is 1 where the section lies beyond the surface of radius R, -1 where within.
func spandrel(R, r, towards float64) float64 {
	c := r * (10 - 3*math.Pi) / (3 * (4 - math.Pi))
	return 2 * math.Pi * (R + towards*c) * r * r * (1 - math.Pi/4)
}

// Full and hollow corners at either end, of an outside and of a bore, by hand.
func TestCornerShape(t *testing.T) {
	on := Lathe{X0: 10, X1: 50, R0: 8, R1: 8}
	bore := on
	bore.Inside = true
	for _, c := range []struct {
		of   Lathe
		face model.Face
		at   float64
		want Lathe
	}{
		{on, model.Right, 50, Lathe{X0: 48, X1: 50, R0: 8, R1: 7}},
		{on, model.Left, 10, Lathe{X0: 10, X1: 12, R0: 7, R1: 8}},
		{on, model.Right, 10, Lathe{X0: 10, X1: 12, R0: 9, R1: 8, Hollow: true}},
		{on, model.Left, 50, Lathe{X0: 48, X1: 50, R0: 8, R1: 9, Hollow: true}},
		{bore, model.Right, 50, Lathe{X0: 48, X1: 50, R0: 8, R1: 9, Inside: true}},
		{bore, model.Right, 10, Lathe{X0: 10, X1: 12, R0: 7, R1: 8, Inside: true, Hollow: true}},
	} {
		if got := *cornerShape(c.of, Plane{Face: c.face, At: c.at}, 2, 1, nil); got != c.want {
			t.Errorf("the %v face at %v: %+v, want %+v", c.face, c.at, got, c.want)
		}
	}
}

// A rounding takes the spandrel of its corner, a fillet leaves it: never more taken than drawn,
// and no more left than the bound of the solid's cones all along the arc.
func TestRoundedCorners(t *testing.T) {
	raw := solid.Bar(0, 60, 40)
	for _, r := range []float64{0.5, 2, 5} {
		for _, c := range []struct {
			name  string
			took  []solid.Removal
			sharp float64 // taken with a square corner
			round float64 // the spandrel: less is taken by it in a hollow corner, more at a full one
			R     float64
		}{
			{"rim", cornerTook(&Lathe{X0: 60 - r, X1: 60, R0: 20, R1: 20 - r}, r, raw, "r"), 0, spandrel(20, r, -1), 20},
			{"left rim", cornerTook(&Lathe{X0: 0, X1: r, R0: 20 - r, R1: 20}, r, raw, "r"), 0, spandrel(20, r, -1), 20},
			{"fillet", must(filletedTook(Lathe{X0: 20, X1: 60, R0: 10, R1: 10}, r, 0, raw, "s")), math.Pi * (400 - 100) * 40, -spandrel(10, r, 1), 10 + r},
			{"fillet in a bore", must(filletedTook(Lathe{X0: 20, X1: 60, R0: 9, R1: 9, Inside: true}, r, 0, raw, "s")), math.Pi * 81 * 40, -spandrel(9, r, -1), 9},
		} {
			got := solid.Raw(raw).Volume() - solid.Raw(raw).Cut(c.took...).Volume()
			want := c.sharp + c.round
			slack := 2 * math.Pi * c.R * r * math.Pi / 2 * solid.Within
			if got > want+1e-4*want || got < want-slack-1e-4*want {
				t.Errorf("%s of %v: %.3f mm³ taken, drawn %.3f, of which %.3f may stand", c.name, r, got, want, slack)
			}
		}
		bored := solid.Raw(raw).Cut(solid.Axle{}.Bore(20, 60, 9, "bore"))
		mouth := bored.Cut(cornerTook(&Lathe{X0: 60 - r, X1: 60, R0: 9, R1: 9 + r, Inside: true}, r, raw, "r")...)
		got, want := bored.Volume()-mouth.Volume(), spandrel(9, r, 1)
		if slack := 2 * math.Pi * (9 + r) * r * math.Pi / 2 * solid.Within; got > want*(1+1e-4)+0.5 || got < want-slack-0.5 {
			t.Errorf("mouth of a bore, %v: %.3f mm³ taken, drawn %.3f", r, got, want)
		}
	}
}

func must(m []solid.Removal, ok bool) []solid.Removal {
	if !ok {
		return nil
	}
	return m
}

// A fillet belongs to the surface that it stands on, at the end where it stands.
func TestFillets(t *testing.T) {
	shaft := &Form{Feature: &model.Feature{Item: &model.Item{Kind: "outside"}}, Lathe: &Lathe{X0: 20, X1: 60, R0: 10, R1: 10}}
	at := func(face model.Face, x, size float64) *Form {
		return &Form{Feature: &model.Feature{Item: &model.Item{Kind: "radius"}}, Size: size, Lathe: cornerShape(*shaft.Lathe, Plane{Face: face, At: x}, size, size, shaft)}
	}
	p := &Part{Forms: []*Form{shaft, at(model.Right, 20, 1.5), at(model.Right, 60, 4), at(model.Left, 60, 0.8)}}
	if l, r := p.fillets(shaft); l != 1.5 || r != 0.8 {
		t.Errorf("fillets of %v and %v, want 1.5 and 0.8", l, r)
	}
}
