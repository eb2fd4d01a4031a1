package sheet

import (
	"strings"
	"testing"

	"fettle/rules"
	"fettle/schema/text"
)

// heads is a plate held down by three screws, whose mouths follow from their heads or are written in part.
const heads = `recipe "heads" {
  units   = "mm"
  general = "ISO 2768-m"
}

part "plate" {
  material = "brass"
  length   = 60
  width    = 25
  height   = 15

  blank {
    stock = stock.brass_flat
  }

  hole "cap" {
    into        = "top"
    at          = { left = 10, front = 12 }
    diameter    = 5.5
    counterbore = {}
  }
  hole "sunk" {
    into       = "top"
    at         = { left = 45, front = 12 }
    diameter   = 5.5
    countersink = {}
  }
  hole "written" {
    into        = "top"
    at          = { left = 25, front = 12 }
    diameter    = 5.5
    counterbore = { diameter = 11 }
  }

  setup "one" {
    up = "top"
    operation {
      makes = [hole.cap, hole.sunk, hole.written]
      by = "drilling"
    }
    operation {
      makes = hole.cap.counterbore
    }
    operation {
      makes = hole.sunk.countersink
    }
    operation {
      makes = hole.written.counterbore
    }
    }
}

part "block" {
  material = "brass"
  length   = 60
  width    = 25
  height   = 15

  hole "a" {
    into   = "top"
    at     = { left = 10, front = 12 }
    depth  = 13
    thread = { size = "M5", depth = 11 }
  }
  hole "b" {
    into   = "top"
    at     = { left = 45, front = 12 }
    depth  = 13
    thread = { size = "M5", depth = 11 }
  }
  hole "c" {
    into   = "top"
    at     = { left = 25, front = 12 }
    depth  = 13
    thread = { size = "M5", depth = 11 }
  }
}

screw "cap" {
  size    = "M5x20"
  head    = "cap"
  through = part.plate.hole.cap
  into    = part.block.hole.a
}
screw "sunk" {
  size    = "M5x25"
  head    = "countersunk"
  through = part.plate.hole.sunk
  into    = part.block.hole.b
}
screw "written" {
  size    = "M5x20"
  head    = "cap"
  through = part.plate.hole.written
  into    = part.block.hole.c
}

counterbore "for M5" {
  diameter = [10, 11]
  pilot    = 5.5
  shank    = 8
  overall  = 70
}
`

// What follows from the head of a screw stands on the sheet with its limits and on the drawing.
func TestMouthsByScrew(t *testing.T) {
	p := made(t, checked(t, text.Archive{"r/r.hcl": []byte(heads), "s/s.hcl": []byte(rules.ExampleShop)}, "r", "s"), true)
	page := p.Markdown()
	for _, says := range []string{
		"| hole.cap, counterbore diameter | 10 H13 | 10 to 10.22 |", "| hole.cap, counterbore depth | 5.4 | 5.3 to 5.5 |", // DIN 974-1, from memory
		"| hole.written, counterbore diameter | 11 | 10.8 to 11.2 |", "| hole.written, counterbore depth | 5.4 | 5.3 to 5.5 |",
		"| hole.sunk, countersink diameter | 11.2 | 11 to 11.4 |", // ISO 10642, from memory
		"counterbore.for M5\\[10\\] | counterboring", "countersink.cone | countersinking",
		"down: 5.4 mm from the top of the piece to the tip",
	} {
		if !strings.Contains(page, says) {
			t.Errorf("the sheet does not say %q", says)
		}
	}
	html := p.HTML()
	for _, says := range []string{"bored Ø10 H13 (+0.22 0) × 5.4", "bored Ø11 × 5.4", "sunk Ø11.2 × 90°"} {
		if !strings.Contains(html, says) {
			t.Errorf("the drawing does not say %q", says)
		}
	}
}
