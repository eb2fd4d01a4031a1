vise "four_inch" {
  jaw_width     = 4
  jaw_depth     = 1 + 1/4
  jaw_thickness = 9/16
  opening       = 4
  bed           = 1 + 5/8
  body          = [6, 12]
  handle        = 6
  error         = 0.0005
  repeats       = 0.0005
}

parallels "eighth" {
  heights   = series(1/2, 1 + 5/8, 1/8)
  thickness = 1/8
  length    = 6
}

packing "odd" {
  heights = [1/16, 1/8, 3/16, 1/4, 3/8, 1/2, 3/4, 1]
}

round_bar "rods" {
  diameter = [1/4, 3/8]
  length   = 4
}

clamps "set" {
  slot   = 1/2
  studs  = "3/8-16 UNC"
  reach  = 2 + 1/2
  height = [1/8, 4]
  stands = 1 + 1/4
}

chuck "five_inch" {
  jaws         = 3
  independent  = false
  diameter     = 5
  length       = 3 + 1/4
  bore         = 1 + 1/4
  grips        = [1/8, 3]
  grips_inside = [1 + 1/4, 4 + 1/2]
  reversed     = { grips = [1 + 1/2, 5], jaw_out = 7 }
  jaw_length   = 1
  jaw_out      = 6 + 1/2
  runout       = 0.003
  repeats      = 0.003
  max_speed    = 2500
  mounts       = "1-1/2-8 UN"
}

chuck "four" {
  jaws        = 4
  independent = true
  diameter    = 6
  length      = 3 + 1/2
  bore        = 1 + 1/2
  grips       = [1/4, 6]
  jaw_length  = 1 + 1/4
  jaw_out     = 8
  max_speed   = 1800
  mounts      = "1-1/2-8 UN"
}

# On the dividing head; it screws on the lathe as well.
chuck "small" {
  jaws        = 3
  independent = false
  diameter    = 4
  length      = 2 + 3/4
  bore        = 7/8
  grips       = [3/32, 2 + 1/2]
  jaw_length  = 7/8
  jaw_out     = 5
  runout      = 0.003
  repeats     = 0.003
  max_speed   = 2500
  mounts      = "1-1/2-8 UN"
}

centre "live" {
  shank = "MT2"
  live  = true
}

centre "dead" {
  shank = "MT2"
  live  = false
}

tool_post "four_way" {
  place        = "front"
  left_of_edge = 1/16
}

steady "fixed" {
  kind  = "fixed"
  bars  = [1/4, 3]
  width = 7/8
}

dividing_head "universal" {
  ratio         = 40
  plates        = [dividing_plate.a, dividing_plate.b]
  direct        = [24]
  centre_height = 3 + 15/16
  taper         = "MT3"
  nose          = "1-1/2-8 UN"
  stands_up     = true
  footstock     = { centre_height = 3 + 15/16 }
}

dividing_plate "a" {
  circles = [15, 16, 17, 18, 19, 20]
}

dividing_plate "b" {
  circles = [21, 23, 27, 29, 31, 33]
}

arbor "one_inch" {
  shank  = "R8"
  tail   = "7/16-20 UNF"
  seat   = 1
  collar = 1 + 5/8
  body   = 1 + 5/8
  out    = 2
  key    = true
  clamp  = { by = "screw", thread = "1/2-20 UNF", diameter = 1 + 1/2, length = 5/16 }
}

collets "r8" {
  system = "R8"
  sizes  = series(1/8, 3/4, 1/16)
  tail   = "7/16-20 UNF"
}

drill_chuck "half" {
  shank    = "R8"
  tail     = "7/16-20 UNF"
  range    = [1/32, 1/2]
  out      = 3 + 3/8
  diameter = 1 + 3/4
}

drill_chuck "tailstock" {
  shank    = "MT2"
  tail     = "tang"
  range    = [1/32, 1/2]
  out      = 3 + 1/4
  diameter = 1 + 3/4
}

tap_wrench "tee" {
  squares = [0.1, 0.36]
  swing   = 7
}

die_holder "tailstock" {
  dies  = [13/16, 1]
  shank = "MT2"
}
