package rules

// exampleBoss turns a boss of 20 mm on a block of 60 by 50 by 40 mm, a number of millimetres from
// its left face and 25 mm from its front; held below by what is named.
func exampleBoss(hold, left string) string {
	return exampleBlockTurned(hold, `
  outside "boss" {
    into     = "top"
    at       = [`+left+`, 25]
    from     = { bottom = 28 }
    diameter = 20
  }
`, `
    operation {
      makes = outside.boss
    }`)
}

// exampleBlockTurned is a block of 60 by 50 by 40 mm as it comes from the bar, held by its bottom
// on the lathe of the examples.
func exampleBlockTurned(hold, features, steps string) string {
	return `recipe "example" {
  units = "mm"
}

part "block" {
  material = "EN AW-6082"
  length   = 60
  width    = 50
  height   = 40

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }
` + features + `
  setup "turn" {
    machine = lathe.centre
    hold    = ` + hold + `
    end     = "bottom"
    grip    = 22
` + steps + `
  }
}
`
}
