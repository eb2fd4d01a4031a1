package choose_test

import (
	"math"
	"strings"
	"testing"

	"fettle/eval"
)

// A barrel of 20 mm with a scale of 20 lines of 1 mm from 5 mm beside its right end to the left, between a
// dividing head's chuck and nothing, or in the chuck of a lathe.
const barrel = `recipe "barrel" {
  units = "mm"
}

part "barrel" {
  material = "mild steel"
  diameter = 20
  length   = 80

  blank {
    stock = stock.own
    over  = { left = 0, right = 0, outside = 0 }
  }

  graduations "scale" {
    on      = "outside"
    from    = "back"
    count   = 20
    spacing = "1 ±0.01"
    zero_at = { right = 5 }
    runs    = "left"
    lines   = { "1" = 3, "5" = 4.5, "10" = 6 }
  }

  setup "rule" {
    machine   = mill.bench
    hold      = dividing_head.own
    carries   = chuck.three
    end       = "left"
    stick_out = 40

    operation {
      makes = graduations.scale
      tool  = threading_tool.point
    }
  }
}

threading_tool "point" {
  angle = 60
  shank = 6
  of    = "HSS"
}

stock "own" {
  material = "mild steel"
  round    = 20
  lengths  = [500]
}

dividing_head "own" {
  ratio         = 40
  centre_height = 80
  nose          = "M39x4"
}
`

// The point goes down over the axis at each line, 75, 74, ... 55 mm from the left end, the line at the back of
// the part turned up; a line of 3 mm is an arc of 3/10 of a radian.
func TestRuledAlong(t *testing.T) {
	p, _ := playedRecipe(t, barrel)
	f := p.Part.Forms[0]
	if f.Wrong != "" || f.Scale == nil || f.Scale.Ruled == nil || f.Scale.Ruled.Round == nil {
		t.Fatalf("%q %+v", f.Wrong, f.Scale)
	}
	r := f.Scale.Ruled
	if r.First != 75 || r.Way != -1 || r.Round.Angle != 90 || math.Abs(r.Round.Turns(3)-54/math.Pi) > 1e-9 {
		t.Errorf("%+v %+v", r, r.Round)
	}
	k := p.Moments[len(p.Moments)-1].Cut
	w := k.Works[0]
	if w.Wrong != "" || !w.Facing || w.Turn == nil || len(w.Moves) == 0 || len(w.Took) != 0 {
		t.Fatalf("%+v", w)
	}
	first, last := w.Moves[0].To, w.Moves[len(w.Moves)-1].To
	start := k.Hold.Pose.Point([3]float64{75, 0, 0})
	if math.Abs(first[0]-start[0]) > 1e-9 || math.Abs(first[0]-last[0]-20) > 1e-9 || math.Abs(first[2]-start[2]-10) > 1e-9 || math.Abs(first[1]-start[1]) > 1e-9 {
		t.Errorf("the lines go from %v to %v", first, last)
	}
	if up := w.Turn.Dir([3]float64{0, 1, 0}); up[2] < 1-1e-9 {
		t.Errorf("the back of the part looks to %v", up)
	}
}

// On a lathe the point stands in the post, and no dividing wheel is wanted; the top slide sets the lines.
func TestRuledAlongOnALathe(t *testing.T) {
	recipe := strings.NewReplacer("mill.bench", "lathe.centre", "dividing_head.own\n", "chuck.three\n", "    carries   = chuck.three\n", "").Replace(barrel)
	p, _ := playedRecipe(t, recipe)
	k := p.Moments[len(p.Moments)-1].Turn
	if k == nil || k.Works[0].Wrong != "" || k.Works[0].X0 != 55 || k.Works[0].X1 != 75 {
		t.Fatalf("%+v", k)
	}
	if r, ok := k.Ruling(p.Part.Forms[0]); !ok || r.Line != 0.02 || r.Off > 1e-9 {
		t.Errorf("%+v", r)
	}
	if !p.End.Features[0].Finished {
		t.Error("the scale is not made")
	}
}

// What does not lie so is told of.
func TestRuledAlongWrong(t *testing.T) {
	for _, c := range []struct{ old, new, want string }{
		{`from    = "back"`, `from    = "left"`, "from is top, back, bottom or front"},
		{`zero_at = { right = 5 }`, `zero_at = { right = 65 }`, "reach from -5 to 15 mm, and the face from 0 to 80 mm"},
		{`zero_at = { right = 5 }`, `zero_at = 30`, "a bare zero_at is an angle"},
		{`on      = "outside"`, `on      = "right"`, "an outside or a flat of this part"},
		{`"10" = 6`, `"10" = 64`, "its longest lines are 64 mm"},
	} {
		p, _ := playedRecipe(t, strings.Replace(barrel, c.old, c.new, 1))
		var f *eval.Form = p.Part.Forms[0]
		if !strings.Contains(f.Wrong, c.want) {
			t.Errorf("%s: %q, not %q", c.new, f.Wrong, c.want)
		}
	}
}
