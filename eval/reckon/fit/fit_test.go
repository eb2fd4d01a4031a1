package fit

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"fettle/schema/handbook"
	"fettle/schema/printed"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

// same compares mm with printed micrometres, to the tenth that tables print.
func same(mm float64, um float64) bool { return math.Abs(mm*1000-um) < 0.05 }

func TestPublished(t *testing.T) {
	d := handbook.ISO286()
	counts := map[string]int{}
	for _, r := range printed.Rows(t, "fit.tsv", 8) {
		counts[r[0]]++
		switch r[0] {
		case "limits":
			lo, hi, err := Limits(d, printed.Figure(t, r[1]), r[2])
			if err != nil || !same(lo, printed.Figure(t, r[3])) || !same(hi, printed.Figure(t, r[4])) {
				t.Errorf("%s %s: %v to %v (%v), printed %s to %s in %s", r[1], r[2], lo, hi, err, r[3], r[4], r[7])
			}
		case "grade":
			grade, _ := strconv.Atoi(strings.TrimPrefix(r[2], "IT"))
			if um, ok := d.Grade(printed.Figure(t, r[1]), grade); !ok || um != printed.Figure(t, r[4]) {
				t.Errorf("%s %s: %v, printed %s in %s", r[1], r[2], um, r[4], r[7])
			}
		case "fit":
			least, most, err := Pair(d, printed.Figure(t, r[1]), r[2])
			if err != nil || !same(least, printed.Figure(t, r[3])) || !same(most, printed.Figure(t, r[4])) || KindOf(least, most).String() != r[5] {
				t.Errorf("%s %s: %v to %v %v (%v), printed %s to %s %s in %s", r[1], r[2], least, most, KindOf(least, most), err, r[3], r[4], r[5], r[7])
			}
			hole, shaft, _ := ParsePair(r[2])
			devs := strings.Fields(r[6])
			for n, class := range []string{hole, shaft} {
				lo, hi, _ := Limits(d, printed.Figure(t, r[1]), class)
				if !same(lo, printed.Figure(t, devs[2*n])) || !same(hi, printed.Figure(t, devs[2*n+1])) {
					t.Errorf("%s %s: %v to %v, printed %v", r[1], class, lo, hi, devs)
				}
			}
		case "play":
			f := strings.Fields(r[6])
			least, most := Play(printed.Figure(t, f[0]), printed.Figure(t, f[1]), printed.Figure(t, f[2]), printed.Figure(t, f[3]))
			if r[3] != "" && !same(least, printed.Figure(t, r[3])) || r[4] != "" && !same(most, printed.Figure(t, r[4])) || KindOf(least, most).String() != r[5] {
				t.Errorf("%s: %v to %v, printed %s to %s in %s", r[6], least, most, r[3], r[4], r[7])
			}
		default:
			t.Errorf("no check for %q", r[0])
		}
	}
	if counts["limits"] < 355 || counts["fit"] < 11 || counts["play"] < 5 {
		t.Errorf("rows checked: %v", counts)
	}
}

func TestRefused(t *testing.T) {
	d := handbook.ISO286()
	for _, c := range []struct {
		size    float64
		letters string
	}{{0, "H7"}, {-3, "H7"}, {501, "H7"}, {math.NaN(), "H7"}, {math.Inf(1), "H7"}, {8, "H19"}, {8, "Hh7"}, {8, ""}, {8, "7"}, {20, "cd6"}, {1, "a9"}, {10, "j9"}, {0.5, "H14"}} {
		if lo, hi, err := Limits(d, c.size, c.letters); err == nil {
			t.Errorf("%v %s gives %v to %v", c.size, c.letters, lo, hi)
		}
	}
	for _, s := range []string{"H7", "g6/H7", "H7/H7", "h7/h6", "/", "H7/", "H7/g6/f7"} {
		if _, _, err := Pair(d, 8, s); err == nil {
			t.Errorf("%s is read as a fit", s)
		}
	}
}

// Printed ranges meet at their bounds: a size on a bound has the limits of the step below.
func TestBounds(t *testing.T) {
	d := handbook.ISO286()
	for _, c := range []struct {
		size   float64
		lo, hi float64
	}{{6, 0, 0.012}, {6.001, 0, 0.015}, {10, 0, 0.015}, {10.001, 0, 0.018}, {18, 0, 0.018}, {18.001, 0, 0.021}} { // H7, ISO 286-2
		if lo, hi, err := Limits(d, c.size, "H7"); err != nil || lo != c.lo || hi != c.hi {
			t.Errorf("%v H7: %v to %v (%v)", c.size, lo, hi, err)
		}
	}
}

// ISO 286-1, 3.3: a least clearance of nought is still clearance, a greatest of nought is
// interference. At 8 mm H7 is 0 to 15 and h6 -9 to 0.
func TestKindBorders(t *testing.T) {
	for _, c := range []struct {
		least, most float64
		kind        Kind
	}{{0, 0.024, Clearance}, {-0.001, 0.024, Transition}, {-0.024, 0, Interference}, {-0.024, 0.001, Transition}} {
		if got := KindOf(c.least, c.most); got != c.kind {
			t.Errorf("%v to %v: %s, want %s", c.least, c.most, got, c.kind)
		}
	}
	least, most, err := Pair(handbook.ISO286(), 8, "H7/h6")
	if err != nil || least != 0 || most != 0.024 || KindOf(least, most) != Clearance {
		t.Errorf("8 H7/h6: %v to %v (%v)", least, most, err)
	}
}

// The standard makes one exception: M6 over 250 to 315 mm has ES -9, not the -11 that the
// letter and delta give (ISO 286-1, note to the table of holes; limits of ISO 286-2; all from
// memory).
func TestException(t *testing.T) {
	for _, c := range []struct {
		size    float64
		letters string
		lo, hi  float64
	}{{250, "M6", -0.037, -0.008}, {251, "M6", -0.041, -0.009}, {315, "M6", -0.041, -0.009}, {316, "M6", -0.046, -0.010}, {300, "M5", -0.036, -0.013}, {300, "M7", -0.052, 0}, {300, "M8", -0.072, 0.009}} {
		if lo, hi, err := Limits(handbook.ISO286(), c.size, c.letters); err != nil || lo != c.lo || hi != c.hi {
			t.Errorf("%v %s: %v to %v (%v), want %v to %v", c.size, c.letters, lo, hi, err, c.lo, c.hi)
		}
	}
}

var shafts = []string{"a", "b", "c", "d", "e", "f", "g", "h", "js", "k", "m", "n", "p", "r", "s", "u", "x", "z"}

// Laws of ISO 286-1 at any size and grade: the two deviations are the standard tolerance
// apart; h ends at nought and H begins there; a hole A to H mirrors its shaft.
func TestLaws(t *testing.T) {
	d := handbook.ISO286()
	rapid.Check(t, func(t *rapid.T) {
		size := float64(rapid.IntRange(1001, 500_000).Draw(t, "micrometres")) / 1000
		grade := rapid.IntRange(5, 11).Draw(t, "grade")
		letter := rapid.SampledFrom(shafts).Draw(t, "letter")
		g := strconv.Itoa(grade)
		lo, hi, err := Limits(d, size, letter+g)
		if err != nil {
			t.Fatal(err)
		}
		um, _ := d.Grade(size, grade)
		if math.Abs((hi-lo)*1000-um) > 0.001 {
			t.Fatalf("%v %s%s: %v to %v, IT %v", size, letter, g, lo, hi, um)
		}
		if letter == "h" && hi != 0 {
			t.Fatalf("h ends at %v", hi)
		}
		if letter <= "h" {
			holeLo, holeHi, err := Limits(d, size, strings.ToUpper(letter)+g)
			if err != nil || holeLo != -hi || holeHi != -lo {
				t.Fatalf("%v %s%s does not mirror: %v %v (%v)", size, letter, g, holeLo, holeHi, err)
			}
		}
		if got, ok := Grade(d, size, um/1000); !ok || got != grade {
			t.Fatalf("a tolerance of %v um at %v is grade %d", um, size, got)
		}
	})
}

// Law: limits of a fit nest. Of one letter that keeps its side (holes D to H, shafts d to h and
// p to s from grade 7 on, js on both), the limits of a finer grade lie within those of a coarser one
// and share the end next to the nominal size; and a fit of two finer parts has its clearances
// within those of the coarser ones. (Holes K to ZC move with delta, and k with its grade: they
// need not nest.)
func TestLimitsNest(t *testing.T) {
	d := handbook.ISO286()
	rapid.Check(t, func(t *rapid.T) {
		size := float64(rapid.IntRange(1001, 500000).Draw(t, "size")) / 1000
		fine := rapid.IntRange(5, 10).Draw(t, "fine")
		coarse := rapid.IntRange(fine+1, 11).Draw(t, "coarse")
		hole := rapid.SampledFrom([]string{"D", "E", "F", "G", "H", "JS"}).Draw(t, "hole")
		shaft := rapid.SampledFrom([]string{"d", "e", "f", "g", "h", "js", "p", "r", "s"}).Draw(t, "shaft")
		least, most := [2]float64{}, [2]float64{}
		ends := map[string][2][2]float64{}
		for i, grade := range []int{fine, coarse} {
			h, s := hole+strconv.Itoa(grade), shaft+strconv.Itoa(grade)
			for _, class := range []string{h, s} {
				lo, hi, err := Limits(d, size, class)
				if err != nil {
					return // the tables have no such class at this size
				}
				both := ends[class[:len(class)-len(strconv.Itoa(grade))]]
				both[i] = [2]float64{lo, hi}
				ends[class[:len(class)-len(strconv.Itoa(grade))]] = both
			}
			l, m, err := Pair(d, size, h+"/"+s)
			if err != nil {
				t.Fatal(err)
			}
			least[i], most[i] = l, m
		}
		for letter, b := range ends {
			if f, c := b[0], b[1]; f[0] < c[0]-1e-9 || f[1] > c[1]+1e-9 {
				t.Fatalf("%v %s: grade %d %v is not within grade %d %v", size, letter, fine, f, coarse, c)
			}
		}
		if least[0] < least[1]-1e-9 || most[0] > most[1]+1e-9 {
			t.Fatalf("%v %s/%s: play %v to %v of grade %d, %v to %v of grade %d", size, hole, shaft, least[0], most[0], fine, least[1], most[1], coarse)
		}
	})
}
