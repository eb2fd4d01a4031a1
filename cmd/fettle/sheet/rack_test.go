package sheet

import (
	"os"
	"strings"
	"testing"

	"fettle/rules"
)

// A rack is set from gap to gap by the dial, each counted from the first: 53.407 mm in all, which is ten turns of 5 mm
// and 68.1 lines; ratchet teeth by the foot of their steep side, 26 mm under the end that stands up.
func TestRackOnTheSheet(t *testing.T) {
	recipe, err := os.ReadFile("../../../testdata/recipes/rack/recipe.hcl")
	if err != nil {
		t.Fatal(err)
	}
	stock := "\nstock \"brass_blocks\" {\n  material = \"CW614N\"\n  flat     = { width = 60, thickness = 20 }\n  lengths  = [300]\n}\n"
	got := plain(sheetIn(t, string(recipe), rules.ExampleShop+stock))
	for _, want := range []string{
		"first gap: y 56.704: the middle of the cutter's width",
		"17 more, in y, to the back: in the table below, each counted from the first, never from the one before",
		"one line of the y dial of mill.level: 0.05 mm; to the nearest one a gap is up to 0.025 mm off its place, and by adding the rounded space each time the last would be 0.143 mm off",
		"| 18 | 53.407 | 10 + 68.1 |",
		"first gap: 26 mm below the top of the piece: the cutter's point, at the foot of the steep side",
		"7 more, in z, up",
		"every gap falls on one",
		"| 8 | 22.75 | 4 + 55 |",
		"axis 10 from the pitch line of the rack, 9 from its tips; as drawn 9.98 to 10.02",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("the sheet does not say %q", want)
		}
	}
	if t.Failed() {
		t.Log(got)
	}
}

// Of gaps whose sides lean the sheet says how the cutter stands: 15.5 sin 10 deg is 2.692 mm beside the axis.
func TestSlantingGaps(t *testing.T) {
	base := rules.Find("notch-cutter-of-other-angle").Sound
	notch := "notch  = { width = \"3 ±0.1\", depth = 2, angle = 60 }"
	for _, c := range []struct{ notch, want, not string }{
		{notch, "floor: 0.775 mm wide", "steep side"},
		{"form   = \"ratchet\"\n    hand   = \"right\"\n    notch  = { depth = 2, angle = 10 }", "steep side: 2.692 mm beside the axis, towards its own tooth", "floor: "},
		{"form   = \"ratchet\"\n    hand   = \"right\"\n    notch  = { depth = 2, angle = -10 }", "steep side: 2.692 mm beside the axis, towards the gap", "floor: "},
		{"form   = \"ratchet\"\n    hand   = \"right\"\n    notch  = { depth = 2 }", "steep side: in the middle of the piece", "floor: "},
	} {
		if !strings.Contains(base, notch) {
			t.Fatal("the example has other notches")
		}
		got := plain(sheetIn(t, strings.Replace(base, notch, c.notch, 1), rules.ExampleShop))
		if !strings.Contains(got, c.want) || strings.Contains(got, c.not) {
			t.Errorf("%s: not %q, or %q: %s", c.notch, c.want, c.not, got)
		}
	}
}
