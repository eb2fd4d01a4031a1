package rules_test

import (
	"math"
	"testing"

	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

const wheelOnShaft = `recipe "wheel" {
  units = "mm"
}

part "shaft" {
  material = "mild steel"
  diameter = 12
  length   = 80

  blank {
    over = { left = 0, right = 0, outside = 0 }
  }

  outside "seat" {
    from     = 50
    to       = 80
    diameter = "10 h6"
  }

  setup "turn" {
    end = "left"

    operation {
      makes = outside.seat
    }
  }
}

part "hub" {
  material = "brass"
  diameter = 40
  length   = 20

  blank {
    over = { left = 0, right = 0, outside = 0 }
  }

  hole "seat" {
    into     = "left"
    diameter = "10 H7"
  }

  outside "rim" {
    from     = 12
    to       = 20
    diameter = 38
  }

  setup "bore" {
    end = "right"

    operation {
      makes = hole.seat
    }
  }
}

fit "seat" {
  hole  = part.hub.hole.seat.diameter
  shaft = part.shaft.outside.seat.diameter
  wants = "H7/h6"
}

assembly "both" {
  of = [part.shaft, part.hub]

  setup "true" {
    end = "left"

    operation {
      makes = part.hub.outside.rim
    }
  }
}
`

// A wheel on its shaft turns as one: its mouth stands against the shaft's shoulder, the half section is the
// larger outside with no hole where the shaft stands in it, and what is turned on the wheel is gone from the
// wheel alone when the two are looked at by themselves. Volumes: arithmetic.
func TestWheelOnShaft(t *testing.T) {
	b, slips, err := schema.Load(text.Archive{"recipe/recipe.hcl": []byte(wheelOnShaft), "shop/shop.hcl": []byte(rules.ExampleShop)}, "recipe", "shop")
	if err != nil || len(slips) > 0 {
		t.Fatal(err, slips)
	}
	trace, _, _ := choose.Choose(b, choose.Effort)
	if len(trace.Assembled) != 1 {
		t.Fatalf("%d assemblies are made", len(trace.Assembled))
	}
	a := trace.Assembled[0]
	for _, c := range []struct{ x, out float64 }{{10, 6}, {49, 6}, {51, 20}, {69, 20}, {75, 5}} {
		z := a.Start.Profile.At(c.x)
		if z == nil || math.Abs(z.Most()-c.out) > 1e-6 || z.In0 > 1e-6 {
			t.Errorf("at %v mm: %+v, want a radius of %v and no hole", c.x, z, c.out)
		}
	}
	turned := 0
	for _, m := range a.Moments {
		if m.Turn != nil && m.Turn.Unplayed == "" {
			turned++
		}
	}
	if turned != 1 {
		t.Errorf("%d operations are turned", turned)
	}
	want := map[string]float64{
		"shaft": math.Pi / 4 * (50*12*12 + 30*10*10),
		"hub":   math.Pi / 4 * (12*40*40 + 8*38*38 - 20*10*10),
	}
	for _, p := range trace.Parts {
		if v := p.End.Piece.Volume(); math.Abs(v-want[p.Part.Label]) > 1e-3*want[p.Part.Label] {
			t.Errorf("%s: %.1f mm³ are left, want %.1f", p.Part.Label, v, want[p.Part.Label])
		}
		if z := p.End.Profile.At(15); p.Part.Label == "hub" && (z == nil || math.Abs(z.Most()-19) > 1e-6 || math.Abs(z.In0-5) > 1e-6) {
			t.Errorf("the hub by itself has %+v at its rim", z)
		}
	}
}
