# Every core group of rules finds something true in this recipe, in the attic shop.
recipe "telling" {
  title   = "A split clamp, with the faults that spoil one"
  units   = "mm"
  shop    = "../../../recipes/shops/attic"
  general = "ISO 2768-m"
}

part "clamp" {
  title    = "Split clamp on the pillar"
  material = "brass"
  length   = "30 ±0.1"
  width    = 16
  height   = "12 -0.05/0"

  blank {
    stock = stock.brass_flat
    lies  = ["length", "width", "height"]
    over  = { left = 1, right = 1, front = 2, back = 2, top = 1.5, bottom = 1.5 }
    skin  = { left = "sawn", right = "sawn" }
  }

  hole "pillar" {
    into     = "top"
    at       = { left = 8, front = 8 }
    diameter = "8 H7"
  }

  hole "screw" {
    into     = "front"
    at       = { left = 25, bottom = 6 }
    thread   = { size = "M6" }
  }

  slit "split" {
    into  = "left"
    at    = { front = 8 }
    width = 0.8
    depth = 8
  }

  square_up {
    hold      = vise.small
    round_bar = 6
  }

  setup "bore" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 10

    operation {
      makes = hole.pillar
      to    = 7
    }
    operation {
      makes = hole.pillar
      tool  = reamer.machine[8]
    }
    measure {
      size      = height
      with      = micrometer.first
      taken_out = true
    }
    measure {
      size      = hole.pillar.diameter
      with      = caliper.vernier
      taken_out = true
    }
  }

  setup "split" {
    hold  = vise.small
    up    = "front"
    jaws  = "top"
    grip  = 6
    along = 30

    operation "saw the split" {
      makes = slit.split
      tool  = slitting_saw.fine
    }
  }

  setup "screw" {
    hold      = vise.small
    up        = "front"
    jaws      = "right"
    parallels = 12

    operation {
      makes = hole.screw
    }
    operation {
      makes = hole.screw.thread
    }
  }
}
