# The shop in which the smallest recipes of the rules are played.
shop "example" {
  title = "The shop of the examples"
  units = "mm"
}

mill "bench" {
  taper         = "MT3"
  drawbars      = ["M12"]
  speeds        = [100, 200, 350, 600, 1000, 1800]
  reverse       = true
  travel        = [300, 140, 200]
  nose_to_table = [40, 300]
  throat        = 150
  column        = "dovetail"
  quill         = 40
  nose_diameter = 50
  backlash      = 0.15
  largest_drill = 13
}

vise "small" {
  jaw_width     = 60
  jaw_depth     = 20
  jaw_thickness = 12
  opening       = 60
  bed           = 35
}

parallels "thin" {
  heights   = [4, 6, 8, 10, 12, 14, 16]
  thickness = 3
  length    = 60
}

packing "bits" {
  heights = [5, 10, 12, 20]
}

round_bar "rods" {
  diameter = [6, 8]
}

clamps "set" {
  reach  = 40
  stands = 20
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

arbor "left" {
  shank  = "MT3"
  tail   = "M12"
  seat   = 16
  collar = 25
  body   = 25
  out    = 40
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

slitting_saw "small" {
  diameter = 40
  width    = 0.8
  bore     = 10
  teeth    = 80
  of       = "HSS"
}

collet_chuck "er" {
  system = "ER25"
  shank  = "MT3"
  tail   = "M12"
  nose   = 42
  out    = 55
}

collets "er" {
  system = "ER25"
}

drill_chuck "keyed" {
  shank    = "MT3"
  tail     = "M12"
  range    = [1, 13]
  out      = 80
  diameter = 45
}

drill "jobbers" {
  diameter = series(1, 13, 0.1)
  of       = "HSS"
}

reamer "machine" {
  diameter    = [3, 4, 5, 6, 8, 10]
  kind        = "machine"
  of          = "HSS"
  lead        = 1.5
  overall     = 117
  flute_length = 33
  shank       = 8
}

tap "metric" {
  threads = ["M3", "M4", "M5", "M6", "M8"]
  leads   = ["taper", "second", "bottoming"]
}

end_mill "four" {
  diameter       = [6, 10, 16]
  of             = "HSS"
  teeth          = 4
  overall        = 83
  flute_length   = 26
  shank          = 10
  centre_cutting = false
}

slot_drill "two" {
  diameter     = [3, 4, 5, 6, 8, 10]
  of           = "HSS"
  teeth        = 2
  overall      = 72
  flute_length = 19
  shank        = 10
}

countersink "cone" {
  diameter = 16
  angle    = 90
  least    = 2
  shank    = 10
  overall  = 60
}

micrometer "first" {
  range    = [0, 25]
  reads_to = 0.01
  anvil    = 6.5
  reach    = 30
}

caliper "long" {
  range    = [0, 150]
  reads_to = 0.02
  jaws     = 40
  inside   = [10, 16]
}

stock "brass_flat" {
  material = "CW614N"
  flat     = { width = 25, thickness = 15 }
  lengths  = [310, 95]
}

lathe "centre" {
  swing             = 250
  swing_over_slide  = 150
  between_centres   = 500
  nose_to_tailstock = 620
  bore              = 26
  headstock         = 350
  taper             = "MT4"
  nose              = "M39x4"
  nose_lock         = false
  speeds            = [60, 100, 160, 260, 420, 680, 1100]
  reverse           = true
  brake             = false
  tailstock         = { taper = "MT2", travel = 80, set_over = 8 }
  top_slide         = { travel = 70, division = 0.02, turn = 2 }
  cross_slide       = { travel = 140, division = 0.02, turn = 2, reads = "diameter" }
  lead_screw        = 3
  lead_screw_reverses = true
  wheels            = [20, 20, 30, 40, 50, 60, 60, 80, 100, 127]
  fixed_train       = 1
  bed_gap           = 60
  weight            = 250
}

chuck "three" {
  jaws        = 3
  independent = false
  diameter    = 125
  length      = 85
  bore        = 32
  grips       = [3, 60]
  reversed    = { grips = [50, 120], jaw_out = 190 }
  jaw_length  = 25
  jaw_out     = 150
  runout      = 0.08
  repeats     = 0.1
  max_speed   = 2500
  mounts      = "M39x4"
}

chuck "four" {
  jaws        = 4
  independent = true
  diameter    = 150
  length      = 90
  bore        = 40
  grips       = [6, 120]
  jaw_length  = 30
  jaw_out     = 200
  max_speed   = 1500
  mounts      = "M39x4"
}

centre "live" {
  shank = "MT2"
  live  = true
  out   = 60
}

steady "bed" {
  kind = "fixed"
  bars = [6, 60]
}

tool_post "quick" {
  place        = "front"
  left_of_edge = 12
}

turning_tool "knife" {
  of    = "HSS"
  shank = 12
  reach = 25
  nose  = 0.4
}

boring_bar "slim" {
  of         = "HSS"
  diameter   = 8
  reach      = 45
  least_bore = 10
}

parting_tool "blade" {
  of    = "HSS"
  width = 2
  reach = 16
}

threading_tool "metric" {
  of    = "HSS"
  angle = 60
}

knurling_tool "wheels" {
  pitch = [0.8, 1]
}

die "metric" {
  threads = ["M5", "M6", "M8"]
  outside = 25
}

centre_drill "small" {
  diameter = [2, 2.5, 3.15]
  body     = 8
}

faceplate "plate" {
  diameter = 200
  length   = 40
  bore     = 30
  slots    = 12
  mounts   = "M39x4"
}

stock "steel_round" {
  material = "mild steel"
  round    = 25
  lengths  = [500, 120]
  skin     = "drawn"
}

furnace "kiln" {
  hottest = 1100
}

torch "small" {
  hottest = 700
}

torch "lent" {
  state   = "lent out"
  hottest = 1200
}

tee_slot_cutter "tee" {
  diameter = 16
  width    = 7
  neck     = 8
  reach    = 20
  shank    = 10
  overall  = 70
  of       = "HSS"
}

dovetail_cutter "tail" {
  diameter = 20
  width    = 8
  neck     = 8
  reach    = 12
  angle    = 60
  shank    = 10
  overall  = 65
  of       = "HSS"
}

arbor_press "half" {
  force   = 2000
  opening = 150
}
