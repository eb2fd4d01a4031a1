package gear

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Whatever is asked, an answer holds no figure that is none, and nothing panics.
func TestHostile(t *testing.T) {
	odd := []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1), 1e300, 1e-300, 0.3, 20, 90}
	ints := []int{0, -5, 3, 12, 40, 10000, math.MaxInt, math.MinInt}
	rapid.Check(t, func(t *rapid.T) {
		f := func(n string) float64 { return rapid.SampledFrom(odd).Draw(t, n) }
		z := func(n string) int { return rapid.SampledFrom(ints).Draw(t, n) }
		w := Wheel{Teeth: z("z"), Module: f("m"), Pressure: f("a"), Helix: f("b"), Shift: f("x"), Thinning: f("s"), Internal: rapid.Bool().Draw(t, "in")}
		v := w
		v.Teeth, v.Internal = z("z2"), rapid.Bool().Draw(t, "in2")
		sound := func(err error, xs ...float64) {
			for _, x := range xs {
				if err == nil && (math.IsNaN(x) || math.IsInf(x, 0)) {
					t.Fatalf("%+v gives %v", w, xs)
				}
			}
		}
		b, err := w.Blank()
		sound(err, b.Tip, b.Root, b.TipLand, b.Virtual, b.Lead, b.LeastShift, b.LeastTeeth)
		m, err := Pair(w, v, f("centre"))
		sound(err, m.Centre, m.Backlash, m.ContactRatio, m.Tip[0], m.Shorten)
		if err == nil && v.Internal {
			in, err := Interferes(w, v, m)
			sound(err, in.Involute, in.Tips)
		}
		x, err := SharedShift(w, v, f("centre"))
		sound(err, x)
		s, err := w.Span(z("k"))
		sound(err, s.Measure, s.Touches)
		p, err := w.OverPins(f("pin"))
		sound(err, p.Measure, p.Touches, p.Proud)
		x, err = w.BestPin()
		sound(err, x)
		x, err = w.ThinningByPins(f("pin"), f("measured"))
		sound(err, x)
		x, err = w.ThinningBySpan(z("k"), f("measured"))
		sound(err, x)
		x, err = HelixFor(w.Teeth, v.Teeth, w.Module, f("centre"))
		sound(err, x)
		_, _ = w.SpanTeeth()
		_, _ = FromTip(f("tip"), z("z"), z("most"))
		_, _ = PairsFor(f("centre"), f("ratio"), f("m"), f("a"))
		k, n, many := z("k"), z("n"), f("many")
		x, err = EqualError(k, n, f("few"), many)
		if !(k == n && math.IsInf(many, 1)) { // the last cutter up to the rack is exact for the rack
			sound(err, x)
		}
		d, err := Worm{Starts: z("starts"), Teeth: z("z"), Module: f("m"), Diameter: f("d"), Pressure: f("a"), Face: f("f")}.Drive()
		sound(err, d.Centre, d.Corner, d.LeadAngle, d.Virtual)
		pair, err := Bevel{Teeth: [2]int{z("z"), z("z2")}, Module: f("m"), Pressure: f("a"), Shaft: f("shaft"), Face: f("f")}.Pair()
		sound(err, pair.Distance, pair.Cone[0].Tip, pair.Cone[1].Apex)
	})
}
