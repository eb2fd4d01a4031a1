# Wheels of every form of tooth that is made on paper, and a straight scale.
recipe "wheels" {
  title   = "Wheels of every form, and a rule"
  units   = "mm"
  shop    = "../../../recipes/shops/club"
  general = "ISO 2768-m"
}

part "wheel" {
  title    = "Helical wheel, 30 teeth"
  material = "CW614N"
  diameter = 26.447
  length   = 37
  edges    = 0.2

  blank {
    over = { left = 1, right = 26 }
  }

  outside "hub" {
    from     = 0
    to       = 31
    diameter = 14
  }

  outside "rim" {
    from     = 31
    to       = 37
    diameter = 26.447
  }

  hole "bore" {
    into     = "left"
    diameter = "8 H7"
  }

  teeth "rim" {
    on     = outside.rim
    count  = 30
    module = 0.8
    hand   = "right"
    helix  = 15
  }

  setup "turn" {
    end  = "right"
    grip = 20

    operation {
      makes = face.left
    }
    operation {
      makes = hole.bore
      by    = "spotting"
    }
    operation {
      makes   = hole.bore
      to      = 7.8
      down_to = 42
    }
    operation {
      makes = hole.bore
      by    = "reaming"
    }
    operation {
      makes = outside.rim
    }
    operation {
      makes = outside.hub
    }
    deburr {}
    operation {
      makes = face.right
      by    = "parting"
      tool  = parting_tool.deep
    }
  }

  setup "teeth" {
    hold    = dividing_head.universal
    carries = chuck.small
    axis    = "level"
    end     = "left"
    grip    = 10
    between = "copper"

    operation {
      makes = teeth.rim
    }
    deburr {}
  }
}

part "pinion" {
  title    = "Helical pinion, 20 teeth"
  material = "CW614N"
  diameter = 18.164
  length   = 37
  edges    = 0.2

  blank {
    over = { left = 1, right = 26 }
  }

  outside "hub" {
    from     = 0
    to       = 31
    diameter = 14
  }

  outside "rim" {
    from     = 31
    to       = 37
    diameter = 18.164
  }

  hole "bore" {
    into     = "left"
    diameter = "8 H7"
  }

  teeth "rim" {
    on     = outside.rim
    count  = 20
    module = 0.8
    hand   = "left"
    helix  = 15
  }

  setup "turn" {
    end  = "right"
    grip = 20

    operation {
      makes = face.left
    }
    operation {
      makes = hole.bore
      by    = "spotting"
    }
    operation {
      makes   = hole.bore
      to      = 7.8
      down_to = 42
    }
    operation {
      makes = hole.bore
      by    = "reaming"
    }
    operation {
      makes = outside.rim
    }
    operation {
      makes = outside.hub
    }
    deburr {}
    operation {
      makes = face.right
      by    = "parting"
      tool  = parting_tool.deep
    }
  }

  setup "teeth" {
    hold    = dividing_head.universal
    carries = chuck.small
    axis    = "level"
    end     = "left"
    grip    = 10
    between = "copper"

    operation {
      makes = teeth.rim
    }
    deburr {}
  }
}

mesh "helical pair" {
  wheel  = part.wheel.teeth.rim
  pinion = part.pinion.teeth.rim
}

# Sizes as the table of the cutter has them.
part "clock" {
  title    = "Clock wheel, 48 teeth"
  material = "CW614N"
  diameter = 25.5
  length   = 34
  edges    = 0.2

  blank {
    over = { left = 1, right = 26 }
  }

  outside "hub" {
    from     = 0
    to       = 31
    diameter = 14
  }

  outside "rim" {
    from     = 31
    to       = 34
    diameter = 25.5
  }

  hole "bore" {
    into     = "left"
    diameter = "8 H7"
  }

  teeth "rim" {
    on     = outside.rim
    count  = 48
    module = 0.5
    form   = "cycloidal"
    depth  = 1.53
  }

  setup "turn" {
    end  = "right"
    grip = 20

    operation {
      makes = face.left
    }
    operation {
      makes = hole.bore
      by    = "spotting"
    }
    operation {
      makes   = hole.bore
      to      = 7.8
      down_to = 39
    }
    operation {
      makes = hole.bore
      by    = "reaming"
    }
    operation {
      makes = outside.rim
    }
    operation {
      makes = outside.hub
    }
    deburr {}
    operation {
      makes = face.right
      by    = "parting"
      tool  = parting_tool.deep
    }
  }

  setup "teeth" {
    hold    = dividing_head.universal
    carries = chuck.small
    axis    = "level"
    end     = "left"
    grip    = 10
    between = "copper"

    operation {
      makes = teeth.rim
    }
    deburr {}
  }
}

part "leaves" {
  title    = "Pinion of eight leaves, bought"
  material = "silver steel"
  diameter = 5.4
  length   = 12
  bought   = true

  teeth "leaves" {
    count  = 8
    module = 0.5
    form   = "cycloidal"
    depth  = 1.5
  }
}

mesh "going train" {
  wheel  = part.clock.teeth.rim
  pinion = part.leaves.teeth.leaves
}

part "throated" {
  title    = "Throated worm wheel, 20 teeth"
  material = "CW614N"
  diameter = 17.9
  length   = 37
  edges    = 0.2

  blank {
    over = { left = 1, right = 26 }
  }

  outside "hub" {
    from     = 0
    to       = 31
    diameter = 14
  }

  outside "rim" {
    from     = 31
    to       = 37
    diameter = 17.9
  }

  hole "bore" {
    into     = "left"
    diameter = "8 H7"
  }

  teeth "rim" {
    on     = outside.rim
    count    = 20
    worm     = part.worm.worm.thread
    throated = true
  }

  setup "turn" {
    end  = "right"
    grip = 20

    operation {
      makes = face.left
    }
    operation {
      makes = hole.bore
      by    = "spotting"
    }
    operation {
      makes   = hole.bore
      to      = 7.8
      down_to = 42
    }
    operation {
      makes = hole.bore
      by    = "reaming"
    }
    operation {
      makes = outside.rim
    }
    operation {
      makes = outside.hub
    }
    deburr {}
    operation {
      makes = face.right
      by    = "parting"
      tool  = parting_tool.deep
    }
  }

  setup "teeth" {
    hold    = dividing_head.universal
    carries = chuck.small
    axis    = "level"
    end     = "left"
    grip    = 10
    between = "copper"

    operation {
      makes   = teeth.rim
      tool    = gear_cutter.eight_3
      down_to = 1.6
    }
    operation {
      makes = teeth.rim
      tool  = fly_cutter.worm
    }
    deburr {}
  }
}

part "worm" {
  title    = "Worm, bought"
  material = "steel"
  diameter = 12
  length   = 30
  bought   = true

  worm "thread" {
    module = 0.8
  }
}

mesh "worm drive" {
  wheel = part.throated.teeth.rim
  worm  = part.worm.worm.thread
}

part "ring" {
  title    = "Ring with 40 teeth inside"
  material = "CW614N"
  diameter = 42
  length   = 12
  edges    = 0.2

  blank {
    over = { left = 30, right = 1 }
  }

  hole "pilot" {
    into     = "right"
    diameter = 13
  }

  bore "ring" {
    into     = "right"
    diameter = 30.4
  }

  teeth "ring" {
    on     = bore.ring
    count  = 40
    module = 0.8
  }

  setup "turn" {
    machine = lathe.centre
    hold    = chuck.three
    end     = "left"
    grip    = 25

    operation {
      makes = face.right
    }
    operation {
      makes = face.outside
    }
    operation {
      makes = hole.pilot
    }
    operation {
      makes = bore.ring
    }
    operation {
      makes = teeth.ring
    }
    deburr {}
    operation {
      makes = face.left
      by    = "parting"
      tool  = parting_tool.deep
    }
  }
}

part "rule" {
  title    = "Rule, 50 mm"
  material = "CW614N"
  length   = 56
  width    = 20
  height   = 10

  graduations "scale" {
    on      = "top"
    from    = "front"
    count   = 50
    spacing = 1
    zero_at = { left = 3 }
    lines   = { "1" = 3, "5" = 4, "10" = 5 }
    deep    = 0.1
    figures = { every = 10, step = 1, height = 2 }
  }

  blank {
    stock = stock.rule
    over  = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  setup "rule" {
    up = "top"

    operation {
      makes = graduations.scale
    }
  }
}

stock "rule" {
  material = "CW614N"
  flat     = { width = 20, thickness = 10 }
  lengths  = [56]
  skin     = "drawn"
}

gear_cutter "clock" {
  module   = 0.5
  form     = "cycloidal"
  teeth    = [20, 200]
  diameter = 40
  width    = 4
  bore     = 16
}

# Its bit is ground to the thread of the worm.
fly_cutter "worm" {
  of       = "HSS"
  diameter = [10, 30]
  body     = 7
  shank    = 10
  overall  = 60
}

# Bought for the ring.
stock "ring" {
  material  = "CW614N"
  round     = 45
  lengths   = [100]
  skin      = "drawn"
  condition = "half hard"
}
