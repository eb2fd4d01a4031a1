package choose_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fettle/eval"
	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

const aslantArm = `part "arm" {
  material = "EN AW-6082"
  length   = 40
  width    = 24
  height   = 10
  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0.5, bottom = 0 }
  }
  hole "pin" {
    into     = "top"
    at       = { left = 30, front = 12 }
    diameter = 4
    depth    = 6
  }
  hole "leaning" {
    into     = "top"
    at       = { left = 12, front = 4 }
    diameter = 3
    tilted   = { towards = "right", by = 0 }
  }
  slot "way" {
    into  = "top"
    at    = { front = 12 }
    width = 6
    depth = 3
    to    = { left = 15 }
  }
  pocket "room" {
    into  = "top"
    from  = [18, 6]
    to    = [26, 18]
    depth = 2
  }
  slot "ring" {
    into   = "top"
    from   = [36, 8]
    to     = [36, 10]
    width  = 3
    depth  = 1
    around = { count = 2, pcd = 8, start = -90 }
  }
%s}
`

const aslantBase = `part "base" {
  material = "EN AW-6082"
  length   = 60
  width    = 30
  height   = 10
  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }
}
`

// the same steps wherever they are made; of is what names the features.
func aslantSteps(of, tilt string) string {
	s := ""
	for _, step := range []struct{ makes, tool string }{
		{"face.top", "end_mill.four[16]"}, {"hole.pin", ""}, {"hole.leaning", ""}, {"slot.way", "slot_drill.two[6]"}, {"pocket.room", "slot_drill.two[4]"}, {"slot.ring", "slot_drill.two[3]"},
	} {
		tool := ""
		if step.tool != "" {
			tool = "\n      tool  = " + step.tool
		}
		s += fmt.Sprintf("    operation {\n      makes = %s%s%s\n    }\n", of, step.makes, tool)
	}
	return "  setup \"on top\" {\n    machine = mill.bench\n    hold    = clamps.set\n" + tilt + s + "  }\n"
}

func tracedIn(t *testing.T, recipe string) *eval.Trace {
	t.Helper()
	b, slips, err := schema.Load(text.Archive{"r/a.hcl": []byte(recipe), "s/a.hcl": []byte(rules.ExampleShop)}, "r", "s")
	if err != nil || len(slips) > 0 {
		t.Fatal(err, slips, recipe)
	}
	tr, _, _ := choose.Choose(b, choose.Effort)
	return tr
}

// Law: what is made on a part of an assembly that stands aslant is what is made of the part alone, and
// nothing is gone from the part that it stands on. The tilt of the holding turns it to the spindle.
func TestMadeAslant(t *testing.T) {
	head := "recipe \"leaning\" {\n  units = \"mm\"\n}\n"
	alone := tracedIn(t, head+fmt.Sprintf(aslantArm, aslantSteps("", "    up      = \"top\"\n    back    = \"back\"\n")))
	want := alone.Parts[0]
	for _, c := range []struct {
		about string
		by    float64
		up    string
		at    string
		tilt  string
	}{
		{"y", -30, "top", "5, 5, 60", `{ about = "y", by = 30 }`},
		{"y", 45, "top", "5, 5, 60", `{ about = "y", by = -45 }`},
		{"x", 17.3, "top", "5, 5, 60", `{ about = "x", by = -17.3 }`},
		{"z", 25, "top", "5, 5, 60", `{ about = "z", by = -25 }`},
		{"x", 180, "bottom", "5, 29, -1", ""},
		{"z", 90, "top", "35, 3, 60", ""},
	} {
		back := "back"
		if c.up == "bottom" {
			back = "front"
		}
		tilt := fmt.Sprintf("    up      = %q\n    back    = %q\n", c.up, back)
		if c.tilt != "" {
			tilt += "    tilt    = " + c.tilt + "\n"
		}
		tr := tracedIn(t, head+fmt.Sprintf(aslantArm, "")+aslantBase+fmt.Sprintf(`assembly "frame" {
  of = [part.base, part.arm]
  place {
    part   = part.arm
    turned = { about = %q, by = %g }
    at     = [%s]
  }
%s}
`, c.about, c.by, c.at, aslantSteps("part.arm.", tilt)))
		if len(tr.Assembled) != 1 {
			t.Fatalf("about %s by %v it is not made", c.about, c.by)
		}
		for _, m := range tr.Assembled[0].Moments {
			if m.Cut == nil {
				continue
			}
			if m.Cut.Unplayed != "" {
				t.Errorf("about %s by %v: %v: %s", c.about, c.by, m.Cut.Spot, m.Cut.Unplayed)
			}
			for _, w := range m.Cut.Works {
				if w.Wrong != "" || !w.Facing {
					t.Errorf("about %s by %v: %s: %q, facing %v", c.about, c.by, w.Target.Name(), w.Wrong, w.Facing)
				}
			}
		}
		for _, p := range tr.Parts {
			got, like := p.End.Piece.Volume(), want.End.Piece.Volume()
			if p.Part.Label == "base" {
				like = 60 * 30 * 10
			}
			if math.Abs(got-like) > 1e-4*like {
				t.Errorf("about %s by %v: %v mm³ are left of %s, %v alone", c.about, c.by, got, p.Part.Label, like)
			}
			if p.Part.Label == "base" {
				continue
			}
			for i, f := range p.End.Features {
				if g := want.End.Features[i]; f.Finished != g.Finished || f.Depth != g.Depth || f.Diameter != g.Diameter {
					t.Errorf("about %s by %v: %s is %+v, alone %+v", c.about, c.by, p.Part.Forms[i].Name(), *f, *g)
				}
			}
			if f, g := p.End.Faces[6], want.End.Faces[6]; f.Done != g.Done || math.Abs(f.At-g.At) > 1e-9 {
				t.Errorf("about %s by %v: its top is %+v, alone %+v", c.about, c.by, f, g)
			}
			if a, b := burrsOf(p.End), burrsOf(want.End); a != b {
				t.Errorf("about %s by %v its burrs are\n%s\nalone\n%s", c.about, c.by, a, b)
			}
		}
	}
}

// burrsOf spells out where burrs stand.
func burrsOf(s *eval.State) string {
	var out []string
	for _, b := range s.Burrs {
		round := func(x float64) float64 { return math.Round(x*1e6)/1e6 + 0 }
		line := fmt.Sprint(b.On)
		for i := range 3 {
			line += fmt.Sprint(" ", round(b.A[i]), " ", round(b.B[i]))
		}
		out = append(out, line)
	}
	return strings.Join(out, "\n")
}

// Without the tilt that turns it to the spindle it is told which one would, and nothing of it is facing.
func TestAslantWantsATilt(t *testing.T) {
	steps := "  setup \"on top\" {\n    hold = vise.small\n    up   = \"top\"\n    jaws = \"back\"\n    tilt = { about = \"y\", by = 0 }\n    operation {\n      makes = part.arm.hole.pin\n    }\n  }\n"
	tr := tracedIn(t, "recipe \"leaning\" {\n  units = \"mm\"\n}\n"+fmt.Sprintf(aslantArm, "")+aslantBase+`assembly "frame" {
  of = [part.base, part.arm]
  place {
    part   = part.arm
    turned = { about = "y", by = -30 }
    at     = [5, 5, 30]
  }
`+steps+"}\n")
	for _, m := range tr.Assembled[0].Moments {
		if m.Cut != nil {
			if w := m.Cut.Works[0].Wrong; !strings.Contains(w, "leans 30 degrees") || !strings.Contains(w, `about = "y", by = 30`) {
				t.Errorf("it is told %q", w)
			}
			return
		}
	}
	t.Fatal("nothing is cut")
}
