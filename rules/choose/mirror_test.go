package choose_test

import (
	"fmt"
	"math"
	"math/rand"
	"strings"
	"testing"

	"fettle/eval"
	"fettle/eval/solid"
	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/finding"
	"fettle/schema/text"
)

// mirroredPair writes a recipe of three parts: one as it is drawn and not worked, one that mirrors it, and
// one that is written out by hand in mirror image. The work of the last two is the same. Features and work
// are written by what takes the words "left" and "right" and the distance of a place from the left end.
func mirroredPair(size, work string, features func(left, right string, x func(float64) float64) string, long float64) string {
	var s strings.Builder
	s.WriteString("recipe \"pair\" {\n  units = \"mm\"\n}\n")
	as := func(x float64) float64 { return x }
	over := func(x float64) float64 { return long - x }
	raw := "  blank {\n    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }\n  }\n"
	fmt.Fprintf(&s, "part \"drawn\" {\n  material = \"EN AW-6082\"\n%s\n%s%s}\n", size, raw, features("left", "right", as))
	fmt.Fprintf(&s, "part \"mirrored\" {\n  mirror_of = part.drawn\n%s%s}\n", raw, work)
	fmt.Fprintf(&s, "part \"by_hand\" {\n  material = \"EN AW-6082\"\n%s\n%s%s%s}\n", size, raw, features("right", "left", over), work)
	return s.String()
}

// playedAlike says where the second and the third part of a recipe are not played alike.
func playedAlike(t *testing.T, recipe string, r *rand.Rand) (cuts int) {
	t.Helper()
	b, slips, err := schema.Load(text.Archive{"r/a.hcl": []byte(recipe), "s/a.hcl": []byte(rules.ExampleShop)}, "r", "s")
	if err != nil || len(slips) > 0 {
		t.Fatal(err, slips, recipe)
	}
	tr, vs, _ := choose.Choose(b, choose.Effort)
	made := map[string]*eval.PartTrace{}
	for _, p := range tr.Parts {
		made[p.Part.Label] = p
	}
	m, h := made["mirrored"], made["by_hand"]
	if m.Part.Unplayed != "" {
		t.Fatal(m.Part.Unplayed)
	}
	for i, f := range m.Part.Forms {
		if g := h.Part.Forms[i]; f.Wrong != g.Wrong || f.Wrong != "" {
			t.Errorf("%s: in the mirror %q, by hand %q", f.Name(), f.Wrong, g.Wrong)
		}
	}
	if len(m.Moments) != len(h.Moments) {
		t.Fatalf("%d moments in the mirror, %d by hand\n%s", len(m.Moments), len(h.Moments), recipe)
	}
	for i := range m.Moments {
		a, c := m.Moments[i].Cut, h.Moments[i].Cut
		if a == nil || c == nil {
			continue
		}
		cuts++
		if a.Unplayed != c.Unplayed || a.Unplayed != "" || len(a.Works) != len(c.Works) {
			t.Errorf("%v: %q with %d workings in the mirror, %q with %d by hand", a.Spot, a.Unplayed, len(a.Works), c.Unplayed, len(c.Works))
			continue
		}
		for n := range a.Works {
			if a.Works[n].Wrong != c.Works[n].Wrong {
				t.Errorf("%v: in the mirror %q, by hand %q", a.Spot, a.Works[n].Wrong, c.Works[n].Wrong)
			}
		}
	}
	alikeSolids(t, m, h, r)
	as, cs := m.Part.Laid(), h.Part.Laid()
	if len(as) != len(cs) {
		t.Fatalf("%d sizes are drawn in the mirror, %d by hand", len(as), len(cs))
	}
	for i, a := range as {
		// A short place counts from the left whichever hand it is, so that only its end is compared; where
		// along x a size on an end is drawn is left open.
		far := a.At.Sub(cs[i].At).Len() > 1e-9 && a.Form.Lathe == nil && a.Form.Into.Face.Axis() != 0
		if c := cs[i]; a.Axis != c.Axis || a.Placed && math.Abs(a.To-c.To) > 1e-9 || far {
			t.Errorf("%s of %s: to %v at %v in the mirror, to %v at %v by hand", a.Attr, a.Of.Path(), a.To, a.At, c.To, c.At)
		}
	}
	told := map[string][]string{}
	for _, f := range rules.Judge(tr, vs, "").Findings {
		for i, spot := range f.Spots { // one cause in both is one finding
			if i == 0 || spot.Part != f.Spots[i-1].Part {
				told[spot.Part] = append(told[spot.Part], spokenOf(f))
			}
		}
	}
	if a, c := strings.Join(told["mirrored"], "\n"), strings.Join(told["by_hand"], "\n"); a != c {
		t.Errorf("in the mirror:\n%s\nby hand:\n%s\n%s", a, c, recipe)
	}
	return cuts
}

func spokenOf(f finding.Finding) string {
	return f.Rule + ": " + strings.NewReplacer("part.drawn.", "", "mirrored", "it", "by_hand", "it", "drawn", "it").Replace(f.Says)
}

// alikeSolids compares what two parts have become: their volumes, and rays through either.
func alikeSolids(t *testing.T, m, h *eval.PartTrace, r *rand.Rand) {
	t.Helper()
	a, c := m.End.Piece, h.End.Piece
	if v, w := a.Volume(), c.Volume(); math.Abs(v-w) > 1e-4*w {
		t.Errorf("%v mm³ in the mirror, %v by hand", v, w)
	}
	for range 40 {
		var v solid.Vec
		for i := range 3 {
			v[i] = m.Part.Size[i] * r.Float64()
		}
		for _, d := range []solid.Vec{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}} {
			x, y := a.Line(v, d), c.Line(v, d)
			same := len(x) == len(y)
			for i := range x {
				same = same && math.Abs(x[i].A-y[i].A) < 1e-6 && math.Abs(x[i].B-y[i].B) < 1e-6
			}
			if !same {
				t.Errorf("through %v along %v: %v in the mirror, %v by hand", v, d, x, y)
				return
			}
		}
	}
}

// Law: a mirrored part with a boss, a bore beside it, a step and outlines on top and on an end plays as
// the same part written out by hand in mirror image, and as much is told of it.
func TestMirroredBossesAndOutlines(t *testing.T) {
	r := rand.New(rand.NewSource(11))
	for range 6 {
		at, wide, deep, way := 14+6*r.Float64(), 3+5*r.Float64(), 1+3*r.Float64(), 40+6*r.Float64()
		recipe := mirroredPair("  length = 60\n  width = 50\n  height = 40", `
  setup "turn" {
    machine = lathe.centre
    hold    = chuck.four
    end     = "bottom"
    grip    = 22
    operation {
      makes = outside.boss
    }
  }
  setup "bore" {
    hold = vise.small
    up   = "top"
    jaws = "back"
    operation {
      makes = hole.pin
    }
    operation {
      makes = step.ledge
      tool  = end_mill.four[10]
    }
  }
  bench "open" {
    makes = [outline.window, outline.gate]
    by    = "filing"
  }
`, func(left, right string, x func(float64) float64) string {
			return fmt.Sprintf(`
  outside "boss" {
    into     = "top"
    at       = { %[1]s = %[3]g, front = 25 }
    from     = { bottom = 34 }
    diameter = 20
  }
  hole "pin" {
    into     = "bottom"
    at       = { %[1]s = %[3]g, front = 25 }
    diameter = 6
    depth    = 20
  }
  step "ledge" {
    into  = "bottom"
    side  = %[1]q
    width = %[4]g
    depth = %[5]g
  }
  outline "window" {
    into    = "top"
    points  = [[%[6]g, 10], [%[7]g, 10], [%[7]g, 25], [%[8]g, 30]]
    arcs    = [{ from = 3, radius = 12 }]
    inside  = true
  }
  outline "gate" {
    into    = %[2]q
    points  = [[10, 2], [20, 2], [20, 9]]
    inside  = true
  }
`, left, right, at, wide, deep, x(way), x(way+8), x(way+2))
		}, 60)
		if playedAlike(t, recipe, r) == 0 {
			t.Fatal("nothing is cut")
		}
	}
}

// Law: the same of a part that is split from left to right.
func TestMirroredSplitLeftToRight(t *testing.T) {
	r := rand.New(rand.NewSource(12))
	for range 6 {
		at, cross := 24+8*r.Float64(), 8+4*r.Float64()
		recipe := mirroredPair("  length = 60\n  width = 20\n  height = 15", `
  setup "drill" {
    hold = vise.small
    up   = "top"
    jaws = "back"
    operation {
      makes = hole.pin
    }
  }
  setup "part" {
    hold = vise.small
    operation {
      makes = split.joint
    }
  }
  setup "clean the first" {
    hold  = vise.small
    piece = "base"
    operation {
      makes = split.joint.base
      tool  = end_mill.four[16]
    }
  }
  setup "clean the second" {
    hold  = vise.small
    piece = "cap"
    operation {
      makes = split.joint.cap
      tool  = end_mill.four[16]
    }
  }
  setup "together" {
    hold = vise.small
    up   = "top"
    jaws = "back"
    operation {
      makes = hole.over
    }
  }
`, func(left, right string, x func(float64) float64) string {
			return fmt.Sprintf(`
  split "joint" {
    at     = { %[1]s = %[3]g }
    pieces = ["base", "cap"]
  }
  hole "pin" {
    into     = "top"
    at       = { %[1]s = %[4]g, front = 7 }
    diameter = 5
  }
  hole "over" {
    into     = "top"
    at       = { %[1]s = %[3]g, front = 13 }
    diameter = 6
  }
`, left, right, at, cross)
		}, 60)
		if playedAlike(t, recipe, r) < 5 {
			t.Fatal("not all of it is cut")
		}
	}
}
