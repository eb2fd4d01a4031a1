package rules

import "strings"

// exampleHalves is a bearing that is sawn in two, with its set-ups in the order given: "bore" bores
// it whole, "screws" drills through both pieces, "saw", "base" and "cap" clean the faces of the joint.
func exampleHalves(more string, order ...string) string {
	setups := map[string]string{
		"screws": "    up   = \"top\"\n    jaws = \"back\"\n\n    operation {\n      makes = hole.screws\n    }\n",
		"saw":    "    up   = \"top\"\n    jaws = \"back\"\n    grip = 6\n\n    operation {\n      makes = split.joint\n      holder = arbor.slim\n    }\n",
		"base":   "    up   = \"top\"\n    jaws = \"back\"\n\n    operation {\n      makes = split.joint.base\n    }\n",
		"cap":    "    up   = \"bottom\"\n    jaws = \"back\"\n\n    operation {\n      makes = split.joint.cap\n    }\n",
		"bore":   "    up   = \"front\"\n    jaws = \"top\"\n\n    operation {\n      makes = hole.shaft\n    }\n",
	}
	var b strings.Builder
	b.WriteString(`recipe "example" {
  units = "mm"
}

part "bearing" {
  material = "brass"
  length   = 36
  width    = 12
  height   = 28

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  split "joint" {
    at     = { bottom = 16 }
    kerf   = 0.8
    pieces = ["base", "cap"]
  }

  hole "shaft" {
    into     = "front"
    at       = { left = 18, bottom = 16 }
    diameter = 8
  }

  hole "screws" {
    into     = "top"
    at       = [[5, 6], [31, 6]]
    diameter = 3
  }
`)
	b.WriteString(more)
	for _, name := range order {
		b.WriteString("\n  setup \"" + name + "\" {\n    hold = vise.small\n" + setups[name] + "  }\n")
	}
	b.WriteString("}\n\narbor \"slim\" {\n  shank  = \"MT3\"\n  tail   = \"M12\"\n  seat   = 16\n  collar = 20\n  body   = 20\n  out    = 60\n  key    = true\n" +
		"  clamp  = { by = \"screw\", thread = \"M6\", diameter = 20, length = 0.2 }\n}\n")
	return b.String()
}
