package rules

import (
	"strings"

	"fettle/schema/model"
)

// The smallest recipes that several rules share. Each is a whole recipe; a rule changes the
// one thing that it is about.

// exampleSlit is a part with one slit, sawn with the attributes given.
func exampleSlit(attrs string) string {
	return `recipe "example" {
  units = "mm"
}

part "clamp" {
  material = "brass"
  length   = 60
  width    = 20
  height   = 12

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  slit "cut" {
    into  = "left"
    at    = { front = 10 }
    width = 0.8
    depth = 10
  }

  setup "saw" {
    hold      = vise.small
    up        = "front"
    jaws      = "top"
    parallels = 12
    along     = -12

    operation {
      makes  = slit.cut
      tool   = slitting_saw.fine
      ` + attrs + `
    }
  }
}
`
}

// exampleHole is a part with one through hole, made with the attributes given.
func exampleHole(attrs ...string) string {
	s := `recipe "example" {
  units = "mm"
}

part "block" {
  material = "brass"
  length   = 40
  width    = 30
  height   = 20

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  hole "pin" {
    into     = "top"
    at       = { left = 20, front = 15 }
    diameter = 6
  }

  setup "drill" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 10

    operation {
      makes = hole.pin
`
	for _, a := range attrs {
		s += "      " + a + "\n"
	}
	return s + `    }
  }
}
`
}

// exampleSlot is a part with one slot along its top, milled with the attributes given.
func exampleSlot(attrs string) string {
	return `recipe "example" {
  units = "mm"
}

part "block" {
  material = "brass"
  length   = 40
  width    = 30
  height   = 20

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  slot "key" {
    into  = "top"
    at    = { front = 15 }
    width = 6
    depth = 4
  }

  setup "mill" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 8

    operation {
      makes = slot.key
      tool  = slot_drill.two[6]
      ` + attrs + `
    }
  }
}
`
}

// wideBlock drills a block of a width, gripped across it.
func wideBlock(width float64) string {
	return `recipe "example" {
  units = "mm"
}

part "block" {
  material = "brass"
  length   = 60
  width    = ` + model.Figure(width) + `
  height   = 20

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  hole "pin" {
    into     = "top"
    at       = { left = 30, front = 25 }
    diameter = 6
  }

  setup "drill" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 6

    operation {
      makes = hole.pin
    }
  }
}
`
}

// examplePocket mills a pocket with a tool.
func examplePocket(tool string) string {
	return replaced(replaced(exampleSlot(""), `slot "key" {
    into  = "top"
    at    = { front = 15 }
    width = 6
    depth = 4
  }`, `pocket "key" {
    into  = "top"
    from  = [10, 8]
    to    = [30, 22]
    depth = 4
  }`), "makes = slot.key\n      tool  = slot_drill.two[6]", "makes = pocket.key\n      tool  = "+tool)
}

// exampleGripGone mills a step along the back edge, then holds the piece by its back.
func exampleGripGone(depth float64) string {
	return `recipe "example" {
  units = "mm"
}

part "block" {
  material = "brass"
  length   = 60
  width    = 30
  height   = 20

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  step "rebate" {
    into  = "bottom"
    side  = "back"
    width = 8
    depth = ` + model.Figure(depth) + `
  }

  hole "pin" {
    into     = "top"
    at       = { left = 30, front = 15 }
    diameter = 6
  }

  setup "rebate" {
    hold      = vise.small
    up        = "bottom"
    jaws      = "front"
    parallels = 6

    operation {
      makes = step.rebate
    }
  }

  setup "drill" {
    hold      = vise.small
    up        = "top"
    jaws      = ["back", "front"]
    parallels = 6

    operation {
      makes = hole.pin
    }
  }
}
`
}

// exampleReam drills a hole of a size and reams it to 8 mm.
func exampleReam(drill string) string {
	return replaced(replaced(exampleHole("to = "+drill), "diameter = 6", `diameter = "8 H7"`), "      to = "+drill+"\n    }\n", `      to = `+drill+`
    }

    operation {
      makes = hole.pin
      tool  = reamer.machine[8]
    }
`)
}

// exampleTap drills a hole of a size and taps it M5.
func exampleTap(drill string) string {
	return replaced(replaced(exampleHole("to = "+drill), "diameter = 6", `diameter = `+drill+`
    thread   = { size = "M5" }`), "      to = "+drill+"\n    }\n", `    }

    operation {
      makes = hole.pin.thread
    }
`)
}

// exampleStock is a part of a width, cut from flat bar 25 by 15, with metal over front and back.
func exampleStock(width, over float64) string {
	s := replaced(exampleHole(), "width    = 30", "width    = "+figure(width))
	s = replaced(s, "height   = 20", "height   = 13")
	s = replaced(s, "front = 15", "front = 10")
	s = replaced(s, "over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }",
		"stock = stock.brass_flat\n    over  = { left = 0, right = 0, front = "+figure(over)+", back = "+figure(over)+", top = 1, bottom = 1 }")
	return strings.Replace(s, "parallels = 10", "parallels = 12", 1)
}

// exampleMeasure drills a piece so narrow that no anvil finds room beside the hole, and
// takes its height.
func exampleMeasure(before, height string, hole float64) string {
	s := replaced(exampleHole(), "height   = 20", height)
	s = replaced(s, "width    = 30", "width    = 6")
	s = replaced(s, "length   = 40", "length   = 8")
	s = replaced(s, "{ left = 20, front = 15 }", "{ left = 4, front = 3 }")
	s = replaced(s, "diameter = 6", "diameter = "+figure(hole))
	s = replaced(s, "  setup \"drill\"", "  bench \"try\" {\n    deburr {}\n  }\n\n  setup \"drill\"")
	return strings.TrimSuffix(s, "}\n") + "\n  bench \"measure\" {\n" + before + `    measure {
      size = height
      with = micrometer.first
    }
  }
}
`
}

// replaced is an example with one thing changed; a change that changes nothing is a fault
// of the catalogue, found by its tests.
func replaced(s, old, new string) string {
	if !strings.Contains(s, old) {
		panic("rules: example does not contain " + old)
	}
	return strings.Replace(s, old, new, 1)
}
