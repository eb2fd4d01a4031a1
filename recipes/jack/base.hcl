part "base" {
  title    = "Base, threaded M12 right through"
  material = "free-cutting steel"
  diameter = 34
  length   = 40
  edges    = 0.2

  blank {
    stock = stock.steel_35
    over  = { left = 1, right = 1 }
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

  setup "foot" {
    hold      = chuck.three
    end       = "right"
    grip      = 24

    operation {
      makes = face.left
    }
    operation {
      makes = face.outside
    }
    deburr {}
  }

  setup "neck" {
    hold      = chuck.four
    end       = "left"
    on        = face.outside
    grip      = 17
    between   = "copper"

    operation {
      makes = face.right
    }
    operation {
      makes = hole.screw
      by    = "spotting"
    }
    operation {
      makes = hole.screw
      tool  = drill.jobbers[10.2]
    }
    operation {
      makes  = outside.neck
    }
    operation {
      makes = chamfer.mouth
    }
    operation {
      makes = hole.screw.thread
      tool  = tap.metric["M12"]
    }
    deburr {}
    measure {
      size = length
    }
  }
}
