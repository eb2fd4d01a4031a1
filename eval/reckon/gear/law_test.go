package gear

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// drawn is a wheel that can be made.
func drawn(t *rapid.T, internal bool) Wheel {
	w := Wheel{
		Teeth: rapid.IntRange(12, 200).Draw(t, "teeth"), Module: rapid.Float64Range(0.2, 10).Draw(t, "module"),
		Pressure: rapid.SampledFrom([]float64{14.5, 20, 25}).Draw(t, "pressure"),
		Helix:    rapid.SampledFrom([]float64{0, 0, 10, 22.5, 45}).Draw(t, "helix"),
		Shift:    rapid.Float64Range(-0.2, 0.6).Draw(t, "shift"), Internal: internal,
	}
	if internal {
		w.Teeth += 60
	}
	w.Thinning = w.Module * rapid.SampledFrom([]float64{0, 0, 0.02, 0.05}).Draw(t, "thinning")
	return w
}

func near(t rapid.TB, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Fatalf("%s: %v, want %v", what, got, want)
	}
}

func TestInvoluteTurnsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.OneOf(rapid.Float64Range(0, 1.48), rapid.Float64Range(0, 0.01)).Draw(t, "angle")
		got, err := AngleOf(Involute(a))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "angle", got, a, 1e-12)
	})
	for _, a := range []float64{1e-8, 1e-4, 0.0999999, 0.1, 0.1000001} { // the series and the difference agree where they part
		near(t, "series", Involute(a), a*a*a/3*(1+0.4*a*a+17.0/105*a*a*a*a+62.0/945*math.Pow(a, 6)), 2e-9*a*a*a)
	}
	for _, x := range []float64{-1, 10.0001, math.NaN(), math.Inf(1)} {
		if _, err := AngleOf(x); err == nil {
			t.Errorf("an involute of %v was taken", x)
		}
	}
}

func TestPairLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		inside := rapid.Bool().Draw(t, "inside")
		a, b := drawn(t, false), drawn(t, inside)
		b.Module, b.Pressure, b.Helix = a.Module, a.Pressure, a.Helix
		a.Thinning, b.Thinning = 0.01*a.Module, 0.03*a.Module
		if inside {
			b.Teeth = a.Teeth + 60
			b.Shift = a.Shift + rapid.Float64Range(0, 0.3).Draw(t, "more")
		}
		m, err := Pair(a, b, 0)
		if err != nil && a.Shift+b.Shift < 0 {
			t.Skip(err) // shifted together too far for any centre distance
		}
		if err != nil {
			t.Fatal(err)
		}
		near(t, "backlash", m.Normal, (a.Thinning+b.Thinning)*math.Cos(rad(a.Pressure)), 1e-9*a.Module)
		shared, err := SharedShift(a, b, m.Centre)
		if err != nil {
			t.Fatal(err)
		}
		want := a.Shift + b.Shift
		if inside {
			want = b.Shift - a.Shift
		}
		near(t, "shared shift", shared, want, 1e-6)
		again, err := Pair(a, b, m.Centre*(1+1e-12))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "angle at that centre", again.Pressure, m.Pressure, 1e-3)
		near(t, "ratio", m.Working[1]/m.Working[0], float64(b.Teeth)/float64(a.Teeth), 1e-9)
		sign := 1.0
		if inside {
			sign = -1
		}
		near(t, "working circles touch", (m.Working[1]+sign*m.Working[0])/2, m.Centre, 1e-9*m.Centre)
		if math.Min(m.Clearance[0], m.Clearance[1])+m.Shorten < UsualDepth(a.Pressure).Clearance(a.Module)-1e-9 {
			t.Fatalf("clearance %v, shortened by %v", m.Clearance, m.Shorten)
		}
		a.Shift, b.Shift = 0, 0
		plain, err := Pair(a, b, 0)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "centre distance", plain.Centre, (must(b.Blank())(t).Reference+sign*must(a.Blank())(t).Reference)/2, 1e-9*plain.Centre)
		near(t, "shortened", plain.Shorten, 0, 0)
	})
}

// The path of contact, found by walking the line of action from the pitch point until a tip circle
// is crossed: the pinion's one way, the wheel's the other.
func TestContactRatio(t *testing.T) {
	for _, c := range []struct {
		z1, z2 int
		inside bool
	}{{18, 30, false}, {25, 25, false}, {20, 60, true}} {
		a, b := Wheel{Teeth: c.z1, Module: 2, Pressure: 20}, Wheel{Teeth: c.z2, Module: 2, Pressure: 20, Internal: c.inside}
		m := must(Pair(a, b, 0))(t)
		centres := [2]float64{0, m.Centre}
		if c.inside {
			centres[1] = -m.Centre
		}
		path := 0.0
		for i, way := range []float64{1, -1} {
			beyond := func(s float64) bool {
				x, y := m.Working[0]/2+way*s*math.Sin(rad(20)), way*s*math.Cos(rad(20))
				return math.Hypot(x-centres[i], y) > m.Tip[i]/2
			}
			lo, hi := 0.0, 8.0
			for range 100 {
				if mid := (lo + hi) / 2; beyond(mid) == beyond(0) {
					lo = mid
				} else {
					hi = mid
				}
			}
			path += lo
		}
		near(t, "contact ratio", m.ContactRatio, path/(math.Pi*2*math.Cos(rad(20))), 1e-9)
	}
}

// A pinion is turned in its wheel step by step, and the corners of its teeth are looked for in the
// wheel's teeth.
func TestInterferes(t *testing.T) {
	met := map[bool]int{}
	for z1 := 18; z1 <= 40; z1 += 2 {
		for more := 5; more <= 20; more++ {
			a, b := Wheel{Teeth: z1, Module: 1, Pressure: 20}, Wheel{Teeth: z1 + more, Module: 1, Pressure: 20, Internal: true}
			m := must(Pair(a, b, 0))(t)
			in := must(Interferes(a, b, m))(t)
			if base, tip := must(b.Blank())(t).Base, m.Tip[1]; tip > base {
				near(t, "involute", in.Involute, math.Sqrt(tip*tip-base*base)/2-m.Centre*math.Sin(rad(20)), 1e-12)
			}
			if in.Involute < 0 {
				continue // the wheel's corners dig into the pinion's roots first
			}
			deepest := turned(a, b, m)
			if in.Cross && math.Abs(in.Tips) < 0.02 {
				continue // too near for steps
			}
			if got := in.Cross && in.Tips < 0; got != (deepest > 1e-4) {
				t.Errorf("%d in %d: tips %v (circles cross: %v), deepest %v degrees", z1, z1+more, in.Tips, in.Cross, deepest)
			}
			met[deepest > 1e-4]++
		}
	}
	if met[true] < 10 || met[false] < 10 {
		t.Errorf("cases that meet and that do not: %v", met)
	}
}

// turned gives how deep, in degrees of the wheel, a corner of the pinion gets into a tooth.
func turned(a, b Wheel, m Mesh) float64 {
	inv := func(w Wheel, d float64) float64 {
		return Involute(math.Acos(math.Min(1, float64(w.Teeth)*w.Module*math.Cos(rad(w.Pressure))/d)))
	}
	z1, z2 := float64(a.Teeth), float64(b.Teeth)
	tip := math.Pi/(2*z1) + Involute(rad(20)) - inv(a, m.Tip[0])
	deepest := math.Inf(-1)
	for turn := -1.5; turn <= 1.5; turn += 1e-4 {
		x, y := m.Centre+m.Tip[0]/2*math.Cos(turn+tip), m.Tip[0]/2*math.Sin(turn+tip)
		r := math.Hypot(x, y)
		if r < m.Tip[1]/2 {
			continue
		}
		at := math.Remainder(math.Atan2(y, x)-turn*z1/z2, 2*math.Pi/z2)
		space := math.Pi/(2*z2) + Involute(rad(20)) - inv(b, 2*r)
		deepest = math.Max(deepest, deg(math.Abs(at)-space))
	}
	return deepest
}

func TestSpanLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawn(t, false)
		k, err := w.SpanTeeth()
		if err != nil {
			t.Fatal(err)
		}
		k = max(k, 2)
		s, less := must(w.Span(k))(t), must(w.Span(k-1))(t)
		near(t, "base pitch", s.Measure-less.Measure, must(w.Blank())(t).BasePitch, 1e-9*w.Module)
		thin, err := w.ThinningBySpan(k, s.Measure)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "thinning", thin, w.Thinning, 1e-9*w.Module*float64(w.Teeth))
		// W = m cos a ((k - 1/2) pi + z inv at) + 2 x m sin a, gear handbooks
		unthinned := w
		unthinned.Thinning = 0
		at := math.Atan(math.Tan(rad(w.Pressure)) / math.Cos(rad(w.Helix)))
		book := w.Module*math.Cos(rad(w.Pressure))*((float64(k)-0.5)*math.Pi+float64(w.Teeth)*Involute(at)) +
			2*w.Shift*w.Module*math.Sin(rad(w.Pressure))
		near(t, "the books' formula", must(unthinned.Span(k))(t).Measure, book, 1e-9*book)
	})
}

func TestPinLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawn(t, rapid.Bool().Draw(t, "inside"))
		best, err := w.BestPin()
		if err != nil {
			t.Fatal(err)
		}
		b := must(w.Blank())(t)
		side := w.side()
		unthinned := w
		unthinned.Thinning = 0
		p, err := unthinned.OverPins(best)
		if err != nil {
			t.Skip(err) // more than four modules
		}
		g, err := unthinned.geometry()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "touches", p.Touches, max(b.Reference+2*w.Shift*w.Module, g.db), 1e-7*b.Reference)
		pin := best * rapid.Float64Range(0.98, 1.1).Draw(t, "pin")
		got, err := w.OverPins(pin)
		if err != nil {
			t.Skip(err) // beside the best pin of a wheel whose flanks begin there
		}
		thin, err := w.ThinningByPins(pin, got.Measure)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "thinning", thin, w.Thinning, 1e-7*w.Module)
		more := w
		more.Thinning += 0.01 * w.Module
		thinner, err := more.OverPins(pin)
		if err != nil {
			t.Skip(err) // the same, thinned
		}
		if side*(got.Measure-thinner.Measure) <= 0 {
			t.Fatalf("thinner teeth measure %v after %v", thinner.Measure, got.Measure)
		}
		small, large, err := w.PinLimits(pin, w.Thinning, more.Thinning)
		if err != nil || small != math.Min(got.Measure, thinner.Measure) || large != math.Max(got.Measure, thinner.Measure) {
			t.Fatalf("limits %v to %v, %v", small, large, err)
		}
		near(t, "distance of the flank", flank(w, got), pin/2, 1e-6*pin)
	})
}

// flank gives the least distance from a pin's centre to the flank of the space it lies in, walked
// over in space: along the involute by its roll and, for a helical wheel, along the axis.
func flank(w Wheel, p Pins) float64 {
	z, d := float64(w.Teeth), float64(w.Teeth)*w.Module/math.Cos(rad(w.Helix))
	at := math.Atan(math.Tan(rad(w.Pressure)) / math.Cos(rad(w.Helix)))
	rb := d / 2 * math.Cos(at)
	sn := w.Module*(math.Pi/2+w.side()*2*w.Shift*math.Tan(rad(w.Pressure))) - w.Thinning
	halfTooth := sn / math.Cos(rad(w.Helix)) / d // half the angle of the tooth on the reference circle
	distance := func(roll, along float64) float64 {
		a := math.Atan(roll)
		r := rb / math.Cos(a)
		// half the angle of the space at that radius
		half := math.Pi/z - halfTooth - w.side()*(math.Tan(at)-at) + w.side()*(roll-a)
		half += along * 2 * math.Tan(rad(w.Helix)) / d
		return math.Sqrt(r*r + p.Circle*p.Circle/4 - r*p.Circle*math.Cos(half) + along*along)
	}
	lowest := func(f func(float64) float64, lo, hi float64) float64 {
		const g = 0.6180339887498949
		for range 70 {
			a, b := hi-g*(hi-lo), lo+g*(hi-lo)
			if f(a) < f(b) {
				hi = b
			} else {
				lo = a
			}
		}
		return f((lo + hi) / 2)
	}
	touch := math.Tan(math.Acos(math.Min(1, 2*rb/p.Touches)))
	if w.Helix == 0 {
		return lowest(func(roll float64) float64 { return distance(roll, 0) }, math.Max(0, touch-0.2), touch+0.2)
	}
	return lowest(func(along float64) float64 {
		return lowest(func(roll float64) float64 { return distance(roll, along) }, math.Max(0, touch-0.2), touch+0.2)
	}, -p.Pin, p.Pin)
}

func TestCutterLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := rapid.OneOf(rapid.IntRange(12, 140), rapid.IntRange(12, 1_000_000)).Draw(t, "teeth")
		all := AllSeries()
		for i := 0; i < len(all); i += 2 {
			a, ra, ok := all[i].Number(z)
			b, rb, also := all[i+1].Number(z)
			if !ok || !also || ra != rb || !ra.Has(z) || a+b != 9 {
				t.Fatalf("%d teeth: number %v for %v and number %v for %v", z, a, ra, b, rb)
			}
		}
	})
	if _, _, ok := AllSeries()[0].Number(11); ok {
		t.Error("there is a cutter for 11 teeth")
	}
	if _, ok := AllSeries()[0].Range(1.5); ok {
		t.Error("the set of eight has half numbers")
	}
}

func TestServes(t *testing.T) {
	full := Cutter{Module: 1, Pressure: 20, Teeth: Range{26, 34}, Form: "involute"}
	for _, c := range []struct {
		change func(*Cutter)
		fit    Fit
		says   string
	}{
		{func(c *Cutter) {}, Yes, "it is for 26 to 34 teeth"},
		{func(c *Cutter) { c.Teeth = Range{} }, NotKnown, "read the range of teeth printed on it: a number alone does not say"},
		{func(c *Cutter) { c.Pressure = 0 }, NotKnown, "its pressure angle is not known: it is printed on it"},
		{func(c *Cutter) { c.Pressure = 14.5 }, No, "its pressure angle is 14.5 degrees, not 20"},
		{func(c *Cutter) { c.Module = Module(25); c.Teeth = Range{} }, No, "its module 1.016 mm is a near twin of 1 mm and not the same"},
		{func(c *Cutter) { c.Module = 1.25 }, No, "its module is 1.25 mm, not 1 mm"},
		{func(c *Cutter) { c.Teeth = Range{135, 0} }, No, "it is for 135 to rack teeth, not 30"},
		{func(c *Cutter) { c.Form = "cycloidal" }, No, "its teeth are cycloidal"},
		{func(c *Cutter) { c.Module = 0 }, NotKnown, "its pitch is not known"},
	} {
		cut := full
		c.change(&cut)
		if fit, says := cut.Serves(1, 20, 30); fit != c.fit || says != c.says {
			t.Errorf("%+v: %v, %s; want %v, %s", cut, fit, says, c.fit, c.says)
		}
	}
}

func TestBevelLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := Bevel{Module: rapid.Float64Range(0.5, 10).Draw(t, "module"), Pressure: 20, Shaft: rapid.Float64Range(30, 120).Draw(t, "shaft")}
		b.Teeth = [2]int{rapid.IntRange(12, 40).Draw(t, "pinion"), rapid.IntRange(40, 90).Draw(t, "wheel")}
		p, err := b.Pair()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "pitch angles", p.Cone[0].Pitch+p.Cone[1].Pitch, b.Shaft, 1e-9)
		for i, c := range p.Cone {
			near(t, "cone distance", c.Reference/2/math.Sin(rad(c.Pitch)), p.Distance, 1e-9*p.Distance)
			if c.Pitch > 89.9 {
				continue // a crown wheel: its virtual wheel is a rack
			}
			near(t, "virtual teeth", c.Virtual*math.Cos(rad(c.Pitch)), float64(b.Teeth[i]), 1e-6)
		}
		b.Teeth[0], b.Teeth[1] = b.Teeth[1], b.Teeth[0]
		turned, err := b.Pair()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "the other way about", turned.Cone[1].Tip, p.Cone[0].Tip, 1e-9*p.Distance)
		b.Face = p.Distance / 4
		narrow := must(b.Pair())(t)
		near(t, "module at the small end", narrow.SmallModule, 0.75*b.Module, 1e-9)
		near(t, "tip at the small end", narrow.Cone[0].SmallTip, 0.75*narrow.Cone[0].Tip, 1e-9*p.Distance)
	})
}

func TestWormLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := Worm{Starts: rapid.IntRange(1, 4).Draw(t, "starts"), Teeth: rapid.IntRange(20, 120).Draw(t, "teeth"),
			Module: rapid.Float64Range(0.5, 5).Draw(t, "module"), Pressure: 20}
		w.Diameter = w.Module * rapid.Float64Range(8, 20).Draw(t, "q")
		w.Face = w.Module * 4
		d := must(w.Drive())(t)
		near(t, "a turn of the worm", d.Lead*float64(w.Teeth)/float64(w.Starts), math.Pi*d.Wheel, 1e-9*d.Wheel)
		near(t, "throat", d.Throat/2+d.ThroatRadius, d.Centre, 1e-9*d.Centre)
		near(t, "normal module", d.NormalModule, d.Pitch*math.Cos(rad(d.LeadAngle))/math.Pi, 1e-9)
		if d.Corner <= d.Throat {
			t.Fatalf("corners at %v within the throat %v", d.Corner, d.Throat)
		}
	})
}
