# A small screw jack to level work on the mill's table: base, screw, swivelling cap, tommy bar.
recipe "jack" {
  title   = "A small screw jack"
  units   = "mm"
  shop    = "../shops/club"
  general = "ISO 2768-m"
}

fit "swivel" {
  hole  = part.cap.hole.seat.diameter
  shaft = part.screw.outside.spigot.diameter
  wants = "H8/f7"
}
