package rules_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

// However the way round a gap is written, by faces, by dimensions or by both, it leaves the same gap:
// a slot of 30 ±0.1 less a wheel of 20 ±0.05 and a washer of 1 ±0.02, 9 ±0.17.
func TestStackPaths(t *testing.T) {
	paths := []string{
		"part.frame.slot.room.width, part.wheel.length, part.washer.height",
		"part.wheel.face.right, part.wheel.face.left, part.washer.face.top, part.washer.face.bottom, part.frame.slot.room.left, part.frame.slot.room.right",
		"part.wheel.face.right, part.wheel.length, part.washer.height, part.frame.slot.room.left, part.frame.slot.room.right",
		"part.wheel.length, part.washer.height, part.frame.slot.room.left, part.frame.slot.room.right",
		"part.frame.slot.room.left, part.frame.slot.room.right, part.washer.height, part.wheel.length",
		"part.frame.slot.room.width, part.washer.face.top, part.washer.face.bottom, part.wheel.length",
		"part.washer.height, part.wheel.face.left, part.wheel.face.right, part.frame.slot.room.width",
	}
	recipe := `recipe "gap" {
  units = "mm"
}

part "frame" {
  length = 60
  width  = 30
  height = 20

  slot "room" {
    into  = "top"
    at    = { left = 30 }
    width = "30 ±0.1"
    depth = 15
  }
}

part "wheel" {
  diameter = 12
  length   = "20 ±0.05"
}

part "washer" {
  length = 10
  width  = 10
  height = "1 ±0.02"
}
`
	for i, p := range paths {
		recipe += fmt.Sprintf("\nstack \"s%d\" {\n  path  = [%s]\n  wants = \"8.8..9.2\"\n}\n", i, p)
	}
	for _, bad := range []string{
		"part.frame.slot.room.left, part.wheel.length",                                   // ends on a face that looks away
		"part.frame.slot.room.left, part.frame.height, part.wheel.length",                // not square to it
		"part.frame.slot.room.depth, part.frame.face.left, part.frame.face.right",        // no plain way
		"part.frame.slot.room.left, part.frame.slot.room.at, part.frame.slot.room.right", // no size
	} {
		recipe += fmt.Sprintf("\nstack \"x%d\" {\n  path  = [%s]\n  wants = \"8.8..9.2\"\n}\n", len(recipe), bad)
	}
	b, slips, err := schema.Load(text.Archive{"recipe/recipe.hcl": []byte(recipe), "shop/shop.hcl": []byte(rules.ExampleShop)}, "recipe", "shop")
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range slips {
		if !strings.Contains(s.Says, "room.at") {
			t.Error(s.Says)
		}
	}
	trace, _, _ := choose.Choose(b, choose.Effort)
	asked := 0
	for _, j := range trace.Joints {
		if j.Stack == nil {
			continue
		}
		if strings.HasPrefix(j.Item.Label, "x") {
			if j.Unplayed == "" && j.Stack.Chain.Is() {
				t.Errorf("%v is worked out: %+v", j.Stack.Model.Path.V, j.Stack.Chain.V)
			}
			continue
		}
		asked++
		gap := j.Stack.Gap(false)
		if !gap.Is() || math.Abs(gap.V.Lo-8.83) > 1e-6 || math.Abs(gap.V.Hi-9.17) > 1e-6 {
			t.Errorf("%s: %+v %s", j.Item.Label, gap, j.Unplayed)
		}
	}
	if asked != len(paths) {
		t.Errorf("%d of %d paths are asked", asked, len(paths))
	}
}
