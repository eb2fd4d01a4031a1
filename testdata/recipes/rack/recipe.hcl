recipe "rack" {
  title = "A rack and its wheel, and a notched bar"
  units = "mm"
}

part "rack" {
  title    = "Rack, across the table under a level spindle"
  material = "brass"
  length   = 16
  width    = 60
  height   = 20

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  teeth "rack" {
    on             = "top"
    count          = 18
    module         = 1
    pressure_angle = 20
    thinned        = 0.05
  }

  setup "teeth" {
    machine   = mill.level
    hold      = vise.own
    up        = "top"
    jaws      = "back"
    parallels = 10

    operation {
      makes = teeth.rack
    }
  }
}

part "stop" {
  title    = "Bar with ratchet teeth, on end under an upright spindle"
  material = "brass"
  length   = 50
  width    = 16
  height   = 20

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  teeth "stops" {
    on    = "top"
    count = 8
    form  = "ratchet"
    hand  = "right"
    from  = { left = 24 }
    notch = { depth = 1.9 }
  }

  setup "teeth" {
    machine = mill.upright
    hold    = vise.own
    up      = "right"
    jaws    = "bottom"

    operation {
      makes = teeth.stops
      tool  = angle_cutter.sixty
    }
  }
}

part "pinion" {
  material = "brass"
  diameter = 22
  length   = 10
  bought   = true

  teeth "leaves" {
    count          = 20
    module         = 1
    pressure_angle = 20
  }
}

mesh "drive" {
  wheel    = part.pinion.teeth.leaves
  pinion   = part.rack.teeth.rack
  centres  = "10 ±0.02"
  backlash = "0.05 ±0.03"
}

mill "level" {
  spindle       = "level"
  taper         = "MT3"
  drawbars      = ["M12"]
  speeds        = [60, 100, 170, 280, 470]
  travel        = [350, 150, 300]
  axis_to_table = [0, 320]
  column        = "knee"
  nose_diameter = 70
  dials         = { x = { division = 0.05, turn = 5 }, y = { division = 0.05, turn = 5 }, z = { division = 0.05, turn = 5 } }
  backlash      = 0.1
}

mill "upright" {
  taper         = "MT3"
  drawbars      = ["M12"]
  speeds        = [100, 200, 350, 600]
  travel        = [300, 140, 200]
  nose_to_table = [40, 300]
  throat        = 150
  column        = "dovetail"
  nose_diameter = 50
  dials         = { x = { division = 0.05, turn = 5 }, y = { division = 0.05, turn = 5 }, z = { division = 0.05, turn = 5 } }
  backlash      = 0.1
}

vise "own" {
  jaw_width     = 60
  jaw_depth     = 20
  jaw_thickness = 12
  opening       = 60
  bed           = 35
}

gear_cutter "rack" {
  module         = 1
  pressure_angle = 20
  form           = "involute"
  teeth          = [135]
  diameter       = 63
  width          = 6
  bore           = 16
  flutes         = 12
}

angle_cutter "sixty" {
  diameter = 63
  angle    = 60
  width    = 8
  bore     = 16
  teeth    = 18
  of       = "HSS"
}

arbor "long" {
  shank  = "MT3"
  tail   = "M12"
  seat   = 16
  collar = 26
  body   = 26
  out    = 60
  key    = true
  clamp  = { by = "nut", thread = "M14x1.5 LH", diameter = 26, length = 30 }
}
