chuck "three" {
  jaws        = 3
  independent = false
  diameter    = 160
  length      = 95
  bore        = 42
  grips       = [3, 80]
  grips_inside = [40, 140]
  reversed    = { grips = [55, 150], jaw_out = 230 }
  jaw_length  = 28
  jaw_out     = 200
  runout      = 0.06
  repeats     = 0.06
  max_speed   = 3000
  mounts      = "camlock"
}

chuck "four" {
  jaws        = 4
  independent = true
  diameter    = 200
  length      = 100
  bore        = 50
  grips       = [6, 180]
  jaw_length  = 35
  jaw_out     = 260
  max_speed   = 1800
  mounts      = "camlock"
}

chuck "small" {
  jaws        = 3
  independent = false
  diameter    = 100
  length      = 70
  bore        = 20
  grips       = [2, 60]
  jaw_length  = 20
  jaw_out     = 130
  runout      = 0.05
  repeats     = 0.06
  max_speed   = 3000
  mounts      = "M39x4"
}

collets "five" {
  system = "5C"
}

centre "live" {
  shank = "MT3"
  live  = true
}

centre "half" {
  shank = "MT3"
  live  = false
  half  = true
}

steady "fixed" {
  kind  = "fixed"
  bars  = [5, 90]
  width = 30
}

steady "travelling" {
  kind  = "travelling"
  bars  = [5, 50]
  width = 20
}

mandrel "taper" {
  kind     = "taper"
  diameter = [6, 8, 10, 12, 16, 20, 25]
  length   = 60
}

carrier "bent" {
  bars  = [4, 40]
  swing = 110
}

split_bush "slit" {
  bore    = [6, 8, 10, 12, 16]
  outside = 25
  length  = 30
}

tool_post "quick" {
  place        = "front"
  left_of_edge = 0
}

vise "machine" {
  jaw_width     = 100
  jaw_depth     = 32
  jaw_thickness = 18
  opening       = 105
  bed           = 42
  body          = [180, 320]
  handle        = 140
  force         = 15000
  error         = 0.01
  repeats       = 0.01
}

parallels "ground" {
  heights   = [6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30]
  thickness = 4
  length    = 120
}

parallels "thin" {
  heights   = [6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30]
  thickness = 2
  length    = 120
}

packing "odd" {
  heights = [2, 3, 5, 8, 10, 12, 15, 20, 25]
}

round_bar "rods" {
  diameter = [6, 10]
}

clamps "set" {
  slot   = 12
  studs  = "M10"
  reach  = 60
  height = [1, 100]
  stands = 30
}

v_block "pair" {
  bars   = [5, 50]
  height = 50
  length = 40
}

arbor "stub" {
  shank  = "R8"
  tail   = "7/16-20 UNF"
  seat   = 22
  collar = 32
  body   = 32
  out    = 45
  key    = true
  clamp  = { by = "screw", thread = "M10", diameter = 28, length = 8, washer_held = true }
}

collet_chuck "er32" {
  system = "ER32"
  shank  = "R8"
  tail   = "7/16-20 UNF"
  nose   = 50
  out    = 60
  holds_against_pull = false
}

collets "er32" {
  system = "ER32"
}

drill_chuck "mill" {
  shank    = "R8"
  tail     = "7/16-20 UNF"
  range    = [1, 16]
  out      = 95
  diameter = 52
}

drill_chuck "tailstock" {
  shank    = "MT3"
  tail     = "tang"
  range    = [0.5, 16]
  out      = 95
  diameter = 52
}

drill_chuck "pillar" {
  shank    = "MT2"
  tail     = "tang"
  range    = [1, 16]
  out      = 95
  diameter = 52
}

tap_wrench "tee" {
  squares = [2, 9]
  swing   = 180
}

die_holder "tailstock" {
  dies  = [20, 25, 30, 38]
  shank = "MT3"
}

boring_head "fifty" {
  shank    = "R8"
  tail     = "7/16-20 UNF"
  diameter = 50
  out      = 70
  bores    = [8, 60]
  slide    = 12
}
