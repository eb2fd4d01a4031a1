# The arm turns on the pillar's spigot. Its left end is slit and pinched by a screw; to the right of the bush two hollows
# leave a web of 4 mm.
part "arm" {
  title    = "Arm with its split clamp"
  material = "CW614N"
  length   = 70
  width    = "24 ±0.1"
  height   = "10 -0.1/0"
  edges    = 0.2

  hole "pillar" {
    into     = "top"
    at       = { left = 12, front = 12 }
    diameter = "8 H7"
  }

  hole "bush" {
    into     = "top"
    at       = { hole.pillar = "26.45 ±0.02", front = 12 }
    diameter = "12 H7"
  }

  hole "screw" {
    into     = "front"
    at       = { left = 4, bottom = 5 }
    diameter = 2.5
    thread   = { size = "M3" }
  }

  hole "clearance" {
    into     = "front"
    at       = { left = 4, bottom = 5 }
    diameter = 3.2
    depth    = 12
  }

  slit "clamp" {
    into  = "left"
    at    = { front = 12 }
    width = 0.8
    depth = 10
  }

  pocket "front" {
    into   = "front"
    from   = [48, 2]
    to     = [66, 8]
    depth  = 10
    corner = 2
  }

  pocket "back" {
    into   = "back"
    from   = [48, 2]
    to     = [66, 8]
    depth  = 10
    corner = 2
  }

  square_up {}

  setup "bore" {
    up   = "top"
    jaws = "back"

    operation {
      makes = hole.pillar
      by    = "spotting"
    }
    operation {
      makes = hole.pillar
      to    = 7.8
    }
    operation {
      makes = hole.pillar
      by    = "reaming"
    }
    operation {
      makes = hole.bush
      by    = "spotting"
    }
    operation {
      makes = hole.bush
      to    = 11.5
    }
    operation { # a reamer follows the hole that it is given, and its place sets how the wheels mesh
      makes = hole.bush
      by    = "boring"
      to    = 11.8
      speed = 350
    }
    operation {
      makes = hole.bush
      by    = "reaming"
    }
    deburr {}
    measure {
      size = hole.bush.diameter
    }
  }

  setup "front" {
    up   = "front"
    jaws = "top"

    operation {
      makes = hole.screw
    }
    operation {
      makes = hole.screw.thread
    }
    operation {
      makes = hole.clearance
    }
    operation {
      makes = pocket.front
    }
    deburr {}
  }

  bench "burrs" {
    deburr {}
  }

  setup "back" {
    up   = "back"
    jaws = "top"

    operation {
      makes = pocket.back
    }
    deburr {}
  }

  setup "slit" {
    up    = "front"
    jaws  = "top"
    along = -20

    operation {
      makes = slit.clamp
    }
    deburr {}
  }
}
