package rules

import "testing"

func TestCausesAreInMillimetres(t *testing.T) {
	for in, want := range map[string]string{
		"drill.fractions[inch(5/16)].overall+x":    "drill.fractions[7.938].overall+x",
		"reamer.a[inch(1 + 1/2)]":                  "reamer.a[38.1]",
		"collets.r8[inch(1/2)]+e.m[inch(0.23622)]": "collets.r8[12.7]+e.m[6]",
		"drill.jobbers[6]":                         "drill.jobbers[6]",
		`drill.numbers["#7"]`:                      `drill.numbers["#7"]`,
	} {
		if got := inMillimetres(in); got != want {
			t.Errorf("%s becomes %s, not %s", in, got, want)
		}
	}
}
