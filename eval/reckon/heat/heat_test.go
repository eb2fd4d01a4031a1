package heat

import (
	"math"
	"strings"
	"testing"

	"fettle/schema/handbook"
	"fettle/schema/printed"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

func micro(x float64) handbook.Band { return handbook.One(x * 1e-6) }

// steady is a band that is one figure.
func steady(t *testing.T, b handbook.Band, err error) float64 {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(b.Hi-b.Lo) > 1e-12*(1+math.Abs(b.Lo)) {
		t.Fatalf("one figure in, %v out", b)
	}
	return b.Lo
}

// Rows of the reference that are no test here: rises and waits of common practice (10 degrees
// after a roughing pass, 3 in the fingers, 15 minutes on a cast iron plate) have no formula
// behind them; the rises stand as inputs of rows below, the wait in no row.
func TestPublished(t *testing.T) {
	counts := map[string]int{}
	for _, f := range printed.Rows(t, "heat.tsv", 5) {
		counts[f[0]]++
		if f[0] == "metal" {
			e, ok := handbook.ElasticOf(f[1])
			if x := printed.Figure(t, f[2]) * 1e-6; !ok || x < e.Expansion.Lo-1e-12 || x > e.Expansion.Hi+1e-12 {
				t.Errorf("%s: %v does not hold %s", f[1], e.Expansion, f[2])
			}
			continue
		}
		in := printed.Figures(t, f[1])
		switch f[0] {
		case "reference":
			if Reference != printed.Figure(t, f[2]) {
				t.Errorf("reference %v", Reference)
			}
		case "growth":
			g, err := Growth(in[0], micro(in[1]), in[2], in[3])
			near(t, f, 1000*steady(t, g, err))
		case "misread":
			m, err := Misreading(in[0], Body{micro(in[1]), in[3]}, Body{micro(in[2]), in[3]})
			near(t, f, 1000*steady(t, m, err))
		case "hub at":
			at, err := HubAt(Joint{in[0], handbook.One(in[1]), Body{micro(in[3]), 20}, Body{micro(in[3]), 20}}, in[2])
			if off := steady(t, at, err) - Reference - printed.Figure(t, f[2]); math.Abs(off-printed.Figure(t, f[3])) > 0.01 {
				t.Errorf("%v: off by %v", f, off)
			}
		case "spoils":
			g, err := Growth(in[1], micro(in[2]), 20, 20+in[3])
			got, err2 := Spoils(in[0], g)
			if err != nil || err2 != nil || (got == Yes) != (f[2] == "yes") || got == Open {
				t.Errorf("%v: %v", f, got)
			}
		case "warm interference":
			i, err := Interference(Joint{in[0], handbook.One(in[1]), Body{micro(in[3]), in[4]}, Body{micro(in[2]), in[4]}})
			if got := steady(t, i, err); math.Abs(got-printed.Figure(t, f[2])) > 4e-5 {
				t.Errorf("%v: %v", f, got)
			}
		default:
			t.Errorf("no check for %q", f[0])
		}
	}
	for what, n := range map[string]int{"growth": 5, "misread": 1, "hub at": 1, "spoils": 2, "warm interference": 1, "metal": 9, "reference": 1} {
		if counts[what] != n {
			t.Errorf("%d rows of %s, want %d", counts[what], what, n)
		}
	}
}

func near(t *testing.T, f []string, got float64) {
	t.Helper()
	if math.Abs(got-printed.Figure(t, f[2])) > printed.Figure(t, f[3]) {
		t.Errorf("%s %s: %v, printed %s in %s", f[0], f[1], got, f[2], f[4])
	}
}

func drawBand(t *rapid.T, lo, hi float64, name string) handbook.Band {
	a, b := rapid.Float64Range(lo, hi).Draw(t, name), rapid.Float64Range(lo, hi).Draw(t, name)
	return handbook.Band{Lo: math.Min(a, b), Hi: math.Max(a, b)}
}

func drawBody(t *rapid.T, name string) Body {
	return Body{drawBand(t, 5e-6, 150e-6, name), rapid.Float64Range(-100, 300).Draw(t, name+" at")}
}

func inside(t *rapid.T, b handbook.Band, name string) float64 {
	return b.Lo + (b.Hi-b.Lo)*rapid.Float64Range(0, 1).Draw(t, name)
}

// Law 1: a part and an instrument of one metal at one temperature are read right.
// Law 2: At20 undoes Misreading. Law 3: whatever metal of the bands is in the hand, the answer
// lies in the band of answers.
func TestReadingLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		work, gauge := drawBody(t, "work"), drawBody(t, "instrument")
		length := rapid.Float64Range(0.1, 1000).Draw(t, "length")
		w, g := Body{handbook.One(inside(t, work.Expansion, "w")), work.At}, Body{handbook.One(inside(t, gauge.Expansion, "g")), gauge.At}
		if m, err := Misreading(length, w, w); err != nil || m != (handbook.Band{}) {
			t.Fatalf("of its own metal: %v %v", m, err)
		}
		one, err := Misreading(length, w, g)
		if err != nil {
			t.Fatal(err)
		}
		back, err := At20(length+one.Lo, w, g)
		if err != nil || math.Abs(back.Lo-length) > 1e-9*length {
			t.Fatalf("%v comes back as %v (%v)", length, back, err)
		}
		all, err := Misreading(length, work, gauge)
		if err != nil || one.Lo < all.Lo-1e-12*length || one.Hi > all.Hi+1e-12*length {
			t.Fatalf("%v is not within %v (%v)", one, all, err)
		}
	})
}

// Law 1: at the temperature HubAt gives, the gap is there; one at which ShaftAt gives likewise.
// Law 2: at the temperature LooseAt gives, the interference is nought.
// Law 3: answers of single metals lie in the bands. Law 4: a hotter hub never grips harder.
func TestJointLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(2, 500).Draw(t, "d")
		all := Joint{d, drawBand(t, 1e-5*d, 2e-3*d, "interference"), drawBody(t, "hub"), drawBody(t, "shaft")}
		one := Joint{d, handbook.One(inside(t, all.Interference, "i")),
			Body{handbook.One(inside(t, all.Hub.Expansion, "h")), all.Hub.At}, Body{handbook.One(inside(t, all.Shaft.Expansion, "s")), all.Shaft.At}}
		gap := rapid.Float64Range(0, 1e-3).Draw(t, "gap") * d

		if at, err := HubAt(one, gap); err == nil {
			hot := one
			hot.Hub.At = at.Lo
			got, err := Interference(hot)
			if err != nil || math.Abs(got.Lo+gap) > 1e-9*d {
				t.Fatalf("hub at %v: %v (%v)", at, got, err)
			}
			if every, err := HubAt(all, gap); err == nil && (at.Lo < every.Lo-1e-6 || at.Hi > every.Hi+1e-6) {
				t.Fatalf("hub at %v, band %v", at, every)
			}
		}
		if at, err := ShaftAt(one, gap); err == nil {
			cold := one
			cold.Shaft.At = at.Lo
			got, err := Interference(cold)
			if err != nil || math.Abs(got.Lo+gap) > 1e-9*d {
				t.Fatalf("shaft at %v: %v (%v)", at, got, err)
			}
			if every, err := ShaftAt(all, gap); err == nil && (at.Lo < every.Lo-1e-6 || at.Hi > every.Hi+1e-6) {
				t.Fatalf("shaft at %v, band %v", at, every)
			}
		}
		if at, ok, err := LooseAt(one); err != nil {
			t.Fatal(err)
		} else if ok && at.Lo >= coldest && at.Hi <= hottest {
			warm := one
			warm.Hub.At, warm.Shaft.At = at.Lo, at.Lo
			if got, err := Interference(warm); err != nil || math.Abs(got.Lo) > 1e-9*d {
				t.Fatalf("loose at %v: %v (%v)", at, got, err)
			}
			if every, ok, _ := LooseAt(all); ok && (at.Lo < every.Lo-1e-6 || at.Hi > every.Hi+1e-6) {
				t.Fatalf("loose at %v, band %v", at, every)
			}
		}
		was, err := Interference(one)
		hotter := one
		hotter.Hub.At += 10
		is, err2 := Interference(hotter)
		if err != nil || err2 != nil || is.Hi > was.Hi {
			t.Fatalf("%v warmer %v", was, is)
		}
	})
}

func TestSpoilsBorder(t *testing.T) {
	for _, c := range []struct {
		tolerance float64
		off       handbook.Band
		want      Truth
	}{
		{0.03, handbook.One(0.01), No}, {0.0299, handbook.One(0.01), Yes}, {0.0299, handbook.One(-0.01), Yes},
		{0.03, handbook.Band{Lo: 0.005, Hi: 0.011}, Open}, {0.03, handbook.Band{Lo: -0.02, Hi: 0.02}, Open}, {0.06, handbook.Band{Lo: -0.02, Hi: 0.02}, No},
	} {
		if got, err := Spoils(c.tolerance, c.off); got != c.want || err != nil {
			t.Errorf("%v against %v: %v %v", c.tolerance, c.off, got, err)
		}
	}
}

// Two bands that overlap leave open at which side of 20 degrees a fit comes loose.
func TestLooseOpen(t *testing.T) {
	steel, _ := handbook.ElasticOf("mild steel")
	j := Joint{20, handbook.One(0.01), Body{steel.Expansion, 20}, Body{steel.Expansion, 20}}
	if at, ok, err := LooseAt(j); ok || err != nil {
		t.Errorf("%v %v", at, err)
	}
	aluminium, _ := handbook.ElasticOf("6082")
	j.Hub.Expansion = aluminium.Expansion
	at, ok, err := LooseAt(j) // 0.01/20 over a difference of 11 to 11.9 parts in a million
	if !ok || err != nil || math.Abs(at.Lo-(20+500/11.9)) > 0.1 || math.Abs(at.Hi-(20+500/11.0)) > 0.1 {
		t.Errorf("%v %v %v", at, ok, err)
	}
	j.Hub, j.Shaft = j.Shaft, j.Hub
	if at, ok, err := LooseAt(j); !ok || err != nil || at.Hi > 20-500/12.0 || at.Lo < 20-500/10.9 {
		t.Errorf("%v %v %v", at, ok, err)
	}
}

func TestRefused(t *testing.T) {
	good := Body{micro(11.5), 20}
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1), 1e300} {
		if _, err := Growth(bad, micro(11.5), 20, 30); err == nil {
			t.Errorf("length %v", bad)
		}
		if _, err := Misreading(bad, good, good); err == nil {
			t.Errorf("length %v", bad)
		}
		if _, err := HubAt(Joint{bad, handbook.One(0.01), good, good}, 0); err == nil {
			t.Errorf("diameter %v", bad)
		}
		if _, err := Spoils(bad, handbook.One(0.01)); err == nil {
			t.Errorf("tolerance %v", bad)
		}
	}
	for _, bad := range []float64{math.NaN(), math.Inf(1), -300, 5000} {
		_, err := Growth(10, micro(11.5), 20, bad)
		if err == nil || !strings.Contains(err.Error(), "from -200 to 1600 degrees") {
			t.Errorf("%v degrees: %v", bad, err)
		}
	}
	for _, bad := range []handbook.Band{{}, {Lo: -1e-6, Hi: 1e-6}, {Lo: 2e-6, Hi: 1e-6}, {Lo: 1e-6, Hi: 1}, {Lo: math.NaN(), Hi: math.NaN()}} {
		if _, err := Growth(10, bad, 20, 30); err == nil {
			t.Errorf("expansion %v", bad)
		}
	}
	if at, err := HubAt(Joint{10, handbook.One(0.4), good, good}, 0.1); err == nil {
		t.Errorf("4000 degrees: %v", at)
	}
	if at, err := ShaftAt(Joint{10, handbook.One(0.4), good, good}, 0.1); err == nil {
		t.Errorf("colder than nothing: %v", at)
	}
	if _, _, err := LooseAt(Joint{10, handbook.Band{Lo: -0.01, Hi: 0.01}, good, good}); err == nil {
		t.Error("a loose fit comes loose")
	}
}

func BenchmarkHubAt(b *testing.B) {
	j := Joint{20, handbook.Band{Lo: 0.01, Hi: 0.03}, Body{micro(23), 20}, Body{micro(11.5), 20}}
	for b.Loop() {
		if _, err := HubAt(j, 0.02); err != nil {
			b.Fatal(err)
		}
	}
}
