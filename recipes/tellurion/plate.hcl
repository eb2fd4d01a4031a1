# A plate of sheet under the dial, its corners cut off.
part "plate" {
  title     = "Plate under the dial"
  material  = "CZ120"
  length    = 60
  width     = 60
  thickness = 1.5

  blank {
    over = { left = 5, right = 5, front = 5, back = 5, top = 0, bottom = 0 }
  }

  hole "pillar" {
    into     = "top"
    at       = { left = 30, front = 30 }
    diameter = 10.5
  }

  outline "edge" {
    points = [[12, 0], [48, 0], [60, 12], [60, 48], [48, 60], [12, 60], [0, 48], [0, 12]]
  }

  setup "drill" {
    hold   = clamps.set
    up     = "top"
    back   = "back"
    packing = { under = 10 }
    clamps = [{ at = { left = 8, front = 30 } }, { at = { right = 8, front = 30 } }]

    operation {
      makes = hole.pillar
      by    = "spotting"
    }
    operation {
      makes = hole.pillar
    }
    deburr {}
  }

  bench "saw out" {
    operation {
      makes = outline.edge
      by    = "sawing"
    }
    deburr {}
  }
}
