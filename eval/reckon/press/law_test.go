package press

import (
	"math"
	"testing"

	"fettle/schema/handbook"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

func drawBand(t *rapid.T, lo, hi float64, name string) handbook.Band {
	a, b := rapid.Float64Range(lo, hi).Draw(t, name), rapid.Float64Range(lo, hi).Draw(t, name)
	return handbook.Band{Lo: math.Min(a, b), Hi: math.Max(a, b)}
}

func drawMetal(t *rapid.T, name string) handbook.Elastic {
	return handbook.Elastic{Young: drawBand(t, 2e3, 600e3, name), Poisson: drawBand(t, 0, 0.45, name), Yield: drawBand(t, 20, 1000, name)}
}

func drawFit(t *rapid.T) Fit {
	d := rapid.Float64Range(1, 300).Draw(t, "d")
	bore := 0.0
	if rapid.Bool().Draw(t, "hollow") {
		bore = d * rapid.Float64Range(0.05, 0.95).Draw(t, "bore")
	}
	return Fit{Diameter: d, Outside: d * rapid.Float64Range(1.05, 6).Draw(t, "outside"), Bore: bore, Length: d,
		Interference: drawBand(t, -2e-4*d, 2e-3*d, "interference"), Smoothing: drawBand(t, 0, 1e-4*d, "smoothing"),
		Hub: drawMetal(t, "hub"), Shaft: drawMetal(t, "shaft"), Friction: drawBand(t, 0.05, 0.2, "friction")}
}

// one is a fit of which every figure is known, within a fit of bands: at a bound more often
// than not, since that is where a band is left.
func one(t *rapid.T, f Fit) Fit {
	pick := func(b handbook.Band, name string) handbook.Band {
		switch rapid.IntRange(0, 4).Draw(t, name+" end") {
		case 0, 1:
			return handbook.One(b.Lo)
		case 2, 3:
			return handbook.One(b.Hi)
		}
		return handbook.One(b.Lo + (b.Hi-b.Lo)*rapid.Float64Range(0, 1).Draw(t, name))
	}
	f.Interference, f.Smoothing, f.Friction = pick(f.Interference, "i"), pick(f.Smoothing, "s"), pick(f.Friction, "mu")
	for _, m := range []*handbook.Elastic{&f.Hub, &f.Shaft} {
		m.Young, m.Poisson, m.Yield = pick(m.Young, "E"), pick(m.Poisson, "v"), pick(m.Yield, "yield")
	}
	return f
}

func known(t *rapid.T, f Fit) Answer {
	a, err := Work(f)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// Law: whatever pair of the bands is in the hand, each answer lies in its band.
func TestBandsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFit(t)
		if rapid.Bool().Draw(t, "tight") {
			f.Smoothing, f.Interference = handbook.Band{}, handbook.One(1e-3*f.Diameter)
		}
		all, a := known(t, f), known(t, one(t, f))
		for name, b := range map[string][2]handbook.Band{
			"pressure": {a.Pressure, all.Pressure}, "force": {a.Force, all.Force}, "torque": {a.Torque, all.Torque}, "closes": {a.Closes, all.Closes},
			"grows": {a.Grows, all.Grows}, "hub": {a.Hub.Worst, all.Hub.Worst}, "shaft": {a.Shaft.Worst, all.Shaft.Worst}, "hoop": {a.Shaft.Hoop, all.Shaft.Hoop},
			"share": {a.Hub.Share, all.Hub.Share}, "share of shaft": {a.Shaft.Share, all.Shaft.Share}, "interference": {a.Interference, all.Interference},
		} {
			dust := 1e-12 * (1 + math.Abs(b[1].Lo) + math.Abs(b[1].Hi))
			if !(b[0].Lo >= b[1].Lo-dust && b[0].Hi <= b[1].Hi+dust) {
				t.Fatalf("%s %v is not within %v", name, b[0], b[1])
			}
		}
		if all.Hub.Holds != Open && all.Hub.Holds != a.Hub.Holds {
			t.Fatalf("hub holds %v over the band, %v in it", all.Hub.Holds, a.Hub.Holds)
		}
	})
}

// Laws: what the hub opens and the shaft shrinks is the interference. A thicker hub never
// lowers the pressure, a larger bore of the shaft never raises it. Twice the interference is
// twice the pressure. Both metals twice as stiff is twice the pressure and the same closing.
func TestLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := one(t, drawFit(t))
		f.Smoothing, f.Interference = handbook.Band{}, handbook.One(f.Diameter*rapid.Float64Range(1e-4, 2e-3).Draw(t, "interference"))
		a := known(t, f)
		p := a.Pressure.Lo
		opens := Ring{f.Diameter, f.Outside}.Growth(f.Diameter, p, 0, 0, f.Hub.Young.Lo, f.Hub.Poisson.Lo)
		shrinks := -Ring{f.Bore, f.Diameter}.Growth(f.Diameter, 0, p, 0, f.Shaft.Young.Lo, f.Shaft.Poisson.Lo)
		if math.Abs(opens+shrinks-f.Interference.Lo) > 1e-9*f.Interference.Lo {
			t.Fatalf("%v + %v is not %v", opens, shrinks, f.Interference.Lo)
		}
		thick := f
		thick.Outside *= rapid.Float64Range(1, 3).Draw(t, "thicker")
		if known(t, thick).Pressure.Lo < p*(1-1e-12) {
			t.Fatalf("a thicker hub presses less")
		}
		thin := f
		thin.Bore = f.Bore + (0.97*f.Diameter-f.Bore)*rapid.Float64Range(0, 1).Draw(t, "bored")
		if known(t, thin).Pressure.Lo > p*(1+1e-12) {
			t.Fatalf("a shaft bored out presses more")
		}
		twice := f
		twice.Interference = f.Interference.Times(2)
		if got := known(t, twice).Pressure.Lo; math.Abs(got-2*p) > 1e-9*p {
			t.Fatalf("twice the interference: %v for %v", got, p)
		}
		stiff := f
		stiff.Hub.Young, stiff.Shaft.Young = f.Hub.Young.Times(2), f.Shaft.Young.Times(2)
		b := known(t, stiff)
		if math.Abs(b.Pressure.Lo-2*p) > 1e-9*p || math.Abs(b.Closes.Lo-a.Closes.Lo) > 1e-9*a.Closes.Lo {
			t.Fatalf("twice as stiff: %+v for %+v", b, a)
		}
	})
}

// Law: the short forms for one metal are the long form: E i (do^2-d^2)/(2 d do^2) on a solid
// shaft, E i (do^2-d^2)(d^2-di^2)/(2 d^3 (do^2-di^2)) on a hollow one (the reference's rows of
// formulas; A. C. Ugural 8.4; V. B. Bhandari 22.6). Its other rows are the ring's stresses:
// at the outside of the hub 2 p d^2/(do^2-d^2), at the interface of a hollow shaft
// -p (d^2+di^2)/(d^2-di^2), at its bore -2 p d^2/(d^2-di^2); the hub's bore yields at
// MostPressure.
func TestShortForms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := one(t, drawFit(t))
		f.Shaft = f.Hub
		f.Smoothing, f.Interference = handbook.Band{}, handbook.One(f.Diameter*1e-3)
		a := known(t, f)
		e, i, d, o, b, p := f.Hub.Young.Lo, f.Interference.Lo, f.Diameter, f.Outside, f.Bore, a.Pressure.Lo
		close := func(what string, got, want float64) {
			if math.Abs(got-want) > 1e-9*math.Abs(want) {
				t.Fatalf("%s: %v, short form %v", what, got, want)
			}
		}
		if b == 0 {
			close("solid", p, e*i*(o*o-d*d)/(2*d*o*o))
			close("stress", a.Shaft.Hoop.Lo, -p)
		} else {
			close("hollow", p, e*i*(o*o-d*d)*(d*d-b*b)/(2*d*d*d*(o*o-b*b)))
			close("stress at the bore", a.Shaft.Hoop.Lo, -2*p*d*d/(d*d-b*b))
			_, hoop := Ring{b, d}.Stress(d, 0, p)
			close("stress at the interface", hoop, -p*(d*d+b*b)/(d*d-b*b))
		}
		close("hub's bore", a.Hub.Hoop.Lo, p*(o*o+d*d)/(o*o-d*d))
		radial, outer := Ring{d, o}.Stress(o, p, 0)
		close("hub's outside", outer, 2*p*d*d/(o*o-d*d))
		if math.Abs(radial) > 1e-9*p {
			t.Fatalf("a free face bears %v", radial)
		}
		close("yield", a.Hub.Worst.Lo, f.Hub.Yield.Lo*p/MostPressure(d, o, f.Hub.Yield.Lo))
	})
}

// Law: at MostInterference nothing yields whatever bar is in the hand, and a thousandth more
// leaves it open.
func TestMostInterference(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFit(t)
		most, ok, err := MostInterference(f)
		if err != nil || !ok {
			t.Fatal(ok, err)
		}
		if most*1.002 > f.Diameter/20 {
			t.Skip("a plastic: more than is taken")
		}
		f.Smoothing = handbook.Band{}
		f.Interference = handbook.One(most * 0.999)
		in := known(t, f)
		f.Interference = handbook.One(most * 1.001)
		out := known(t, f)
		if in.Hub.Holds != Yes || in.Shaft.Holds != Yes || out.Hub.Holds == Yes && out.Shaft.Holds == Yes {
			t.Fatalf("%v: %+v %+v", most, in, out)
		}
	})
}
