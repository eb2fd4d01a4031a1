# The wheel stands still on the pillar's seat: 44 teeth of module 0.8, so 36.8 mm over the tips. The dial sits on its hub. It is
# turned and bored in one holding, on metal that is parted off afterwards, so that teeth, hub and bore run true with each other.
part "wheel" {
  title    = "Sun wheel, 44 teeth, with its hub"
  material = "CW614N"
  diameter = 36.8
  length   = 37
  edges    = 0.2

  blank {
    over = { left = 1, right = 26 }
  }

  outside "hub" {
    from     = 0
    to       = 31
    diameter = "20 h7"
  }

  outside "rim" {
    from     = 31
    to       = 37
    diameter = 36.8
  }

  hole "bore" {
    into     = "left"
    diameter = "12 H7"
  }

  teeth "rim" {
    on     = outside.rim
    count  = 44
    module = 0.8
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
      to      = 11.8
      down_to = 42
    }
    operation {
      makes   = hole.bore
      by      = "reaming"
    }
    operation {
      makes = outside.rim
    }
    operation {
      makes  = outside.hub
      leaves = 0.3
    }
    operation {
      makes = outside.hub
      cold  = true
    }
    deburr {}
    measure {
      size = hole.bore.diameter
    }
    measure {
      size = outside.hub.diameter
    }
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
