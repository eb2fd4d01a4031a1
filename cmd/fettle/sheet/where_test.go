package sheet

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"fettle/schema/text"
)

// ring is a plate with six holes on a circle of 40 mm in its middle, 60 mm square.
const ring = `recipe "plate" {
  units = "mm"
}

part "plate" {
  material = "brass"
  length   = 60
  width    = 60
  height   = 10

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  hole "ring" {
    into     = "top"
    at       = { left = 30, front = 30 }
    around   = { count = 6, pcd = 40 }
    diameter = 4
    depth    = 6
  }

  setup "drill" {
    hold    = vise.small
    machine = mill.own
    up      = "top"
    jaws    = "back"
    ZERO
    operation {
      makes = hole.ring
      tool  = drill.own
    }
  }
}
`

// own is a shop with a mill whose dials are marked so.
func own(x, turn string) []byte {
	return []byte(`shop "own" {
  units = "mm"
  as_of = "2026-11-25"
}

mill "own" {
  taper         = "MT3"
  speeds        = [1000]
  travel        = [300, 140, 200]
  nose_to_table = [40, 400]
  nose_diameter = 50
  backlash      = { x = 0.1, y = 0.2 }
  dials         = { x = { division = ` + x + `, turn = ` + turn + ` }, y = { division = ` + x + `, turn = ` + turn + ` } }
}

vise "small" {
  jaw_width     = 100
  jaw_depth     = 22
  jaw_thickness = 12
  opening       = 80
  bed           = 35
}

parallels "thin" {
  heights   = [16, 18]
  thickness = 3
  length    = 100
}

drill_chuck "own" {
  shank    = "MT3"
  range    = [1, 13]
  out      = 80
  diameter = 45
}

drill "own" {
  diameter = 4
  of       = "HSS"
}
`)
}

func placed(t *testing.T, zero string, shop []byte) (rows [][]string, page string) {
	t.Helper()
	c := checked(t, text.Archive{"r/r.hcl": []byte(strings.Replace(ring, "ZERO", zero, 1)), "s/s.hcl": shop}, "r", "s")
	p := made(t, c, false)
	for _, b := range p.Blocks {
		if b.Kind == Table && len(b.Head) > 0 && b.Head[0] == "place" {
			rows = b.Rows
		}
	}
	if len(rows) != 6 {
		t.Fatalf("%d places: %s", len(rows), p.Markdown())
	}
	return rows, p.Markdown()
}

// The figures of the table are the drawing's own, worked out by hand from whichever faces they count
// from; and turns and lines make them up.
func TestPlacesAreTheDrawings(t *testing.T) {
	for _, c := range []struct {
		zero   string
		sx, sy float64 // from the left or from the right; from the back or from the front
		says   string
	}{
		{"", 1, -1, "its left end (x, to the right), the fixed jaw (y, towards you) and its top (z, down)"},
		{`zero = { x = "left", y = "front" }`, 1, 1, "face.left (x, to the right), face.front (y, towards the column) and its top (z, down)"},
		{`zero = { x = "right", y = "back", z = "top" }`, -1, -1, "face.right (x, to the left), face.back (y, towards you) and face.top (z, down)"},
	} {
		rows, page := placed(t, c.zero, own("0.02", "4"))
		if !strings.Contains(page, c.says) {
			t.Errorf("%s: the sheet does not say %q", c.zero, c.says)
		}
		for i, r := range rows {
			sin, cos := math.Sincos(float64(i) * math.Pi / 3)
			want := [2]float64{30 + c.sx*20*cos, 30 + c.sy*20*sin}
			for a := range 2 {
				got, _ := strconv.ParseFloat(r[1+a], 64)
				if math.Abs(got-want[a]) > 0.0006 {
					t.Errorf("%s, place %s: %s, want %g", c.zero, r[0], r[1+a], want[a])
				}
				m := regexp.MustCompile(`^([0-9.]+) \+ ([0-9.]+)$`).FindStringSubmatch(r[3+a])
				if m == nil {
					t.Errorf("%s, place %s: %q", c.zero, r[0], r[3+a])
					continue
				}
				turns, _ := strconv.ParseFloat(m[1], 64)
				lines, _ := strconv.ParseFloat(m[2], 64)
				if math.Abs(turns*4+lines*0.02-want[a]) > 0.0011 {
					t.Errorf("%s, place %s: %s is not %g mm", c.zero, r[0], r[3+a], want[a])
				}
			}
		}
	}
}

// A dial in inches is read in inches: the first hole lies 50 mm from the left end, which is
// 19 turns of a tenth of an inch and 68.5 lines of a thousandth.
func TestPlacesOnAnInchDial(t *testing.T) {
	rows, page := placed(t, "", own(`"0.001 in"`, `"0.1 in"`))
	if rows[0][3] != "19 + 68.5" {
		t.Errorf("the first place reads %s", rows[0][3])
	}
	for _, want := range []string{"0.001 in a line, 0.1 in a turn", "slack 0.1 mm in x, 0.2 mm in y", "from the left and the back"} {
		if !strings.Contains(page, want) {
			t.Errorf("the sheet does not say %q", want)
		}
	}
}

// The cross slide is wound in to the middle of the limits. The spigot of the screw jack comes from ⌀8.3
// to 8 f7, which is 7.972 to 7.987 mm (ISO 286): 0.32 mm to ⌀7.98, 16 lines of 0.02 mm on a dial that
// reads the diameter.
func TestCrossSlideAimsAtTheMiddle(t *testing.T) {
	recipe, shop := "recipes/jack", "recipes/shops/club"
	page := made(t, checked(t, archive(t, recipe, shop), recipe, shop), false).Markdown()
	for _, want := range []string{
		"cross slide: in by 16 lines in all from where it touches, to ⌀7.98, the middle of its limits",
		"its dial reads the diameter, one line 0.02 mm, one turn 4 mm; come to every size winding into the cut, the slack is 0.08 mm",
	} {
		if !strings.Contains(page, want) {
			t.Errorf("the sheet does not say %q", want)
		}
	}
}

// On a level spindle the cutter's middle stands over the middle of the slot, 15 mm from the front of a
// block 30 mm wide, and its edge goes down as deep as the slot; its axis stands as high as the floor of
// the slot (bed 35, parallels 8, block 20 less 4: 59) and half of its diameter of 63.
func TestPlacesOnALevelSpindle(t *testing.T) {
	trip := tripped(t, "axis-out-of-reach")
	page := made(t, trip.checked, false).Markdown()
	for _, want := range []string{", y 15 to x ", "down: 4 mm from the top of the piece to the cutter's lowest edge", "its axis: 90.5 mm above the table"} {
		if !strings.Contains(page, want) {
			t.Errorf("the sheet does not say %q: %s", want, page)
		}
	}
}
