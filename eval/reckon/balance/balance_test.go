package balance

import (
	"math"
	"testing"

	"fettle/schema/printed"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

func TestPublished(t *testing.T) {
	n := 0
	for _, f := range printed.Rows(t, "balance.tsv", 5) {
		n++
		in := printed.Figures(t, f[1])
		got, err := reckoned(t, f[0], in)
		if err != nil || math.Abs(got-printed.Figure(t, f[2])) > printed.Figure(t, f[3]) {
			t.Errorf("%s %s: %v (%v), printed %s in %s", f[0], f[1], got, err, f[2], f[4])
		}
	}
	if n != 9 {
		t.Errorf("%d rows", n)
	}
}

func reckoned(t *testing.T, what string, in []float64) (float64, error) {
	switch what {
	case "force":
		return Force(sum(t, Mass{in[0], in[1], 0}), in[2])
	case "speed":
		force, err := Weight(in[2], in[3])
		if err != nil {
			return 0, err
		}
		revs, _, err := SpeedAt(sum(t, Mass{in[0], in[1], 0}), force)
		return revs, err
	case "sway":
		return Sway(Moment{Size: in[0]}, 1, in[1])
	case "disc":
		return Disc(in[0], in[1], in[2], in[3])
	case "block":
		return Block(in[0], in[1], in[2], in[3])
	}
	t.Fatalf("no check for %q", what)
	return 0, nil
}

func sum(t *testing.T, masses ...Mass) Moment {
	t.Helper()
	m, err := Sum(masses...)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// The heavy side lies between two masses, nearer the greater moment.
func TestSum(t *testing.T) {
	for _, c := range []struct {
		masses      []Mass
		size, angle float64
	}{
		{[]Mass{{1, 30, 0}, {1, 40, 90}}, 50, 53.13010},
		{[]Mass{{2, 10, 0}, {1, 20, 180}}, 0, 0},
		{[]Mass{{1, 10, -90}}, 10, 270},
		{[]Mass{{1, 10, 0}, {1, 10, 120}, {1, 10, 240}}, 0, 0},
		{nil, 0, 0},
	} {
		if m := sum(t, c.masses...); math.Abs(m.Size-c.size) > 1e-9 || math.Abs(m.Angle-c.angle) > 1e-4 {
			t.Errorf("%v: %+v", c.masses, m)
		}
	}
}

// Laws: a counterweight, of a given radius or of a given mass, leaves no moment; SpeedAt
// undoes Force; the pull grows with the square of the speed; turning the mark by an angle
// turns the heavy side by it and changes no size.
func TestLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var masses []Mass
		for range rapid.IntRange(1, 5).Draw(t, "count") {
			masses = append(masses, Mass{rapid.Float64Range(0.01, 20).Draw(t, "kg"), rapid.Float64Range(0.1, 300).Draw(t, "mm"), rapid.Float64Range(-360, 720).Draw(t, "angle")})
		}
		m, err := Sum(masses...)
		if err != nil || m.Size < 1e-6 {
			t.Skip(err)
		}
		byRadius, err := Counterweight(m, rapid.Float64Range(10, 300).Draw(t, "at"))
		byMass, err2 := CounterRadius(m, rapid.Float64Range(0.05, 20).Draw(t, "weight"))
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		for _, c := range []Mass{byRadius, byMass} {
			if c.Radius > widest || c.Kilograms > heaviest {
				continue
			}
			if left, err := Sum(append(masses, c)...); err != nil || left.Size > 1e-6*m.Size {
				t.Fatalf("%+v leaves %+v (%v)", c, left, err)
			}
		}
		revs := rapid.Float64Range(1, 3000).Draw(t, "rev/min")
		f, err := Force(m, revs)
		if err != nil {
			t.Fatal(err)
		}
		if back, ok, err := SpeedAt(m, f); err != nil || !ok || math.Abs(back-revs) > 1e-9*revs {
			t.Fatalf("%v rev/min comes back as %v (%v)", revs, back, err)
		}
		if four, err := Force(m, 2*revs); err != nil || math.Abs(four-4*f) > 1e-9*f {
			t.Fatalf("twice the speed: %v for %v", four, f)
		}
		turn := rapid.Float64Range(-180, 180).Draw(t, "turn")
		for i := range masses {
			masses[i].Angle += turn
		}
		m2, err := Sum(masses...)
		off := math.Mod(m2.Angle-m.Angle-turn+1080+180, 360) - 180
		if err != nil || math.Abs(m2.Size-m.Size) > 1e-9*m.Size+1e-9 || math.Abs(off) > 1e-3 && m.Size > 0.01 {
			t.Fatalf("turned by %v: %+v for %+v", turn, m2, m)
		}
	})
}

func TestRefused(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 1e300} {
		m := Moment{Size: 10}
		_, e1 := Sum(Mass{x, 10, 0})
		_, e2 := Sum(Mass{1, x, 0})
		_, e3 := Force(m, x)
		_, e4 := Force(Moment{Size: x}, 100)
		_, _, e5 := SpeedAt(m, x)
		_, e6 := Counterweight(m, x)
		_, e7 := CounterRadius(m, x)
		_, e8 := Weight(x, 0.05)
		_, e9 := Weight(100, x)
		_, e10 := Disc(x, 0, 10, 7850)
		_, e11 := Disc(100, x, 10, 7850)
		_, e12 := Block(10, 10, x, 7850)
		_, e13 := Sway(m, x, 100)
		for n, err := range []error{e1, e2, e3, e4, e5, e6, e7, e8, e9, e10, e11, e12, e13} {
			if err == nil {
				t.Errorf("%v is taken (%d)", x, n+1)
			}
		}
	}
	if _, err := Sum(Mass{1, 1, math.NaN()}); err == nil {
		t.Error("no angle")
	}
	if revs, ok, err := SpeedAt(Moment{}, 10); ok || err != nil {
		t.Errorf("nothing pulls at %v rev/min", revs)
	}
}

func BenchmarkSum(b *testing.B) {
	masses := []Mass{{1, 30, 0}, {2, 40, 90}, {0.5, 60, 200}}
	for b.Loop() {
		if _, err := Sum(masses...); err != nil {
			b.Fatal(err)
		}
	}
}
