package cutting

import (
	"math"
	"strings"
	"testing"

	"fettle/schema/drawing"
	"fettle/schema/model"
	"fettle/schema/printed"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

func TestPublished(t *testing.T) {
	counts := map[string]int{}
	for _, f := range printed.Rows(t, "cutting.tsv", 5) {
		counts[f[0]]++
		switch f[0] {
		case "nut":
			seen, hand, leads, drive := stack(t, f[1])
			if got := Nut(seen, hand, leads, drive).String(); got != f[2] {
				t.Errorf("%s: %s, table %s", f[1], got, f[2])
			}
		case "hand that tightens":
			right, left := Nut(rotation(t, f[1]), RightHand, false, NoKey), Nut(rotation(t, f[1]), LeftHand, false, NoKey)
			if (right == Tightens) != (f[2] == "right") || (left == Tightens) != (f[2] == "left") {
				t.Errorf("%s: right %s, left %s, printed %s in %s", f[1], right, left, f[2], f[4])
			}
		default:
			var in []float64
			for _, w := range strings.Fields(f[1]) {
				in = append(in, printed.Figure(t, w))
			}
			if got := reckoned(t, f[0], in); math.Abs(got-printed.Figure(t, f[2])) > printed.Figure(t, f[3]) {
				t.Errorf("%s %s: %v, printed %s in %s", f[0], f[1], got, f[2], f[4])
			}
		}
	}
	for what, n := range map[string]int{"nut": 24, "hand that tightens": 10, "revs": 3, "table": 2, "tooth": 1, "drill seconds": 1, "rule of four": 2, "saw reach": 1, "run-out": 1, "collar grip": 1, "clamp load": 1,
		"turn power": 1, "turn force of the same": 1, "mill power": 1, "boring lbf": 1, "drill lbf in": 1, "drill torque by factor": 3, "drill thrust by factor": 3, "drill torque inch": 1,
		"tap by pitch": 2, "tap by thread": 2, "turn force": 5, "tooth force": 1, "rz": 1} {
		if counts[what] != n {
			t.Errorf("%d rows of %s, want %d", counts[what], what, n)
		}
	}
}

func reckoned(t *testing.T, what string, in []float64) float64 {
	switch what {
	case "revs":
		return Revs(in[0], in[1])
	case "tooth":
		mm, _ := PerTooth(in[0], in[1], int(in[2]))
		return mm
	case "table":
		rate, _ := PerMinute(drawing.Feed{Kind: drawing.PerTooth, Rate: in[0]}, in[1], int(in[2]))
		return rate
	case "drill seconds":
		rate, _ := PerMinute(drawing.Feed{Kind: drawing.PerTurn, Rate: in[2]}, Revs(in[0], in[1]), 0)
		minutes, _ := Minutes(in[3], rate)
		return minutes * 60
	case "rule of four":
		return Revs(in[0]*0.3048, in[1]*25.4) * math.Pi / 3
	case "saw reach":
		return SawReach(in[0], in[1], in[2])
	case "run-out":
		return RunOut(in[0], in[1])
	case "collar grip":
		return CollarGrip(ClampLoad(in[0], in[1], in[2]), in[3], in[4], in[5], int(in[6]))
	case "clamp load":
		return ClampLoad(in[0], in[1], in[2])
	}
	if x, ok := forced(what, in); ok {
		return x
	}
	t.Fatalf("no check for %q", what)
	return 0
}

func rotation(t *testing.T, s string) Rotation {
	switch s {
	case "clockwise":
		return Clockwise
	case "counter-clockwise":
		return CounterClockwise
	}
	t.Fatalf("%q is no rotation", s)
	return 0
}

func stack(t *testing.T, s string) (seen Rotation, hand Hand, leads bool, drive Drive) {
	f := strings.Split(s, ",")
	if len(f) != 4 {
		t.Fatalf("%q", s)
	}
	drives := map[string]Drive{"no key": NoKey, "cutter keyed": CutterKeyed, "washer held": WasherHeld}
	drive, ok := drives[f[3]]
	if !ok {
		t.Fatalf("%q", s)
	}
	return rotation(t, f[0]), HandOf(f[1] == "left"), f[2] == "leads", drive
}

func TestPick(t *testing.T) {
	belts := model.Speeds{List: []float64{120, 220, 400, 700, 1300, 2400}}
	stepless := model.Speeds{Stepless: true, From: 100, To: 2500}
	for _, c := range []struct {
		name         string
		s            model.Speeds
		v, d, mark   float64
		revs         float64
		tooFast, ok_ bool
	}{
		{"63 mm saw in steel, 25 m/min: 126, next lower", belts, 25, 63, 0, 120, false, true},
		{"80 mm saw in steel, 25 m/min: 99", belts, 25, 80, 0, 120, true, true},
		{"on the border", belts, Speed(120, 63), 63, 0, 120, false, true},
		{"a mark on the cutter", belts, 100, 10, 1000, 700, false, true},
		{"stepless", stepless, 30, 10, 0, Revs(30, 10), false, true},
		{"stepless, too slow wanted", stepless, 5, 63, 0, 100, true, true},
		{"no speeds", model.Speeds{}, 30, 10, 0, 0, false, false},
	} {
		got, ok := Pick(c.s, c.v, c.d, c.mark)
		if ok != c.ok_ || math.Abs(got.Revs-c.revs) > 1e-6 || got.TooFast != c.tooFast || ok && math.Abs(got.Speed-Speed(c.revs, c.d)) > 1e-9 {
			t.Errorf("%s: %+v %v", c.name, got, ok)
		}
	}
}

func TestNotKnown(t *testing.T) {
	if Revs(30, 0) != 0 || Revs(30, math.NaN()) != 0 || RunOut(63, 0) != 0 || RunOut(63, 63) != 0 || CollarGrip(1, 1, 10, 10, 1) != 0 || ClampLoad(1, 0, 6) != 0 {
		t.Error("a figure out of nothing")
	}
	for _, f := range []drawing.Feed{{Kind: drawing.ByHand}, {Kind: drawing.PerTurn, Rate: 0.1}, {Kind: drawing.PerTooth, Rate: 0.1}, {Kind: drawing.PerMinute}} {
		if rate, ok := PerMinute(f, 0, 4); ok {
			t.Errorf("%+v: %v", f, rate)
		}
	}
	if _, ok := PerTooth(100, 500, 0); ok {
		t.Error("a cutter without teeth")
	}
	if _, ok := Minutes(10, 0); ok {
		t.Error("time without feed")
	}
}

// Laws: Revs undoes Speed; the other end of the shaft, the other hand and a leading cutter
// each turn the verdict over; a mirrored stack (other end and other hand) keeps it.
func TestLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, d := rapid.Float64Range(1, 1e4).Draw(t, "rev/min"), rapid.Float64Range(0.1, 500).Draw(t, "diameter")
		if back := Revs(Speed(n, d), d); math.Abs(back-n) > 1e-9*n {
			t.Fatalf("%v rev/min comes back as %v", n, back)
		}
		seen := rapid.SampledFrom([]Rotation{Clockwise, CounterClockwise}).Draw(t, "seen")
		hand := rapid.SampledFrom([]Hand{RightHand, LeftHand}).Draw(t, "hand")
		leads := rapid.Bool().Draw(t, "leads")
		v := Nut(seen, hand, leads, NoKey)
		if Nut(seen.OtherEnd(), hand, leads, NoKey) == v || Nut(seen, -hand, leads, NoKey) == v || Nut(seen, hand, !leads, NoKey) == v || Nut(seen.OtherEnd(), -hand, leads, NoKey) != v {
			t.Fatalf("%v %v %v: %v", seen, hand, leads, v)
		}
		saw, h := rapid.Float64Range(10, 200).Draw(t, "saw"), rapid.Float64Range(0.01, 0.99).Draw(t, "share")
		// Pythagoras: rim, middle and the deepest point below the middle
		if got, r := RunOut(saw, saw*h), saw/2; math.Abs(got*got+(r-saw*h)*(r-saw*h)-r*r) > 1e-6*r*r {
			t.Fatalf("run-out %v of %v at %v", got, saw, h)
		}
	})
	if FreeEnd(true) != CounterClockwise || FreeEnd(false) != Clockwise {
		t.Error("a spindle running forward turns clockwise seen from the machine")
	}
}
