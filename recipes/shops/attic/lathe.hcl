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
