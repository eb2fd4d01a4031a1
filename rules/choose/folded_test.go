package choose_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fettle/eval"
	"fettle/eval/solid"
)

// foldedStrip is a strip of brass 70 by 20 by 1 mm with a leg of 20 mm on the right and one of 18 mm on the
// left, drilled in the left one while it is flat and in the right one from outside once it is folded.
func foldedStrip(angle float64, after string) string {
	return fmt.Sprintf(`recipe "strip" {
  units = "mm"
}

part "strip" {
  material  = "CW508L"
  condition = "annealed"
  length    = 70
  width     = 20
  thickness = 1

  hole "first" {
    into     = "top"
    at       = { left = 8, front = 10 }
    diameter = 3
  }
  hole "then" {
    into     = "bottom"
    at       = { right = 8, front = 10 }
    diameter = 4
  }
  bend "right" {
    at            = { right = 20 }
    towards       = "top"
    angle         = %g
    inside_radius = 1
  }
  bend "left" {
    at            = { left = 18 }
    towards       = "top"
    inside_radius = 1
  }

  setup "flat" {
    hold   = clamps.set
    up     = "top"
    back   = "back"
    clamps = [{ at = { right = 4, front = 10 } }]
    operation {
      makes = hole.first
    }
  }
  bench "fold" {
    makes = [bend.right, bend.left]
    by    = "bending"
    hold  = vise.small
  }
%s}
`, angle, after)
}

const drilledAfter = `  setup "folded" {
    hold = vise.small
    jaws = "back"
    operation {
      makes = hole.then
    }
  }
`

// cuts are the operations of a part that do something.
func cuts(p *eval.PartTrace) (out []*eval.Cut) {
	for _, m := range p.Moments {
		if m.Cut != nil && len(m.Cut.Works) > 0 {
			out = append(out, m.Cut)
		}
	}
	return out
}

// The flat sheet is played as long as it is flat, the folded one as it stands; a hole that is drilled in one
// leg leaves the leg behind it whole.
func TestFoldedSheetIsHeldAndDrilled(t *testing.T) {
	p := tracedIn(t, foldedStrip(90, drilledAfter)).Parts[0]
	ks := cuts(p)
	if len(ks) != 2 {
		t.Fatalf("%d cuts", len(ks))
	}
	taken := 2 * (2*2 - math.Pi/2*1.325)
	// A square bend takes twice 2 mm less a quarter of a circle of 1.325 mm (DIN 6935, from memory).
	if x := ks[0].Hold.Part.Size[0]; math.Abs(x-(70-taken)) > 0.001 {
		t.Errorf("flat it is %v long", x)
	}
	h := ks[1].Held()
	if size := h.Hi.Sub(h.Lo); size.Sub(solid.Vec{20, 20, 32}).Len() > 0.01 {
		t.Errorf("put up it takes %v", size)
	}
	for _, k := range ks {
		for _, w := range k.Works {
			if w.Wrong != "" || !w.Facing || k.Unplayed != "" {
				t.Errorf("%s: %q %q, facing %v", w.Target.Name(), w.Wrong, k.Unplayed, w.Facing)
			}
		}
	}
	full := tracedIn(t, foldedStrip(90, "")).Parts[0]
	if took, want := full.End.Piece.Volume()-p.End.Piece.Volume(), math.Pi*4*1; math.Abs(took-want) > 0.02 {
		t.Errorf("the hole takes %v mm³, %v wanted", took, want)
	}
	// From the outside of the leg on the right: metal at its middle is gone, the other leg is whole there.
	inside := p.End.Piece.Line(solid.Vec{0, 10, 12}, solid.Vec{1, 0, 0})
	if len(inside) != 1 || math.Abs(inside[0].A-18) > 1e-6 {
		t.Errorf("along the hole metal lies at %v", inside)
	}
	for i, f := range p.Part.Forms {
		if !p.End.Features[i].Finished {
			t.Errorf("%s is not made", f.Name())
		}
	}
}

// A leg that stands aslant wants the tilt that turns it to the spindle, and gets its hole square to itself.
func TestFoldedLegAslant(t *testing.T) {
	for _, angle := range []float64{30, 45, 60} {
		p := tracedIn(t, foldedStrip(angle, drilledAfter)).Parts[0]
		full := tracedIn(t, foldedStrip(angle, "")).Parts[0]
		ks := cuts(p)
		if len(ks) != 2 || ks[1].Works[0].Wrong != "" || !ks[1].Works[0].Facing {
			t.Errorf("%v degrees: %d cuts", angle, len(ks))
			continue
		}
		if l := ks[1].Held().Choice.Lean; l.By == 0 {
			t.Errorf("%v degrees: it is not tilted", angle)
		}
		if took, want := full.End.Piece.Volume()-p.End.Piece.Volume(), math.Pi*4*1; math.Abs(took-want) > 0.05 {
			t.Errorf("%v degrees: the hole takes %v mm³, %v wanted", angle, took, want)
		}
	}
}

// What was cut in a leg is carried with it: the same metal is there whether it is cut before or after folding.
func TestCutBeforeOrAfterFolding(t *testing.T) {
	flat := strings.Replace(foldedStrip(90, ""), "      makes = hole.first\n    }", "      makes = hole.first\n    }\n    operation {\n      makes = hole.then\n      from  = \"top\"\n    }", 1)
	a, b := tracedIn(t, flat).Parts[0], tracedIn(t, foldedStrip(90, drilledAfter)).Parts[0]
	if x, y := a.End.Piece.Volume(), b.End.Piece.Volume(); math.Abs(x-y) > 0.05 {
		t.Errorf("drilled flat %v mm³ are left, drilled folded %v", x, y)
	}
	for _, v := range []solid.Vec{{0, 10, 12}, {0, 12.5, 12}, {0, 10, 8}} {
		x, y := a.End.Piece.Line(v, solid.Vec{1, 0, 0}), b.End.Piece.Line(v, solid.Vec{1, 0, 0})
		if len(x) != len(y) {
			t.Errorf("at %v drilled flat %v, drilled folded %v", v, x, y)
		}
	}
}

// Over 90 degrees a leg leans back over the base: it is drilled there as it is held, tilted to the spindle.
func TestFoldedOver90IsDrilled(t *testing.T) {
	p := tracedIn(t, foldedStrip(110, drilledAfter)).Parts[0]
	full := tracedIn(t, foldedStrip(110, "")).Parts[0]
	ks := cuts(p)
	if len(ks) != 2 || ks[1].Works[0].Wrong != "" || !ks[1].Works[0].Facing || ks[1].Unplayed != "" {
		t.Fatalf("%d cuts", len(ks))
	}
	if took, want := full.End.Piece.Volume()-p.End.Piece.Volume(), math.Pi*4*1; math.Abs(took-want) > 0.05 {
		t.Errorf("the hole takes %v mm³, %v wanted", took, want)
	}
}

// Where a figure of a bend lacks, the sheet stays flat and that is said.
func TestSheetStaysFlat(t *testing.T) {
	p := tracedIn(t, strings.ReplaceAll(foldedStrip(180, ""), "inside_radius = 1\n", "inside_radius = 0\n")).Parts[0]
	if p.Lies != nil || p.End.Bent != nil {
		t.Error("a closed hem is folded, and what it takes up of the sheet is not said")
	}
	if !p.Part.Forms[2].Later {
		t.Error("and it is not told of")
	}
}
