package screwcut

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Law: every train that is found is worked out to be the same when its wheels are given.
func TestGivenIsFound(t *testing.T) {
	screw, _ := PerInch(8)
	rapid.Check(t, func(r *rapid.T) {
		lead, err := Millimetres(float64(rapid.IntRange(4, 60).Draw(r, "tenths")) / 10)
		if err != nil {
			r.Fatal(err)
		}
		l := Lathe{Screw: screw, Wheels: []int{20, 30, 35, 38, 40, 45, 50, 55, 60, 63, 65, 127}, Mesh: Mesh{Spare: RuleOfThumb}}
		a, err := Trains(l, Wanted{Lead: lead, Within: 2000, Pairs: 2})
		if err != nil {
			r.Fatal(err)
		}
		for _, x := range a.Trains[:min(len(a.Trains), 20)] {
			g, err := Given(l, x.Wheels(), lead)
			if err != nil || g.Exact != x.Exact || math.Abs(g.Lead-x.Lead) > 1e-12 || math.Abs(g.PPM-x.PPM) > 1e-6 {
				r.Fatalf("%v: %+v, found %+v (%v)", x.Wheels(), g, x, err)
			}
		}
	})
}

// 63 x 127 approximations: on a screw of 8 threads an inch 40/63 cuts 2.015873 mm (3.175 x 40/63), and 80
// to 127 exactly 2 mm (127 teeth turn inches into millimetres); an idler changes neither.
func TestGivenByHand(t *testing.T) {
	screw, _ := PerInch(8)
	lead, _ := Millimetres(2)
	l := Lathe{Screw: screw}
	for _, wheels := range [][]int{{80, 127}, {80, 50, 127}, {40, 127, 60, 30}} {
		if g, err := Given(l, wheels, lead); err != nil || !g.Exact || math.Abs(g.Lead-2) > 1e-12 || g.PPM != 0 {
			t.Errorf("%v: %+v %v", wheels, g, err)
		}
	}
	g, err := Given(l, []int{40, 63}, lead)
	if err != nil || g.Exact || math.Abs(g.Lead-2.0158730) > 1e-6 || math.Abs(g.PPM-7936.5) > 0.1 {
		t.Errorf("%+v %v", g, err)
	}
	for _, wheels := range [][]int{nil, {40}, {40, 50, 60, 70, 80}, {2, 50}, {40, 5000}} {
		if _, err := Given(l, wheels, lead); err == nil {
			t.Errorf("%v make a train", wheels)
		}
	}
}
