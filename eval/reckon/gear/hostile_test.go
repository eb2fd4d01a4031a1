package gear

import (
	"math"
	"testing"

	"fettle/schema/hostile"

	"pgregory.net/rapid"
)

// Whatever is asked, an answer holds no figure that is none, and nothing panics.
func TestHostileTogether(t *testing.T) {
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

// Each function by itself, its other figures in order.
func TestHostile(t *testing.T) {
	w := Wheel{Teeth: 30, Module: 1, Pressure: 20, Helix: 10, Shift: 0.1, Thinning: 0.05, Depth: Metric}
	v := Wheel{Teeth: 45, Module: 1, Pressure: 20, Helix: 10, Shift: 0.1, Thinning: 0.05, Depth: Metric}
	in := Wheel{Teeth: 80, Module: 1, Pressure: 20, Internal: true, Depth: Metric}
	spur := Wheel{Teeth: 20, Module: 1, Pressure: 20, Depth: Metric}
	mesh, err := Pair(spur, in, 0)
	if err != nil {
		t.Fatal(err)
	}
	bevel := Bevel{Teeth: [2]int{20, 40}, Module: 2, Pressure: 20, Shaft: 90, Face: 10, Depth: Metric}
	worm := Worm{Starts: 1, Teeth: 40, Module: 1, Diameter: 16, Pressure: 20, Face: 10, Depth: Metric}
	cutter := Cutter{Module: 1, Pressure: 20, Teeth: Range{26, 34}, Form: "involute"}
	rack := Rack{Module: 1, Pressure: 20, Thinning: 0.05, Depth: Metric}
	pins, err := w.OverPins(1.728)
	if err != nil {
		t.Fatal(err)
	}
	span, err := w.Span(4)
	if err != nil {
		t.Fatal(err)
	}
	unread := []string{"2.Standard", "2.Working[0]", "2.Working[1]", "2.Clearance[0]", "2.Clearance[1]", "2.Shorten", "2.ContactRatio",
		"2.Backlash", "2.Normal", "2.Overlap"}
	thinning := []string{"0.Thinning"} // it is what is asked for, or plays no part
	hostile.Calls(t, []hostile.Call{
		{Name: "Bevel.Check", Func: Bevel.Check, With: []any{bevel}},
		{Name: "Bevel.Pair", Func: Bevel.Pair, With: []any{bevel}},
		{Name: "Crown", Func: Crown, With: []any{20, 40}},
		{Name: "Range.Has", Func: Range.Has, With: []any{Range{26, 34}, 30}},
		{Name: "Range.String", Func: Range.String, With: []any{Range{26, 34}}},
		{Name: "Series.Number", Func: Series.Number, With: []any{AllSeries()[2], 30}},
		{Name: "Series.Range", Func: Series.Range, With: []any{AllSeries()[2], 4.5}},
		{Name: "Whole", Func: Whole, With: []any{31.4}},
		{Name: "EqualError", Func: EqualError, With: []any{3, 8, 12.0, 1000.0}, Endless: true},
		{Name: "Cutter.Serves", Func: Cutter.Serves, With: []any{cutter, 1.0, 20.0, 30},
			Free: []string{"0.Module", "0.Pressure", "1", "2"}}, // are not known, and said to be: see TestNotKnown,
		{Name: "Cutter.ServesRack", Func: Cutter.ServesRack, With: []any{cutter, 1.0, 20.0},
			Free: []string{"0.Module", "0.Pressure", "1", "2"}},
		{Name: "Cutter.ServesCycloidal", Func: Cutter.ServesCycloidal, With: []any{Cutter{Module: 1, Teeth: Range{26, 34}, Form: "cycloidal"}, 1.0, 30},
			Free: []string{"0.Module", "0.Pressure", "1"}},
		{Name: "Pointed", Func: Pointed, With: []any{60, 10}},
		{Name: "Depth.Clearance", Func: Depth.Clearance, With: []any{Metric, 1.0}},
		{Name: "UsualDepth", Func: UsualDepth, With: []any{20.0}, Free: []string{"0"}}, // Check refuses it
		{Name: "Module", Func: Module, With: []any{20.0}, Undefined: true},
		{Name: "Interferes", Func: Interferes, With: []any{spur, in, mesh}, Free: unread},
		{Name: "Involute", Func: Involute, With: []any{0.35}},
		{Name: "AngleOf", Func: AngleOf, With: []any{0.02}},
		{Name: "FromTip", Func: FromTip, With: []any{32.0, 30, 4}},
		{Name: "Pair", Func: Pair, With: []any{w, v, 38.5}},
		{Name: "SharedShift", Func: SharedShift, With: []any{w, v, 38.5}},
		{Name: "PairsFor", Func: PairsFor, With: []any{60.0, 2.0, 1.0, 20.0}},
		{Name: "Wheel.BestPin", Func: Wheel.BestPin, With: []any{w}, Free: thinning},
		{Name: "Wheel.OverPins", Func: Wheel.OverPins, With: []any{w, 1.728}},
		{Name: "Wheel.PinLimits", Func: Wheel.PinLimits, With: []any{w, 1.728, 0.02, 0.05}, Free: thinning},
		{Name: "Wheel.ThinningByPins", Func: Wheel.ThinningByPins, With: []any{w, 1.728, pins.Measure}, Free: thinning},
		{Name: "Wheel.Chord", Func: Wheel.Chord, With: []any{w}},
		{Name: "Wheel.Span", Func: Wheel.Span, With: []any{w, 4}},
		{Name: "Wheel.SpanTeeth", Func: Wheel.SpanTeeth, With: []any{w}},
		{Name: "Wheel.ThinningBySpan", Func: Wheel.ThinningBySpan, With: []any{w, 4, span.Measure}, Free: thinning},
		{Name: "Wheel.Check", Func: Wheel.Check, With: []any{w}},
		{Name: "Wheel.Blank", Func: Wheel.Blank, With: []any{w}},
		{Name: "VirtualTeeth", Func: VirtualTeeth, With: []any{30.0, 20.0}, Undefined: true},
		{Name: "HelixFor", Func: HelixFor, With: []any{30, 45, 1.0, 40.0}},
		{Name: "Rack.Check", Func: Rack.Check, With: []any{rack}},
		{Name: "Rack.Size", Func: Rack.Size, With: []any{rack}},
		{Name: "RackPair", Func: RackPair, With: []any{Wheel{Teeth: 20, Module: 1, Pressure: 20, Shift: 0.1, Thinning: 0.05, Depth: Metric}, rack, 10.2}},
		{Name: "Worm.Check", Func: Worm.Check, With: []any{worm}},
		{Name: "Worm.Drive", Func: Worm.Drive, With: []any{worm}},
	}, "AllSeries", "Depths", "StandardPins")
}

// What is no number is not known, and a wheel of which it is not known is not said to be right.
func TestNotKnown(t *testing.T) {
	none := math.NaN()
	for _, c := range []struct {
		name             string
		cutter           Cutter
		module, pressure float64
		want             Fit
	}{
		{"all in order", Cutter{1, 20, Range{26, 34}, "involute"}, 1, 20, Yes},
		{"the cutter's module", Cutter{none, 20, Range{26, 34}, ""}, 1, 20, NotKnown},
		{"the cutter's angle", Cutter{1, none, Range{26, 34}, ""}, 1, 20, NotKnown},
		{"the wheel's module", Cutter{1, 20, Range{26, 34}, ""}, none, 20, NotKnown},
		{"the wheel's angle", Cutter{1, 20, Range{26, 34}, ""}, 1, none, NotKnown},
		{"no wheel's module", Cutter{1, 20, Range{26, 34}, ""}, 0, 20, NotKnown},
	} {
		if got, why := c.cutter.Serves(c.module, c.pressure, 30); got != c.want {
			t.Errorf("%s: %v, %s", c.name, got, why)
		}
	}
	for virtual, want := range map[float64]int{none: 0, math.Inf(-1): 0, math.Inf(1): 1e6, 31.5: 32, -40.2: -40} {
		if got := Whole(virtual); got != want && !math.IsNaN(virtual) || math.IsNaN(virtual) && got != 0 {
			t.Errorf("%v teeth are %d", virtual, got)
		}
	}
}
