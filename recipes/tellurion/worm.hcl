# The worm is turned by a knob on its shaft; one turn moves the arm by a thirtieth. All of it is turned in one holding, on metal
# that is parted off at the end, so that thread and journal run true.
part "worm" {
  title    = "Worm on its shaft"
  material = "free-cutting steel"
  diameter = 12
  length   = 50
  edges    = 0.2

  blank {
    over = { left = 30, right = 1 }
  }

  centre_hole "end" {
    into  = "right"
    size  = 2
    stays = true
  }

  outside "thread" {
    from     = 0
    to       = 20
    diameter = 12
  }

  outside "journal" {
    from     = 20
    to       = 50
    diameter = "8 f7"
  }

  worm "drive" {
    on     = outside.thread
    module = 0.8
    hand   = "right"
  }

  setup "end and centre" {
    end       = "left"
    stick_out = 25

    operation {
      makes = face.right
    }
    operation {
      makes = centre_hole.end
    }
  }

  setup "turn" {
    end     = "left"
    grip    = 22
    support = { by = centre.live, at = "right" }

    operation {
      makes  = outside.journal
      leaves = 0.3
    }
    operation {
      makes = outside.journal
    }
    operation {
      makes = worm.drive
    }
    deburr {}
    measure {
      size = outside.journal.diameter
    }
  }

  setup "part" {
    end       = "left"
    grip      = 22

    operation {
      makes = face.left
      by    = "parting"
    }
  }
}
