package rules_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fettle/eval"
	"fettle/rules"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

const farCounterbore = `recipe "example" {
  units = "mm"
}

part "p" {
  material = "brass"
  %s
  blank {
    over = { left = 0, right = 0, %s }
  }

  hole "pin" {
    into        = "%s"
    %s
    diameter    = 5.5
    counterbore = { diameter = 9, depth = 5, on = "%s" }
  }

  setup "drill" {
    %s

    operation {
      makes = hole.pin
      %s
    }
    operation {
      makes = hole.pin.counterbore
      tool  = counterbore.own
    }
  }
}

counterbore "own" {
  diameter = 9
  pilot    = 5.5
  of       = "HSS"
  shank    = 9
  overall  = 80
}
`

// A counterbore takes its own depth from the face that it lies on, the near one or the far one, on a mill
// and on a lathe: what is left is the block less two cylinders.
func TestCounterboreTakesItsDepth(t *testing.T) {
	const block = 40 * 30 * 20.0
	took := math.Pi / 4 * (5.5*5.5*15 + 9*9*5)
	bar := math.Pi / 4 * 20 * 20 * 60
	tookOfBar := math.Pi / 4 * (5.5*5.5*55 + 9*9*5)
	box, flat := "length = 40\n  width = 30\n  height = 20\n", "front = 0, back = 0, top = 0, bottom = 0"
	round := "diameter = 20\n  length = 60\n"
	onMill := func(up string) string {
		return "hold = vise.small\n    jaws = \"back\"\n    parallels = 8\n    up = \"" + up + "\""
	}
	onLathe := func(end string) string {
		return "machine = lathe.centre\n    hold = chuck.three\n    grip = 20\n    end = \"" + end + "\""
	}
	for name, c := range map[string]struct {
		recipe string
		left   float64
	}{
		"near, on a mill": {fmt.Sprintf(farCounterbore, box, flat, "top", "at = [20, 15]", "top", onMill("top"), ""), block - took},
		"far, on a mill":  {fmt.Sprintf(farCounterbore, box, flat, "top", "at = [20, 15]", "bottom", onMill("bottom"), "from = \"bottom\""), block - took},
		"near, on a lathe": {fmt.Sprintf(farCounterbore, round, "outside = 1", "right", "", "right", onLathe("left"), ""),
			bar*22*22/400 - tookOfBar},
	} {
		p := play(t, "wrong-way-up", c.recipe, rules.ExampleShop)
		if len(p.slips) > 0 {
			t.Fatalf("%s: %s", name, p.slips[0].Says)
		}
		end := p.result.Trace.Parts[0].End
		if got := end.Piece.Volume(); math.Abs(got-c.left) > 1e-3*(block-c.left+1) {
			t.Errorf("%s: %.1f mm³ are left, want %.1f", name, got, c.left)
		}
		for _, f := range p.result.Findings {
			if f.Rule == "feature-never-made" && strings.Contains(f.Says, "pin") {
				t.Errorf("%s: %s", name, f.Says)
			}
		}
	}
}

// Limits of a hole before it is tapped, by class. M5: 4.134 to 4.334 (6H) and to 4.259 (4H): ISO 965-1,
// from memory; 60 % of thread on 1.299 P is 5 - 0.6*1.299*0.8 = 4.376.
func TestTapLimitsByClass(t *testing.T) {
	m5, err := drawing.ParseThread("M5")
	if err != nil {
		t.Fatal(err)
	}
	for class, want := range map[string]eval.Limits{"6H": {Lo: 4.134, Hi: 4.334}, "4H": {Lo: 4.134, Hi: 4.259}, "60 %": {Lo: 4.3765 - 0.08, Hi: 4.3765 + 0.08}, "": {Lo: 4.134, Hi: 4.334}} {
		k := model.Known[string]{}
		if class != "" {
			k = model.Sure(class)
		}
		got, ok := eval.TapLimits(m5, k)
		if !ok || math.Abs(got.Lo-want.Lo) > 0.0006 || math.Abs(got.Hi-want.Hi) > 0.0006 {
			t.Errorf("class %q: %v %v, want %v", class, got, ok, want)
		}
	}
}
