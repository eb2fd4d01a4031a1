package drawing

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"fettle/schema/printed"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

func unitNamed(s string) Unit {
	if s == "in" {
		return Inch
	}
	return Millimetre
}

func num(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }

func dash(s string) string {
	if s == "" {
		return "-"
	}
	return s
}

// meaning says what a row of the table came to, in the words of its fourth column.
func meaning(what, written string, u Unit) (string, error) {
	switch what {
	case "length":
		mm, err := ParseLength(written, u)
		return num(mm), err
	case "angle":
		deg, err := ParseAngle(written)
		return num(deg), err
	case "size":
		s, err := ParseSize(written, u)
		switch s.Tol.Kind {
		case Class:
			return num(s.Nominal) + " " + s.Tol.Letters, err
		case Deviations:
			return num(s.Nominal) + " " + num(s.Tol.Lo) + " " + num(s.Tol.Hi), err
		}
		return num(s.Nominal) + " general", err
	case "feed":
		f, err := ParseFeed(written, u)
		return num(f.Rate) + " " + []string{"rev", "tooth", "min", "hand"}[f.Kind], err
	case "thread":
		t, err := ParseThread(written)
		side := "right"
		if t.Left {
			side = "left"
		}
		return fmt.Sprintf("%s %s %s %s %s", t.Series, num(t.Diameter), num(t.Pitch), side, t), err
	case "taper":
		t, err := ParseTaper(written)
		return fmt.Sprintf("%s %s %s %s", dash(t.Series), dash(t.Number), num(t.Ratio), t), err
	}
	return "", fmt.Errorf("no reader for %q", what)
}

func TestPublished(t *testing.T) {
	rows := 0
	for _, f := range printed.Rows(t, "drawing.tsv", 5) {
		rows++
		got, err := meaning(f[0], f[1], unitNamed(f[2]))
		if err != nil || got != f[3] {
			t.Errorf("%s %q: got %s (%v), want %s from %s", f[0], f[1], got, err, f[3], f[4])
		}
	}
	if rows < 70 {
		t.Errorf("only %d rows were read", rows)
	}
}

// What cannot be read is refused, in a sentence that quotes it.
func TestRefused(t *testing.T) {
	for _, c := range []struct{ what, written, says string }{
		{"length", "", "nothing is written"},
		{"length", "1e999", "power of ten"},
		{"length", "1E+3 mm", "power of ten"},
		{"length", "nan", "not a figure"},
		{"length", "inf", "not a figure"},
		{"length", "12 mm long", `"long" is not understood`},
		{"length", "12,5", "decimal point"},
		{"length", "1/0", "not understood"},
		{"length", "3 cm", "not understood"},
		{"length", "1.2.3", "not a figure"},
		{"length", "99999999", "ten kilometres"},
		{"length", strings.Repeat("9", 101), "longer than"},
		{"length", "\xff", "not readable"},
		{"size", "30 ±x", "what follows ± is not a length"},
		{"size", "30 ±-0.1", "what follows ± is not a length"},
		{"size", "8 H7/g6", "names a hole and a shaft"},
		{"size", "8 H19", "neither a unit"},
		{"size", "8 Hh7", "neither a unit"},
		{"size", "8 I7", "neither a unit"},
		{"size", "12 +0.1", "write both"},
		{"size", "12 +0.1/0.2", "needs its sign"},
		{"size", "9.6..9.5", "backwards"},
		{"size", "5e6", "power of ten"},
		{"size", "8 H7 x", "neither a unit"},
		{"angle", "22 deg 75'", "below 60"},
		{"angle", "22' 3 deg", "is written"},
		{"angle", "1e3", "power of ten"},
		{"feed", "60", "counted over"},
		{"feed", "0 mm/rev", "nothing"},
		{"feed", "0.1 mm/rev/min", "counted over"},
		{"thread", "M", "missing"},
		{"thread", "M6x8", "a pitch of 8 on a diameter of 6"},
		{"thread", "M6x1-6H", "class"},
		{"thread", "Tr10x4(P2)", "more than one start"},
		{"thread", "LH", "no thread"},
		{"thread", "M6LH", "blank before the hand"},
		{"thread", "99 BA", "0 to 25"},
		{"thread", "#20-32", "#0 to #12"},
		{"thread", "3/8", "not a thread"},
		{"thread", "M0", "not a diameter"},
		{"thread", "1/4-32 foo", "not a thread"},
		{"taper", "MT9", "made in the sizes 0 1 2 3 4 5 6 7"},
		{"taper", "MT", "made in the sizes"},
		{"taper", "XY2", "not a taper"},
		{"taper", "1:0", "written 1:10"},
		{"taper", "", "nothing is written"},
	} {
		got, err := meaning(c.what, c.written, Millimetre)
		if err == nil {
			t.Errorf("%s %q was read as %s", c.what, c.written, got)
		} else if !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s %q: %q does not say %q", c.what, c.written, err, c.says)
		}
	}
}

func TestSizeString(t *testing.T) {
	for written, want := range map[string]string{
		"8":                 "8",
		"12.50":             "12.50",
		"8H7":               "8 H7",
		"30 +/- 0.1":        "30 ±0.1",
		"12 0/-0.05":        "12 -0.05/0",
		"12 +0.02 -0.01 mm": "12 -0.01/+0.02",
		"9.5..9.6":          "9.5..9.6",
		"3/8 in H7":         "3/8 in H7",
		"1-1/8 in ±.005":    "1 1/8 in ±0.005",
		"5 thou":            "0.005 in",
	} {
		s, err := ParseSize(written, Millimetre)
		if err != nil || s.String() != want {
			t.Errorf("%q is said as %q (%v), want %q", written, s, err, want)
		}
		back, err := ParseSize(s.String(), Millimetre)
		if err != nil || math.Abs(back.Nominal-s.Nominal) > 1e-9 || math.Abs(back.Tol.Lo-s.Tol.Lo) > 1e-9 {
			t.Errorf("%q read back from %q: %v %v", written, s, back, err)
		}
	}
	if s := PlainSize(12.5, "12.50", Millimetre); s.Decimals != 2 {
		t.Errorf("12.50 has %d decimal places", s.Decimals)
	}
	if s := PlainSize(12.5, "inch(1/2)", Millimetre); s.Decimals != -1 {
		t.Errorf("an expression has %d decimal places", s.Decimals)
	}
}

func TestSameThread(t *testing.T) {
	for _, c := range []struct {
		a, b string
		same bool
	}{
		{"M12x1.75", "M12 x 1.75", true},
		{"M12x1.75", "M12x1.5", false},
		{"M12x1.75", "M12x1.75 LH", false},
		{"7/16-20 UNF", "7/16-20", true},
		{"3/8-16 UNC", "3/8-16 BSW", false},
		{"2 BA", "2BA", true},
		{"2 BA", "3 BA", false},
		{"G1/4", "G3/8", false},
	} {
		a, errA := ParseThread(c.a)
		b, errB := ParseThread(c.b)
		if errA != nil || errB != nil || a.Same(b) != c.same || b.Fits(a) != c.same {
			t.Errorf("%s and %s: same is %v", c.a, c.b, a.Same(b))
		}
	}
	for _, c := range []struct {
		a, b string
		same bool
	}{{"MT2", "2MT", true}, {"MT2", "MT3", false}, {"ISO30", "INT 30", true}, {"ISO 30", "NMTB30", true}, {"ISO 30", "BT30", false}, {"1:10", "1:20", false}} {
		a, errA := ParseTaper(c.a)
		b, errB := ParseTaper(c.b)
		if errA != nil || errB != nil || a.Same(b) != c.same {
			t.Errorf("%s and %s: same is %v", c.a, c.b, a.Same(b))
		}
	}
}

// Law: a figure with up to four decimals, written out, is read as the float64 nearest to it,
// and a figure in inches is 25.4 times the bare one to the last bits.
func TestLengthLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 99_999_999).Draw(t, "tenths of a micrometre")
		w := fmt.Sprintf("%d.%04d", n/10000, n%10000)
		want, _ := strconv.ParseFloat(w, 64)
		got, err := ParseLength(w, Millimetre)
		if err != nil || got != want {
			t.Fatalf("%s read as %v, %v", w, got, err)
		}
		inch, err := ParseLength(w+" in", Millimetre)
		if err != nil || math.Abs(inch-want*25.4) > 1e-9*want {
			t.Fatalf("%s in read as %v, %v", w, inch, err)
		}
	})
}

// Law: what String says is read back as the same thread.
func TestThreadLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.IntRange(10, 800).Draw(t, "diameter in tenths")
		p := rapid.IntRange(0, 9).Draw(t, "pitch in tenths")
		a := Thread{Series: "M", Diameter: float64(d) / 10, Pitch: float64(p) / 10, Left: rapid.Bool().Draw(t, "left")}
		b, err := ParseThread(a.String())
		if err != nil || !a.Same(b) {
			t.Fatalf("%v read back as %+v, %v", a, b, err)
		}
	})
}

// Whatever is typed, each reader answers at once, with a finite figure or with a sentence.
func FuzzNotation(f *testing.F) {
	for _, s := range []string{"12", "3/8 in H7", "30 ±0.1", "12 -0.05/0", "9.5..9.6", "M6x0.75 LH", "1/4-20 UNC", "#10-32", "2 BA",
		"Tr8x1.5", "MT2", "1:10", "5C", "22 deg 30' 15\"", "0.1 mm/rev", "hand", "1e999", "\xff", "±", "-", "..", "1/", "0 0/0", "⌀"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for _, what := range []string{"length", "size", "angle", "feed", "thread", "taper"} {
			for _, u := range []Unit{Millimetre, Inch} {
				got, err := meaning(what, s, u)
				if err == nil && (strings.Contains(got, "NaN") || strings.Contains(got, "Inf")) {
					t.Errorf("%s %q is %s", what, s, got)
				}
				if err != nil && (!utf8.ValidString(err.Error()) || len(err.Error()) > 400) {
					t.Errorf("%s %q: bad sentence %q", what, s, err)
				}
			}
		}
		size, err := ParseSize(s, Millimetre)
		if err == nil && (size.Tol.Lo > size.Tol.Hi || size.String() == "") {
			t.Errorf("%q gives %+v", s, size)
		}
		PlainSize(1, s, Inch)
	})
}
