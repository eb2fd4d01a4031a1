package reckon

import (
	"fmt"
	"math/big"
	"strings"
	"testing"

	"fettle/schema/drawing"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

// What each kind reads, and what an answer's file may count on. Inch sizes are exact: 25.4 mm
// to the inch (ISO 31-1).
func TestKinds(t *testing.T) {
	for _, c := range []struct {
		kind  Kind
		unit  drawing.Unit
		word  string
		exact string // the exact figures with commas; mm or pure
	}{
		{Whole, drawing.Millimetre, "36", "36"},
		{Wholes, drawing.Millimetre, "15, 16,17", "15,16,17"},
		{Number, drawing.Inch, "40", "40"},
		{Number, drawing.Millimetre, "127/50", "127/50"},
		{Number, drawing.Millimetre, "-2.5", "-5/2"},
		{Number, drawing.Millimetre, "1 1/8", "9/8"},
		{Length, drawing.Millimetre, "3/8 in", "381/40"},
		{Length, drawing.Inch, "0.5", "127/10"},
		{Length, drawing.Inch, "12 mm", "12"},
		{Length, drawing.Millimetre, "5 thou", "127/1000"},
		{Lengths, drawing.Inch, "1/2, 1 mm", "127/10,1"},
		{Pitch, drawing.Millimetre, "8 tpi", "127/40"},
		{Pitch, drawing.Millimetre, "11 1/2 TPI", "254/115"},
		{Pitch, drawing.Inch, "1.5 mm", "3/2"},
	} {
		w := Want{Name: "x", Kind: c.kind}
		s, err := w.read(c.word, c.unit)
		var got []string
		for _, v := range s.exact {
			got = append(got, v.RatString())
		}
		if err != nil || strings.Join(got, ",") != c.exact {
			t.Errorf("%q in %s: %v (%v), want %s", c.word, c.unit, got, err, c.exact)
		}
	}
	for _, c := range []struct {
		kind Kind
		word string
	}{
		{Whole, "1.5"}, {Whole, "+3"}, {Whole, "1e3"}, {Whole, "0"}, {Whole, "1000001"}, {Whole, "0x10"}, {Whole, "1_000"}, {Wholes, "1,a"}, {Wholes, "1,"},
		{Wholes, ","}, {Number, "40 mm"}, {Number, `3"`}, {Number, "1/0"}, {Number, "Inf"}, {Number, "1e10"}, {Number, "-0"}, {Number, "2,5"}, {Length, "2,5"},
		{Length, "-1"}, {Pitch, "0 tpi"}, {Pitch, "tpi"}, {Pitch, "-8 tpi"}, {Pitch, "8 mm tpi"}, {Pitch, "0"}, {Angle, "400"}, {Angle, "x"}, {Angle, "-0"},
		{Sizes, "2..1 by 0.1"}, {Sizes, "a..b by c"}, {Sizes, "1..2 by -1"}, {Sizes, "#99"}, {YesNo, "maybe"}, {Texts, "a,,b"},
	} {
		if s, err := (&Want{Name: "x", Kind: c.kind}).read(c.word, drawing.Millimetre); err == nil {
			t.Errorf("%q is read as %+v", c.word, s)
		}
	}
	a, err := (&Want{Name: "x", Kind: Angle}).read("22 deg 30'", drawing.Millimetre)
	if err != nil || a.deg != 22.5 {
		t.Errorf("22 deg 30': %v, %v", a.deg, err)
	}
}

// A drawer is asked, never spelled out. Number drill 7 is 0.201 in, letter drill F 0.257 in
// (ASME B94.11M, from memory).
func TestDrawer(t *testing.T) {
	w := Want{Name: "x", Kind: Sizes}
	s, err := w.read("#7, F, 1..10 by 0.1, 3/8 in, fraction drills", drawing.Millimetre)
	if err != nil {
		t.Fatal(err)
	}
	for _, mm := range []float64{0.201 * 25.4, 0.257 * 25.4, 1, 7.3, 10, 9.525, 25.4 / 64} {
		if !s.sizes.Has(mm) {
			t.Errorf("%v mm is not in it", mm)
		}
	}
	if s.sizes.Has(10.1) || s.sizes.Name(0.201*25.4) != "#7" {
		t.Error("it holds what it should not, or has lost a name")
	}
	if s, err := w.read("0..100000 by 0.001", drawing.Millimetre); err != nil || len(s.sizes.List) != 0 || !s.sizes.Has(99999.999) {
		t.Errorf("a long series: %v", err)
	}
}

// The bounds of a range are both in, and a hair beyond them is out; 0.1 means one tenth.
func TestBounds(t *testing.T) {
	w := Want{Name: "x", Kind: Length, Least: 0.1, Most: 30}
	for word, in := range map[string]bool{"0.1": true, "0.099999": false, "30": true, "30.000001": false, "1.5 in": false, "1 in": true} {
		if _, err := w.read(word, drawing.Millimetre); (err == nil) != in {
			t.Errorf("%s: %v", word, err)
		}
	}
}

// Laws: n threads an inch is a pitch of which n make 25.4 mm exactly; a list of whole numbers
// comes back as it was written; a length in inches is 25.4 times the figure exactly.
func TestLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int64Range(1, 400).Draw(t, "threads")
		p, err := (&Want{Name: "x", Kind: Pitch}).read(fmt.Sprintf("%d tpi", n), drawing.Millimetre)
		if err != nil || new(big.Rat).Mul(p.exact[0], big.NewRat(n, 1)).Cmp(big.NewRat(127, 5)) != 0 {
			t.Fatalf("%d tpi: %v, %v", n, p.exact, err)
		}
		list := rapid.SliceOfN(rapid.IntRange(1, 1_000_000), 1, 30).Draw(t, "list")
		word := strings.ReplaceAll(strings.Trim(fmt.Sprint(list), "[]"), " ", ",")
		a := Ask{of: &Subject{Flags: []Want{{Name: "x", Kind: Wholes}}}, said: map[string]said{}}
		a.said["x"], err = a.of.want("x").read(word, drawing.Millimetre)
		if got, ok := a.Wholes("x"); err != nil || !ok || fmt.Sprint(got) != fmt.Sprint(list) {
			t.Fatalf("%s: %v, %v", word, got, err)
		}
		d := rapid.Int64Range(0, 30_000_000).Draw(t, "ten-thousandths")
		l, err := (&Want{Name: "x", Kind: Length}).read(fmt.Sprintf("%d.%04d", d/10000, d%10000), drawing.Inch)
		if err != nil || l.exact[0].Cmp(new(big.Rat).Mul(big.NewRat(d, 10000), big.NewRat(127, 5))) != 0 {
			t.Fatalf("%d ten-thousandths of an inch: %v, %v", d, l.exact, err)
		}
	})
}

// Asking for what is not declared is our own broken promise, and must not pass as "not given".
func TestUndeclared(t *testing.T) {
	a := Ask{of: &Subject{Name: "x", Flags: []Want{{Name: "n", Kind: Whole}}}}
	for name, f := range map[string]func(){
		"no such flag":  func() { a.Whole("m") },
		"another kind":  func() { a.Length("n") },
		"text of whole": func() { a.Text("n") },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s: no panic", name)
				}
			}()
			f()
		}()
	}
	if n, ok := a.Whole("n"); ok || n != 0 {
		t.Error("a flag that was not given is given")
	}
}

// Figures are written without the dust of float64 and without a minus before nought.
func TestFigures(t *testing.T) {
	for x, want := range map[float64]string{0.1 + 0.2: "0.3", -0.00001: "0", 12.01849: "12.0185", 1e-12: "0"} {
		if got := millimetres(x); got != want {
			t.Errorf("%v: %s, want %s", x, got, want)
		}
	}
	for x, want := range map[float64]float64{0.1 + 0.2: 0.3, 12.018 - 12.029: -0.011, 123456789: 123456789, 1e-20: 1e-20} {
		if got, ok := clean(x); !ok || got != want {
			t.Errorf("%v: %v, want %v", x, got, want)
		}
	}
	mm := Ask{}
	in := Ask{Units: drawing.Inch}
	if got := mm.Says(12.7) + in.Says(12.7) + mm.Span(0, 25.4); got != "12.7 mm (0.5 in)0.5 in (12.7 mm)0 to 25.4 mm (0 to 1 in)" {
		t.Error(got)
	}
}
