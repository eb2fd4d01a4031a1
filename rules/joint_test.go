package rules_test

import (
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

// What is made on the first part once a bush stands in it, flush, is made on paper after the
// part's own work; what is made on the bush is listed as not made, and nobody says that its bore is
// never brought to size.
func TestAssemblyPlayed(t *testing.T) {
	for _, c := range []struct {
		long   string
		played bool
	}{{"12", true}, {"14", false}} {
		files := text.Archive{"recipe/recipe.hcl": []byte(strings.ReplaceAll(plateAndBush, "LONG", c.long)), "shop/shop.hcl": []byte(rules.ExampleShop)}
		b, slips, err := schema.Load(files, "recipe", "shop")
		if err != nil || len(slips) > 0 {
			t.Fatal(err, slips)
		}
		trace, vs, _ := choose.Choose(b, choose.Effort)
		res := rules.Judge(trace, vs, "")
		var last string
		for _, p := range trace.Parts {
			for _, m := range p.Moments {
				if m.Cut != nil && p.Part.Label == "plate" {
					last = m.Cut.Spot.String()
				}
			}
		}
		if got := last == "part plate › assembly both setup oil hole › part.plate.hole.oil"; got != c.played {
			t.Errorf("bush %s mm long: the last cut of the plate is %s", c.long, last)
		}
		unplayed := 0
		for _, u := range res.Unplayed {
			if u.Spot.SetUp == "assembly both" {
				unplayed++
			}
		}
		if want := map[bool]int{true: 1, false: 2}[c.played]; unplayed != want {
			t.Errorf("bush %s mm long: %d set-ups of the assembly are listed as not made, want %d: %v", c.long, unplayed, want, res.Unplayed)
		}
		for _, f := range res.Findings {
			if f.Rule == "feature-never-made" && strings.Contains(f.Says, "way") || f.Rule == "feature-never-made" && strings.Contains(f.Says, "oil") {
				t.Errorf("bush %s mm long: %s", c.long, f.Says)
			}
		}
	}
}
