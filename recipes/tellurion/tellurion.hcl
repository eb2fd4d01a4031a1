# A desk model of Earth and Moon going round the Sun. An arm turns on a fixed pillar; a wheel that stands still on the
# pillar drives a pinion on the arm's outer end through an idler shaft, so that the Earth's axis keeps turning as the arm
# goes round. Seven parts and a pin, all within a bench lathe and a small mill.
recipe "tellurion" {
  title   = "A desk tellurion"
  units   = "mm"
  shop    = "../shops/club"
  general = "ISO 2768-m"
}

# The arm turns on the pillar's spigot, and the pinch screw sets how freely.
fit "arm on pillar" {
  hole  = part.arm.hole.pillar.diameter
  shaft = part.pillar.outside.spigot.diameter
  wants = "H7/f7"
}

# The bush stays in the arm.
fit "bush in arm" {
  hole  = part.arm.hole.bush.diameter
  shaft = part.bush.outside.body.diameter
  wants = "H7/p7"
}

# The pinion's shaft turns in it.
fit "shaft in bush" {
  hole  = part.bush.hole.bore.diameter
  shaft = part.pinion.outside.shaft.diameter
  wants = "H7/f7"
}

fit "wheel on pillar" {
  hole  = part.wheel.hole.bore.diameter
  shaft = part.pillar.outside.seat.diameter
  wants = "H7/h7"
}

fit "dial on hub" {
  hole  = part.dial.hole.bore.diameter
  shaft = part.wheel.outside.hub.diameter
  wants = "H8/h7"
}

# Two holes of the arm, hold wheel and pinion in mesh: (44 + 22) teeth of module 0.8, halved, and 0.05 mm for play.
mesh "sun and earth" {
  wheel   = part.wheel.teeth.rim
  pinion  = part.pinion.teeth.rim
  centres = "26.45 ±0.02"
}

# The bush is reamed in its place: pressing closes it by more than the limits of its bore.
assembly "arm and bush" {
  of        = [part.arm, part.bush]
  joined_by = [fit["bush in arm"]]

  bench "press" {
    joins = [fit["bush in arm"]]
  }

  setup "ream" {
    up   = "top"
    jaws = "back"

    operation {
      makes = part.bush.hole.bore
      by    = "reaming"
    }
  }
}

# Worm and wheel: half of the worm's pitch diameter, 10.4, and of the wheel's, 24.
mesh "worm and drive" {
  wheel   = part.drive.teeth.rim
  worm    = part.worm.worm.drive
  centres = "17.22 ±0.02"
}

fit "shaft in bearing" {
  hole  = part.bearing.hole.shaft.diameter
  shaft = part.worm.outside.journal.diameter
  wants = "H7/f7"
}
