# Pinion and its shaft are one piece: 22 teeth of module 0.8 below, the shaft up through the arm's bush.
part "pinion" {
  title    = "Earth pinion, 22 teeth, on its shaft"
  material = "free-cutting steel"
  diameter = 19.2
  length   = 40
  edges    = 0.2

  blank {
    bar = true
  }

  outside "shaft" {
    from     = 12
    to       = 40
    diameter = "8 f7"
  }

  outside "hub" {
    from     = 8
    to       = 12
    diameter = 12
  }

  outside "rim" {
    from     = 0
    to       = 8
    diameter = 19.2
  }

  teeth "rim" {
    on     = outside.rim
    count  = 22
    module = 0.8
  }

  setup "shaft" {
    end       = "left"
    stick_out = 46

    operation {
      makes = face.right
    }
    operation {
      makes = outside.rim
    }
    operation {
      makes = outside.hub
    }
    operation {
      makes  = outside.shaft
      leaves = 0.3
    }
    operation {
      makes = outside.shaft
    }
    deburr {}
    measure {
      size = outside.shaft.diameter
    }
    operation {
      makes  = face.left
      by     = "parting"
      leaves = 0.3
    }
  }

  setup "face" {
    end     = "right"
    on      = outside.shaft
    grip    = 18
    between = "copper"

    operation {
      makes = face.left
    }
    deburr {}
  }

  setup "teeth" {
    hold    = dividing_head.universal
    carries = [split_bush.slit, chuck.small]
    axis    = "level"
    end     = "right"
    on      = outside.shaft
    grip    = 10

    operation {
      makes = teeth.rim
    }
    deburr {}
  }
}
