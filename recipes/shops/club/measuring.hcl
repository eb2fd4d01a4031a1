micrometer "first" {
  range    = [0, 25]
  reads_to = 0.002
  anvil    = 6.5
  reach    = 32
}

micrometer "second" {
  range    = [25, 50]
  reads_to = 0.01
  anvil    = 6.5
  reach    = 40
}

micrometer "depth" {
  range    = [0, 100]
  reads_to = 0.01
  kind     = "depth"
}

caliper "dial" {
  range    = [0, 150]
  reads_to = 0.02
  jaws     = 40
  inside   = [10, 15]
}

depth_gauge "vernier" {
  range    = [0, 150]
  reads_to = 0.02
  base     = 75
}

height_gauge "vernier" {
  range    = [0, 300]
  reads_to = 0.02
}

telescopic_gauge "set" {
  range = [3, 50]
  reach = 60
}

plug_gauge "pins" {
  diameter = [4, 5, 6, 8, 10, 12]
  limits   = "H7"
  length   = 30
}

dial_test_indicator "lever" {
  range    = [0, 0.8]
  reads_to = 0.01
  diameter = 2
  reach    = 15
}

edge_finder "ten" {
  diameter = 10
}

surface_plate "granite" {
  size = [400, 300]
}

square "six" {
  size  = 150
  error = 0.01
}
