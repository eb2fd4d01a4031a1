part "base" {
  title    = "Base, threaded M12 right through"
  material = "free-cutting steel"
  diameter = 34
  length   = 40
  edges    = 0.2

  blank {
    bar   = true
  }

  outside "neck" {
    from     = 12
    to       = 40
    diameter = 24
  }

  hole "screw" {
    into     = "right"
    diameter = 10.2
    thread   = { size = "M12" }
  }

  chamfer "mouth" {
    on   = [outside.neck, face.right]
    size = 1
  }

  setup "from the bar" {
    end       = "left"
    stick_out = 48

    operation {
      makes = face.right
    }
    operation {
      makes = hole.screw
      by    = "spotting"
    }
    operation {
      makes   = hole.screw
      down_to = 42
    }
    operation {
      makes = face.outside
    }
    operation {
      makes = outside.neck
    }
    operation {
      makes = chamfer.mouth
    }
    operation {
      makes = hole.screw.thread
    }
    deburr {}
    operation {
      makes  = face.left
      by     = "parting"
      leaves = 0.3
    }
  }

  setup "foot" {
    end     = "right"
    on      = outside.neck
    grip    = 27
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
