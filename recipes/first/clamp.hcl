recipe "first" {
  title   = "A split clamp on a pillar"
  units   = "mm"
  shop    = "../shops/bench"
  general = "ISO 2768-m"
}

part "clamp" {
  title    = "Split clamp, M4 pinch screw"
  material = "brass"
  length   = 50
  width    = "20 ±0.1"
  height   = "12 -0.1/0"
  edges    = 0.2

  blank {
    stock = stock.brass_flat
    lies  = ["length", "width", "height"]
    over  = { left = 1, right = 1, front = 2.5, back = 2.5, top = 1.5, bottom = 1.5 }
    skin  = { left = "sawn", right = "sawn" }
  }

  hole "pillar" {
    into     = "top"
    at       = { left = 16, front = 10 }
    diameter = "8 H7"
  }

  hole "screw" {
    into   = "front"
    at     = { left = 5, bottom = 6 }
    depth  = "through"
    thread = { size = "M4" }
  }

  hole "clearance" {
    into     = "front"
    at       = { left = 5, bottom = 6 }
    diameter = 4.3
    depth    = 10
    bottom   = "point"
    meets    = [hole.screw, slit.split]
  }

  slit "split" {
    into  = "left"
    at    = { front = 10 }
    width = 0.8
    depth = 16
    meets = [hole.pillar, hole.screw, hole.clearance]
  }

  square_up {
    round_bar = 6
  }

  bench "edges" {
    deburr {}
  }

  setup "bore" {
    up   = "top"
    jaws = "back"

    operation {
      makes = hole.pillar
      to    = 7.8
    }
    operation {
      makes = hole.pillar
      by    = "reaming"
    }
    deburr {}
    measure {
      size      = height
      taken_out = true
    }
  }

  bench "after boring" {
    deburr {}
  }

  # Jaws on the broad faces: the slit lies level, and the jaws do not close it.
  setup "split" {
    up        = "front"
    jaws      = "top"
    parallels = 14
    along     = -10

    operation {
      makes = hole.screw
    }
    operation {
      makes = hole.screw.thread
    }
    operation {
      makes = hole.clearance
    }
    operation "saw the split" {
      makes = slit.split
    }
  }

  bench "last" {
    deburr {}
  }
}
