recipe "bought" {
  title = "A cap pinned on a base, with a shaft in a ball bearing"
  units = "mm"
}

part "base" {
  material = "mild steel"
  length   = 60
  width    = 40
  height   = 20

  hole "race" {
    into     = "top"
    at       = [30, 20]
    diameter = "22 H7"
    depth    = "7 ±0.05"
    bottom   = "flat"
  }

  hole "pins" {
    into     = "top"
    at       = [{ left = "8 ±0.002", front = "20 ±0.002" }, { left = "52 ±0.002", front = "20 ±0.002" }]
    diameter = "4 H7"
    depth    = 10
  }

  hole "screws" {
    into   = "top"
    at     = [{ left = 8, front = 8 }, { left = 52, front = 32 }]
    thread = { size = "M4", depth = 10 }
    depth  = 14
  }
}

part "cap" {
  material = "mild steel"
  length   = 60
  width    = 40
  height   = 8

  hole "shaft" {
    into     = "top"
    at       = [30, 20]
    diameter = 10
  }

  hole "pins" {
    into     = "top"
    at       = [{ left = "8 ±0.002", front = "20 ±0.002" }, { left = "52 ±0.002", front = "20 ±0.002" }]
    diameter = "4.03 ±0.005"
  }

  hole "screws" {
    into     = "top"
    at       = [{ left = 8, front = 8 }, { left = 52, front = 32 }]
    diameter = 4.5
  }
}

part "race" {
  bought = bearings.small
}

part "shaft" {
  material = "silver steel"
  diameter = 12
  length   = 60

  outside "seat" {
    from     = 40
    diameter = "8 h6"
  }
}

bearings "small" {
  code = "608-2RS"
}

pins "dowels" {
  kind     = "parallel"
  limits   = "m6"
  diameter = [3, 4, 5]
  lengths  = [10, 12, 16, 20, 24]
}

fit "outer ring" {
  hole  = part.base.hole.race.diameter
  shaft = part.race.diameter
  wants = "H7/h6"
}

fit "inner ring" {
  hole  = bearings.small.bore
  shaft = part.shaft.outside.seat.diameter
  wants = "-0.008..0.009"
}

fit "pins in the base" {
  hole  = part.base.hole.pins.diameter
  shaft = pins.dowels[4]
  wants = "H7/m6"
}

fit "pins in the cap" {
  hole  = part.cap.hole.pins.diameter
  shaft = pins.dowels[4]
  wants = "0.01..0.035"
}

stack "race under the cap" {
  path  = [part.base.hole.race.depth, part.race.length]
  wants = "-0.05..0.17"
}

screw "cap" {
  size    = "M4x16"
  head    = "cap"
  through = part.cap.hole.screws
  into    = part.base.hole.screws
}

stock "flat" {
  material = "mild steel"
  flat     = { width = 45, thickness = 25 }
  lengths  = [200]
  skin     = "drawn"
}

stock "rod" {
  material = "silver steel"
  round    = 12
  lengths  = [330]
  skin     = "ground"
}
