package choose_test

import (
	"math"
	"testing"

	"fettle/eval/solid"
)

const leaningHead = `
dividing_plate "own" {
  circles = [15, 16, 17, 18, 19, 20]
}

dividing_head "own" {
  ratio         = 40
  plates        = [dividing_plate.own]
  direct        = [24]
  centre_height = 80
  nose          = "M39x4"
  stands_up     = true
  tilts         = [-5, 95]
  tilt_to_nose  = 10
  footstock     = { centre_height = 80 }
}
`

// Five holes of 3 mm square to a cone of 40 degrees, 10 mm from its large end, the head's axis at half
// that: the cone is 30 mm less 20 tan 20 deg across there, and 4 mm below its surface each hole is open
// on its own axis and the metal stands 2 mm to either side of that.
func TestHolesSquareToACone(t *testing.T) {
	p, _ := playedRecipe(t, `recipe "example" {
  units = "mm"
}

part "cone" {
  material = "brass"
  diameter = 30
  length   = 60

  blank {
    over = { left = 0, right = 0, outside = 0 }
  }

  taper "nose" {
    on        = "outside"
    from      = 40
    angle     = 40
    large_end = "left"
  }

  hole "pins" {
    into     = taper.nose
    at       = [50, 0]
    diameter = 3
    depth    = 5
    around   = { count = 5 }
  }

  setup "turn" {
    machine = lathe.centre
    hold    = chuck.three
    end     = "left"
    grip    = 25

    operation {
      makes = taper.nose
    }
  }

  setup "drill" {
    machine = mill.bench
    hold    = dividing_head.own
    carries = chuck.three
    axis    = 20
    end     = "left"
    grip    = 25

    operation {
      makes = hole.pins
    }
  }
}
`+leaningHead)
	sin, cos := math.Sincos(20 * math.Pi / 180)
	r := 15 - 10*sin/cos
	for i := range 5 {
		at := func(deep, aside float64) solid.Vec {
			return around(50-deep*sin+aside*cos, r-deep*cos-aside*sin, 72*float64(i))
		}
		if p.End.Piece.Holds(at(4, 0)) || p.End.Piece.Holds(at(4.9, 1.4)) {
			t.Errorf("hole %d is not there", i+1)
		}
		if !p.End.Piece.Holds(at(4, 2)) || !p.End.Piece.Holds(at(4, -2)) || !p.End.Piece.Holds(at(6.5, 0)) {
			t.Errorf("hole %d takes more than it should", i+1)
		}
	}
	k := p.Moments[len(p.Moments)-1].Cut
	for _, w := range k.Works {
		d := w.Moves[0].To.Sub(w.Moves[0].From).Unit()
		if w.Wrong != "" || math.Abs(d[2]+1) > 1e-9 {
			t.Fatalf("the drill goes %v: %s", d, w.Wrong)
		}
	}
	// The jaw face lies 10 mm from the nose of the head, 85 + 25 mm of chuck and jaws, up a slope of 20
	// degrees from the centre height of 80 mm; the mouth 15 mm along the axis and r off it.
	want := 80 + (10+110)*sin + (50-25)*sin + r*cos
	tip := k.Works[0].Moves[0].To[2]
	if deep := want - tip; math.Abs(deep-(5+k.Works[0].Point)) > 1e-6 {
		t.Errorf("the tip stands %v mm below the mouth", deep)
	}
}

// A block of 80 x 30 x 30 in four jaws on a head: a slot in its top, one in its front, a bevel of 4 mm at
// its end below with the axis at 45 degrees. Each is milled from above, the piece turned between.
func TestBlockOnAHead(t *testing.T) {
	p, _ := playedRecipe(t, `recipe "example" {
  units = "mm"
}

part "block" {
  material = "EN AW-6082"
  length   = 80
  width    = 30
  height   = 30

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  slot "a" {
    into  = "top"
    at    = { front = 15 }
    width = 6
    depth = 4
    from  = { right = 30 }
    to    = { right = 0 }
  }

  slot "b" {
    into  = "front"
    at    = { bottom = 15 }
    width = 6
    depth = 4
    from  = { right = 30 }
    to    = { right = 0 }
  }

  chamfer "bevel" {
    on   = [face.right, face.bottom]
    size = 4
  }

  setup "level" {
    machine = mill.bench
    hold    = dividing_head.own
    carries = chuck.four
    end     = "left"

    operation {
      makes = [slot.a, slot.b]
    }
  }

  setup "lean" {
    machine = mill.bench
    hold    = dividing_head.own
    carries = chuck.four
    axis    = 45
    end     = "left"

    operation {
      makes = chamfer.bevel
      by    = "milling"
    }
  }
}
`+leaningHead)
	for _, m := range p.Moments {
		if m.Cut == nil {
			continue
		}
		if m.Cut.Unplayed != "" {
			t.Fatal(m.Cut.Unplayed)
		}
		for _, w := range m.Cut.Works {
			if w.Wrong != "" || !w.Facing || len(w.Moves) == 0 || w.Turn == nil {
				t.Errorf("%s: %q", w.Target.Name(), w.Wrong)
			}
		}
	}
	for _, c := range []struct {
		at   solid.Vec
		open bool
	}{
		{solid.Vec{70, 15, 27}, true}, {solid.Vec{70, 15, 25}, false}, {solid.Vec{70, 3, 15}, true}, {solid.Vec{70, 5, 15}, false},
		{solid.Vec{79, 25, 2.9}, true}, {solid.Vec{79, 25, 3.1}, false}, {solid.Vec{45, 15, 27}, false},
	} {
		if p.End.Piece.Holds(c.at) == c.open {
			t.Errorf("at %v", c.at)
		}
	}
}
