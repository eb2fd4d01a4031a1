# Pressed into the arm, and reamed only then: a pressed bush closes.
part "bush" {
  title    = "Bush of the Earth's shaft"
  material = "CW614N"
  diameter = 18
  length   = 14
  edges    = 0.2

  blank {
    bar = true
  }

  outside "body" {
    from     = 4
    to       = 14
    diameter = "12 p7"
  }

  outside "flange" {
    from     = 0
    to       = 4
    diameter = 18
  }

  hole "bore" {
    into     = "right"
    diameter = "8 H7"
  }

  setup "from the bar" {
    end       = "left"
    stick_out = 28

    operation {
      makes = face.right
    }
    operation {
      makes = hole.bore
      by    = "spotting"
    }
    operation {
      makes   = hole.bore
      to      = 7.8
      down_to = 17
    }
    operation {
      makes = outside.flange
    }
    operation {
      makes  = outside.body
      leaves = 0.3
    }
    operation {
      makes = outside.body
    }
    deburr {}
    measure {
      size = outside.body.diameter
    }
    operation {
      makes = face.left
      by    = "parting"
    }
  }
}
