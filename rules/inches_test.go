package rules

import "testing"

func TestInBoth(t *testing.T) {
	for _, c := range []struct{ mm, both string }{
		{"width is 38.1 mm, and it measures from 0 to 25.4 mm", "width is 38.1 mm (1.5000 in), and it measures from 0 to 25.4 mm (0.0000 to 1.0000 in)"},
		{"it touches 12 mm² at 30 m/min", "it touches 12 mm² at 30 m/min"},
		{"-1.27 mm", "-1.27 mm (-0.0500 in)"},
		{"no length", "no length"},
	} {
		if got := inBoth(c.mm); got != c.both {
			t.Errorf("%q, not %q", got, c.both)
		}
	}
}
