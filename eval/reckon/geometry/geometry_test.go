package geometry

import (
	"math"
	"testing"

	"fettle/schema/printed"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

func near(a, b, within float64) bool { return math.Abs(a-b) <= within }

func TestPublished(t *testing.T) {
	counts := map[string]int{}
	for _, f := range printed.Rows(t, "geometry.tsv", 5) {
		counts[f[0]]++
		got, want := reckoned(t, f[0], printed.Figures(t, f[1])), printed.Figures(t, f[2])
		if f[0] == "a hole" {
			got = nearest(got, want)
		}
		if len(got) != len(want) {
			t.Fatalf("%s %s: %v", f[0], f[1], got)
		}
		for n := range want {
			if !near(got[n], want[n], printed.Figure(t, f[3])) {
				t.Errorf("%s %s: %v, printed %s in %s", f[0], f[1], got, f[2], f[4])
			}
		}
	}
	for what, n := range map[string]int{"chord": 12, "round for flats": 6, "polygon": 3, "a hole": 2, "holes": 2, "flat": 2, "tangent": 2, "radius of arc": 1,
		"chord of height": 1, "fillet": 1, "fillet touches": 1, "scallop": 1, "round for bar": 1} {
		if counts[what] != n {
			t.Errorf("%d rows of %s, want %d", counts[what], what, n)
		}
	}
}

// nearest gives the x y of a list that lies nearest to one.
func nearest(list, want []float64) []float64 {
	best := list[:2]
	for n := 0; n < len(list); n += 2 {
		if math.Hypot(list[n]-want[0], list[n+1]-want[1]) < math.Hypot(best[0]-want[0], best[1]-want[1]) {
			best = list[n : n+2]
		}
	}
	return best
}

func reckoned(t *testing.T, what string, in []float64) []float64 {
	one := func(x float64, err error) []float64 {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return []float64{x}
	}
	two := func(x, y float64, err error) []float64 {
		t.Helper()
		return append(one(x, err), y)
	}
	switch what {
	case "a hole", "holes":
		var out []float64
		all, err := Circle{Holes: int(in[0]), Diameter: in[1], First: in[2]}.Places()
		for _, p := range all {
			out = append(out, two(p.X, p.Y, err)...)
		}
		return out
	case "chord":
		return one(Circle{Holes: int(in[0]), Diameter: in[1]}.Chord(1))
	case "polygon":
		p, err := FromRound(int(in[0]), in[1])
		return append(two(p.Across(), p.Side(), err), p.Depth())
	case "round for flats":
		p, err := OfFlats(int(in[0]), in[1])
		return one(p.Round, err)
	case "round for bar":
		return one(RoundForBar(in[0], in[1]))
	case "radius of arc":
		a, err := ByHeight(in[0], in[1])
		return one(a.Radius, err)
	case "chord of height":
		return one(FlatWidth(2*in[0], in[1]))
	case "flat":
		return one(Flat(in[0], in[1]))
	case "tangent":
		return two(Tangent(in[0], in[1], in[2]))
	case "fillet":
		return two(Corner{in[0]}.Fillet(in[1]))
	case "fillet touches":
		touches, _, err := Corner{in[0]}.Fillet(in[1])
		return one(touches, err)
	case "scallop":
		return one(Scallop(in[0], in[1]))
	}
	t.Fatalf("no check for %q", what)
	return nil
}

// Laws of a circle of holes: each lies on the circle and a chord from its neighbours, the middle of all is
// the middle of the circle, and a corner datum shifts all alike.
func TestCircleLaws(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		c := Circle{rapid.IntRange(2, 40).Draw(r, "holes"), rapid.Float64Range(1, 500).Draw(r, "diameter"), rapid.Float64Range(-360, 360).Draw(r, "first"), Point{}}
		from, err := c.Places()
		if err != nil {
			r.Fatal(err)
		}
		c.Middle = Point{rapid.Float64Range(-200, 200).Draw(r, "x"), rapid.Float64Range(-200, 200).Draw(r, "y")}
		all, err := c.Places()
		if err != nil {
			r.Fatal(err)
		}
		sum := Point{}
		on := rapid.IntRange(1, c.Holes-1).Draw(r, "on")
		chord, err := c.Chord(on)
		for n, p := range all {
			q := all[(n+on)%len(all)]
			if err != nil || !near(math.Hypot(p.X-q.X, p.Y-q.Y), chord, 1e-9) {
				r.Fatalf("from %v to %v: chord %v, %v", p, q, chord, err)
			}
			if !near(math.Hypot(p.X-c.Middle.X, p.Y-c.Middle.Y), c.Diameter/2, 1e-9) {
				r.Fatalf("%v is off the circle", p)
			}
			if !near(p.X-from[n].X, c.Middle.X, 1e-9) || !near(p.Y-from[n].Y, c.Middle.Y, 1e-9) {
				r.Fatalf("%v from the centre is %v", p, from[n])
			}
			sum.X, sum.Y = sum.X+p.X/float64(len(all)), sum.Y+p.Y/float64(len(all))
		}
		if !near(sum.X, c.Middle.X, 1e-9) || !near(sum.Y, c.Middle.Y, 1e-9) {
			r.Fatalf("the middle of all is %v", sum)
		}
	})
}

// Laws of arcs: every way to give an arc gives the same one; the chord is less than the way along it.
func TestArcLaws(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		a, err := ByAngle(rapid.Float64Range(1, 500).Draw(r, "radius"), rapid.Float64Range(1, 179).Draw(r, "angle"))
		if err != nil {
			r.Fatal(err)
		}
		if a.Chord() >= a.Length() {
			r.Fatalf("%v: chord %v, arc %v", a, a.Chord(), a.Length())
		}
		for name, back := range map[string]func() (Arc, error){
			"length": func() (Arc, error) { return ByLength(a.Radius, a.Length()) },
			"chord":  func() (Arc, error) { return ByChord(a.Radius, a.Chord()) },
			"height": func() (Arc, error) { return ByHeight(a.Chord(), a.Height()) },
		} {
			if b, err := back(); err != nil || !near(b.Radius/a.Radius, 1, 1e-9) || !near(b.Angle, a.Angle, 1e-6) {
				r.Fatalf("%s: %v becomes %v, %v", name, a, b, err)
			}
		}
		h, err := Flat(2*a.Radius, a.Chord())
		if err != nil || !near(h, a.Height(), 1e-9*a.Radius) {
			r.Fatalf("%v: flat %v, height %v, %v", a, h, a.Height(), err)
		}
		if w, err := FlatWidth(2*a.Radius, h); err != nil || !near(w, a.Chord(), 1e-6) {
			r.Fatalf("%v: width %v, chord %v, %v", a, w, a.Chord(), err)
		}
	})
}

// Laws of polygons: flats and round give each other; the flat's depth is what it takes off the radius; a
// round that is too small leaves round corners whose widths and the flats go once round.
func TestPolygonLaws(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		n, d := rapid.IntRange(3, 24).Draw(r, "sides"), rapid.Float64Range(1, 300).Draw(r, "round")
		p, err := FromRound(n, d)
		if err != nil {
			r.Fatal(err)
		}
		q, err := OfFlats(n, p.Across())
		if err != nil || !near(q.Round, d, 1e-9) || !near(p.Depth(), (d-p.Across())/2, 1e-9*d) || !near(math.Hypot(p.Across(), p.Side()), d, 1e-9*d) {
			r.Fatalf("%v %v %v", p, q, err)
		}
		small := p.Across() + rapid.Float64Range(0.01, 1).Draw(r, "of the way")*(d-p.Across())
		s, err := OnRound(n, p.Across(), small)
		if err != nil {
			r.Fatal(err)
		}
		arc, err := ByChord(small/2, s.Flat)
		if err != nil || !near((arc.Length()+s.Round)*float64(n), math.Pi*small, 1e-6*d) || s.Flat > s.Want+1e-9 {
			r.Fatalf("%v on %v: %+v, %v", p, small, s, err)
		}
		if full, err := OnRound(n, p.Across(), d*1.1); err != nil || full.Round != 0 || full.Lacks > 0 {
			r.Fatalf("%+v %v", full, err)
		}
	})
}

// Laws of compound angles: turned about y by the lower tilt and then about x by the upper, the normal of
// the plane stands upright; so it does turned once; each way of saying the plane undoes itself.
func TestCompoundLaws(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		c := Compound{rapid.Float64Range(-60, 60).Draw(r, "A"), rapid.Float64Range(-60, 60).Draw(r, "B")}
		n := [3]float64{-math.Tan(rad(c.A)), -math.Tan(rad(c.B)), 1} // of z = x tan A + y tan B
		lower, upper, err := c.Twice()
		if err != nil {
			r.Fatal(err)
		}
		sl, cl := math.Sincos(rad(lower))
		su, cu := math.Sincos(rad(upper))
		m := [3]float64{n[0]*cl + n[2]*sl, n[1], -n[0]*sl + n[2]*cl}
		if y := m[1]*cu + m[2]*su; !near(m[0], 0, 1e-9) || !near(y, 0, 1e-9) {
			r.Fatalf("%v: after both tilts %v %v", c, m[0], y)
		}
		tilt, towards, err := c.Once()
		if err != nil || !near(math.Cos(rad(tilt)), 1/math.Sqrt(n[0]*n[0]+n[1]*n[1]+1), 1e-12) {
			r.Fatalf("%v: one tilt %v", c, tilt)
		}
		if !near(-n[0]*math.Sin(rad(towards))+n[1]*math.Cos(rad(towards)), 0, 1e-9) {
			r.Fatalf("%v: towards %v", c, towards)
		}
		a, err1 := OfTilt(tilt, towards)
		b, err2 := OfTilts(lower, upper)
		for _, back := range []Compound{a, b} {
			if first(err1, err2) != nil || !near(back.A, c.A, 1e-9) || !near(back.B, c.B, 1e-9) {
				r.Fatalf("%v comes back as %v %v", c, a, b)
			}
		}
	})
}

// Laws of tangents: the arc between touches both circles; a fillet's foot is as far from the centre as its
// radius.
func TestTangentLaws(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		a, b := rapid.Float64Range(1, 50).Draw(r, "a"), rapid.Float64Range(1, 50).Draw(r, "b")
		apart := a + b + rapid.Float64Range(0.01, 50).Draw(r, "gap")
		outside, between, err := Tangent(a, b, apart)
		if err != nil || outside <= between || !near(math.Hypot(outside, a-b), apart, 1e-9) || !near(math.Hypot(between, a+b), apart, 1e-9) {
			r.Fatal(outside, between, err)
		}
		radius := (apart-a-b)/2 + rapid.Float64Range(0.01, 50).Draw(r, "more")
		p, err := Blend(a, b, apart, radius)
		if err != nil || !near(math.Hypot(p.X, p.Y), a+radius, 1e-9) || !near(math.Hypot(p.X-apart, p.Y), b+radius, 1e-9) {
			r.Fatal(p, err)
		}
		c := Corner{rapid.Float64Range(5, 175).Draw(r, "corner")}
		touches, off, err := c.Fillet(radius)
		if err != nil || !near(math.Hypot(touches, radius), off+radius, 1e-9*(touches+radius)) {
			r.Fatal(touches, off, err)
		}
	})
}

// Laws of volume: a bored bar and its core make the bar; a cone of no taper is a bar; mass and length undo
// each other. A hexagon bar is 0.8660 and an octagon 0.8284 of the square about it (from memory).
func TestMass(t *testing.T) {
	for _, c := range []struct {
		s    Section
		area float64
	}{{Section{Shape: Round, Size: 20}, 314.15927}, {Section{Shape: Square, Size: 20}, 400}, {Section{Shape: Hexagon, Size: 20}, 346.41016}, {Section{Shape: Octagon, Size: 20}, 331.37085},
		{Section{Shape: Flatbar, Size: 20, Other: 5}, 100}, {Section{Shape: Round, Size: 20, Bore: 10}, 235.61945}} {
		if got, err := c.s.Area(); err != nil || !near(got, c.area, 1e-5) {
			t.Errorf("%+v: %v %v", c.s, got, err)
		}
	}
	// A metre of 25 mm round steel weighs 3.85 kg (from memory: stock lists, at 7850 kg/m³).
	v, err := Section{Shape: Round, Size: 25}.Volume(1000)
	if m, err2 := Mass(v, 7850); first(err, err2) != nil || !near(m, 3.853, 0.005) {
		t.Errorf("%v kg, %v %v", m, err, err2)
	}
	rapid.Check(t, func(r *rapid.T) {
		d, bore, long := rapid.Float64Range(2, 100).Draw(r, "d"), rapid.Float64Range(0.1, 1.9).Draw(r, "bore"), rapid.Float64Range(1, 1000).Draw(r, "long")
		s := Section{Shape: Shape(rapid.IntRange(0, 3).Draw(r, "shape")), Size: d}
		full, err1 := s.Volume(long)
		s.Bore = bore
		tube, err2 := s.Volume(long)
		core, err3 := Section{Size: bore}.Volume(long)
		plain, err4 := Cone(bore, bore, long)
		if first(err1, err2, err3, err4) != nil || !near(tube+core, full, 1e-9*full) || !near(core, plain, 1e-9*plain) {
			r.Fatal(full, tube, core, plain)
		}
		m, err1 := Mass(tube, 8000)
		back, err2 := s.LengthOf(m, 8000)
		if first(err1, err2) != nil || !near(back, long, 1e-9*long) {
			r.Fatal(m, back, err1, err2)
		}
	})
	if b, err := Ball(2); err != nil || !near(b, 4*math.Pi/3, 1e-12) {
		t.Error(b, err)
	}
}

func TestRefuses(t *testing.T) {
	nan := math.NaN()
	for name, f := range map[string]func() error{
		"no holes":  func() error { _, err := Circle{0, 50, 0, Point{}}.Places(); return err },
		"NaN":       func() error { _, err := Circle{3, nan, 0, Point{}}.Places(); return err },
		"far off":   func() error { _, err := Circle{3, 50, 0, Point{math.Inf(1), 0}}.Places(); return err },
		"on":        func() error { _, err := Circle{3, 50, 0, Point{}}.Chord(3); return err },
		"arc":       func() error { _, err := ByAngle(5, 361); return err },
		"long arc":  func() error { _, err := ByLength(5, 32); return err },
		"chord":     func() error { _, err := ByChord(5, 10.1); return err },
		"height":    func() error { _, err := ByHeight(5, 0); return err },
		"flat":      func() error { _, err := Flat(10, 10.1); return err },
		"deep flat": func() error { _, err := FlatWidth(10, 11); return err },
		"scallop":   func() error { _, err := Scallop(nan, 1); return err },
		"sides":     func() error { _, err := FromRound(2, 10); return err },
		"flats":     func() error { _, err := OfFlats(6, -1); return err },
		"no metal":  func() error { _, err := OnRound(6, 10, 10); return err },
		"bar":       func() error { _, err := RoundForBar(3, nan); return err },
		"corner":    func() error { _, _, err := Corner{180}.Fillet(5); return err },
		"inside":    func() error { _, _, err := Tangent(10, 4, 5); return err },
		"blend":     func() error { _, err := Blend(5, 5, 30, 9); return err },
		"slope":     func() error { _, _, err := Compound{90, 0}.Once(); return err },
		"tilt":      func() error { _, err := OfTilt(-1, 0); return err },
		"tilts":     func() error { _, err := OfTilts(0, 90); return err },
		"bore":      func() error { _, err := Section{Size: 10, Bore: 10}.Area(); return err },
		"flat bar":  func() error { _, err := Section{Shape: Flatbar, Size: 10}.Area(); return err },
		"cone":      func() error { _, err := Cone(1, nan, 1); return err },
		"ball":      func() error { _, err := Ball(0); return err },
		"mass":      func() error { _, err := Mass(1, 0); return err },
		"length":    func() error { _, err := Section{Size: 10}.LengthOf(nan, 7850); return err },
	} {
		if f() == nil {
			t.Errorf("%s is taken", name)
		}
	}
}

func BenchmarkCircle(b *testing.B) {
	for b.Loop() {
		if _, err := (Circle{Holes: 60, Diameter: 100}).Places(); err != nil {
			b.Fatal(err)
		}
	}
}
