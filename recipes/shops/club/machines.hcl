# The workshop of a club: one of everything a small mechanism asks for, well kept.
shop "club" {
  title = "The club's workshop"
  units = "mm"
  as_of = "2026-11-20"
}

lathe "centre" {
  swing               = 280
  swing_over_slide    = 165
  between_centres     = 700
  nose_to_tailstock   = 860
  bore                = 38
  headstock           = 360
  taper               = "MT4"
  nose                = "camlock"
  speeds              = [45, 80, 125, 200, 320, 500, 800, 1250, 2000]
  reverse             = true
  brake               = true
  tailstock           = { taper = "MT3", travel = 110, set_over = 10 }
  top_slide           = { travel = 90, division = 0.02, turn = 2 }
  cross_slide         = { travel = 160, division = 0.02, turn = 4, reads = "diameter" }
  tool_height         = 22
  backlash            = 0.08
  turns_taper         = 0.01
  repeats             = 0.01
  lead_screw          = 4
  lead_screw_reverses = true
  wheels              = [20, 20, 24, 28, 30, 32, 36, 40, 40, 44, 45, 48, 50, 52, 55, 60, 60, 63, 65, 70, 75, 80, 90, 100, 120, 127]
  fixed_train         = 1
  largest_drill       = 20
  bed_gap             = 70
  weight              = 420
  power               = 1100
}

mill "upright" {
  spindle       = "upright"
  taper         = "R8"
  drawbars      = ["7/16-20 UNF"]
  speeds        = { from = 60, to = 3600 }
  reverse       = true
  table         = [700, 200]
  tee_slots     = 12
  travel        = [480, 220, 320]
  nose_to_table = [60, 420]
  throat        = 220
  quill         = 100
  column        = "knee"
  nose_diameter = 70
  dials         = { x = { division = 0.02, turn = 4 }, y = { division = 0.02, turn = 4 }, z = { division = 0.02, turn = 2 } }
  backlash      = 0.05
  locks_drag    = true
  tilts         = 45
  out_of_square = 0.01
  repeats       = 0.01
  largest_drill = 20
  power         = 1500
}

drill_press "pillar" {
  taper         = "MT2"
  speeds        = [250, 450, 800, 1400, 2400]
  table         = [300, 300]
  nose_to_table = [60, 480]
  throat        = 160
  quill         = 85
  column        = "round"
  nose_diameter = 50
  largest_drill = 20
}

hacksaw "frame" {
  kerf = 1
  skew = 1
}

arbor_press "two_ton" {
  force   = 20000
  opening = 200
}

furnace "kiln" {
  hottest = 1100
}

torch "gas" {
  hottest = 900
}

dividing_head "universal" {
  ratio         = 40
  plates        = [dividing_plate.a, dividing_plate.b, dividing_plate.c]
  direct        = [24]
  centre_height = 100
  taper         = "MT3"
  nose          = "M39x4"
  stands_up     = true
  differential  = { wheels = [24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100] }
  footstock     = { centre_height = 100 }
}

dividing_plate "a" {
  circles = [15, 16, 17, 18, 19, 20]
}

dividing_plate "b" {
  circles = [21, 23, 27, 29, 31, 33]
}

dividing_plate "c" {
  circles = [37, 39, 41, 43, 47, 49]
}

rotary_table "six" {
  ratio         = 90
  height        = 80
  diameter      = 150
  bore          = "MT2"
  stands_up     = true
  centre_height = 100
  dial          = { division = 0.0166666667 }
}
