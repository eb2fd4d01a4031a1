package rules

// exampleCheeks is two plates laid on each other, the lower one of another height, held by a screw and
// drilled together: what the assembly's step makes is given, and whether it is taken apart.
func exampleCheeks(makes, more string) string {
	return `recipe "example" {
  units   = "mm"
  general = "ISO 2768-m"
}
` + exampleCheek("upper", 8, "diameter = 4.5") + exampleCheek("lower", 6, `thread   = { size = "M4" }`) + `
screw "one" {
  size    = "M4x14"
  head    = "cap"
  through = part.upper.hole.screw
  into    = part.lower.hole.screw
}

assembly "pair" {
  of = [part.upper, part.lower]
` + more + `
  place {
    part    = part.lower
    touches = [part.lower.face.top, part.upper.face.bottom]
  }

  setup "drill" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 8

    operation {
      makes = ` + makes + `
    }
  }
}
`
}

func exampleCheek(name string, high float64, screw string) string {
	return `
part "` + name + `" {
  material = "mild steel"
  length   = 60
  width    = 30
  height   = ` + figure(high) + `

  hole "pivot" {
    into     = "top"
    at       = { left = 15, front = 15 }
    diameter = 6
  }

  hole "screw" {
    into = "top"
    at   = { left = 45, front = 15 }
    ` + screw + `
  }

  setup "screw" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 8

    operation {
      makes = hole.screw
    }
  }
}
`
}

const bothPivots = "[part.upper.hole.pivot, part.lower.hole.pivot]"
