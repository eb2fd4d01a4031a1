package choose_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fettle/eval"
	"fettle/eval/solid"
)

// ringBlock is a block with a bore of 38 mm, 40 mm deep, off its middle, turned in four jaws; more lies in the
// bore, and is made so at last.
func ringBlock(feature, makes string) string {
	return fmt.Sprintf(`recipe "example" {
  units = "mm"
}

part "block" {
  material = "EN AW-6082"
  length   = 90
  width    = 70
  height   = 40

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  bore "ring" {
    into     = "top"
    at       = [40, 30]
    diameter = 38
  }

  hole "pilot" {
    into     = "top"
    at       = [40, 30]
    diameter = 13
  }

%s

  setup "turn" {
    machine = lathe.own
    hold    = chuck.four
    end     = "bottom"
    grip    = 15

    operation {
      makes = hole.pilot
    }
    operation {
      makes = bore.ring
    }
    operation {
      makes = %s
      by    = "planing"
    }
  }
}

lathe "own" {
  swing             = 250
  swing_over_slide  = 150
  between_centres   = 500
  nose_to_tailstock = 620
  bore              = 26
  headstock         = 350
  taper             = "MT4"
  nose              = "M39x4"
  nose_lock         = false
  speeds            = [60, 100, 160, 260, 420, 680, 1100]
  reverse           = true
  tailstock         = { taper = "MT2", travel = 80, set_over = 8 }
  top_slide         = { travel = 70, division = 0.02, turn = 2 }
  cross_slide       = { travel = 140, division = 0.02, turn = 2, reads = "diameter" }
  bed_gap           = 60
  weight            = 250
  dividing_wheel    = 40
}
`, feature, makes)
}

// lastTurn is the last operation on a lathe, which must have gone well.
func lastTurn(t *testing.T, recipe string) (*eval.PartTrace, *eval.Turn) {
	t.Helper()
	p := tracedIn(t, recipe).Parts[0]
	for i := len(p.Moments) - 1; i >= 0; i-- {
		if k := p.Moments[i].Turn; k != nil {
			if len(k.Works) == 0 || k.Works[0].Wrong != "" || k.Unplayed != "" {
				t.Fatalf("%+v %q", k.Works, k.Unplayed)
			}
			return p, k
		}
	}
	t.Fatal("nothing is turned")
	return nil, nil
}

// Forty teeth of module 1 in the bore of a block: the gaps reach 21.25 mm out round the middle of the bore, the
// first to the back.
func TestInsideTeethInABlock(t *testing.T) {
	p, k := lastTurn(t, ringBlock(`  teeth "ring" {
    on     = bore.ring
    count  = 40
    module = 1
  }`, "teeth.ring"))
	if !k.Works[0].Final || k.Choice.By != "planing" {
		t.Fatalf("%+v", k.Works)
	}
	for n := range 40 {
		for _, c := range []struct {
			r, at float64
			want  bool
		}{{19.1, 0, false}, {21.2, 0, false}, {21.3, 0, true}, {19.1, 4.5, true}, {18.9, 4.5, false}} {
			sin, cos := math.Sincos((9*float64(n) + c.at) * math.Pi / 180)
			if v := (solid.Vec{40 + c.r*sin, 30 + c.r*cos, 20}); p.End.Piece.Holds(v) != c.want {
				t.Errorf("gap %d: metal at a radius of %v, %v deg on, is %v", n, c.r, c.at, !c.want)
			}
		}
	}
	for _, f := range p.Part.Forms {
		if f.Tooth != nil && (math.Abs(f.Lo[0]-18.75) > 1e-9 || math.Abs(f.Hi[1]-51.25) > 1e-9 || f.Lo[2] != 0 || f.Hi[2] != 40) {
			t.Errorf("their room is %v to %v", f.Lo, f.Hi)
		}
	}
}

// A keyway in the same bore, planed: it lies in the bore's wall and nowhere else.
func TestKeywayInABlock(t *testing.T) {
	p, _ := lastTurn(t, ringBlock(`  keyway "key" {
    into  = bore.ring
    width = 6
    depth = 3
  }`, "keyway.key"))
	before, _ := lastTurn(t, strings.Replace(ringBlock("", "bore.ring"), "    operation {\n      makes = bore.ring\n      by    = \"planing\"\n    }\n", "", 1))
	const r = 19.0
	half := math.Asin(3 / r)
	segment := r*r*half - 3*r*math.Cos(half) // between chord and arc
	want := 40 * (6*(r+3-r*math.Cos(half)) - segment)
	if took := before.End.Piece.Volume() - p.End.Piece.Volume(); math.Abs(took-want) > 0.01*want {
		t.Errorf("the keyway takes %v mm³, %v wanted", took, want)
	}
}

// notched is the wheel of the examples, 31 mm across, with twelve notches or teeth of a form.
func notched(form, cutter string) []string {
	return []string{"    count  = 60\n    module = 0.5\n", form, "gear_cutter \"half\" {\n  module         = 0.5\n  pressure_angle = 20\n  form           = \"involute\"\n  teeth          = [55, 134]\n", cutter}
}

const angled = "angle_cutter \"half\" {\n  angle          = %g\n"

// Twelve notches 3 mm wide at the outside, 2 mm deep, their sides 60 degrees apart: from where the sides meet the
// circle, 15.5 cos asin(1.5/15.5) up, they lean in by 30 degrees.
func TestNotchThatLeans(t *testing.T) {
	for _, angle := range []float64{20, 40, 60} {
		p, _ := playedRecipe(t, sound(t, "cutter-has-no-runout", notched(fmt.Sprintf("    count  = 12\n    notch = { width = 3, depth = 2, angle = %g }\n", angle), fmt.Sprintf(angled, angle))...))
		k, f := cutOf(t, p)
		s := f.Tooth.Section
		if s == nil || math.Abs(s.Included()-angle) > 1e-9 || math.Abs(s.Opening()-3) > 1e-9 || !k.Works[0].Final || k.Works[0].Wrong != "" {
			t.Fatalf("%v degrees: %+v %q", angle, s, k.Works[0].Wrong)
		}
		tan := math.Tan(angle / 2 * math.Pi / 180)
		from := math.Sqrt(15.5*15.5 - 1.5*1.5)
		for _, z := range []float64{13.51, 14, 14.7, 15.3} {
			at := 1.5 - (from-z)*tan
			for _, n := range []float64{0, 4, 11} {
				for _, side := range []float64{-1, 1} {
					for _, c := range []struct {
						y    float64
						want bool
					}{{at - 0.02, false}, {at + 0.02, true}} {
						if v := around(62, math.Hypot(c.y, z), 30*n+math.Atan2(side*c.y, z)*180/math.Pi); k.After.Piece.Holds(v) != c.want {
							t.Errorf("%v degrees, notch %v, %v from its middle at %v: metal is %v", angle, n, side*c.y, z, !c.want)
						}
					}
				}
			}
		}
		if floor := 3 - 2*(from-13.5)*tan; math.Abs(s.Floor()-floor) > 1e-9 {
			t.Errorf("%v degrees: its floor is %v wide, not %v", angle, s.Floor(), floor)
		}
	}
}

// Twelve ratchet teeth that meet in points, 2.5 mm deep, the steep side in the radius through its tip, leaning
// under it or back from it; driving to the right it looks from top towards back.
func TestRatchetTeeth(t *testing.T) {
	for _, under := range []float64{-10, 0, 10} {
		for _, hand := range []string{"right", "left"} {
			p, _ := playedRecipe(t, sound(t, "cutter-has-no-runout", notched(fmt.Sprintf("    count  = 12\n    form = \"ratchet\"\n    hand = %q\n    notch = { depth = 2.5, angle = %g }\n", hand, under), fmt.Sprintf(angled, 60.0))...))
			k, f := cutOf(t, p)
			s := f.Tooth.Section
			if s == nil || s.Floor() != 0 || !k.Works[0].Final || k.Works[0].Wrong != "" {
				t.Fatalf("%v %s: %+v %q %q", under, hand, s, k.Works[0].Wrong, f.Wrong)
			}
			sign := map[string]float64{"right": 1, "left": -1}[hand]
			// The steep side through the tip at -15 degrees passes R sin(under) beside the axis.
			u := under * math.Pi / 180
			for _, r := range []float64{13.05, 13.5, 14, 15, 15.4} {
				at := -15 + (math.Asin(15.5*math.Sin(u)/15.5)-math.Asin(15.5*math.Sin(u)/r))*180/math.Pi
				for _, c := range []struct {
					by   float64
					want bool
				}{{0.3, false}, {-0.3, true}} {
					if v := around(62, r, sign*(at+c.by)); k.After.Piece.Holds(v) != c.want {
						t.Errorf("leaning %v, %s: at a radius of %v, %v deg from the steep side, metal is %v", under, hand, r, c.by, !c.want)
					}
				}
			}
			// The back of the next tooth: straight from the foot to the next tip.
			foot := [2]float64{13, (-15 + (u-math.Asin(15.5*math.Sin(u)/13))*180/math.Pi) * math.Pi / 180}
			fx, fy := foot[0]*math.Sin(foot[1]), foot[0]*math.Cos(foot[1])
			tx, ty := 15.5*math.Sin(math.Pi/12), 15.5*math.Cos(math.Pi/12)
			for _, x := range []float64{0.2, 0.5, 0.9} {
				y, z := fx+x*(tx-fx), fy+x*(ty-fy)
				for _, up := range []float64{0.03, -0.03} {
					if v := around(62, math.Hypot(y, z+up), sign*math.Atan2(y, z+up)*180/math.Pi); k.After.Piece.Holds(v) != (up < 0) {
						t.Errorf("leaning %v, %s: on the back at %v, %v above it, metal is %v", under, hand, x, up, up > 0)
					}
				}
			}
		}
	}
}

// Notches on a helix of 20 degrees: the middle of a gap winds once in pi d / tan 20.
func TestNotchOnAHelix(t *testing.T) {
	for _, c := range []struct {
		form, helix string
		sign        float64
	}{{"notch = { width = 3, depth = 2, angle = 30 }\n    hand = \"right\"", "20", -1}, {"notch = { width = 3, depth = 2 }\n    hand = \"left\"", "20", 1},
		{"form = \"ratchet\"\n    hand = \"left\"\n    notch = { width = 3, depth = 2 }", "20", -1}, {"form = \"ratchet\"\n    hand = \"right\"\n    notch = { width = 3, depth = 2 }", "-20", 1}} {
		p, _ := playedRecipe(t, sound(t, "cutter-has-no-runout", notched("    count  = 12\n    "+c.form+"\n    helix = "+c.helix+"\n", fmt.Sprintf(angled, 30.0))...))
		k, f := cutOf(t, p)
		lead := math.Pi * 31 / math.Tan(20*math.Pi/180)
		if math.Abs(f.Tooth.Lead-lead) > 1e-9 || f.Tooth.Lean*c.sign > 0 || len(k.Works[0].Took) < 12 {
			t.Fatalf("%s: %+v %q", c.form, f.Tooth, f.Wrong)
		}
		for _, x := range []float64{60.5, 62, 63.5} {
			turned := c.sign * 360 * (x - 62) / lead
			if v := around(x, 15.3, turned); k.After.Piece.Holds(v) {
				t.Errorf("%s: metal in a gap at %v", c.form, x)
			}
			if v := around(x, 15.3, turned+15); !k.After.Piece.Holds(v) {
				t.Errorf("%s: no tooth at %v", c.form, x)
			}
		}
	}
}
