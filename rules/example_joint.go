package rules

// exampleFit is a pin in a hole of a block, with the two sizes and what the fit wants.
func exampleFit(hole, shaft, wants string) string {
	return `recipe "example" {
  units = "mm"
}

part "block" {
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
  material = "silver steel"
  diameter = ` + shaft + `
  length   = 30
}

fit "pin" {
  hole  = part.block.hole.seat.diameter
  shaft = part.pin.diameter
  wants = ` + wants + `
}
`
}

// exampleStack is a box with a lid in its recess and the gap that the two shall leave.
func exampleStack(depth, thickness, wants string) string {
	return `recipe "example" {
  units = "mm"
}

part "box" {
  material = "brass"
  length   = 60
  width    = 40
  height   = 20

  pocket "recess" {
    into  = "top"
    from  = [10, 10]
    to    = [50, 30]
    depth = ` + depth + `
  }
}

part "lid" {
  material = "brass"
  length   = 39
  width    = 19
  height   = ` + thickness + `
}

stack "lid" {
  path  = [part.box.pocket.recess.depth, part.lid.height]
  wants = ` + wants + `
}
`
}

// exampleScrew is a plate screwed to a block, with the screw, its clearance hole and the thread
// in the block.
func exampleScrew(size, clearance, thread string) string {
	return `recipe "example" {
  units = "mm"
}

part "plate" {
  material = "mild steel"
  length   = 40
  width    = 20
  height   = 8

  hole "pass" {
    into     = "top"
    at       = { left = 20, front = 10 }
    diameter = ` + clearance + `
    depth    = "through"
  }
}

part "block" {
  material = "mild steel"
  length   = 40
  width    = 20
  height   = 30

  hole "screw" {
    into     = "top"
    at       = { left = 20, front = 10 }
    diameter = 4.2
    depth    = 14
    thread   = ` + thread + `
  }
}

screw "one" {
  size    = "` + size + `"
  head    = "cap"
  through = part.plate.hole.pass
  into    = part.block.hole.screw
}
`
}

const fullTen = `{ size = "M5", depth = 10 }`
