# The bearing of the worm's shaft is one piece, sawn in two and screwed together again before it is bored.
part "bearing" {
  title    = "Bearing in two halves"
  material = "CW614N"
  length   = 36
  width    = 16
  height   = "28 ±0.1"
  edges    = 0.2

  blank {
    lies = ["length", "height", "width"]
  }

  split "joint" {
    at     = { bottom = 20 }
    kerf   = 0.8
    pieces = ["base", "cap"]
  }

  hole "shaft" {
    into     = "front"
    at       = { left = 18, bottom = 20 }
    diameter = "8 H7"
  }

  hole "screws" {
    into     = "top"
    at       = [[5, 8], [31, 8]]
    diameter = 2.5
    depth    = 22
    thread   = { size = "M3", depth = 17 }
  }

  square_up {}

  setup "screw holes" {
    up   = "top"
    jaws = "back"

    operation {
      makes = hole.screws
      by    = "spotting"
    }
    operation {
      makes = hole.screws
    }
    operation {
      makes = hole.screws.thread
    }
    deburr {}
  }

  setup "saw" {
    up   = "top"
    jaws = "back"
    grip = 9

    operation {
      makes = split.joint
    }
    deburr {}
  }

  setup "bore" {
    up   = "front"
    jaws = "top"

    operation {
      makes = hole.shaft
      by    = "spotting"
    }
    operation {
      makes = hole.shaft
      to    = 7.8
    }
    operation {
      makes = hole.shaft
      by    = "reaming"
    }
    deburr {}
  }
}
