package choose_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"fettle/eval"
	"fettle/eval/solid"
	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

// playedRecipe gives the trace of the first part of a recipe in the shop of the examples, and what
// was chosen.
func playedRecipe(t *testing.T, recipe string) (*eval.PartTrace, []choose.Choice) {
	t.Helper()
	b, slips, err := schema.Load(text.Archive{"r/a.hcl": []byte(recipe), "s/a.hcl": []byte(rules.ExampleShop)}, "r", "s")
	if err != nil || len(slips) > 0 {
		t.Fatal(err, slips)
	}
	tr, _, cs := choose.Choose(b, choose.Effort)
	return tr.Parts[0], cs
}

func sound(t *testing.T, rule string, pairs ...string) string {
	t.Helper()
	s := rules.Find(rule).Sound
	for i := 0; i+1 < len(pairs); i += 2 {
		if !strings.Contains(s, pairs[i]) {
			t.Fatalf("%q is not in the example of %s", pairs[i], rule)
		}
		s = strings.ReplaceAll(s, pairs[i], pairs[i+1])
	}
	return s
}

func around(x, r, degrees float64) solid.Vec {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return solid.Vec{x, r * sin, r * cos} // from top towards back
}

// Sixty gaps of module 0.5 in a rim of radius 15.5, 4 mm wide: 2.25 x 0.5 = 1.125 mm deep, the first
// towards top, 6 deg apart. The cutter, 40 mm across and 4 mm wide, stands in front with the middle of
// its width at the height of the axis.
func TestTeethAreCut(t *testing.T) {
	for _, first := range []float64{0, 2.5} {
		p, _ := playedRecipe(t, sound(t, "no-circle-for-it", "module = 0.5\n    ", "module = 0.5\n    start = "+fig(first)+"\n    "))
		for i := range 60 {
			at := first + 6*float64(i)
			if p.End.Piece.Holds(around(62, 15.4, at)) || p.End.Piece.Holds(around(62, 14.4, at)) {
				t.Fatalf("no gap at %v deg", at)
			}
			if !p.End.Piece.Holds(around(62, 14.3, at)) || !p.End.Piece.Holds(around(62, 15.4, at+3)) {
				t.Fatalf("no floor at %v deg, or no tooth at %v", at, at+3)
			}
		}
		if !p.End.Piece.Holds(around(59, 7.9, first)) || !p.Part.Feature(p.End, p.Part.Forms[2]).Finished {
			t.Error("the hub was cut into, or the teeth are not finished")
		}
		k := p.Moments[len(p.Moments)-1].Cut
		if k == nil || len(k.Works) != 1 || len(k.Works[0].Moves) != 2 {
			t.Fatalf("the cut is not played: %+v", k)
		}
		m := k.Works[0].Moves[1]
		if math.Abs(m.From[1]+15.5-1.125+20) > 1e-9 || math.Abs(m.From[2]-78) > 1e-9 {
			t.Errorf("the cutter runs at %v", m.From)
		}
		if d := math.Abs(m.From[0] - m.To[0]); math.Abs(d-4) > 1e-9 || m.From[0] < m.To[0] {
			t.Errorf("it goes from %v to %v", m.From, m.To)
		}
	}
}

func fig(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// What is chosen to turn the piece on by: 40/60 = 12/18; 90/60 is a turn and a half; 24 on the direct
// plate; 61 by wheels; a table of 72 to 1 by its dial.
func TestIndexIsChosen(t *testing.T) {
	for _, c := range []struct {
		pairs []string
		want  string
	}{
		{nil, "dividing_plate.own, 12 holes in the circle of 18"},
		{[]string{"ratio         = 40", "ratio         = 90"}, "dividing_plate.own, 1 turn and 10 holes in the circle of 20"},
		{[]string{"count  = 60", "count  = 40"}, "1 turn of the crank in any circle"},
		{[]string{"count  = 60", "count  = 24", "circles = [15, 16, 17, 18, 19, 20]", "circles = [37]"}, "direct, 1 hole in the circle of 24"},
		{[]string{"      makes = teeth.cut\n", "      makes = teeth.cut\n      index = { count = 60, circle = 15 }\n"}, "dividing_plate.own, 10 holes in the circle of 15"},
		{[]string{"      makes = teeth.cut\n", "      makes = teeth.cut\n      index = [0, 90]\n"}, "10 turns of the crank in any circle"},
		{[]string{"dividing_head.own\n", "rotary_table.own\n    axis = \"level\"\n", "gear_cutter \"half\"",
			"rotary_table \"own\" {\n  ratio = 72\n  stands_up = true\n  centre_height = 80\n  dial = { division = 0.1 }\n}\n\ngear_cutter \"half\""}, "1 turn and 1 deg on the dial"},
		{[]string{"count  = 60", "count  = 7", "dividing_head.own\n", "rotary_table.own\n    axis = \"level\"\n", "gear_cutter \"half\"",
			"rotary_table \"own\" {\n  ratio = 72\n  stands_up = true\n  centre_height = 80\n  dial = { division = 0.1 }\n}\n\ngear_cutter \"half\""},
			// 360/7 = 51.428571 deg, ten turns of 5 deg and 1.4 of the dial; sevenths of a line are never nearer than 3/7 x 0.1
			"10 turns and 1.4 deg on the dial, read each from the first place: within 0.043 deg"},
	} {
		_, cs := playedRecipe(t, sound(t, "no-circle-for-it", c.pairs...))
		var got []string
		for _, x := range cs {
			if x.What == "index" {
				got = append(got, x.Item)
			}
		}
		if len(got) != 1 || got[0] != c.want {
			t.Errorf("%v: %q, not %q", c.pairs, got, c.want)
		}
	}
}

// A line every 7.2 deg of 50: clockwise seen from the right is from top towards back; from the left,
// or anticlockwise, the other way. An arc has a line at each end.
func TestLinesStand(t *testing.T) {
	for _, c := range []struct {
		more  string
		lines int
		first float64
		step  float64
	}{
		{"", 50, 0, 7.2}, {"runs = \"anticlockwise\"", 50, 0, -7.2}, {"seen_from = \"left\"", 50, 0, -7.2},
		{"runs = \"anticlockwise\"\n    seen_from = \"left\"", 50, 0, 7.2}, {"zero_at = 90", 50, 90, 7.2}, {"over = 100", 51, 0, 2},
	} {
		p, _ := playedRecipe(t, sound(t, "figures-do-not-fit", `    from  = "right"`, "    from  = \"right\"\n    "+c.more))
		f := p.Part.Forms[1]
		if f.Wrong != "" || f.Scale == nil || len(f.Spins) != c.lines {
			t.Fatalf("%s: %+v", c.more, f)
		}
		for i, got := range f.Spins {
			want := math.Mod(c.first+float64(i)*c.step+720, 360)
			if math.Abs(got-want) > 1e-9 {
				t.Fatalf("%s: line %d at %v, not %v", c.more, i, got, want)
			}
		}
		if f.Scale.Edge != 40 || f.Scale.Inward != -1 || f.Lo[0] != 35 {
			t.Errorf("the lines begin at %v and reach to %v", f.Scale.Edge, f.Lo[0])
		}
		k := p.Moments[len(p.Moments)-1].Cut
		if k.Choice.By != "engraving" || len(k.Works) != 1 || len(k.Works[0].Moves) != 1 || len(k.Works[0].Took) != 0 {
			t.Errorf("%s: %+v", k.Choice.By, k.Works)
		} else if m := k.Works[0].Moves[0]; math.Abs(m.From[2]-90) > 1e-9 || math.Abs(math.Abs(m.From[0]-m.To[0])-6) > 1e-9 {
			t.Errorf("the point goes %+v", m)
		}
	}
}

// A part that says no diameter has that over the tips of its teeth: 0.5 x 62.
func TestDiameterFromTeeth(t *testing.T) {
	p, _ := playedRecipe(t, `recipe "example" { units = "mm" }
part "wheel" {
  material = "brass"
  length   = 6
  teeth "cut" {
    count  = 60
    module = 0.5
  }
}
`)
	if p.Part.Unplayed != "" || math.Abs(p.Part.Radius()-15.5) > 1e-9 || p.Part.Forms[0].Wrong != "" {
		t.Errorf("%q, %v, %q", p.Part.Unplayed, p.Part.Radius(), p.Part.Forms[0].Wrong)
	}
}

// Notches with parallel sides are cut by a slot drill place by place: 4 of 3 mm, 2 mm deep in radius 10.
func TestNotchesByASlotDrill(t *testing.T) {
	p, _ := playedRecipe(t, sound(t, "no-circle-for-it", "count  = 60\n    module = 0.5", "count  = 4\n    notch  = { width = 3, depth = 2 }"))
	for i := range 4 {
		at := 90 * float64(i)
		if p.End.Piece.Holds(around(62, 13.6, at)) || !p.End.Piece.Holds(around(62, 13.4, at)) || !p.End.Piece.Holds(around(62, 15, at+45)) {
			t.Errorf("the notch at %v deg", at)
		}
	}
	k := p.Moments[len(p.Moments)-1].Cut
	if k.Choice.Tool.Path() != "slot_drill.two[3]" || !p.Part.Feature(p.End, p.Part.Forms[2]).Finished {
		t.Errorf("made with %s", k.Choice.Tool.Path())
	}
}

// A plate clamped on a rotary table, seven holes on a circle over its middle: the seat is 80 + 5 mm above
// the machine's table, a hole is drilled at each of the seven places, and none needs the dials of the mill.
func TestPlateOnRotaryTable(t *testing.T) {
	p, cs := playedRecipe(t, `recipe "example" { units = "mm" }
part "flange" {
  material = "brass"
  length   = 60
  width    = 60
  height   = 8
  blank { over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 } }
  hole "bolt" {
    into     = "top"
    at       = { left = 30, front = 30 }
    diameter = 4
    around   = { count = 7, pcd = 40 }
  }
  setup "circle" {
    hold    = [clamps.set, rotary_table.own]
    up      = "top"
    back    = "back"
    packing = { under = 5 }
    clamps  = [{ at = { left = 5, front = 5 }, tip = 10 }]
    operation {
      makes = hole.bolt
    }
  }
}
rotary_table "own" {
  ratio    = 90
  height   = 80
  diameter = 150
  dial     = { division = 0.1 }
}
`)
	h := p.Moments[0].Hold
	if seat, ok := h.Seat.Get(); !ok || seat != 85 || h.Lo[2] != 85 || h.Unplayed != "" {
		t.Errorf("it sits at %v, its metal from %v: %s", h.Seat, h.Lo[2], h.Unplayed)
	}
	for i := range 7 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 7)
		if p.End.Piece.Holds(solid.Vec{30 + 20*cos, 30 + 20*sin, 4}) {
			t.Errorf("hole %d is not there", i)
		}
	}
	for _, c := range cs {
		if c.What == "index" {
			if c.Item != "12 turns and 3.4 deg on the dial, read each from the first place: within 0.043 deg" {
				t.Error(c.Item)
			}
			return
		}
	}
	t.Error("no index is listed")
}
