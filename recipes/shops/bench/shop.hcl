shop "bench" {
  title = "One small mill and a drawer"
  units = "mm"
  as_of = "2026-11-25"
}

mill "bench" {
  taper         = "MT3"
  drawbars      = ["M12"]
  speeds        = [100, 200, 350, 600, 1000, 1800]
  reverse       = false
  travel        = [300, 140, 200]
  nose_to_table = [40, 300]
  throat        = 160
  column        = "dovetail"
  quill         = 40
  nose_diameter = 50
  backlash      = 0.15
  largest_drill = 13
}

vise "small" {
  jaw_width     = 60
  jaw_depth     = 22
  jaw_thickness = 12
  opening       = 65
  bed           = 35
}

parallels "thin" {
  heights   = [5, 8, 10, 12, 14, 16]
  thickness = 3
  length    = 60
}

round_bar "rods" {
  diameter = [6, 8]
}

arbor "stub" {
  shank  = "MT3"
  tail   = "M12"
  seat   = 16
  collar = 25
  body   = 25
  out    = 40
  key    = false
  clamp  = { by = "nut", thread = "M14x1.5", diameter = 24, length = 14 }
}

slitting_saw "fine" {
  diameter = 63
  width    = 0.8
  bore     = 16
  teeth    = 100
  of       = "HSS"
}

collet_chuck "er25" {
  system = "ER25"
  shank  = "MT3"
  tail   = "M12"
  nose   = 42
  out    = 55
}

collets "er25" {
  system = "ER25"
}

drill_chuck "keyed" {
  shank    = "MT3"
  tail     = "M12"
  range    = [1, 13]
  out      = 80
  diameter = 45
}

end_mill "sixteen" {
  diameter     = 16
  of           = "HSS"
  teeth        = 4
  shank        = 16
  overall      = 92
  flute_length = 32
}

drill "jobbers" {
  diameter = series(1, 10, 0.1)
  of       = "HSS"
}

reamer "machine" {
  diameter     = [6, 8]
  kind         = "machine"
  of           = "HSS"
  shank        = 8
  overall      = 117
  flute_length = 33
}

tap "metric" {
  threads = ["M3", "M4", "M5", "M6"]
  leads   = ["taper", "second", "bottoming"]
}

micrometer "first" {
  range    = [0, 25]
  reads_to = 0.01
  anvil    = 6.5
  reach    = 32
}

caliper "long" {
  range    = [0, 150]
  reads_to = 0.02
  jaws     = 40
}

stock "brass_flat" {
  material = "CW614N"
  flat     = { width = 25, thickness = 15 }
  lengths  = [310, 95]
  skin     = "drawn"
}
