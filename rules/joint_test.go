package rules_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fettle/eval"
	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/drawing"
	"fettle/schema/text"
)

// Screws are written as they are asked for over a counter. Pitches: ISO 261, ISO 262.
func TestParseScrew(t *testing.T) {
	for _, c := range []struct {
		s, thread string
		length    float64 // 0: none
		ok        bool
	}{
		{"M5x25", "M5", 25, true},
		{"M5 x 25", "M5", 25, true},
		{"M5×25", "M5", 25, true},
		{"M6x0.75", "M6x0.75", 0, true},
		{"M6x0.75x20", "M6x0.75", 20, true},
		{"M6x5", "M6", 5, true},
		{"M10x1", "M10x1", 0, true},
		{"M5", "M5", 0, true},
		{"M6 LH x 20", "M6 LH", 20, true},
		{"2 BA x 1/2 in", "2 BA", 12.7, true},
		{"1/4-20 UNC x 1 in", "1/4-20 UNC", 25.4, true},
		{"25", "", 0, false},
		{"x", "", 0, false},
		{"", "", 0, false},
		{"M5xM5", "", 0, false},
	} {
		th, l, ok := eval.ParseScrew(c.s, drawing.Millimetre)
		switch {
		case ok != c.ok:
			t.Errorf("%q: read is %v", c.s, ok)
		case ok && (th.String() != c.thread || l.Or(0) != c.length):
			t.Errorf("%q is %s, %v long; want %s, %v", c.s, th, l.Or(0), c.thread, c.length)
		}
	}
}

const plateAndBush = `recipe "example" {
  units = "mm"
}

part "plate" {
  material = "mild steel"
  length   = 40
  width    = 30
  height   = 12

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  hole "seat" {
    into     = "top"
    at       = { left = 20, front = 15 }
    diameter = "12 H7"
  }

  hole "oil" {
    into     = "top"
    at       = { left = 6, front = 15 }
    diameter = 4
  }

  setup "seat" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 6

    operation {
      makes = hole.seat
    }
  }
}

part "bush" {
  material = "bronze"
  diameter = "12 s6"
  length   = LONG

  bore "way" {
    into     = "right"
    diameter = "8 H7"
  }

  setup "turn" {
    end = "left"

    operation {
      makes  = bore.way
      leaves = 0.3
    }
  }
}

fit "bush" {
  hole  = part.plate.hole.seat.diameter
  shaft = part.bush.diameter
  wants = "H7/s6"
}

assembly "both" {
  of        = [part.plate, part.bush]
  joined_by = [fit.bush]

  setup "oil hole" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 6

    operation {
      makes = part.plate.hole.oil
    }
  }

  setup "ream" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 6

    operation {
      makes = part.bush.bore.way
    }
  }
}
`

// What is made once a bush stands in a plate is made on paper on the two together, whichever it is of,
// and each keeps what was cut from it. A bush that is longer than its hole is deep stands nowhere until
// a place block says where.
func TestAssemblyPlayed(t *testing.T) {
	for _, c := range []struct {
		long, place string
		played      bool
	}{
		{"12", "", true},
		{"14", "", false},
		{"14", "  place {\n    part = part.bush\n    at   = [20, 15, -1]\n  }\n", true},
	} {
		recipe := strings.ReplaceAll(plateAndBush, "LONG", c.long)
		recipe = strings.Replace(recipe, "  joined_by = [fit.bush]\n", "  joined_by = [fit.bush]\n\n"+c.place, 1)
		files := text.Archive{"recipe/recipe.hcl": []byte(recipe), "shop/shop.hcl": []byte(rules.ExampleShop)}
		b, slips, err := schema.Load(files, "recipe", "shop")
		if err != nil || len(slips) > 0 {
			t.Fatal(err, slips)
		}
		trace, vs, _ := choose.Choose(b, choose.Effort)
		res := rules.Judge(trace, vs, "")
		var cuts []string
		for _, p := range trace.Assembled {
			for _, m := range p.Moments {
				if m.Cut != nil && m.Cut.Unplayed == "" {
					cuts = append(cuts, m.Cut.Spot.String())
				}
			}
		}
		want := ""
		if c.played {
			want = "part both › setup oil hole › part.plate.hole.oil; part both › setup ream › part.bush.bore.way"
		}
		if got := strings.Join(cuts, "; "); got != want {
			t.Errorf("bush %s mm long %s: made together: %s", c.long, c.place, got)
		}
		unplayed := 0
		for _, u := range res.Unplayed {
			if u.Spot.SetUp == "assembly both" {
				unplayed++
			}
		}
		if want := map[bool]int{true: 0, false: 2}[c.played]; unplayed != want {
			t.Errorf("bush %s mm long: %d set-ups of the assembly are listed as not made, want %d: %v", c.long, unplayed, want, res.Unplayed)
		}
		for _, f := range res.Findings {
			if f.Rule == "feature-never-made" && strings.Contains(f.Says, "way") || f.Rule == "feature-never-made" && strings.Contains(f.Says, "oil") {
				t.Errorf("bush %s mm long: %s", c.long, f.Says)
			}
		}
		if !c.played {
			continue
		}
		// Of the bush a ring is left, of the plate a block with two holes: arithmetic.
		for _, p := range trace.Parts {
			v := p.End.Piece.Volume()
			long := 12.0
			if c.long == "14" {
				long = 14
			}
			want := map[string]float64{"plate": 40*30*12 - math.Pi/4*12*(12*12+4*4), "bush": math.Pi / 4 * long * (12*12 - 8*8)}[p.Part.Label]
			if math.Abs(v-want) > 1e-4*want {
				t.Errorf("%s: %.3f mm³ are left, want %.3f", p.Part.Label, v, want)
			}
		}
	}
}

// Parts drilled together: a pair of cheeks, one on the other by a place block and a screw, gets one hole
// through both; taken apart again each has its own, the tool goes as deep as both are thick, and work of
// a part that comes after the assembly begins on what it has become there.
func TestDrilledTogether(t *testing.T) {
	cheek := func(name, metal string, high int, own, after string) string {
		return fmt.Sprintf(`
part %q {
  material = %q
  length   = 60
  width    = 30
  height   = %d

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  hole "pivot" {
    into     = "top"
    at       = { left = 15, front = 15 }
    diameter = 6
  }

  hole "screw" {
    into = "top"
    at   = { left = 45, front = 15 }
    %s
  }

  setup "screw" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 10

    operation {
      makes = hole.screw
    }
  }
%s}
`, name, metal, high, own, after)
	}
	later := `
  setup "later" {
    after     = [assembly.pair.setup.drill]
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 10

    operation {
      makes = face.top
    }
  }
`
	recipe := `recipe "cheeks" {
  units = "mm"
}
` + cheek("one", "mild steel", 8, "diameter = 4.5", later) + cheek("two", "brass", 30, `thread = { size = "M4" }`, "") + `
screw "s" {
  size    = "M4x12"
  through = part.one.hole.screw
  into    = part.two.hole.screw
}

assembly "pair" {
  of    = [part.one, part.two]
  apart = true

  place {
    part = part.two
    at   = [0, 0, -30]
  }

  setup "drill" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 10

    operation {
      makes = [part.one.hole.pivot, part.two.hole.pivot]
    }
  }
}
`
	files := text.Archive{"recipe/recipe.hcl": []byte(recipe), "shop/shop.hcl": []byte(rules.ExampleShop)}
	b, slips, err := schema.Load(files, "recipe", "shop")
	if err != nil || len(slips) > 0 {
		t.Fatal(err, slips)
	}
	trace, _, _ := choose.Choose(b, choose.Effort)
	tap := math.Pi / 4 * 3.3 * 3.3 * 30
	for _, p := range trace.Parts {
		v := p.End.Piece.Volume()
		want := map[string]float64{"one": 60*30*8 - math.Pi/4*8*(4.5*4.5+6*6), "two": 60*30*30 - tap - math.Pi/4*30*6*6}[p.Part.Label]
		if math.Abs(v-want) > 1e-4*want {
			t.Errorf("%s: %.3f mm³ are left, want %.3f", p.Part.Label, v, want)
		}
		for i, f := range p.Part.Forms {
			if !p.End.Features[i].Finished {
				t.Errorf("%s of %s is not finished", f.Name(), p.Part.Label)
			}
		}
		for _, m := range p.Moments {
			if m.Hold != nil && m.Hold.Spot.SetUp == "setup later" && !m.Hold.Before.Features[0].Finished {
				t.Error("the later set-up begins without the hole that was drilled together")
			}
		}
	}
	if len(trace.Assembled) != 1 {
		t.Fatalf("%d assemblies are made", len(trace.Assembled))
	}
	for _, m := range trace.Assembled[0].Moments {
		if m.Cut == nil {
			continue
		}
		if w := m.Cut.Works; len(w) != 2 || w[0].Passed != 0 || math.Abs(w[1].Passed-8) > 1e-6 {
			t.Errorf("the second hole is reached past %+v", w)
		}
	}
	if rings := trace.Rings(); len(rings) > 0 {
		t.Errorf("work waits for itself: %v", rings)
	}
}
