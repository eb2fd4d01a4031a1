package handbook

import (
	"math"
	"testing"
)

// Laws of the number itself: the last two figures of a four-figure number from 04 on are a fifth of the bore, 00 to 03
// are 10, 12, 15 and 17 mm, the last of a three-figure one is the bore. Of one bore, rings and width grow from series
// 68 over 69, 60 and 62 to 63.
func TestBearingNumbers(t *testing.T) {
	of := map[string]Bearing{}
	for _, r := range load("bearing").rows {
		code := r.text("code")
		b, ok := BearingOf(code)
		if !ok || !b.Plain || !(b.Bore < b.Outside) || b.Open <= 0 || b.Shielded < b.Open || b.Shielded >= b.Outside/2+1 {
			t.Fatalf("%s: %+v", code, b)
		}
		of[code] = b
		n := float64(code[len(code)-1] - '0')
		switch {
		case len(code) == 4 && n <= 3:
			n = []float64{10, 12, 15, 17}[int(n)]
		case len(code) == 4:
			n *= 5
		}
		if b.Bore != n {
			t.Errorf("%s has a bore of %v", code, b.Bore)
		}
	}
	grown := 0
	for code, b := range of {
		next := map[string]string{"68": "69", "69": "60", "60": "62", "62": "63"}[code[:2]]
		if c, ok := of[next+code[2:]]; ok {
			grown++
			if c.Outside <= b.Outside || c.Open < b.Open {
				t.Errorf("%s %+v is no larger than %s %+v", next+code[2:], c, code, b)
			}
		}
	}
	if grown < 40 {
		t.Errorf("%d pairs of series", grown)
	}
}

func TestBearingOf(t *testing.T) {
	for _, c := range []struct {
		code  string
		want  Bearing
		there bool
	}{
		{"608", Bearing{8, 22, 7, 7, 7, true}, true},
		{"608-2RS", Bearing{8, 22, 7, 7, 7, true}, true},
		{" 6001 zz ", Bearing{12, 28, 8, 8, 8, true}, true},
		{"688", Bearing{8, 16, 0, 4, 5, true}, true}, // with shields or without
		{"688ZZ", Bearing{8, 16, 5, 4, 5, true}, true},
		{"688 C3", Bearing{8, 16, 0, 4, 5, true}, true},
		{"618/8-2Z", Bearing{8, 16, 5, 4, 5, true}, true},
		{"619/8", Bearing{8, 19, 6, 6, 6, true}, true},
		{"61800-2RS1", Bearing{10, 19, 5, 5, 5, true}, true},
		{"6201 P5", Bearing{12, 32, 10, 10, 10, false}, true},
		{"6999", Bearing{}, false},
		{"60", Bearing{}, false},
		{"", Bearing{}, false},
		{"ball race", Bearing{}, false},
		{"608608", Bearing{}, false},
	} {
		if b, ok := BearingOf(c.code); ok != c.there || b != c.want {
			t.Errorf("%q: %+v %v", c.code, b, ok)
		}
	}
}

// The limits of the normal class are closer than h6 of ISO 286 and no closer than a third of it (for the width, which is no fit,
// coarser than either); they grow with the size, and a size on a bound belongs to the step below it.
func TestBearingBelow(t *testing.T) {
	for on, sizes := range map[string][]float64{"bore": {3, 8, 10, 17, 20, 30, 45}, "outside": {7, 9, 18, 22, 30, 47, 62}} {
		last := 0.0
		for _, d := range sizes {
			by, ok := BearingBelow(on, d)
			h6 := map[bool]float64{true: 0.006, false: 0.008}[d <= 3]
			for _, s := range [][2]float64{{6, 0.009}, {10, 0.011}, {18, 0.013}, {30, 0.016}, {50, 0.019}} {
				if d > s[0] {
					h6 = s[1]
				}
			}
			if !ok || by < last || by > h6+0.002+hair || by < h6/3 {
				t.Errorf("%s of %v: %v, h6 %v", on, d, by, h6)
			}
			last = by
		}
	}
	for _, c := range []struct {
		on   string
		size float64
		want float64
	}{{"bore", 18, 0.008}, {"bore", 18.001, 0.010}, {"outside", 22, 0.009}, {"outside", 30, 0.009}, {"width", 8, 0.12}} {
		if by, ok := BearingBelow(c.on, c.size); !ok || math.Abs(by-c.want) > hair {
			t.Errorf("%s of %v: %v", c.on, c.size, by)
		}
	}
	for _, on := range []string{"bore", "outside", "height"} {
		if by, ok := BearingBelow(on, 500); ok {
			t.Errorf("%s of 500: %v", on, by)
		}
	}
}
