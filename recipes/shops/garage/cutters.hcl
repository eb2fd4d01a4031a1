drill "fractions" {
  diameter = series(1/16, 1/2, 1/64)
  of       = "HSS"
}

drill "numbers" {
  diameter = set("number drills")
  of       = "HSS"
}

drill "letters" {
  diameter = set("letter drills")
  of       = "HSS"
}

# The inch sizes of centre drill: Nos. 1 to 4 by their pilots.
centre_drill "numbers" {
  diameter = [3/64, 5/64, 7/64, 1/8]
  shank    = 5/16
  overall  = 2 + 1/8
  of       = "HSS"
}

reamer "chucking" {
  diameter = [1/8, 3/16, 1/4, 5/16, 3/8, 7/16, 1/2]
  kind     = "machine"
  of       = "HSS"
}

tap "coarse" {
  threads = ["4-40 UNC", "6-32 UNC", "8-32 UNC", "10-24 UNC", "1/4-20 UNC", "5/16-18 UNC", "3/8-16 UNC", "1/2-13 UNC"]
  leads   = ["taper", "second", "bottoming"]
  of      = "HSS"
}

tap "fine" {
  threads = ["4-48 UNF", "10-32 UNF", "1/4-28 UNF", "5/16-24 UNF", "3/8-24 UNF", "1/2-20 UNF"]
  leads   = ["taper", "second"]
  of      = "HSS"
}

die "coarse" {
  threads = ["6-32 UNC", "8-32 UNC", "10-24 UNC", "1/4-20 UNC", "5/16-18 UNC", "3/8-16 UNC"]
  outside = 1
  split   = true
}

countersink "eighty_two" {
  diameter = [1/4, 1/2, 3/4]
  angle    = 82
  shank    = 1/4
}

end_mill "four" {
  diameter       = [1/8, 3/16, 1/4, 5/16, 3/8, 1/2]
  of             = "HSS"
  teeth          = 4
  shank          = 3/8
  overall        = 2 + 1/2
  flute_length   = 3/4
  centre_cutting = true
}

end_mill "large" {
  diameter     = [5/8, 3/4]
  of           = "HSS"
  teeth        = 4
  shank        = 3/4
  overall      = 3 + 7/8
  flute_length = 1 + 5/8
}

slot_drill "two" {
  diameter       = [1/16, 3/32, 1/8, 3/16, 1/4, 3/8]
  of             = "HSS"
  teeth          = 2
  shank          = 3/8
  overall        = 2 + 5/16
  flute_length   = 9/16
  centre_cutting = true
}

slitting_saw "thirty_second" {
  diameter = 2 + 3/4
  width    = 1/32
  bore     = 1
  teeth    = 72
  of       = "HSS"
}

slitting_saw "sixteenth" {
  diameter = 4
  width    = 1/16
  bore     = 1
  teeth    = 36
  of       = "HSS"
}

turning_tool "right" {
  of    = "HSS"
  shank = 3/8
  hand  = "right"
  nose  = 1/64
  angle = 80
  reach = 3/4
}

turning_tool "left" {
  of    = "HSS"
  shank = 3/8
  hand  = "left"
  nose  = 1/64
  angle = 80
  reach = 3/4
}

turning_tool "vee" {
  of    = "HSS"
  shank = 3/8
  nose  = 0
  angle = 60
  reach = 3/4
  overall = 2 + 1/2
}

boring_bar "three_eighths" {
  of         = "HSS"
  diameter   = 3/8
  reach      = 1 + 3/4
  least_bore = 7/16
}

parting_tool "blade" {
  of    = "HSS"
  width = 3/32
  reach = 11/16
}

threading_tool "sixty" {
  of    = "HSS"
  angle = 60
  nose  = 0.005
}

knurling_tool "medium" {
  pitch = [1/21]
}

file "mill" {
  length  = 8
  section = "flat"
}

piercing_saw "frame" {}

number_punches "eighth" {
  height = 1/8
}
