part "screw" {
  title    = "Screw with its head and the spigot for the cap"
  material = "free-cutting steel"
  diameter = 20
  length   = 56
  edges    = 0.2

  blank {
    bar   = true
  }

  outside "stem" {
    from     = 20
    to       = 56
    diameter = "12 h9"
  }

  groove "relief" {
    on       = outside.stem
    from     = 20
    to       = 23.5
    diameter = 9.5
  }

  thread "screw" {
    on       = outside.stem
    size     = "M12"
    from     = 23.5
    to       = 56
    undercut = groove.relief
  }

  chamfer "lead" {
    on   = [outside.stem, face.right]
    size = 1.5
  }

  outside "spigot" {
    from     = 0
    to       = 8
    diameter = "8 f7"
  }

  outside "head" {
    from     = 8
    to       = 20
    diameter = 20
  }

  hole "tommy" {
    into     = outside.head
    at       = [14, 0]
    diameter = "5.2 H12"
  }

  setup "from the bar" {
    end       = "left"
    stick_out = 62

    operation {
      makes = face.right
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
      makes = thread.screw
    }
    deburr {}
    operation {
      makes  = face.left
      by     = "parting"
      leaves = 0.5
    }
  }

  setup "spigot" {
    end  = "right"
    on   = outside.head
    stick_out = 10

    operation {
      makes = face.left
    }
    operation {
      makes  = outside.spigot
      leaves = 0.3
    }
    operation {
      makes = outside.spigot
    }
    deburr {}
    measure {
      size = outside.spigot.diameter
    }
  }

  setup "cross hole" {
    hold      = dividing_head.universal
    end       = "right"
    stick_out = 30
    carries   = [split_bush.slit, chuck.small]

    operation {
      makes = hole.tommy
      by    = "spotting"
    }
    operation {
      makes = hole.tommy
    }
    deburr {}
  }
}
