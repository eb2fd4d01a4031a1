package rules

// exampleLevel mills a slot along a block with a disc cutter under a level spindle.
func exampleLevel(machine, op string) string {
	return replaced(replaced(exampleSlot(op), "tool  = slot_drill.two[6]", "tool  = side_and_face_cutter.six"), "    hold      = vise.small", "    machine   = mill.level\n    hold      = vise.small") + `
mill "level" {
  spindle  = "level"
  taper    = "MT3"
  drawbars = ["M12"]
  speeds   = [60, 100, 170, 280, 470]
  travel   = [350, 150, 300]
  column   = "knee"
  ` + machine + `
}

side_and_face_cutter "six" {
  diameter = 63
  width    = 6
  bore     = 16
  teeth    = 16
  of       = "HSS"
}

arbor "long" {
  shank  = "MT3"
  tail   = "M12"
  seat   = 16
  collar = 26
  body   = 26
  out    = 60
  key    = true
  clamp  = { by = "nut", thread = "M14x1.5 LH", diameter = 26, length = 60 }
}
`
}
