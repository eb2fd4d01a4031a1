package rules

// exampleTurned is a turned part of 20 mm from bar of 22, 60 mm long with 1 mm over each end,
// with the features, the holding and the steps given.
func exampleTurned(features, holding, steps string) string {
	return `recipe "example" {
  units = "mm"
}

part "pin" {
  material = "mild steel"
  diameter = 20
  length   = 60

  blank {
    over = { left = 1, right = 1, outside = 1 }
  }
` + features + `
  setup "turn" {
` + holding + `
` + steps + `
  }
}
`
}

// exampleWaist turns 20 mm of the right end down to a diameter.
func exampleWaist(holding, step string) string {
	return exampleTurned(`
  outside "waist" {
    from     = 40
    diameter = 16
  }
`, holding, `
    operation {
      makes = outside.waist
      `+step+`
    }`)
}

// inThree holds the left end in the three-jaw chuck of the examples.
const inThree = `    machine = lathe.centre
    hold    = chuck.three
    end     = "left"
    grip    = 20`

// inFour is the same in the four-jaw chuck.
const inFour = `    machine = lathe.centre
    hold    = chuck.four
    end     = "left"
    grip    = 20`
