package choose_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fettle/eval"
	"fettle/eval/solid"
)

// rackBlock is a block 20 x 60 x 20 with teeth on its top, cut on a level spindle; pairs are put in its place.
func rackBlock(t *testing.T, pairs ...string) string {
	t.Helper()
	s := `recipe "example" {
  units = "mm"
}

part "block" {
  material = "EN AW-6082"
  length   = 20
  width    = 60
  height   = 20

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  teeth "rack" {
    on     = "top"
    count  = 18
    module = 1
  }

  setup "mill" {
    machine   = mill.level
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 10

    operation {
      makes = teeth.rack
    }
  }
}

mill "level" {
  spindle  = "level"
  taper    = "MT3"
  drawbars = ["M12"]
  speeds   = [60, 100, 170, 280, 470]
  travel   = [350, 150, 300]
  column   = "knee"
  dials    = { x = { division = 0.05, turn = 5 }, y = { division = 0.05, turn = 5 }, z = { division = 0.05, turn = 5 } }
  backlash = 0.1
}

gear_cutter "wheel" {
  module         = 1
  pressure_angle = 20
  form           = "involute"
  teeth          = [55, 134]
  diameter       = 60
  width          = 6
  bore           = 16
}

gear_cutter "rack" {
  module         = 1
  pressure_angle = 20
  form           = "involute"
  teeth          = [135]
  diameter       = 63
  width          = 6
  bore           = 16
}

angle_cutter "sixty" {
  diameter = 63
  angle    = 60
  width    = 8
  bore     = 16
  of       = "HSS"
}

side_and_face_cutter "three" {
  diameter = 63
  width    = 3
  bore     = 16
  of       = "HSS"
}

arbor "long" {
  shank  = "MT3"
  tail   = "M12"
  seat   = 16
  collar = 26
  body   = 26
  out    = 60
  key    = true
  clamp  = { by = "nut", thread = "M14x1.5 LH", diameter = 26, length = 60 }
}
`
	for i := 0; i+1 < len(pairs); i += 2 {
		if !strings.Contains(s, pairs[i]) {
			t.Fatalf("no %q", pairs[i])
		}
		s = strings.ReplaceAll(s, pairs[i], pairs[i+1])
	}
	return s
}

// upright puts the rack on end before an upright spindle, its teeth to the front of the table.
var upright = []string{"machine   = mill.level", "machine   = mill.bench", `up        = "top"`, `up        = "back"`, `jaws      = "back"`, `jaws      = "bottom"`, "parallels = 10", "parallels = 4"}

// rackOf plays it and gives the rack and what cut it.
func rackOf(t *testing.T, pairs ...string) (*eval.PartTrace, *eval.Cut, *eval.Form) {
	t.Helper()
	p := tracedIn(t, rackBlock(t, pairs...)).Parts[0]
	k := p.Moments[len(p.Moments)-1].Cut
	for _, f := range p.Part.Forms {
		if f.Feature.Kind == "teeth" {
			return p, k, f
		}
	}
	t.Fatal("no teeth")
	return nil, nil, nil
}

// Eighteen gaps of module 1 at 20 degrees take 18 pi mm in the middle of 60; the face is the tips, the floors lie 2.25
// below it, and tooth and gap are alike a module below it (ISO 53, from memory).
func TestRackGaps(t *testing.T) {
	for _, pairs := range [][]string{nil, upright} {
		p, k, f := rackOf(t, pairs...)
		if f.Rack == nil || len(k.Works) != 1 || k.Works[0].Wrong != "" || !k.Works[0].Final || k.Choice.Tool.Cutter.Path() != "gear_cutter.rack" {
			t.Fatalf("%q %+v %q", f.Wrong, k.Works, k.Unplayed)
		}
		if len(k.Works[0].Moves) < 18 {
			t.Errorf("%d ways", len(k.Works[0].Moves))
		}
		tan := math.Tan(20 * math.Pi / 180)
		for i := range 18 {
			mid := 30 + math.Pi*(float64(i)-8.5)
			for _, deep := range []float64{0.1, 1, 2.2} {
				half := math.Pi/4 + (1-deep)*tan
				for _, c := range []struct {
					at   float64
					want bool
				}{{mid - half - 0.02, true}, {mid - half + 0.02, false}, {mid + half - 0.02, false}, {mid + half + 0.02, true}} {
					for _, x := range []float64{0.1, 10, 19.9} {
						if v := (solid.Vec{x, c.at, 20 - deep}); p.End.Piece.Holds(v) != c.want {
							t.Errorf("gap %d: metal at %v is %v", i, v, !c.want)
						}
					}
				}
			}
			if v := (solid.Vec{10, mid, 20 - 2.26}); !p.End.Piece.Holds(v) {
				t.Errorf("gap %d goes deeper than 2.25 mm", i)
			}
		}
	}
}

// Law: set by the lines of a dial, each gap counted from the first, none is off by more than half a line however
// many there are; added up, the rounded pitch runs away.
func TestRackByTheDial(t *testing.T) {
	for _, c := range []struct {
		module       float64
		count, axis  int
		spindle      []string
		wantOff, max float64
	}{{1, 18, 1, nil, 0, 0.025}, {0.5, 37, 1, nil, 0, 0.025}, {0.3, 60, 1, nil, 0, 0.025}} {
		_, k, f := rackOf(t, append([]string{"count  = 18\n    module = 1", fmt.Sprintf("count  = %d\n    module = %v", c.count, c.module), "module         = 1", fmt.Sprintf("module         = %v", c.module)}, c.spindle...)...)
		r, ok := k.Ruling(f)
		if !ok || r.Axis != c.axis || len(r.Lacks) > 0 {
			t.Fatalf("%+v", r)
		}
		pitch := math.Pi * c.module
		off := 0.0
		for i := range c.count {
			x := float64(i) * pitch
			off = math.Max(off, math.Abs(math.Round(x/0.05)*0.05-x))
		}
		adds := math.Abs(math.Round(pitch/0.05)*0.05-pitch) * float64(c.count-1)
		if math.Abs(r.Off-off) > 1e-9 || r.Off > c.max || math.Abs(r.Adds-adds) > 1e-9 {
			t.Errorf("module %v: off %v, adds %v; %v and %v worked out", c.module, r.Off, r.Adds, off, adds)
		}
		for i := range c.count {
			if want := f.Rack.First + pitch*float64(i); math.Abs(f.Rack.At(i)-want) > 1e-9 {
				t.Errorf("gap %d at %v", i, f.Rack.At(i))
			}
		}
	}
	_, k, f := rackOf(t, upright...)
	if k.SetBy(f) != 2 {
		t.Errorf("on end it is set by the height, not %d", k.SetBy(f))
	}
}

// A stretch that is written is kept: from one end on, up to the other, and with its ends across.
func TestRackStretch(t *testing.T) {
	for _, c := range []struct {
		lines        string
		first, wrong float64
	}{
		{"from = { front = 2 }", 2 + math.Pi/2, 0},
		{"to = { back = 1 }", 59 - 18*math.Pi + math.Pi/2, 0},
		{"from = { front = 2 }\n    to = { front = 58.55 }", 2 + math.Pi/2, 0},
		{"from = { front = 2 }\n    to = { front = 57 }", 0, 1},
		{"from = { front = 4 }", 0, 1},
		{"depth = 7", 0, 1},
		{"shifted = 0.2", 0, 1},
	} {
		_, _, f := rackOf(t, "    module = 1\n  }\n\n  setup", "    module = 1\n    "+c.lines+"\n  }\n\n  setup")
		if (f.Wrong != "") != (c.wrong > 0) {
			t.Errorf("%s: %q", c.lines, f.Wrong)
			continue
		}
		if c.wrong == 0 && math.Abs(f.Rack.First-c.first) > 1e-9 {
			t.Errorf("%s: the first gap at %v, not %v", c.lines, f.Rack.First, c.first)
		}
	}
}

// Notches share out their stretch: ten in 60 mm stand 6 apart; with sides 60 degrees apart an angle cutter is taken,
// with upright sides a disc as wide; ratchet teeth rise towards the way that they drive.
func TestNotchedRack(t *testing.T) {
	for _, c := range []struct {
		lines, tool string
		at          [][3]float64 // along, below the face, 1 where there is metal
	}{
		{"notch = { width = 3, depth = 2 }", "side_and_face_cutter.three", [][3]float64{{1.4, 1.9, 1}, {1.6, 1.9, 0}, {4.4, 1.9, 0}, {4.6, 1.9, 1}, {57, 2.1, 1}, {57, 1.9, 0}}},
		{"notch = { width = 3, depth = 2, angle = 60 }", "angle_cutter.sixty", [][3]float64{{1.6, 0.1, 0}, {1.6, 0.3, 1}, {3, 1.9, 0}, {57, 1.9, 0}, {57, 2.1, 1}}},
		{"form = \"ratchet\"\n    hand = \"right\"\n    notch = { depth = 3 }", "angle_cutter.sixty", [][3]float64{{0.1, 2.8, 0}, {5.9, 0.2, 1}, {5.9, 0.02, 0}, {6.1, 2.8, 0}, {0.1, 3.1, 1}, {3, 1.4, 0}, {3, 1.6, 1}}},
		{"form = \"ratchet\"\n    hand = \"left\"\n    notch = { depth = 3 }", "angle_cutter.sixty", [][3]float64{{5.9, 2.8, 0}, {0.1, 0.2, 1}, {0.1, 0.02, 0}}},
	} {
		p, k, f := rackOf(t, "count  = 18\n    module = 1", "count = 10\n    "+c.lines)
		if f.Wrong != "" || f.Rack == nil || k.Works[0].Wrong != "" || k.Choice.Tool.Cutter.Path() != c.tool {
			t.Fatalf("%s: %q %+v", c.lines, f.Wrong, k.Choice)
		}
		for _, at := range c.at {
			for i := range 10 {
				y := at[0] + 6*float64(i)
				if v := (solid.Vec{10, y, 20 - at[1]}); y < 60 && p.End.Piece.Holds(v) != (at[2] > 0) {
					t.Errorf("%s: metal at %v is %v", c.lines, v, at[2] == 0)
				}
			}
		}
	}
}

// The other hand of a rack along its length: its gaps lie as far from the other end, and ratchet teeth drive the
// other way.
func TestMirroredRack(t *testing.T) {
	const more = "\npart \"other\" {\n  mirror_of = part.block\n}\n"
	s := rackBlock(t, "length   = 20", "length   = 100", "    on     = \"top\"\n    count  = 18\n    module = 1", "    on    = \"top\"\n    count = 20\n    form  = \"ratchet\"\n    hand  = \"right\"\n    from  = { left = 10 }\n    to    = { left = 70 }\n    notch = { depth = 2 }")
	tr := tracedIn(t, s+more)
	var racks []*eval.Rack
	for _, p := range tr.Parts {
		for _, f := range p.Part.Forms {
			if f.Rack != nil {
				racks = append(racks, f.Rack)
			}
		}
	}
	if len(racks) != 2 {
		t.Fatalf("%d racks", len(racks))
	}
	a, b := racks[0], racks[1]
	if a.Run != 0 || math.Abs(a.First-11.5) > 1e-9 || math.Abs(b.First-31.5) > 1e-9 || math.Abs(a.Section.Foot[0][0]+b.Section.Foot[1][0]) > 1e-9 || math.Abs(a.Section.Foot[0][0]) < 1 {
		t.Errorf("%+v and %+v", a, b)
	}
}

// What is in the way of a disc: the rack along the table, gaps that end in the metal, a tool that does not leave
// such sides.
func TestRackNotMadeSo(t *testing.T) {
	for _, c := range []struct {
		pairs []string
		want  string
	}{
		{[]string{`jaws      = "back"`, `jaws      = "left"`}, "runs along it"},
		{[]string{"    module = 1\n  }\n\n  setup", "    module = 1\n    to = { right = 5 }\n  }\n\n  setup"}, "towards the right"},
		{[]string{"makes = teeth.rack", "makes = teeth.rack\n      tool = side_and_face_cutter.three"}, "lean apart by 40 degrees"},
	} {
		_, k, f := rackOf(t, c.pairs...)
		if f.Rack == nil || len(k.Works) != 1 || !strings.Contains(k.Works[0].Wrong, c.want) {
			t.Errorf("%v: %q %+v %q", c.pairs, f.Wrong, k.Works, k.Unplayed)
		}
	}
}

// stepped puts the rack on the floor of a step, which ends at a wall before the front of 10 mm.
func stepped(front string) []string {
	return []string{"  teeth \"rack\" {\n    on     = \"top\"\n    count  = 18\n    module = 1\n",
		"  step \"low\" {\n    into  = \"top\"\n    side  = \"back\"\n    width = 50\n    depth = 4\n  }\n\n  teeth \"rack\" {\n    on     = step.low.floor\n    count  = 14\n    module = 1\n    from   = { front = " + front + " }\n",
		"      makes = teeth.rack", "      makes = step.low\n      tool  = side_and_face_cutter.three\n    }\n    operation {\n      makes = teeth.rack"}
}

// On the floor of a step a cutter 6 mm wide goes into the wall where the first gap lies nearer to it than 3 mm; a file or
// a slot drill does not mind.
func TestRackBesideAWall(t *testing.T) {
	for _, c := range []struct {
		front string
		wrong bool
	}{{"11", true}, {"11.42", true}, {"11.44", false}, {"13", false}} {
		p, k, f := rackOf(t, stepped(c.front)...)
		if f.Rack == nil || len(k.Works) != 1 {
			t.Fatalf("%s: %q %+v", c.front, f.Wrong, k.Works)
		}
		if got := strings.Contains(k.Works[0].Wrong, "the wall at the end of the rack"); got != c.wrong || !c.wrong && k.Works[0].Wrong != "" {
			t.Errorf("%s: %q", c.front, k.Works[0].Wrong)
		}
		if v := (solid.Vec{10, f.Rack.At(0), 14}); p.End.Piece.Holds(v) || !p.End.Piece.Holds(solid.Vec{10, f.Rack.At(0), 13.7}) {
			t.Errorf("%s: the first gap is not 2.25 mm below a floor at 16", c.front)
		}
	}
}

// Notches with upright sides are milled by a slot drill that points into the face, and all teeth filed at the bench.
func TestRackByOtherMeans(t *testing.T) {
	lines := []string{"count  = 18\n    module = 1", "count = 10\n    notch = { width = 3, depth = 2 }", "machine   = mill.level", "machine   = mill.bench",
		"makes = teeth.rack", "makes = teeth.rack\n      tool  = slot_drill.two[3]"}
	p, k, f := rackOf(t, lines...)
	if f.Rack == nil || k.Works[0].Wrong != "" || !k.Works[0].Final || len(k.Works[0].Moves) < 10 || k.SetBy(f) != 1 {
		t.Errorf("%q %+v", f.Wrong, k.Works)
	}
	if p.End.Piece.Holds(solid.Vec{10, 3, 18.1}) || !p.End.Piece.Holds(solid.Vec{10, 6, 18.1}) {
		t.Error("the notches are not where they are drawn")
	}
	s := rackBlock(t)
	i, j := strings.Index(s, "  setup"), strings.Index(s, "mill \"level\"")
	tr := tracedIn(t, s[:i]+"  bench \"file\" {\n    makes = [teeth.rack]\n    by    = \"filing\"\n  }\n}\n\n"+s[j:]).Parts[0]
	if tr.End.Piece.Holds(solid.Vec{10, 30 + math.Pi/2, 18}) || !tr.End.Piece.Holds(solid.Vec{10, 30, 18}) {
		t.Error("it is not filed")
	}
}
