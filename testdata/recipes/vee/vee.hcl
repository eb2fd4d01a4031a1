# Round work in vee blocks: lying in a pair under clamps, lying in one between the jaws, standing on end and lying
# between the fixed jaw and the vee.
recipe "vee" {
  title = "Pins in vee blocks"
  units = "mm"
}

v_block "pair" {
  quantity = 2
  bars     = [6, 32]
  height   = 30
  vee      = 14
  length   = 30
  width    = 40
  relief   = 3
}

part "shaft" {
  material = "mild steel"
  diameter = 25
  length   = 160

  blank {
    over = { left = 0, right = 0, outside = 0 }
  }

  outside "body" {
    diameter = 25
  }

  hole "first" {
    into     = outside.body
    at       = [15, 0]
    diameter = 4
  }

  hole "second" {
    into     = outside.body
    at       = [80, 0]
    diameter = 5
  }

  hole "third" {
    into     = outside.body
    at       = [130, 0]
    diameter = 4
  }

  hole "end" {
    into     = "right"
    diameter = 6
    depth    = 12
  }

  hole "side" {
    into     = outside.body
    at       = [100, 0]
    diameter = 3
    depth    = 6
  }

  setup "clamped" {
    hold = [v_block.pair, clamps.set]
    up   = "top"
    back = "back"

    operation {
      makes = hole.first
    }
    operation {
      makes = hole.second
    }
  }

  bench "file" {
    deburr {}
  }

  setup "in the vise" {
    hold = [v_block.pair, vise.machine]
    up   = "top"
    jaws = "back"
    vee  = { at = [120] }

    operation {
      makes = hole.third
    }
  }

  bench "file again" {
    deburr {}
  }

  setup "on end" {
    hold = [v_block.pair, vise.machine]
    up   = "right"

    operation {
      makes = hole.end
    }
  }

  setup "against the jaw" {
    hold = [v_block.pair, vise.machine]
    up   = "top"
    jaws = "back"
    vee  = { looks = "back" }

    operation {
      makes = hole.side
    }
  }
}
