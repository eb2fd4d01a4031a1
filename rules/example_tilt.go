package rules

// exampleTilted is a block with a hole that leans towards the right, drilled in one set-up.
func exampleTilted(lean, setup, op string) string {
	return `recipe "example" {
  units = "mm"
}

part "block" {
  material = "brass"
  length   = 40
  width    = 20
  height   = 20

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  hole "oil" {
    into     = "top"
    at       = { left = 15, front = 10 }
    diameter = 4
    depth    = 10
    tilted   = { towards = "right", by = ` + lean + ` }
  }

  setup "drill" {
    hold = vise.small
    up   = "top"
    jaws = "back"
` + setup + `
    operation {
      makes = hole.oil
` + op + `    }
  }
}
`
}
