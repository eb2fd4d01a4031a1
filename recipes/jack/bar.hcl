part "bar" {
  title    = "Tommy bar"
  material = "silver steel"
  diameter = 5
  length   = 80

  blank {
    stock = stock.steel_5
    over  = { left = 0.5, right = 0.5 }
  }

  face "outside" {
    raw = true
  }

  setup "one end" {
    hold      = chuck.three
    end       = "left"
    stick_out = 10

    operation {
      makes = face.right
    }
    deburr {}
  }

  setup "other end" {
    hold      = chuck.three
    end       = "right"
    stick_out = 10

    operation {
      makes = face.left
    }
    deburr {}
  }
}
