package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "head-has-no-room",
	Title: "a wall of the part stands where the head of the screw is to turn",
	Why: `The hole is nearer to the wall than the head is wide: the head does not go down to its face, or a hexagon stops
with a corner against the wall. A smaller head, a hole farther off, or a spot face cut into the wall makes the room.`,
	Rows: []string{"D29"},
	Source: []string{"geometry", "heads: ISO 4762 and ISO 4017 (from memory); a hexagon is 1.155 of its flats over the corners",
		"head_diameter of the shop's own screws goes before it"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleByWall(4),
	Sound:     exampleByWall(8),
	OnJoint:   headHasNoRoom,
})

// exampleByWall is a bracket held by a hexagon screw M5 so far from its upright wall.
func exampleByWall(from float64) string {
	return `recipe "example" {
  units = "mm"
}

part "bracket" {
  material = "mild steel"
  length   = 60
  width    = 40
  height   = 40

  step "foot" {
    into  = "top"
    side  = "left"
    width = 50
    depth = 30
  }

  hole "pass" {
    into     = step.foot.floor
    at       = { right = ` + figure(10+from) + `, front = 20 }
    diameter = 5.5
  }
}

part "base" {
  material = "mild steel"
  length   = 60
  width    = 40
  height   = 20

  hole "screw" {
    into   = "top"
    at     = { right = ` + figure(10+from) + `, front = 20 }
    depth  = 16
    thread = { size = "M5", depth = 12 }
  }
}

screw "one" {
  size    = "M5x16"
  head    = "hexagon"
  through = part.bracket.hole.pass
  into    = part.base.hole.screw
}
`
}

func headHasNoRoom(j *eval.Joint, a *Ask) {
	room, concerns := j.HeadRoom()
	if !concerns {
		return
	}
	r, ok := Need(a, room)
	if !ok || r.Sunk {
		return
	}
	if r.Near >= r.Sweep-0.0005 {
		a.Clear(finding.Margin{}, "")
		return
	}
	f := a.Say(j.Item.Path()+"+"+r.Hole.Name(), placeIn(j, "head"), "the head of %s sweeps %s mm about its axis as it turns, and metal of %s stands %s from the axis of %s",
		j.Screw.Model.Size.V, tenthUp(2*r.Sweep), j.Screw.Passes[0].Part.Path(), mm(round(r.Near)), r.Hole.Name())
	f.Margin = Room(round(r.Near), round(r.Sweep))
	f.Also = []finding.Note{{Place: r.Hole.Feature.Item.At, Says: r.Hole.Name()}}
}
