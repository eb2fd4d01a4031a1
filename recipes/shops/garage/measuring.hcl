micrometer "one" {
  range    = [0, 1]
  reads_to = 0.0001
  anvil    = 1/4
  reach    = 1 + 1/8
}

micrometer "two" {
  range    = [1, 2]
  reads_to = 0.001
  anvil    = 1/4
  reach    = 1 + 5/8
}

micrometer "depth" {
  range    = [0, 3]
  reads_to = 0.001
  kind     = "depth"
}

caliper "dial" {
  range    = [0, 6]
  reads_to = 0.001
  jaws     = 1 + 1/2
  inside   = [3/8, 5/8]
}

telescopic_gauge "set" {
  range = [1/8, 2]
  reach = 2
}

dial_test_indicator "lever" {
  range    = [0, 0.03]
  reads_to = 0.0005
  diameter = 5/64
  reach    = 5/8
}

edge_finder "two_hundred" {
  diameter = 0.2
}
