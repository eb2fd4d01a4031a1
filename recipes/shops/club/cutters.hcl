drill "jobbers" {
  diameter = series(0.5, 16, 0.1)
  of       = "HSS"
}

drill "quarters" {
  diameter = [3.25, 4.25, 5.25, 6.75, 8.5, 8.75, 10.25, 10.75]
  of       = "HSS"
}

centre_drill "set" {
  diameter = [1, 1.6, 2, 2.5, 3.15, 4]
  overall  = 45
  shank    = 8
  of       = "HSS"
}

reamer "machine" {
  diameter     = [2, 3, 4, 5, 6, 7, 8, 10, 12, 16]
  kind         = "machine"
  overall      = 100
  of           = "HSS"
}

tap "metric" {
  threads = ["M2", "M2.5", "M3", "M4", "M5", "M6", "M8", "M10", "M12", "M16"]
  leads   = ["taper", "second", "bottoming"]
  of      = "HSS"
}

die "metric" {
  threads = ["M3", "M4", "M5", "M6", "M8", "M10", "M12"]
  outside = 38
  split   = true
  of      = "HSS"
}

countersink "ninety" {
  diameter = [10, 16, 25]
  angle    = 90
  least    = 2
  shank    = 10
  overall  = 65
  of       = "HSS"
}

end_mill "four" {
  diameter       = [3, 4, 5, 6, 8, 10, 12, 16]
  of             = "HSS"
  teeth          = 4
  overall        = 90
  flute_length   = 32
  shank          = 12
  centre_cutting = true
}

slot_drill "two" {
  diameter       = [2, 3, 4, 5, 6, 8, 10, 12]
  of             = "HSS"
  teeth          = 2
  overall        = 80
  flute_length   = 25
  shank          = 12
  centre_cutting = true
}

face_mill "shell" {
  diameter = 50
  bore     = 22
  width    = 36
  of       = "carbide"
  teeth    = 4
}

slitting_saw "fine" {
  diameter = 80
  width    = 0.8
  bore     = 22
  teeth    = 128
  of       = "HSS"
}

slitting_saw "coarse" {
  diameter = 100
  width    = 1.6
  bore     = 22
  teeth    = 64
  of       = "HSS"
}

turning_tool "right" {
  of    = "HSS"
  shank = 12
  hand  = "right"
  nose  = 0.4
  angle = 80
}

turning_tool "left" {
  of    = "HSS"
  shank = 12
  hand  = "left"
  nose  = 0.4
  angle = 80
}

turning_tool "vee" {
  of    = "HSS"
  shank = 12
  nose  = 0
  angle = 60
}

boring_bar "six" {
  of         = "HSS"
  diameter   = 6
  reach      = 30
  least_bore = 7
}

boring_bar "ten" {
  of         = "carbide"
  diameter   = 10
  reach      = 60
  least_bore = 12
}

parting_tool "deep" {
  of    = "HSS"
  width = 3
  reach = 32
}

parting_tool "two" {
  of    = "HSS"
  width = 2
  reach = 20
}

threading_tool "sixty" {
  of    = "HSS"
  angle = 60
  nose  = 0.1
}

threading_tool "worms" {
  of    = "HSS"
  angle = 40
  nose  = 0.2
}

threading_tool "sixty_inside" {
  of         = "HSS"
  angle      = 60
  inside     = true
  least_bore = 10
}

knurling_tool "clams" {
  pitch = [0.6, 0.8, 1, 1.2]
}

file "set" {
  length  = 150
  section = "flat"
}
