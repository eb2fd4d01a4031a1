package dial

import (
	"math"
	"math/big"
	"strconv"
	"strings"
	"testing"

	"fettle/schema/printed"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

func rat(t rapid.TB, s string) *big.Rat {
	t.Helper()
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		t.Fatalf("%q is no figure", s)
	}
	return r
}

func number(t rapid.TB, s string) int {
	t.Helper()
	n, err := strconv.Atoi(s)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func TestPublished(t *testing.T) {
	counts := map[string]int{}
	for _, f := range printed.Rows(t, "dial.tsv", 4) {
		counts[f[0]]++
		g := strings.Fields(f[1])
		var got *big.Rat
		var err error
		switch f[0] {
		case "screw":
			got, err = Dial{Lead: rat(t, g[0]), Lines: number(t, g[1])}.Value()
		case "diameter":
			got, err = Dial{Lead: rat(t, g[0]), Lines: number(t, g[1]), Diameter: true}.Value()
		case "worm":
			got, err = Dial{Worm: true, Ratio: rat(t, g[0]), Lines: number(t, g[1])}.Value()
		case "vernier":
			got, err = Vernier(rat(t, g[0]), number(t, g[1]), number(t, g[2]))
		case "vernier lines":
			var n int
			n, err = VernierLines(rat(t, g[0]), rat(t, g[1]))
			got = big.NewRat(int64(n), 1)
		default:
			t.Fatalf("no check for %q", f[0])
		}
		if err != nil {
			t.Fatalf("%s %s: %v", f[0], f[1], err)
		}
		if got.Cmp(rat(t, f[2])) != 0 {
			t.Errorf("%s %s: %s, printed %s in %s", f[0], f[1], got.RatString(), f[2], f[3])
		}
	}
	if counts["screw"] != 10 || counts["worm"] != 2 || counts["vernier"] != 4 || counts["vernier lines"] != 1 {
		t.Errorf("rows checked: %v", counts)
	}
}

func drawn(t *rapid.T) Dial {
	d := Dial{Lines: rapid.IntRange(1, 400).Draw(t, "lines"), Diameter: rapid.Bool().Draw(t, "diameter")}
	d.Lead = big.NewRat(rapid.Int64Range(1, 5000).Draw(t, "lead"), rapid.Int64Range(1, 1000).Draw(t, "by"))
	d.Ratio = big.NewRat(rapid.Int64Range(1, 100).Draw(t, "ratio"), rapid.Int64Range(1, 5).Draw(t, "by"))
	d.Worm = rapid.Bool().Draw(t, "worm")
	if d.Lead.Cmp(big.NewRat(1000, 1)) > 0 {
		d.Lead = big.NewRat(5, 1)
	}
	return d
}

func TestDialLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawn(t)
		value, err := d.Value()
		if err != nil {
			t.Fatal(err)
		}
		turn, err := d.Turn()
		if err != nil {
			t.Fatal(err)
		}
		if new(big.Rat).Mul(value, big.NewRat(int64(d.Lines), 1)).Cmp(turn) != 0 {
			t.Fatalf("%d lines of %v are not %v", d.Lines, value, turn)
		}
		if value.Cmp(big.NewRat(1000, 1)) > 0 {
			t.Skip("more than a line may stand for")
		}
		c, err := d.Closes(value)
		if err != nil || !c.Closes || !c.Wanted.IsInt() {
			t.Fatalf("its own value does not close: %+v, %v", c, err)
		}
		twice, err := d.Closes(new(big.Rat).Mul(value, two))
		if err != nil {
			t.Skip(err) // more than a line may stand for
		}
		if twice.Closes || twice.Over.Cmp(turn) != 0 {
			t.Fatalf("twice the value: %+v", twice)
		}
		if !d.Worm { // a dial on diameter stands for twice the slide's way
			other := d
			other.Diameter = !d.Diameter
			v, _ := other.Value()
			r := new(big.Rat).Quo(v, value)
			if r.Cmp(two) != 0 && r.Cmp(big.NewRat(1, 2)) != 0 {
				t.Fatalf("on diameter and radius: %v and %v", value, v)
			}
		}
	})
}

func TestNearestLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		turn := big.NewRat(rapid.Int64Range(1, 1000).Draw(t, "turn"), rapid.Int64Range(1, 100).Draw(t, "by"))
		value := big.NewRat(rapid.Int64Range(1, 100).Draw(t, "value"), 1000)
		n, err := NearestLines(turn, value)
		if err != nil {
			t.Skip(err)
		}
		gathered := func(lines int) *big.Rat {
			x := new(big.Rat).Sub(turn, new(big.Rat).Mul(value, big.NewRat(int64(lines), 1)))
			return x.Abs(x)
		}
		for _, other := range []int{n.Lines - 1, n.Lines + 1} {
			if gathered(other).Cmp(gathered(n.Lines)) < 0 {
				t.Fatalf("%d lines are nearer than %d", other, n.Lines)
			}
		}
		if gathered(n.Lines).Cmp(new(big.Rat).Abs(n.Turn)) != 0 || n.Exact != (n.Turn.Sign() == 0) {
			t.Fatalf("%+v", n)
		}
	})
	// a tenth of an inch is 2.54 mm: 127 lines of 0.02 mm exactly, 51 of 0.05 mm nearly
	if n, _ := NearestLines(rat(t, "127/50"), rat(t, "0.02")); n.Lines != 127 || !n.Exact {
		t.Errorf("%+v", n)
	}
	if n, _ := NearestLines(rat(t, "127/50"), rat(t, "0.05")); n.Lines != 51 || n.Turn.Cmp(rat(t, "-0.01")) != 0 {
		t.Errorf("%+v", n)
	}
}

func TestDivisions(t *testing.T) {
	values := []*big.Rat{rat(t, "0.01"), rat(t, "0.02"), rat(t, "0.025"), rat(t, "0.05"), rat(t, "0.1")}
	got, err := Divisions(rat(t, "3/2"), values, 20, 100)
	if err != nil || len(got) != 3 || got[0].Lines != 75 || got[1].Lines != 60 || got[2].Lines != 30 {
		t.Errorf("%+v, %v", got, err)
	}
}

func TestVernierLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, k := rapid.IntRange(3, 200).Draw(t, "lines"), rapid.IntRange(1, 5).Draw(t, "stretch")
		over := k*n + rapid.SampledFrom([]int{-1, 1}).Draw(t, "one")
		main := big.NewRat(rapid.Int64Range(1, 50).Draw(t, "main"), 40)
		got, err := Vernier(main, n, over)
		want := new(big.Rat).Quo(main, big.NewRat(int64(n), 1))
		if err != nil || got.Cmp(want) != 0 {
			t.Fatalf("%v, %v; want %v", got, err, want)
		}
		if lines, err := VernierLines(main, got); err != nil || lines != n {
			t.Fatalf("%d lines, %v", lines, err)
		}
		if _, err := Vernier(main, n, k*n); err == nil {
			t.Fatal("a vernier without a difference reads something")
		}
	})
}

func TestFigureLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		numbers, digits := rapid.IntRange(2, 60).Draw(t, "numbers"), rapid.IntRange(1, 3).Draw(t, "digits")
		width, gap := rapid.Float64Range(0.5, 4).Draw(t, "width"), rapid.Float64Range(0, 1).Draw(t, "gap")
		r, err := Figures(50, numbers, digits, width, gap, 100)
		if err != nil {
			t.Fatal(err)
		}
		if r.Least < 1 {
			t.Skip("smaller than a dial")
		}
		least, err := Figures(r.Least, numbers, digits, width, gap, 0)
		if err != nil || math.Abs(least.Spare) > 1e-9 || !least.Fits {
			t.Fatalf("%+v, %v", least, err)
		}
		if r.Fits != (r.Least <= 50+1e-9) {
			t.Fatalf("%+v", r)
		}
	})
}

func TestCut(t *testing.T) {
	got, err := Cut([]Stroke{{Every: 10, Length: 7.5}, {Every: 5, Length: 5.5, Cutter: 40}, {Every: 1, Length: 3.5, Cutter: 20}}, 0.2, 2, 0.02)
	if err != nil {
		t.Fatal(err)
	}
	// sqrt(0.2 x 39.8) = 2.8213, so 2.6787 are left to travel; sqrt(0.2 x 19.8) = 1.9900, 1.5100 are left, 76 lines when rounded
	for i, want := range []struct {
		turns, lines int
		beyond, off  float64
	}{{3, 75, 0, 0}, {1, 34, 2.821347, 0.001347}, {0, 76, 1.989975, 0.009975}} {
		g := got[i]
		if g.Turns != want.turns || g.Lines != want.lines || math.Abs(g.Beyond-want.beyond) > 1e-6 || math.Abs(g.Off-want.off) > 1e-6 {
			t.Errorf("%+v, want %+v", g, want)
		}
	}
	if _, err := Cut([]Stroke{{Length: 1, Cutter: 40}}, 0.2, 2, 0.02); err == nil {
		t.Error("a line shorter than the cutter leaves was taken")
	}
}

func TestHostile(t *testing.T) {
	huge := new(big.Rat).SetFrac(big.NewInt(1), new(big.Int).Lsh(big.NewInt(1), 4000))
	rats := []*big.Rat{nil, new(big.Rat), big.NewRat(-1, 3), big.NewRat(1, 1), big.NewRat(math.MaxInt64, 1), huge}
	floats := []float64{0, -1, math.NaN(), math.Inf(1), 1e300, 1, 10}
	ints := []int{0, -1, 1, 7, math.MaxInt, math.MinInt}
	rapid.Check(t, func(t *rapid.T) {
		r := func(n string) *big.Rat { return rapid.SampledFrom(rats).Draw(t, n) }
		f := func(n string) float64 { return rapid.SampledFrom(floats).Draw(t, n) }
		n := func(s string) int { return rapid.SampledFrom(ints).Draw(t, s) }
		d := Dial{Lead: r("lead"), Ratio: r("ratio"), Lines: n("lines"), Worm: rapid.Bool().Draw(t, "worm")}
		if v, err := d.Value(); err == nil && v.Sign() <= 0 {
			t.Fatalf("%v", v)
		}
		_, _ = d.Closes(r("marked"))
		_, _ = NearestLines(r("turn"), r("value"))
		_, _ = Divisions(r("turn"), []*big.Rat{r("value")}, n("least"), n("most"))
		_, _ = Vernier(r("main"), n("lines"), n("over"))
		_, _ = VernierLines(r("main"), r("reads"))
		if room, err := Figures(f("d"), n("numbers"), n("digits"), f("w"), f("g"), n("lines")); err == nil && math.IsNaN(room.Spare) {
			t.Fatalf("%+v", room)
		}
		if s, err := Cut([]Stroke{{Length: f("l"), Cutter: f("c")}}, f("depth"), f("turn"), f("value")); err == nil && math.IsNaN(s[0].Off) {
			t.Fatalf("%+v", s)
		}
	})
}

func BenchmarkDial(b *testing.B) {
	d := Dial{Lead: big.NewRat(127, 50), Lines: 127}
	for b.Loop() {
		if c, err := d.Closes(big.NewRat(1, 50)); err != nil || !c.Closes {
			b.Fatal(c, err)
		}
	}
}
