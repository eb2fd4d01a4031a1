package rules

// The smallest recipes of the rules on what joins parts.

// examplePin is a pin in the hole of a ring, with diameters and what is wanted as written.
func examplePin(hole, shaft, wants string) string {
	return `recipe "example" {
  units = "mm"
}

part "ring" {
  material = "brass"
  length   = 40
  width    = 30
  height   = 20

  hole "seat" {
    into     = "top"
    at       = { left = 20, front = 15 }
    diameter = ` + hole + `
  }
}

part "pin" {
  material = "mild steel"
  diameter = 12
  length   = 40

  outside "seat" {
    from     = 0
    to       = 20
    diameter = ` + shaft + `
  }
}

fit "pin" {
  hole  = part.ring.hole.seat.diameter
  shaft = part.pin.outside.seat.diameter
  wants = ` + wants + `
}
`
}

// exampleScrewedDown holds a plate so thick on a block that is drilled and tapped so deep.
func exampleScrewedDown(size, hole, thick, depth, thread string) string {
	return `recipe "example" {
  units = "mm"
}

part "plate" {
  material = "mild steel"
  length   = 60
  width    = 30
  height   = ` + thick + `

  hole "clear" {
    into     = "top"
    at       = { left = 10, front = 15 }
    diameter = ` + hole + `
  }
}

part "block" {
  material = "brass"
  length   = 60
  width    = 30
  height   = 25

  hole "tapped" {
    into   = "top"
    at     = { left = 10, front = 15 }
    depth  = ` + depth + `
    thread = { size = "M5", depth = ` + thread + ` }
  }
}

screw "holds the plate" {
  size    = "` + size + `"
  head    = "cap"
  through = part.plate.hole.clear
  into    = part.block.hole.tapped
}
`
}

// exampleWheels is two wheels with such teeth, and how they mesh.
func exampleWheels(wheel, pinion, mesh string) string {
	return `recipe "example" {
  units = "mm"
}

part "wheel" {
  material = "brass"
  diameter = 42
  length   = 8

  teeth "ring" {
    ` + wheel + `
  }
}

part "pinion" {
  material = "mild steel"
  diameter = 22
  length   = 10

  teeth "leaves" {
    ` + pinion + `
  }
}

mesh "pair" {
  wheel  = part.wheel.teeth.ring
  pinion = part.pinion.teeth.leaves
` + mesh + `}
`
}

// exampleWorm is a worm of a hand and its wheel with what is written of its teeth.
func exampleWorm(hand, wheel string) string {
	return `recipe "example" {
  units = "mm"
}

part "screw" {
  material = "mild steel"
  diameter = 12
  length   = 30

  worm "thread" {
    module = 1
    hand   = "` + hand + `"
  }
}

part "wheel" {
  material = "bronze"
  diameter = 42
  length   = 8

  teeth "ring" {
    count = 40
    ` + wheel + `
  }
}

mesh "drive" {
  wheel = part.wheel.teeth.ring
  worm  = part.screw.worm.thread
}
`
}
