stock "steel_half" {
  material  = "12L14"
  round     = 1/2
  lengths   = [36]
  skin      = "drawn"
  condition = "bright drawn"
}

stock "steel_seven_eighths" {
  material  = "12L14"
  round     = 7/8
  lengths   = [24]
  skin      = "drawn"
  condition = "bright drawn"
}

stock "steel_inch_and_half" {
  material  = "12L14"
  round     = 1 + 1/2
  lengths   = [8]
  skin      = "drawn"
  condition = "bright drawn"
}

stock "drill_rod" {
  material  = "W1"
  round     = 3/16
  lengths   = [36]
  skin      = "ground"
  condition = "annealed"
}

stock "brass_inch" {
  material  = "C360"
  round     = 1
  lengths   = [12]
  skin      = "drawn"
  condition = "half hard"
}

stock "brass_inch_and_half" {
  material  = "C360"
  round     = 1 + 1/2
  lengths   = [12]
  skin      = "drawn"
  condition = "half hard"
}

stock "brass_flat" {
  material = "C360"
  flat     = { width = 1, thickness = 5/8 }
  lengths  = [24]
  skin     = "drawn"
}

stock "brass_block" {
  material = "C360"
  flat     = { width = 1 + 1/4, thickness = 3/4 }
  lengths  = [6]
  skin     = "drawn"
}

stock "brass_sheet" {
  material  = "cartridge brass"
  sheet     = { thickness = 1/16, width = 6 }
  lengths   = [12]
  skin      = "drawn"
}

screws "socket" {
  thread  = "8-32 UNC"
  head    = "cap"
  lengths = [3/8, 1/2, 5/8, 3/4, 1]
}
