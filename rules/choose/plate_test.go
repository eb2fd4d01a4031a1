package choose_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fettle/schema/text"
)

// plate writes a plate with so many holes of 3 mm, 6 mm apart, and one pair that leaves 0.4 mm
// between them.
func plate(holes int) text.Archive {
	side := int(math.Ceil(math.Sqrt(float64(holes))))
	w := &writer{}
	w.line(0, "recipe \"plate\" {\n  units = \"mm\"\n}")
	w.line(0, "part \"plate\" {\n  material = \"brass\"\n  length = %d\n  width = %d\n  height = 12", side*6+20, side*6+20)
	w.line(1, "blank {\n    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }\n  }")
	for i := range holes {
		x, y := 8+6*float64(i%side), 8+6*float64(i/side)
		if i == holes-1 {
			x, y = 8+3.4, 8 // beside the first
		}
		w.line(1, "hole \"h%d\" {\n    into = \"top\"\n    at = { left = %g, front = %g }\n    diameter = 3\n    depth = 6\n  }", i, x, y)
	}
	w.line(1, "setup \"top\" {\n    up = \"top\"")
	for i := range holes {
		w.operation(fmt.Sprintf("hole.h%d", i))
	}
	w.line(1, "}\n}")
	return text.Archive{"r/a.hcl": []byte(w.String())}
}

// A part with many features, of which only near ones are measured to, has the same thin walls
// found as one with few.
func TestManyFeaturesThinWall(t *testing.T) {
	for _, holes := range []int{20, 60, 70, 150} {
		thin := 0
		for _, f := range checked(t, plate(holes)) {
			if f.Rule != "floor-too-thin" {
				continue
			}
			thin++
			if !strings.Contains(f.Says, "hole.h0 ") || !strings.Contains(f.Says, fmt.Sprintf("hole.h%d ", holes-1)) || math.Abs(f.Margin.Has-0.4) > 0.001 {
				t.Errorf("%d holes: %s (%v)", holes, f.Says, f.Margin)
			}
		}
		if thin != 1 {
			t.Errorf("%d holes: %d thin walls", holes, thin)
		}
	}
}
