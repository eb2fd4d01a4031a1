# The pillar stands in a base plate by its thread. Upwards: thread, flange, seat of wheel and dial, spigot of the arm.
part "pillar" {
  title    = "Pillar"
  material = "free-cutting steel"
  diameter = 20
  length   = 114
  edges    = 0.2

  blank {
    over = { left = 1, right = 1 }
  }

  centre_hole "end" {
    into  = "right"
    size  = 2
    stays = true
  }

  outside "stem" {
    from     = 0
    to       = 20
    diameter = "10 h9"
  }

  groove "relief" {
    on       = outside.stem
    from     = 16.5
    to       = 20
    diameter = 7.8
  }

  thread "stem" {
    on       = outside.stem
    size     = "M10"
    from     = 0
    to       = 16.5
    undercut = groove.relief
  }

  chamfer "lead" {
    on   = [outside.stem, face.left]
    size = 1.2
  }

  outside "flange" {
    from     = 20
    to       = 26
    diameter = 20
  }

  outside "seat" {
    from     = 26
    to       = 64
    diameter = "12 h7"
  }

  outside "spigot" {
    from     = 64
    to       = 114
    diameter = "8 f7"
  }

  setup "end and centre" {
    end       = "left"
    stick_out = 30

    operation {
      makes = face.right
    }
    operation {
      makes = centre_hole.end
    }
  }

  setup "seat and spigot" {
    end     = "left"
    grip    = 18
    support = { by = centre.live, at = "right" }

    operation {
      makes  = outside.seat
      leaves = 0.3
    }
    operation {
      makes  = outside.spigot
      leaves = 0.3
    }
    operation {
      makes = outside.seat
    }
    operation {
      makes = outside.spigot
    }
    deburr {}
    measure {
      size = outside.seat.diameter
    }
    measure {
      size = outside.spigot.diameter
    }
  }

  setup "stem" {
    end     = "right"
    on      = outside.seat
    stick_out = 29
    between = "copper"

    operation {
      makes = face.left
    }
    operation {
      makes = outside.stem
    }
    operation {
      makes = chamfer.lead
    }
    operation {
      makes = groove.relief
    }
    operation {
      makes = thread.stem
    }
    deburr {}
    measure {
      size = length
    }
  }
}
