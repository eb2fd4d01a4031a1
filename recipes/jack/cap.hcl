part "cap" {
  title    = "Swivelling cap"
  material = "CW614N"
  diameter = 20
  length   = 14
  edges    = 0.2

  blank {
    bar   = true
  }

  hole "seat" {
    into     = "right"
    diameter = "8 H8"
    depth    = 8.5
    bottom   = "point"
  }

  groove "grip" {
    on       = "outside"
    from     = 2
    to       = 4
    diameter = 18
  }

  setup "from the bar" {
    end       = "left"
    stick_out = 25

    operation {
      makes = face.right
    }
    operation {
      makes = hole.seat
      by    = "spotting"
    }
    operation {
      makes   = hole.seat
      to      = 7.8
      down_to = 10.5
    }
    operation {
      makes = hole.seat
      by    = "reaming"
    }
    operation {
      makes = face.outside
    }
    operation {
      makes = groove.grip
    }
    deburr {}
    measure {
      size = hole.seat.diameter
    }
    operation {
      makes  = face.left
      by     = "parting"
      leaves = 0.3
    }
  }

  setup "top" {
    end  = "right"
    grip = 10

    operation {
      makes = face.left
    }
    deburr {}
  }
}
