lathe "ten_inch" {
  swing               = 10
  swing_over_slide    = 5 + 3/4
  between_centres     = 24
  nose_to_tailstock   = 29
  bore                = 25/32
  headstock           = 14
  taper               = "MT3"
  nose                = "1-1/2-8 UN"
  speeds              = [58, 95, 155, 260, 420, 690, 1150]
  reverse             = true
  brake               = false
  tailstock           = { taper = "MT2", travel = 2 + 1/4, set_over = 1/2 }
  top_slide           = { travel = 2 + 3/4, division = 0.001, turn = 0.1 }
  cross_slide         = { travel = 6, division = 0.001, turn = 0.1, lines = 100, reads = "radius" }
  tool_height         = 3/4
  backlash            = 0.008
  repeats             = 0.001
  turns_taper         = 0.01
  lead_screw          = "8 tpi"
  lead_screw_reverses = true
  wheels              = [20, 20, 25, 30, 35, 38, 40, 45, 50, 55, 60, 65, 70, 75]
  fixed_train         = 1
  largest_drill       = 1/2
  bed_gap             = 2 + 1/4
  weight              = 180
  power               = 550
}

mill "knee" {
  taper         = "R8"
  drawbars      = ["7/16-20 UNF"]
  speeds        = [80, 135, 210, 325, 660, 1115, 1750, 2720]
  reverse       = true
  table         = [26, 6]
  tee_slots     = 1/2
  travel        = [14, 6, 12]
  nose_to_table = [1, 13]
  throat        = 6 + 3/4
  quill         = 3
  column        = "knee"
  nose_diameter = 3 + 3/8
  dials = {
    x = { division = 0.001, turn = 0.1, lines = 100 }
    y = { division = 0.001, turn = 0.1 }
    z = { division = 0.001, turn = 0.1 }
  }
  backlash      = { x = 0.012, y = 0.006 }
  locks_drag    = true
  tilts         = 45
  out_of_square = 0.02
  repeats       = 0.001
  largest_drill = 3/4
  power         = 750
}

drill_press "bench" {
  taper         = "MT2"
  speeds        = [620, 1100, 1720, 2340, 3100]
  table         = [9, 9]
  nose_to_table = [1, 14]
  throat        = 4 + 5/8
  quill         = 2 + 1/2
  column        = "round"
  largest_drill = 1/2
}

hacksaw "frame" {
  kerf = 0.035
}

torch "propane" {
  hottest = 900
}
