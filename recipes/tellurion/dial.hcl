# Seventy-two lines, one for five degrees: every sixth a month's half.
part "dial" {
  title    = "Dial on the pillar"
  material = "CW614N"
  diameter = 38
  length   = 10
  edges    = 0.2

  blank {
    over = { left = 44, right = 1 }
  }

  outside "rim" {
    from     = 0
    to       = 10
    diameter = 38
  }

  hole "bore" {
    into     = "right"
    diameter = "20 H8"
  }

  graduations "degrees" {
    on    = outside.rim
    count = 72
    lines = { "1" = 2.5, "3" = 4, "6" = 5.5 }
    from  = "right"
    deep  = 0.15
  }

  setup "blank" {
    end  = "left"
    grip = 22

    operation {
      makes = face.right
    }
    operation {
      makes = hole.bore
      by    = "spotting"
    }
    operation {
      makes   = hole.bore
      to      = 16
      down_to = 13
    }
    operation {
      makes   = hole.bore
      by      = "boring"
    }
    operation {
      makes = outside.rim
    }
    deburr {}
    measure {
      size = hole.bore.diameter
    }
  }

  setup "divide" {
    hold    = dividing_head.universal
    carries = chuck.small
    axis    = "level"
    end     = "left"
    grip    = 22

    operation {
      makes    = graduations.degrees
      tool_out = 30
    }
  }

  setup "part" {
    end  = "left"
    grip = 22

    operation {
      makes = face.left
      by    = "parting"
    }
  }
}
