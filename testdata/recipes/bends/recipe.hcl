# Sheet with a bend over 90 degrees and a hem.
recipe "bends" {
  title   = "A clip with a hem"
  units   = "mm"
  shop    = "../../../recipes/shops/club"
  general = "ISO 2768-m"
}

part "clip" {
  title     = "Clip, leaning back over its base, with a hem"
  material  = "CW508L"
  condition = "annealed"
  length    = 88
  width     = 20
  thickness = 1

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  hole "pin" {
    into     = "top"
    at       = { right = 12, front = 10 }
    diameter = 3
  }

  bend "hem" {
    at            = { left = 8 }
    towards       = "top"
    angle         = 180
    inside_radius = 0.5
  }

  bend "lean" {
    at            = { left = 58 }
    towards       = "top"
    angle         = 120
    inside_radius = 1.5
  }

  setup "flat" {
    hold   = clamps.set
    up     = "top"
    back   = "back"
    packing = { under = 6 }
    clamps = [{ at = { left = 4, front = 10 } }, { at = { left = 50, front = 10 } }]

    operation {
      makes = hole.pin
    }
    deburr {}
  }

  bench "fold" {
    makes = [bend.lean, bend.hem]
    by    = "bending"
    hold  = vise.machine
  }
}
