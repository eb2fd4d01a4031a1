# A small shop with few tools. Run on its own it is no fault; a build that fits a better
# shop will find here what is not in the drawer.
shop "attic" {
  title = "A small lathe and a small mill under the roof"
  units = "mm"
  as_of = "2026-11-20"
}

mill "bench" {
  taper         = "MT3"
  drawbars      = ["M12"]
  speeds        = [120, 220, 400, 700, 1300, 2400]
  reverse       = true
  travel        = [220, 100, 180]
  nose_to_table = [40, 230]
  throat        = 140
  column        = "dovetail"
  quill         = 40
  nose_diameter = 46
  backlash      = 0.15
  largest_drill = 10
}

drill_press "pillar" {
  taper         = "MT2"
  speeds        = [500, 900, 1500, 2600]
  table         = [200, 200]
  nose_to_table = [30, 310]
  throat        = 100
  quill         = 50
  column        = "round"
  largest_drill = 13
}

vise "small" {
  jaw_width     = 50
  jaw_depth     = 18
  jaw_thickness = 12
  opening       = 45
  bed           = 32
}

parallels "thin" {
  heights   = [6, 8, 10, 12, 14]
  thickness = 3
  length    = 50
}

round_bar "rod" {
  diameter = 6
}

arbor "stub" {
  shank  = "MT3"
  tail   = "M12"
  seat   = 16                       # diameter that the cutter's bore fits
  collar = 25                       # diameter of the shoulder and washer that grip the cutter
  body   = 25
  out    = 38                       # nose of the spindle to the shoulder
  key    = false
  clamp  = { by = "nut", thread = "M14x1.5 LH", diameter = 24, length = 14 }
}

slitting_saw "fine" {
  diameter = 63
  width    = 0.8
  bore     = 16
  teeth    = 100
  of       = "HSS"
}

slitting_saw "little" {
  diameter = 40
  width    = 0.5
  bore     = 10
  teeth    = 80
  of       = "HSS"
}

collets "mt3" {
  system = "MT3"
  sizes  = [6, 8, 10, 12]
  tail   = "M12"
}

drill_chuck "keyed" {
  shank    = "MT3"
  tail     = "tang"
  range    = [1, 13]
  out      = 85
  diameter = 43
}

drill_chuck "press" {
  shank    = "MT2"
  tail     = "tang"
  range    = [1, 13]
  out      = 85
  diameter = 43
}

drill "jobbers" {
  diameter = series(1, 10, 0.1)
  of       = "HSS"
}

reamer "machine" {
  diameter = [3, 4, 5, 6, 8]
  kind     = "machine"
  of       = "HSS"
}

end_mill "few" {
  diameter     = [6, 12]
  of           = "HSS"
  teeth        = 4
  shank        = 12
  overall      = 83
  flute_length = 26
}

tap "metric" {
  threads = ["M3", "M4", "M5"]
  leads   = ["taper", "second"]
}

dividing_head "small" {
  ratio         = 40
  plates        = [dividing_plate.a]
  centre_height = 50
}

dividing_plate "a" {
  circles = [15, 16, 17, 18, 19, 20]
}

micrometer "first" {
  range    = [0, 25]
  reads_to = 0.01
  anvil    = 6.5
  reach    = 30
}

caliper "vernier" {
  range    = [0, 150]
  reads_to = 0.05
  jaws     = 40
  inside   = [10, 14]
}

stock "brass_flat" {
  material = "CW614N"
  flat     = { width = 20, thickness = 15 }
  lengths  = [310, 95]
  skin     = "drawn"
}
lathe "seven" {
  swing               = 180
  swing_over_slide    = 110
  between_centres     = 300
  nose_to_tailstock   = 380
  bore                = 20
  headstock           = 250
  taper               = "MT3"
  nose                = "bolted"
  speeds              = { from = 100, to = 2500 }
  reverse             = true
  brake               = false
  tailstock           = { taper = "MT2", travel = 50, set_over = 0 }
  top_slide           = { travel = 50, division = 0.025, turn = 1 }
  cross_slide         = { travel = 75, division = 0.025, turn = 1, reads = "radius" }
  lead_screw          = 1.5
  lead_screw_reverses = false
  wheels              = [20, 20, 30, 35, 40, 45, 50, 60, 65, 80]
  fixed_train         = 1
  largest_drill       = 10
  bed_gap             = 40
  weight              = 40
}

chuck "three" {
  jaws        = 3
  independent = false
  diameter    = 80
  length      = 60
  bore        = 16
  grips       = [2, 30]
  reversed    = { grips = [25, 70], jaw_out = 110 }
  jaw_length  = 16
  jaw_out     = 90
  mounts      = "bolted"
}

tool_post "block" {
  place        = "front"
  left_of_edge = 6
}

turning_tool "right" {
  of    = "HSS"
  shank = 8
  nose  = 0.2
}

parting_tool "blade" {
  of    = "HSS"
  width = 1.5
  reach = 12
}

drill_chuck "tailstock" {
  shank    = "MT2"
  tail     = "tang"
  range    = [1, 10]
  out      = 75
  diameter = 36
}

centre_drill "pair" {
  diameter = [2, 3.15]
}

stock "steel_25" {
  material = "free-cutting steel"
  round    = 25
  lengths  = [300]
  skin     = "drawn"
}

stock "brass_22" {
  material = "CW614N"
  round    = 22
  lengths  = [120]
  skin     = "drawn"
}

stock "steel_36" {
  material = "free-cutting steel"
  round    = 36
  lengths  = [140]
  skin     = "drawn"
}

stock "brass_30" {
  material = "CW614N"
  flat     = { width = 30, thickness = 20 }
  lengths  = [110]
  skin     = "drawn"
}
