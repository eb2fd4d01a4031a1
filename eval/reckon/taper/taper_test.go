package taper

import (
	"math"
	"slices"
	"strings"
	"testing"

	"fettle/schema/handbook"
	"fettle/schema/printed"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

func sure[T any](t testing.TB) func(T, error) T {
	return func(x T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
}

func TestPublished(t *testing.T) {
	counts := map[string]int{}
	for _, f := range printed.Rows(t, "taper.tsv", 5) {
		counts[f[0]]++
		if got := reckoned(t, f[0], f[1]); !(math.Abs(got-printed.Figure(t, f[2])) <= printed.Figure(t, f[3])) {
			t.Errorf("%s %s: %v, printed %s in %s", f[0], f[1], got, f[2], f[4])
		}
	}
	for what, n := range map[string]int{"stack": 17, "taper of angle": 7, "sine bar": 7, "half of foot": 6, "set-over": 5, "rounding of sine bar": 5,
		"slide from face": 3, "male dovetail": 3, "female dovetail": 3, "foot of angle": 2, "per foot": 1, "half angle of ends": 1, "ring": 1, "ring apart": 1,
		"plug": 1, "plug small end": 1, "wide dovetail": 1} {
		if counts[what] != n {
			t.Errorf("%d rows of %s, want %d", counts[what], what, n)
		}
	}
}

func reckoned(t *testing.T, what, given string) float64 {
	taper, figure := sure[Taper](t), sure[float64](t)
	if what == "stack" {
		f := strings.Fields(given)
		set, ok := handbook.SlipSet(f[0])
		if !ok {
			t.Fatal(f[0])
		}
		grains := func(s string) int64 { return int64(math.Round(printed.Figure(t, s) * Grain)) }
		s := sure[Stack](t)(Blocks(set.Sizes).Build(grains(f[1]), [2]int64{grains(f[2]), grains(f[2])}))
		if s.Off != 0 || s.Height != grains(f[1]) || !wrung(set.Sizes, s) {
			t.Errorf("%s: %+v", given, s)
		}
		return float64(len(s.Blocks))
	}
	in := printed.Figures(t, given)
	switch what {
	case "set-over":
		rule, exact, err := taper(Ends(in[0], in[1], in[2])).SetOver(in[3])
		if err != nil || exact > rule || exact < rule*(1-math.Pow((in[0]-in[1])/in[2], 2)/8) {
			t.Errorf("%s: exactly %v, %v", given, exact, err)
		}
		return rule
	case "per foot":
		return taper(Ends(in[0], in[1], in[2])).PerFoot()
	case "half angle of ends":
		return taper(Ends(in[0], in[1], in[2])).Half()
	case "taper of angle":
		return taper(Included(in[0])).Ratio()
	case "foot of angle":
		return taper(Included(in[0])).PerFoot()
	case "slide from face":
		return taper(Included(in[0])).Slide(FromFace)
	case "half of foot":
		return taper(PerFoot(in[0])).Half()
	case "sine bar":
		return figure(Bar{Centres: in[0]}.Stack(in[1]))
	case "rounding of sine bar":
		return (figure(Bar{Centres: in[0]}.Angle(in[2])) - in[1]) * 3600
	case "ring":
		return cone(t)(Ring{in[0], in[1], in[2], in[3]}.Cone()).Half()
	case "ring apart":
		return (in[0] - in[1]) / 2 / math.Sin(cone(t)(Ring{in[0], in[1], in[2], in[3]}.Cone()).half())
	case "plug":
		return cone(t)(Plug{in[0], in[1], in[2], in[3]}.Cone()).Included()
	case "plug small end":
		_, small, err := Plug{in[0], in[1], in[2], in[3]}.Cone()
		return figure(small, err)
	case "male dovetail":
		return figure(Dovetail{Angle: in[1]}.OverMale(in[0], in[2]))
	case "female dovetail":
		return figure(Dovetail{Angle: in[1]}.BetweenFemale(in[0], in[2]))
	case "wide dovetail":
		return figure(Dovetail{Angle: in[1], Height: in[2]}.Wide(in[0]))
	}
	t.Fatalf("no check for %q", what)
	return 0
}

func cone(t *testing.T) func(Taper, float64, error) Taper {
	return func(x Taper, _ float64, err error) Taper { return sure[Taper](t)(x, err) }
}

// wrung says whether the blocks of a stack are all in the set, none twice, and add up.
func wrung(set []int64, s Stack) bool {
	sum := s.Wear[0] + s.Wear[1]
	left := slices.Clone(set)
	for _, x := range s.Blocks {
		n := slices.Index(left, x)
		if n < 0 {
			return false
		}
		left, sum = slices.Delete(left, n, n+1), sum+x
	}
	return sum == s.Height && slices.IsSortedFunc(s.Blocks, func(a, b int64) int { return int(b - a) })
}

// The half angles that the handbook's tapers are known by.
func TestStandardTapers(t *testing.T) {
	for _, c := range []struct {
		series, number string
		half           float64
	}{{"MT", "0", 1.4908}, {"MT", "1", 1.4287}, {"MT", "2", 1.4307}, {"MT", "3", 1.4377}, {"MT", "4", 1.4876}, {"MT", "5", 1.5073}} {
		for _, r := range handbook.TaperRows() {
			if r.Series == c.series && r.Number == c.number {
				// the printed half angles are of the tapers to five places
				if got := sure[Taper](t)(OnDiameter(r.Ratio)).Half(); math.Abs(got-c.half) > 0.0001 {
					t.Errorf("%s%s: %v, printed %v", c.series, c.number, got, c.half)
				}
			}
		}
	}
	for _, c := range []struct {
		written  string
		included float64 // from memory: 7/24 is 16 deg 35' 39.4"; R8 16 deg 51'
	}{{"ISO 30", 16 + 35.0/60 + 39.4/3600}, {"R8", 16 + 51.0/60}} {
		for _, r := range handbook.TaperRows() {
			if strings.TrimSpace(r.Series+" "+r.Number) == c.written {
				if got := sure[Taper](t)(OnDiameter(r.Ratio)).Included(); math.Abs(got-c.included) > 0.0002 {
					t.Errorf("%s: %v, %v", c.written, got, c.included)
				}
			}
		}
	}
}

// Laws: each way of saying a taper undoes itself.
func TestSayings(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		a, err := Included(rapid.Float64Range(0.01, 160).Draw(r, "included"))
		if err != nil {
			r.Fatal(err)
		}
		for name, back := range map[string]func() (Taper, error){
			"foot":     func() (Taper, error) { return PerFoot(a.PerFoot()) },
			"1 in n":   func() (Taper, error) { return OneIn(a.OneIn()) },
			"included": func() (Taper, error) { return Included(a.Included()) },
			"ends":     func() (Taper, error) { return Ends(5, 5+a.Across(12), 12) },
		} {
			if b, err := back(); err != nil || math.Abs(b.ratio/a.ratio-1) > 1e-9 {
				r.Fatalf("%s: %v becomes %v, %v", name, a, b, err)
			}
		}
		if s := a.Slide(FromAxis) + a.Slide(FromFace); math.Abs(s-90) > 1e-9 {
			r.Fatalf("axis and face: %v", s)
		}
		way, err := a.SlideWay(30)
		if err != nil || way < 30 {
			r.Fatal(way, err)
		}
		if reach, err := a.SlideReach(way); err != nil || math.Abs(reach-30) > 1e-9 {
			r.Fatal(reach, err)
		}
	})
}

// Laws: what is measured over rollers and balls of a cone gives that cone back.
func TestMeasured(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		a, err := Included(rapid.Float64Range(0.5, 60).Draw(r, "included"))
		if err != nil {
			r.Fatal(err)
		}
		small, roller, up := rapid.Float64Range(5, 60).Draw(r, "small"), rapid.Float64Range(2, 12).Draw(r, "roller"), rapid.Float64Range(5, 80).Draw(r, "up")
		below, err1 := a.OverRollers(small, roller, 0)
		above, err2 := a.OverRollers(small, roller, up)
		b, back, err := Plug{roller, up, below, above}.Cone()
		if first(err, err1, err2) != nil || math.Abs(b.ratio-a.ratio) > 1e-9 || math.Abs(back-small) > 1e-8 {
			r.Fatalf("%v at %v: %v at %v, %v", a, small, b, back, err)
		}
		// A ball of radius r touches a cone of half angle h with its centre r/sin(h) from the tip.
		big := roller + rapid.Float64Range(1, 10).Draw(r, "larger")
		h, mouth := a.half(), (2*big/2/math.Sin(a.half())+big)*math.Tan(a.half()) // tip to face is mouth/2/tan
		face := mouth / 2 / math.Tan(h)
		ring := Ring{Large: big, Small: roller, Proud: big/2/math.Sin(h) + big/2 - face, Deep: face - roller/2/math.Sin(h) - roller/2}
		c, at, err := ring.Cone()
		if err != nil || math.Abs(c.ratio-a.ratio) > 1e-8 || math.Abs(at-mouth) > 1e-7*mouth {
			r.Fatalf("%v mouth %v: %v mouth %v, %v", a, mouth, c, at, err)
		}
		v := Vee{Angle: rapid.Float64Range(20, 140).Draw(r, "vee")}
		hi, err1 := v.Top(big)
		lo, err2 := v.Top(roller)
		w, err := VeeAngle(big, roller, hi+3, lo+3)
		if first(err, err1, err2) != nil || math.Abs(w.Angle-v.Angle) > 1e-7 {
			r.Fatalf("%v: %v %v", v, w, err)
		}
		deep, wide, err := v.Depth(roller, lo-20)
		if err == nil && (math.Abs(deep-20) > 1e-9 || math.Abs(wide-40*math.Tan(v.half())) > 1e-9) {
			r.Fatalf("%v: %v deep, %v wide", v, deep, wide)
		}
	})
}

// Laws: a stack on a sine bar gives its angle back; the angle is off by no more than Off says.
func TestSineLaws(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		b := Bar{Centres: rapid.Float64Range(50, 300).Draw(r, "centres")}
		deg := rapid.Float64Range(0.1, 60).Draw(r, "degrees")
		h, err := b.Stack(deg)
		if err != nil {
			r.Fatal(err)
		}
		if back, err := b.Angle(h); err != nil || math.Abs(back-deg) > 1e-9 {
			r.Fatal(back, err)
		}
		b.Error = 0.005
		off, err := b.Off(deg, 0.001)
		worst, err2 := Bar{Centres: b.Centres - b.Error}.Angle(h + 0.001)
		if first(err, err2) != nil || math.Abs(worst-deg-off) > 0.02*off {
			r.Fatalf("off %v, worst %v", off, worst-deg)
		}
	})
}

// Fewest blocks, and the nearest height where none is exact, against all stacks of a small set.
func TestFewest(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		set := Blocks(rapid.SliceOfN(rapid.Int64Range(1, 60), 1, 11).Draw(r, "set"))
		want := rapid.Int64Range(1, 400).Draw(r, "want")
		fewest, off := math.MaxInt, int64(math.MaxInt64)
		for pick := 1; pick < 1<<len(set); pick++ {
			sum, n := int64(0), 0
			for i, x := range set {
				if pick>>i&1 == 1 {
					sum, n = sum+x, n+1
				}
			}
			d := sum - want
			if abs(d) < abs(off) || abs(d) == abs(off) && (d < off || d == off && n < fewest) {
				fewest, off = n, d
			}
		}
		s, err := set.Build(want, [2]int64{})
		if err != nil || s.Off != off || len(s.Blocks) != fewest || !wrung(set, s) {
			r.Fatalf("%v for %d: %+v, %v; off %d with %d", set, want, s, err, off, fewest)
		}
		// Both ways of searching agree.
		if rev := slices.Sorted(slices.Values(set)); off == 0 {
			slices.Reverse(rev)
			a, ok1 := Blocks(rev).quick(want, 1)
			b, ok2, err := Blocks(rev).added(want, 1)
			if err != nil || !ok1 || !ok2 || len(a) != len(b) || !slices.Equal(a, b) {
				r.Fatalf("%v for %d: %v %v", rev, want, a, b)
			}
		}
	})
}

// Of the same length, no set loses by having more in it.
func TestMoreBlocks(t *testing.T) {
	set, _ := handbook.SlipSet("M47")
	rapid.Check(t, func(r *rapid.T) {
		want := rapid.Int64Range(200, 20000).Draw(r, "hundredths") * Grain / 200
		one, err := Blocks(set.Sizes).Build(want, [2]int64{})
		if err != nil {
			r.Fatal(err)
		}
		more, err := Blocks(append(slices.Clone(set.Sizes), 7*Grain/2, 3*Grain/2+500)).Build(want, [2]int64{})
		if err != nil || abs(more.Off) > abs(one.Off) || more.Off == one.Off && len(more.Blocks) > len(one.Blocks) {
			r.Fatalf("%v: %+v then %+v, %v", want, one, more, err)
		}
	})
}

func TestRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for name, f := range map[string]func() error{
		"ratio":        func() error { _, err := OnDiameter(nan); return err },
		"foot":         func() error { _, err := PerFoot(inf); return err },
		"1 in 0":       func() error { _, err := OneIn(0); return err },
		"angle":        func() error { _, err := Included(180); return err },
		"no length":    func() error { _, err := Ends(3, 2, 0); return err },
		"no taper":     func() error { _, err := Ends(3, 3, 10); return err },
		"set-over":     func() error { _, _, err := Taper{0.05}.SetOver(inf); return err },
		"reach":        func() error { _, err := SetOverReach(nan, 100); return err },
		"slide":        func() error { _, err := Taper{0.05}.SlideWay(-1); return err },
		"bar":          func() error { _, err := Bar{}.Stack(20); return err },
		"steep":        func() error { _, err := Bar{Centres: 100}.Stack(90); return err },
		"high":         func() error { _, err := Bar{Centres: 100}.Angle(100); return err },
		"off":          func() error { _, err := Bar{Centres: 100, Error: nan}.Off(20, 0.001); return err },
		"plug":         func() error { _, _, err := Plug{10, 60, 51, 45}.Cone(); return err },
		"thin plug":    func() error { _, _, err := Plug{10, 60, 20, 26}.Cone(); return err },
		"ring":         func() error { _, _, err := Ring{32, 40, 8, 76}.Cone(); return err },
		"ring close":   func() error { _, _, err := Ring{40, 32, 8, 0}.Cone(); return err },
		"dovetail":     func() error { _, err := Dovetail{Angle: 5}.OverMale(40, 10); return err },
		"big roller":   func() error { _, err := Dovetail{Angle: 60, Height: 5}.OverMale(40, 10); return err },
		"narrow slot":  func() error { _, err := Dovetail{Angle: 60}.BetweenFemale(27, 10); return err },
		"vee":          func() error { _, err := Vee{0}.Top(10); return err },
		"vee edge":     func() error { _, _, err := Vee{90}.Depth(10, 9); return err },
		"vee rollers":  func() error { _, err := VeeAngle(10, 20, 30, 10); return err },
		"no blocks":    func() error { _, err := Blocks{}.Build(1, [2]int64{}); return err },
		"no height":    func() error { _, err := Blocks{5}.Build(0, [2]int64{}); return err },
		"huge height":  func() error { _, err := Blocks{5}.Build(math.MaxInt64, [2]int64{}); return err },
		"block of 0":   func() error { _, err := Blocks{0}.Build(5, [2]int64{}); return err },
		"wear only":    func() error { _, err := Blocks{5}.Build(4, [2]int64{2, 2}); return err },
		"wear less":    func() error { _, err := Blocks{5}.Build(4, [2]int64{-2, 2}); return err },
		"fine heights": func() error { _, err := Blocks{5, 99900001, 99900003}.Build(70000001, [2]int64{}); return err },
	} {
		if f() == nil {
			t.Errorf("%s is taken", name)
		}
	}
}

func BenchmarkStack(b *testing.B) {
	set, _ := handbook.SlipSet("M88")
	for b.Loop() {
		if _, err := Blocks(set.Sizes).Build(3420200, [2]int64{}); err != nil {
			b.Fatal(err)
		}
	}
}

// Five blocks of the largest set.
func BenchmarkStackOfFive(b *testing.B) {
	set, _ := handbook.SlipSet("M112")
	for b.Loop() {
		if s, err := Blocks(set.Sizes).Build(19797850, [2]int64{}); err != nil || len(s.Blocks) < 5 {
			b.Fatal(s, err)
		}
	}
}

// No stack reaches it: the set is added up.
func BenchmarkStackNearest(b *testing.B) {
	set, _ := handbook.SlipSet("M88")
	for b.Loop() {
		if s, err := Blocks(set.Sizes).Build(10000, [2]int64{}); err != nil || s.Off == 0 {
			b.Fatal(s, err)
		}
	}
}
