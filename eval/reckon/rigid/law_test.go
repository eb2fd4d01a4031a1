package rigid

import (
	"math"
	"slices"
	"testing"

	"fettle/schema/handbook"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

func drawBar(t *rapid.T) Bar {
	b := Bar{Hold: Hold(rapid.IntRange(1, 3).Draw(t, "hold")), Young: handbook.One(rapid.Float64Range(2e3, 6e5).Draw(t, "E"))}
	for range rapid.IntRange(1, 6).Draw(t, "parts") {
		l, d := rapid.Float64Range(1, 200).Draw(t, "length"), rapid.Float64Range(2, 60).Draw(t, "diameter")
		b.Parts = append(b.Parts, Round(l, d, d*rapid.Float64Range(0, 0.9).Draw(t, "bore")))
	}
	return b
}

func place(t *rapid.T, b Bar, name string) float64 {
	return b.Length() * rapid.Float64Range(0, 1).Draw(t, name)
}

func under(t *rapid.T, b Bar, at, force, seen float64) Bend {
	got, err := b.Under(Load{at, force}, seen)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// most is the scale of a bar's figures: the way at its softest place.
func most(t *rapid.T, b Bar, force float64) float64 {
	y := 0.0
	for k := range 9 {
		x := b.Length() * float64(k) / 8
		y = max(y, under(t, b, x, force, x).Way.Hi)
	}
	return y
}

// Law (J. C. Maxwell, 1864): a force at one place moves another as far as the same force
// there moves the first, by bending and by shear.
// Law: the way grows with the force. A place between supports that bears the force never
// moves against it. Supports do not move.
func TestReciprocity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBar(t)
		one, two := place(t, b, "one"), place(t, b, "two")
		there, back := under(t, b, one, 100, two), under(t, b, two, 100, one)
		dust := 1e-9 * most(t, b, 100)
		if math.Abs(there.Way.Lo-back.Way.Lo) > dust || math.Abs(there.Shear.Lo-back.Shear.Lo) > dust {
			t.Fatalf("%+v there, %+v back", there, back)
		}
		if twice := under(t, b, one, 200, two); math.Abs(twice.Way.Lo-2*there.Way.Lo) > dust {
			t.Fatalf("twice the force: %v for %v", twice, there)
		}
		if own := under(t, b, one, 100, one); own.Way.Lo < -dust {
			t.Fatalf("moves against the force: %v", own)
		}
		left, right := under(t, b, one, 100, 0), under(t, b, one, 100, b.Length())
		if math.Abs(left.Way.Lo) > dust || b.Hold != Chuck && math.Abs(right.Way.Lo) > dust {
			t.Fatalf("supports move: %v %v", left, right)
		}
	})
}

// Law: a plain bar has the closed forms of every text on beams; with a = from the left, b the
// rest: chuck F a^3/(3 E I) at the force, so with the cube of the overhang; between centres
// F a^2 b^2/(3 E I L); chuck and centre F a^3 b^2 (3 a + 4 b)/(12 E I L^3) (from memory).
// Law: chuck and centre never give more than the chuck alone, nor than between centres.
func TestClosedForms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, l, f := rapid.Float64Range(2, 60).Draw(t, "d"), rapid.Float64Range(10, 900).Draw(t, "l"), rapid.Float64Range(1, 1e4).Draw(t, "f")
		b := plain(d, l)
		ei := 207000 * math.Pi * math.Pow(d, 4) / 64
		x := place(t, b, "a")
		r := l - x
		for hold, want := range map[Hold]float64{
			Chuck: f * x * x * x / (3 * ei), Centres: f * x * x * r * r / (3 * ei * l), Centre: f * x * x * x * r * r * (3*x + 4*r) / (12 * ei * l * l * l),
		} {
			b.Hold = hold
			got := under(t, b, x, f, x).Way.Lo
			if math.Abs(got-want) > 1e-9*(want+f*l*l*l/ei) {
				t.Fatalf("hold %d: %v, closed form %v", hold, got, want)
			}
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		b := drawBar(t)
		x := place(t, b, "a")
		b.Hold = Centre
		both := under(t, b, x, 100, x).Way.Lo
		for _, h := range []Hold{Chuck, Centres} {
			b.Hold = h
			if one := under(t, b, x, 100, x).Way.Lo; both > one+1e-9*most(t, b, 100) {
				t.Fatalf("with both supports %v, with one %v", both, one)
			}
		}
	})
}

// Law: cutting a part in two changes nothing; a bar between centres turned end for end gives
// the same; a stiffer part anywhere never gives more at the force; a band of stiffness holds
// every figure within it.
func TestBars(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBar(t)
		one, two := place(t, b, "one"), place(t, b, "two")
		was, dust := under(t, b, one, 100, two), 1e-9*most(t, b, 100)
		k := rapid.IntRange(0, len(b.Parts)-1).Draw(t, "part")

		split := b
		split.Parts = slices.Clone(b.Parts)
		half := b.Parts[k]
		half.Length *= rapid.Float64Range(0.1, 0.9).Draw(t, "cut")
		split.Parts[k].Length -= half.Length
		split.Parts = slices.Insert(split.Parts, k, half)
		if got := under(t, split, one, 100, two); math.Abs(got.Way.Lo-was.Way.Lo) > dust || math.Abs(got.Shear.Lo-was.Shear.Lo) > dust {
			t.Fatalf("in one %+v, cut in two %+v", was, got)
		}

		stiff := b
		stiff.Parts = slices.Clone(b.Parts)
		stiff.Parts[k].Bend *= rapid.Float64Range(1, 10).Draw(t, "stiffer")
		if got := under(t, stiff, one, 100, one).Way.Lo; got > under(t, b, one, 100, one).Way.Lo+dust {
			t.Fatalf("stiffer gives more: %v", got)
		}

		wide := b
		wide.Young = handbook.Band{Lo: b.Young.Lo * 0.9, Hi: b.Young.Lo * 1.2}
		if got := under(t, wide, one, 100, one); got.Way.Lo > under(t, b, one, 100, one).Way.Lo || got.Way.Hi < under(t, b, one, 100, one).Way.Lo {
			t.Fatalf("%v does not hold %v", got, was)
		}

		b.Hold = Centres
		turned := b
		turned.Parts = slices.Clone(b.Parts)
		slices.Reverse(turned.Parts)
		l := b.Length()
		got, want := under(t, turned, l-one, 100, max(0, l-two)).Way.Lo, under(t, b, one, 100, two).Way.Lo
		if math.Abs(got-want) > 1e-9*most(t, b, 100) {
			t.Fatalf("end for end %v, was %v", got, want)
		}
	})
}

// A second way to the same figure: the work of a unit force, sum of M m/(E I) in thin slices,
// on random stepped bars in a chuck and between centres.
func TestAgainstSlices(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBar(t)
		if b.Hold == Centre {
			b.Hold = Chuck
		}
		l, one, two := b.Length(), place(t, b, "one"), place(t, b, "two")
		moment := func(a, x float64) float64 {
			if b.Hold == Chuck {
				return math.Max(0, a-x)
			}
			return x*(l-a)/l - math.Max(0, x-a)
		}
		want, x := 0.0, 0.0
		for _, p := range b.Parts {
			const slices = 2000
			h := p.Length / slices
			for k := range slices {
				mid := x + (float64(k)+0.5)*h
				want += h * moment(one, mid) * moment(two, mid) / (p.Bend * b.Young.Lo) * 100
			}
			x += p.Length
		}
		if got := under(t, b, one, 100, two).Way.Lo; math.Abs(got-want) > 1e-4*most(t, b, 100) {
			t.Fatalf("%v, by slices %v", got, want)
		}
	})
}

// Law: a longer wall on its foot never gives more at its middle for one force than a shorter
// one, and one held at its ends never more than one that is free there; a push at the end
// never gives less than one at the middle.
func TestWallLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(0.25, 12).Draw(t, "length")
		longer := r * rapid.Float64Range(1, 2).Draw(t, "longer")
		if between(longer, footMiddle) > between(r, footMiddle)*(1+1e-12) || between(longer, endsMiddle) < between(r, endsMiddle)*(1-1e-12) {
			t.Fatalf("longer than %v", r)
		}
		if between(r, endsMiddle) > between(r, footMiddle)*(1+1e-12) || between(r, footMiddle) > between(r, footEnd) {
			t.Fatalf("ends at %v", r)
		}
	})
}
