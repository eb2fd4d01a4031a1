stock "steel_12" {
  material  = "free-cutting steel"
  round     = 12
  lengths   = [1000]
  skin      = "drawn"
  condition = "bright drawn"
}

stock "steel_5" {
  material  = "silver steel"
  round     = 5
  lengths   = [330]
  skin      = "ground"
  condition = "annealed"
}

stock "steel_20" {
  material  = "free-cutting steel"
  round     = 20
  lengths   = [600]
  skin      = "drawn"
  condition = "bright drawn"
}

stock "steel_25" {
  material  = "free-cutting steel"
  round     = 25
  lengths   = [500]
  skin      = "drawn"
  condition = "bright drawn"
}

stock "steel_35" {
  material  = "free-cutting steel"
  round     = 35
  lengths   = [180]
  skin      = "drawn"
  condition = "bright drawn"
}

stock "brass_25" {
  material  = "CW614N"
  round     = 25
  lengths   = [300]
  skin      = "drawn"
  condition = "half hard"
}

stock "brass_40" {
  material  = "CW614N"
  round     = 40
  lengths   = [200]
  skin      = "drawn"
  condition = "half hard"
}

stock "brass_flat" {
  material  = "CW614N"
  flat      = { width = 25, thickness = 15 }
  lengths   = [500]
  skin      = "drawn"
}

stock "brass_wide" {
  material  = "CW614N"
  flat      = { width = 30, thickness = 15 }
  lengths   = [300]
  skin      = "drawn"
}

stock "brass_block" {
  material  = "CW614N"
  flat      = { width = 30, thickness = 25 }
  lengths   = [120]
  skin      = "drawn"
}

stock "brass_sheet" {
  material  = "CZ120"
  sheet     = { thickness = 1.5, width = 150 }
  lengths   = [300]
  skin      = "drawn"
}

screws "caps" {
  thread  = "M4"
  head    = "cap"
  lengths = [8, 10, 12, 16, 20, 25]
}

screws "grubs" {
  thread  = "M3"
  head    = "grub"
  lengths = [4, 6, 8]
}

number_punches "small" {
  height = 1.5
  width  = 1
}
