# A dial of a hundred lines for a slide whose screw has a lead of 2 mm: each line is 0.02 mm. It turns
# on its mount, and a grub screw holds it there.
recipe "dial" {
  title   = "A graduated dial on the dividing head"
  units   = "mm"
  shop    = "../shops/club"
  general = "ISO 2768-m"
}

fit "turns" {
  hole  = part.dial.hole.bore.diameter
  shaft = part.mount.outside.spigot.diameter
  wants = "H7/f7"
}

part "dial" {
  title    = "Dial with a hundred lines"
  material = "CW614N"
  diameter = 37.9 # 119 ridges of the knurl
  length   = 20
  edges    = 0.2

  # The metal over the left end is what every holding grips, so that the scale runs true with the bore.
  blank {
    over = { left = 46, right = 1 }
  }

  outside "grip" {
    from     = 0
    to       = 8
    diameter = 37.9
  }

  outside "rim" {
    from     = 8
    to       = 20
    diameter = 36
  }

  hole "bore" {
    into     = "right"
    diameter = "12 H7"
  }

  knurl "grip" {
    on    = outside.grip
    pitch = 1
  }

  # The wall is 13 mm thick; the drill and the tap run on into the bore.
  hole "grub" {
    into     = outside.grip
    at       = [4, 0]
    diameter = 2.5
    depth    = 15
    thread   = { size = "M3", depth = 13 }
    meets    = [hole.bore]
  }

  graduations "scale" {
    on      = outside.rim
    count   = 100
    lines   = { "1" = 3, "5" = 4.5, "10" = 6 }
    from    = "right"
    deep    = 0.15
    figures = { every = 10, height = 1.5 }
  }

  setup "blank" {
    end  = "left"
    grip = 20

    operation {
      makes = face.right
    }
    operation {
      makes = hole.bore
      by    = "spotting"
    }
    operation {
      makes = hole.bore
      to    = 11.8
    }
    operation {
      makes = hole.bore
      by    = "reaming"
    }
    measure {
      size = hole.bore.diameter
    }
    operation {
      makes = outside.grip
    }
    operation {
      makes  = outside.rim
      leaves = 0.1
    }
    operation {
      makes = knurl.grip
    }
    deburr {}
  }

  setup "divide" {
    hold    = dividing_head.universal
    carries = chuck.small
    axis    = "level"
    end     = "left"
    grip    = 20

    operation {
      makes    = graduations.scale
      tool_out = 30
    }
    operation {
      makes = hole.grub
      by    = "spotting"
    }
    operation {
      makes = hole.grub
    }
    operation {
      makes = hole.grub.thread
    }
    deburr {}
  }

  bench "stamp" {
    mark {
      out     = [graduations.scale]
      figures = "0 10 20 30 40 50 60 70 80 90"
    }
  }

  setup "skim and part" {
    end  = "left"
    grip = 20

    operation {
      makes = outside.rim
    }
    deburr {}
    operation {
      makes = face.left
      by    = "parting"
    }
  }
}

part "mount" {
  title    = "Mount that the dial turns on"
  material = "free-cutting steel"
  diameter = 22
  length   = 30
  edges    = 0.2

  blank {
    bar = true
  }

  outside "spigot" {
    from     = 8
    to       = 30
    diameter = "12 f7"
  }

  hole "screw" {
    into     = "right"
    diameter = "6 H7"
  }

  setup "from the bar" {
    end       = "left"
    stick_out = 40

    operation {
      makes = face.right
    }
    operation {
      makes = hole.screw
      by    = "spotting"
    }
    operation {
      makes   = hole.screw
      to      = 5.8
      down_to = 32
    }
    operation {
      makes = hole.screw
      by    = "reaming"
    }
    operation {
      makes = face.outside
    }
    operation {
      makes  = outside.spigot
      leaves = 0.3
    }
    operation {
      makes = outside.spigot
    }
    deburr {}
    measure {
      size = outside.spigot.diameter
    }
    operation {
      makes  = face.left
      by     = "parting"
      leaves = 0.3
    }
  }

  setup "flange" {
    end     = "right"
    on      = outside.spigot
    grip    = 20
    between = "copper"

    operation {
      makes = face.left
    }
    deburr {}
    measure {
      size = length
    }
  }
}
