package rules

// exampleWheel is a wheel of 60 teeth, module 0.5, with a hub that a chuck on a dividing head
// holds; more is written into the teeth, into the set-up and into its one operation, and things at
// the end. The head turns 40 to 1 with a plate of circles 15 to 20.
func exampleWheel(teeth, setup, step, things string) string {
	return `recipe "example" {
  units = "mm"
}

part "wheel" {
  material = "brass"
  diameter = 31
  length   = 64

  blank {
    over = { left = 0, right = 0, outside = 0 }
  }

  outside "rim" {
    from     = 60
    diameter = 31
  }

  outside "hub" {
    from     = 0
    to       = 60
    diameter = 16
  }

  teeth "cut" {
    on     = outside.rim
    count  = 60
    module = 0.5
    ` + teeth + `
  }

  setup "turn" {
    machine = lathe.centre
    hold    = chuck.three
    end     = "right"
    grip    = 3

    operation {
      makes = outside.hub
    }
  }

  setup "cut" {
    hold    = dividing_head.own
    carries = chuck.three
    end     = "left"
    grip    = 12
    ` + setup + `

    operation {
      makes = teeth.cut
      ` + step + `
    }
  }
}

gear_cutter "half" {
  module         = 0.5
  pressure_angle = 20
  form           = "involute"
  teeth          = [55, 134]
  diameter       = 40
  width          = 4
  bore           = 16
}

dividing_plate "own" {
  circles = [15, 16, 17, 18, 19, 20]
}

dividing_head "own" {
  ratio         = 40
  plates        = [dividing_plate.own]
  direct        = [24]
  centre_height = 80
  nose          = "M39x4"
  stands_up     = false
  differential  = { wheels = [] }
}
` + things
}
