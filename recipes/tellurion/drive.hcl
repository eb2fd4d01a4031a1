# The wheel of the worm is pinned to the arm: thirty teeth, gashed along the lead of the worm.
part "drive" {
  title    = "Worm wheel, 30 teeth"
  material = "CW614N"
  diameter = 25.6
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
    diameter = 25.6
  }

  hole "bore" {
    into     = "left"
    diameter = "8 H7"
  }

  teeth "rim" {
    on    = outside.rim
    count = 30
    worm  = part.worm.worm.drive
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
