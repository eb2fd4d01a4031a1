package drawing

import "testing"

// Hardness as drawings write it: the examples of the language, and the order that standards use.
func TestParseHardness(t *testing.T) {
	for s, want := range map[string]Hardness{
		"58..60 HRC": {"HRC", 58, 60}, "58-60 HRC": {"HRC", 58, 60}, "58 – 60 hrc": {"HRC", 58, 60}, "HRC 60": {"HRC", 60, 0},
		"150 HB": {"HB", 150, 0}, "200 HBW": {"HB", 200, 0}, "700 HV 10": {"HV", 700, 0}, "40 to 45 HRC": {"HRC", 40, 45},
	} {
		if got, ok := ParseHardness(s); !ok || got != want {
			t.Errorf("%q gives %+v %v, want %+v", s, got, ok, want)
		}
	}
	for _, s := range []string{"", "hard", "HRC", "60..58 HRC", "1e9 HB", "NaN HV", "-5 HRC", "58.. HRC", "file hard"} {
		if got, ok := ParseHardness(s); ok {
			t.Errorf("%q is read as %+v", s, got)
		}
	}
}

func FuzzHardness(f *testing.F) {
	for _, s := range []string{"58..60 HRC", "HRC 60", "150 HB", "700 HV 10", "\xff HRC", ".. HV"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if h, ok := ParseHardness(s); ok && !(h.Lo >= 1 && h.Lo <= 3000 && (h.Hi == 0 || h.Hi >= h.Lo && h.Hi <= 3000)) {
			t.Errorf("%q gives %+v", s, h)
		}
	})
}
