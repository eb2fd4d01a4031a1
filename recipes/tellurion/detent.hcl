# The detent that drops between the lines' notches is hard: it is turned, hardened, tempered.
part "detent" {
  title    = "Detent pin"
  material = "silver steel"
  diameter = 5
  length   = 24

  blank {
    over = { left = 1, right = 1 }
  }

  chamfer "point" {
    on   = [face.outside, face.right]
    size = 1.5
  }

  setup "point" {
    end       = "left"
    stick_out = 8

    operation {
      makes = face.right
    }
    operation {
      makes = chamfer.point
    }
    deburr {}
  }

  setup "other end" {
    end       = "right"
    stick_out = 8

    operation {
      makes = face.left
    }
    deburr {}
  }

  heat "harden" {
    does   = "harden"
    quench = "water"
  }

  heat "temper" {
    does        = "temper"
    temperature = 230
  }
}
