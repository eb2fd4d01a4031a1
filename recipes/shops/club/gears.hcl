# Gear cutters of module 0.8, by the range printed on each.
gear_cutter "eight_3" {
  module         = 0.8
  pressure_angle = 20
  form           = "involute"
  teeth          = [17, 20]
  diameter       = 40
  width          = 4
  bore           = 16
}

gear_cutter "eight_4" {
  module         = 0.8
  pressure_angle = 20
  form           = "involute"
  teeth          = [21, 25]
  diameter       = 40
  width          = 4
  bore           = 16
}

gear_cutter "eight_5" {
  module         = 0.8
  pressure_angle = 20
  form           = "involute"
  teeth          = [26, 34]
  diameter       = 40
  width          = 4
  bore           = 16
}

gear_cutter "eight_6" {
  module         = 0.8
  pressure_angle = 20
  form           = "involute"
  teeth          = [35, 54]
  diameter       = 40
  width          = 4
  bore           = 16
}

arbor "sixteen" {
  shank  = "R8"
  tail   = "7/16-20 UNF"
  seat   = 16
  collar = 25
  body   = 25
  out    = 60
  key    = true
  clamp  = { by = "screw", thread = "M8", diameter = 22, length = 6, washer_held = true }
}
