package fit

import (
	"math"
	"strings"
	"testing"

	"fettle/schema/handbook"

	"pgregory.net/rapid"
)

// Worked examples of a textbook (Sharma 9.1 to 9.9, rows of fits_arithmetic_checks): limits from tolerance and
// allowance.
func TestBasis(t *testing.T) {
	for _, c := range []struct {
		name                               string
		size, holeWidth, shaftWidth, allow float64
		onHole                             bool
		want                               [4]float64
	}{
		{"9.1: hole 37.52/37.50, shaft 37.47/37.45", 37.5, 0.02, 0.02, 0.03, true, [4]float64{37.50, 37.52, 37.45, 37.47}},
		{"9.2: tolerance 0.075, allowance 0.10", 75, 0.075, 0.075, 0.10, true, [4]float64{75, 75.075, 74.825, 74.90}},
		{"9.3: tolerance 0.225, least interference 0.0375", 75, 0.225, 0.225, -(0.0375 + 0.225 + 0.225), true, [4]float64{75, 75.225, 75.2625, 75.4875}},
		{"9.9: interference 0.05 to 0.12, hole basis", 100, 0.035, 0.035, -0.12, true, [4]float64{100, 100.035, 100.085, 100.12}},
		{"9.9: the same, shaft basis", 100, 0.035, 0.035, -0.12, false, [4]float64{99.88, 99.915, 99.965, 100}},
	} {
		a, b, x, y, err := Basis(c.size, c.holeWidth, c.shaftWidth, c.allow, c.onHole)
		for k, got := range []float64{a, b, x, y} {
			if err != nil || math.Abs(got-c.want[k]) > 1e-9 {
				t.Errorf("%s: %v %v %v %v (%v)", c.name, a, b, x, y, err)
				break
			}
		}
	}
	if _, _, _, _, err := Basis(10, math.NaN(), 0, 0, true); err == nil {
		t.Error("a tolerance that is no number")
	}
}

// Every mate within its limits has a wanted clearance, wherever within the doubt the measured
// part really is; the ends themselves reach the ends of the wish.
func TestMates(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.Float64Range(1, 400).Draw(t, "measured")
		least := rapid.Float64Range(-0.2, 0.2).Draw(t, "least")
		most := least + rapid.Float64Range(0, 0.2).Draw(t, "more")
		doubt := (most - least) / 2 * rapid.Float64Range(0, 0.99).Draw(t, "doubt")
		lo, hi, err := ShaftFor(size, doubt, least, most)
		holeLo, holeHi, err2 := HoleFor(size, doubt, least, most)
		if err != nil || err2 != nil || lo > hi+1e-12 || holeLo > holeHi+1e-12 {
			t.Fatalf("%v to %v, %v to %v (%v %v)", lo, hi, holeLo, holeHi, err, err2)
		}
		for _, off := range []float64{-doubt, doubt} {
			for _, shaft := range []float64{lo, hi} {
				if c := size + off - shaft; c < least-1e-9 || c > most+1e-9 {
					t.Fatalf("hole %v, shaft %v: %v is not %v to %v", size+off, shaft, c, least, most)
				}
			}
			for _, hole := range []float64{holeLo, holeHi} {
				if c := hole - (size + off); c < least-1e-9 || c > most+1e-9 {
					t.Fatalf("hole %v, shaft %v: %v is not %v to %v", hole, size+off, c, least, most)
				}
			}
		}
	})
	for _, bad := range [][4]float64{{0, 0, 0, 1}, {10, 0, 1, 0}, {10, 0.1, 0, 0.1}, {math.NaN(), 0, 0, 1}, {10, -1, 0, 1}, {10, 0, math.Inf(-1), 1}} {
		if _, _, err := ShaftFor(bad[0], bad[1], bad[2], bad[3]); err == nil {
			t.Errorf("shaft for %v", bad)
		}
		if _, _, err := HoleFor(bad[0], bad[1], bad[2], bad[3]); err == nil {
			t.Errorf("hole for %v", bad)
		}
	}
}

// Nearest finds every printed fit again from its own clearances.
func TestNearestFindsPrinted(t *testing.T) {
	d := handbook.ISO286()
	for _, c := range []struct {
		size float64
		pair string
	}{{20, "H6/e7"}, {20, "H7/s6"}, {50, "H7/s6"}, {25, "H7/r6"}, {50, "H8/g7"}, {6, "H7/n6"}, {12, "H8/f7"}, {25, "H7/k6"}, {25, "P7/h6"}, {25, "S7/h6"}, {40, "H9/d9"}} {
		least, most, err := Pair(d, c.size, c.pair)
		if err != nil {
			t.Fatal(err)
		}
		hole, shaft, _ := ParsePair(c.pair)
		for _, given := range []string{hole, shaft} {
			near, err := Nearest(d, c.size, given, least, most)
			if err != nil || near[0].Off > 1e-9 || !near[0].Within || near[0].Pair != c.pair && near[0].Least != least {
				t.Errorf("%v %s from %s: %+v (%v)", c.size, c.pair, given, near[0], err)
			}
		}
	}
	// 0.010 to 0.040 with H7 at 12 mm: g7 is 6 to 42 and off by 6 um, g6 6 to 35 and off by 9
	near, err := Nearest(d, 12, "H7", 0.010, 0.040)
	if err != nil || near[0].Pair != "H7/g7" || math.Abs(near[0].Off-0.006) > 1e-9 || near[0].Within {
		t.Errorf("%+v (%v)", near[:2], err)
	}
	for _, bad := range []string{"", "H", "Q7", "H7/g6"} {
		if n, err := Nearest(d, 12, bad, 0, 1); err == nil {
			t.Errorf("%q: %+v", bad, n[0])
		}
	}
	if _, err := Nearest(d, 12, "H7", 1, 0); err == nil {
		t.Error("clearances that run downward")
	}
}

// What Nearest says of a pair is what Pair says, in order of distance.
func TestNearestLaws(t *testing.T) {
	d := handbook.ISO286()
	rapid.Check(t, func(t *rapid.T) {
		size := float64(rapid.IntRange(1100, 499_000).Draw(t, "micrometres")) / 1000
		given := rapid.SampledFrom([]string{"H6", "H7", "H8", "h6", "h9", "G7"}).Draw(t, "given")
		least := rapid.Float64Range(-0.1, 0.1).Draw(t, "least")
		near, err := Nearest(d, size, given, least, least+0.05)
		if err != nil {
			t.Fatal(err)
		}
		for k, n := range near {
			a, b, err := Pair(d, size, n.Pair)
			if err != nil || a != n.Least || b != n.Most || !strings.Contains(n.Pair, given) || k > 0 && n.Off < near[k-1].Off-2e-9 {
				t.Fatalf("%d: %+v after %+v (%v)", k, n, near[max(k-1, 0)], err)
			}
		}
	})
}

// The formulas behind the table of shafts (ISO 286-1): the printed deviations are rounded and keep
// near them. Letters a to n but for c, which departs more; D the geometric mean of the step.
func TestShaftsAgainstFormulas(t *testing.T) {
	d := handbook.ISO286()
	formula := map[string]func(x float64) float64{
		"d": func(x float64) float64 { return -16 * math.Pow(x, 0.44) }, "e": func(x float64) float64 { return -11 * math.Pow(x, 0.41) },
		"f": func(x float64) float64 { return -5.5 * math.Pow(x, 0.41) }, "g": func(x float64) float64 { return -2.5 * math.Pow(x, 0.34) },
		"n": func(x float64) float64 { return 5 * math.Pow(x, 0.34) }, "h": func(float64) float64 { return 0 },
	}
	steps := []float64{3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500}
	checked := 0
	for letter, f := range formula {
		for n := 1; n < len(steps); n++ {
			um, _, ok := d.Fundamental(letter, steps[n], 7)
			if want := f(math.Sqrt(steps[n-1] * steps[n])); !ok || math.Abs(um-want) > 0.06*math.Abs(want)+0.7 {
				t.Errorf("%s over %v: %v, formula %.1f", letter, steps[n-1], um, want)
			}
			checked++
		}
	}
	if checked != 72 {
		t.Errorf("%d checked", checked)
	}
}

func BenchmarkNearest(b *testing.B) {
	d := handbook.ISO286()
	for b.Loop() {
		if _, err := Nearest(d, 12, "H7", 0.01, 0.04); err != nil {
			b.Fatal(err)
		}
	}
}
