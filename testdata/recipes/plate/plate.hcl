# Work that stands against an angle plate: milled on end, drilled on packing, and drilled lying free above the table.
recipe "plate" {
  title = "A bracket against an angle plate"
  units = "mm"
}

angle_plate "small" {
  size      = [120, 80, 90]
  thickness = 12
}

part "bracket" {
  material = "brass"
  length   = 110
  width    = 30
  height   = 25

  blank {
    stock = stock.brass_block
    over  = { left = 0, right = 1, front = 0, back = 0, top = 0, bottom = 0 }
  }

  hole "end" {
    into     = "right"
    at       = { front = 12, bottom = 12 }
    diameter = 6
    depth    = 15
  }

  hole "edge" {
    into     = "back"
    at       = { left = 30, bottom = 12 }
    diameter = 5
    depth    = 12
  }

  hole "under" {
    into     = "front"
    at       = { left = 55, bottom = 12 }
    diameter = 5
    depth    = 10
  }

  setup "on end" {
    hold   = [clamps.set, angle_plate.small]
    up     = "right"
    back   = "bottom"
    clamps = [{ at = { left = 60, front = 15 }, tip = 12 }, { at = { left = 20, front = 15 }, tip = 12 }]

    operation {
      makes = face.right
    }
    operation {
      makes = hole.end
    }
    deburr {}
  }

  setup "on packing" {
    hold    = [clamps.set, angle_plate.small]
    up      = "back"
    back    = "bottom"
    along   = 5
    packing = { under = 20 }

    operation {
      makes = hole.edge
    }
    deburr {}
  }

  setup "free" {
    hold = angle_plate.small
    up   = "front"
    back = "bottom"
    free = 35

    operation {
      makes = hole.under
    }
  }
}
