package gear

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The basic rack of ISO 53 (from memory): of module 1 at 20 degrees a tooth of pi/2 on the pitch line, 1 above and
// 1.25 below it.
func TestBasicRack(t *testing.T) {
	s, err := Rack{Module: 1, Pressure: 20}.Size()
	if err != nil {
		t.Fatal(err)
	}
	tan := math.Tan(20 * math.Pi / 180)
	for _, c := range []struct {
		what      string
		got, want float64
	}{{"pitch", s.Pitch, math.Pi}, {"addendum", s.Addendum, 1}, {"depth", s.Whole, 2.25}, {"tooth", s.Tooth, math.Pi / 2},
		{"land", s.Land, math.Pi/2 - 2*tan}, {"mouth", s.Mouth, math.Pi/2 + 2*tan}, {"floor", s.Floor, math.Pi/2 - 2.5*tan}} {
		near(t, c.what, c.got, c.want, 1e-12)
	}
	thin, err := Rack{Module: 1, Pressure: 20, Thinning: 0.1}.Size()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "the cutter's tip, fed deeper", thin.Floor, s.Floor, 1e-12)
	near(t, "a thinned tooth", thin.Land, s.Land-0.1, 1e-12)
}

// Only a cutter whose range goes on to the rack is for it; what is not printed is not known.
func TestServesRack(t *testing.T) {
	for _, c := range []struct {
		c    Cutter
		want Fit
	}{
		{Cutter{Module: 1, Pressure: 20, Teeth: Range{135, 0}, Form: "involute"}, Yes},
		{Cutter{Module: 1, Pressure: 20, Teeth: Range{135, 0}}, Yes},
		{Cutter{Module: 1, Pressure: 20, Teeth: Range{55, 134}}, No},
		{Cutter{Module: 1.058, Pressure: 20, Teeth: Range{135, 0}}, No},
		{Cutter{Module: 1, Pressure: 14.5, Teeth: Range{135, 0}}, No},
		{Cutter{Module: 1, Pressure: 20}, NotKnown},
		{Cutter{Module: 1, Teeth: Range{135, 0}}, NotKnown},
		{Cutter{Module: 1, Pressure: 20, Teeth: Range{135, 0}, Form: "cycloidal"}, No},
	} {
		if got, why := c.c.ServesRack(1, 20); got != c.want || why == "" {
			t.Errorf("%+v: %v, %s", c.c, got, why)
		}
	}
}

// Law: a wheel of very many teeth in place of the rack does the same.
func TestRackIsAVeryLargeWheel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawn(t, false)
		w.Teeth, w.Helix, w.Shift = rapid.IntRange(35, 120).Draw(t, "z"), 0, rapid.Float64Range(0, 0.4).Draw(t, "x")
		r := Rack{Module: w.Module, Pressure: w.Pressure, Thinning: 0.03 * w.Module}
		big := Wheel{Teeth: 10000, Module: w.Module, Pressure: w.Pressure, Thinning: r.Thinning}
		own, err := Pair(w, big, 0)
		if err != nil {
			t.Fatal(err)
		}
		by := w.Module * rapid.Float64Range(-0.02, 0.2).Draw(t, "by")
		a, err := Pair(w, big, own.Centre+by)
		if err != nil {
			t.Fatal(err)
		}
		s, err := RackPair(w, r, 0)
		if err != nil {
			t.Fatal(err)
		}
		b, err := RackPair(w, r, s.Standard+by)
		if err != nil {
			t.Fatal(err)
		}
		m := w.Module
		near(t, "standard", s.Standard, own.Centre-big.Module*5000, 2e-3*m)
		near(t, "backlash", b.Backlash, a.Backlash, 2e-3*m)
		near(t, "square to the flanks", b.Normal, a.Normal, 2e-3*m)
		size, err := r.Size()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "clearance at the wheel's tip", b.Clearance[0]-size.Deeper, a.Clearance[0], 2e-3*m)
		near(t, "clearance at the rack's tip", b.Clearance[1], a.Clearance[1], 2e-3*m)
		if a.Shorten == 0 { // the pair reckons with tips that are cut back
			near(t, "contact ratio", b.ContactRatio, a.ContactRatio, 5e-3)
		}
	})
}

// Law: thinning is backlash at the distance worked out, and moving out by x adds 2 x tan(a).
func TestRackBacklash(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawn(t, false)
		w.Helix = 0
		r := Rack{Module: w.Module, Pressure: w.Pressure, Thinning: w.Module * rapid.Float64Range(0, 0.05).Draw(t, "thin")}
		at, err := RackPair(w, r, 0)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "backlash", at.Backlash, w.Thinning+r.Thinning, 1e-9*w.Module)
		x := w.Module * rapid.Float64Range(-0.1, 0.1).Draw(t, "out")
		off, err := RackPair(w, r, at.Standard+x)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "moved out", off.Backlash-at.Backlash, 2*x*math.Tan(w.Pressure*math.Pi/180), 1e-9*w.Module)
	})
}

func TestRackRefuses(t *testing.T) {
	w := Wheel{Teeth: 20, Module: 1, Pressure: 20}
	r := Rack{Module: 1, Pressure: 20}
	for _, c := range []struct {
		w Wheel
		r Rack
		d float64
	}{
		{w, Rack{Module: 1.25, Pressure: 20}, 0}, {w, Rack{Module: 1, Pressure: 14.5}, 0}, {w, r, 1}, {w, r, 30},
		{Wheel{Teeth: 20, Module: 1, Pressure: 20, Helix: 10}, r, 0}, {Wheel{Teeth: 80, Module: 1, Pressure: 20, Internal: true}, r, 0},
		{w, Rack{Module: 1, Pressure: 20, Thinning: 1}, 0}, {w, Rack{Module: math.NaN(), Pressure: 20}, 0},
	} {
		if m, err := RackPair(c.w, c.r, c.d); err == nil {
			t.Errorf("%+v on %+v at %v was taken: %+v", c.w, c.r, c.d, m)
		}
	}
}
