part "screw" {
  title    = "Screw with its head and the spigot for the cap"
  material = "free-cutting steel"
  diameter = 20
  length   = 60
  edges    = 0.2

  blank {
    stock = stock.steel_20
    bar   = true
  }

  outside "stem" {
    from     = 0
    to       = 38
    diameter = "12 h9"
  }

  groove "relief" {
    on   = outside.stem
    from = 35
    to   = 38
    diameter = 9.5
  }

  thread "screw" {
    on   = outside.stem
    size = "M12"
    from = 0
    to   = 35
    undercut = groove.relief
  }

  outside "spigot" {
    from     = 52
    to       = 60
    diameter = "8 f7"
  }

  hole "tommy" {
    into     = "outside"
    at       = [45, 0]
    diameter = "5.2 H12"
  }

  chamfer "lead" {
    on   = [outside.stem, face.left]
    size = 1.5
  }

  setup "spigot" {
    hold      = chuck.three
    end       = "left"
    stick_out = 70

    operation {
      makes = face.right
    }
    operation {
      makes = outside.spigot
      leaves = 0.3
    }
    operation {
      makes = outside.spigot
    }
    measure {
      size = outside.spigot.diameter
      with = micrometer.first
    }
    deburr {}
    operation {
      makes = face.left
      by    = "parting"
    }
  }

  setup "stem" {
    hold      = chuck.three
    end       = "right"
    stick_out = 40
    between   = "copper"

    operation {
      makes = outside.stem
    }
    operation {
      makes = groove.relief
    }
    operation {
      makes = chamfer.lead
    }
    operation {
      makes = thread.screw
      tool  = die.metric
    }
    deburr {}
  }

  setup "cross hole" {
    hold      = vise.machine
    up        = "top"
    jaws      = "back"

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
