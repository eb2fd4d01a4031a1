package drawing

import "testing"

// A class of thread as a percent of full thread, as the language writes it.
func TestParseEngagement(t *testing.T) {
	for s, want := range map[string]float64{"65 %": 65, "65%": 65, " 100 % ": 100, "62.5 %": 62.5} {
		if got, ok := ParseEngagement(s); !ok || got != want {
			t.Errorf("%q gives %v %v", s, got, ok)
		}
	}
	for _, s := range []string{"6H", "", "%", "0 %", "101 %", "-5 %", "NaN %", "6 5 %"} {
		if got, ok := ParseEngagement(s); ok {
			t.Errorf("%q is read as %v", s, got)
		}
	}
}
