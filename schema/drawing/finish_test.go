package drawing

import (
	"math"
	"testing"
)

// Roughness as drawings write it. The grade numbers: ISO 1302, from memory. 63 microinch is 1.6 micrometres
// in every printed table: 63 * 0.0254.
func TestParseRoughness(t *testing.T) {
	for s, want := range map[string]float64{
		"Ra 1.6": 1.6, "ra1.6": 1.6, " Ra 0,8 ": 0.8, "Ra 3.2 µm": 3.2, "Ra 3.2 um": 3.2, "Ra 63 µin": 1.6002, "Ra 63 uin": 1.6002,
		"N7": 1.6, "n1": 0.025, "N12": 50,
	} {
		if got, ok := ParseRoughness(s); !ok || math.Abs(got-want) > 1e-9 {
			t.Errorf("%q gives %v %v, want %v", s, got, ok, want)
		}
	}
	for _, s := range []string{"", "polished", "Ra", "Ra -1", "Ra 0", "Ra NaN", "Ra Inf", "Ra 1e9", "N0", "N13", "nickel", "N", "Rz 6.3", "Ra 1.6 ground"} {
		if got, ok := ParseRoughness(s); ok {
			t.Errorf("%q is read as %v", s, got)
		}
	}
}

func FuzzRoughness(f *testing.F) {
	for _, s := range []string{"Ra 1.6", "N7", "Ra 63 µin", "polished", "\xff", "Ra 1e-400"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if ra, ok := ParseRoughness(s); ok && !(ra >= 0.001 && ra <= 1000) {
			t.Errorf("%q gives %v", s, ra)
		}
	})
}
