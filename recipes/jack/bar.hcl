part "bar" {
  title    = "Tommy bar"
  material = "silver steel"
  diameter = 5
  length   = 80

  blank {
    over  = { left = 1, right = 1 }
  }

  face "outside" {
    raw = true
  }

  setup "one end" {
    end       = "left"
    stick_out = 10

    operation {
      makes = face.right
    }
    deburr {}
  }

  setup "other end" {
    end       = "right"
    stick_out = 10

    operation {
      makes = face.left
    }
    deburr {}
  }
}
