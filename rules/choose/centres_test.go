package choose_test

import (
	"math"
	"testing"

	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

// A shaft between the centres of a dividing head and its footstock, with a flat milled into it.
const betweenCentres = `recipe "centres" {
  units = "mm"
}

part "shaft" {
  material = "mild steel"
  diameter = 16
  length   = 80

  blank {
    over = { left = 0, right = 0, outside = 0 }
  }

  outside "body" {
    diameter = 16
  }

  centre_hole "left" {
    into = "left"
    size = 2
  }

  centre_hole "right" {
    into = "right"
    size = 2
  }

  flat "key" {
    on    = outside.body
    from  = 30
    to    = 50
    depth = 2
  }

  setup "one end" {
    machine = lathe.centre
    hold    = chuck.three
    end     = "left"
    grip    = 20
    operation {
      makes = centre_hole.right
    }
  }

  setup "other end" {
    machine = lathe.centre
    hold    = chuck.three
    end     = "right"
    grip    = 20
    operation {
      makes = centre_hole.left
    }
  }

  setup "flat" {
    machine = mill.upright
    hold    = "centres"
    operation {
      makes = flat.key
    }
  }
}
`

// The head with the footstock is chosen and a carrier that holds the shaft, and the flat takes a segment of the
// circle over its length: r² acos(a/r) - a √(r² - a²) with a the
// distance of the flat from the axis, 14.506 mm² at a radius of 8 and a depth of 2 mm.
func TestBetweenCentresUnderAMill(t *testing.T) {
	b, slips, err := schema.Load(withClub(t, text.Archive{"r/shaft.hcl": []byte(betweenCentres)}), "r", "recipes/shops/club")
	if err != nil || len(slips) > 0 {
		t.Fatal(err, slips)
	}
	tr, _, _ := choose.Choose(b, choose.Effort)
	held, cut := false, false
	for _, m := range tr.Parts[0].Moments {
		if h := m.Hold; h != nil {
			held = true
			d := h.Choice.Divided
			switch {
			case h.Unplayed != "":
				t.Fatal(h.Unplayed)
			case d == nil || d.Head == nil || !d.Head.Footstock.Said || !d.Foot:
				t.Error("it does not stand between a dividing head and its footstock")
			case h.Carried == nil || !h.Carried.Choice.Centres || h.Carried.Choice.Driver == nil:
				t.Error("nothing drives it")
			}
		}
		if k := m.Cut; k != nil {
			cut = true
			if k.Unplayed != "" {
				t.Fatal(k.Unplayed)
			}
			off := k.Before.Piece.Volume() - k.After.Piece.Volume()
			want := 20 * (8*8*math.Acos(6.0/8) - 6*math.Sqrt(8*8-6*6))
			if math.Abs(off-want) > 0.01*want {
				t.Errorf("%g mm³ come off, not %g", off, want)
			}
		}
	}
	if !held || !cut {
		t.Error("the flat is not milled")
	}
}
