part "cap" {
  title    = "Swivelling cap"
  material = "CW614N"
  diameter = 20
  length   = 12
  edges    = 0.2

  blank {
    stock = stock.brass_25
    bar   = true
  }

  hole "seat" {
    into     = "right"
    diameter = "8 H8"
    depth    = 9
    bottom   = "point"
  }

  groove "grip" {
    on       = "outside"
    from     = 5
    to       = 7
    diameter = 18
  }

  setup "turn" {
    hold      = chuck.three
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
      makes    = hole.seat
      tool     = drill.jobbers[7.8]
      down_to  = 11
    }
    operation {
      makes = hole.seat
      tool  = reamer.machine[8]
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
      with = plug_gauge.pins
    }
    operation {
      makes = face.left
      by    = "parting"
      leaves = 0.3
    }
  }

  setup "top" {
    hold      = chuck.three
    end       = "right"
    stick_out = 4
    between   = "copper"

    operation {
      makes = face.left
    }
    deburr {}
  }
}
