package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "spanner-has-no-room",
	Title: "no spanner goes over the hexagon of the screw",
	Why: `A ring or box spanner wants room for its own wall all round the corners, and the jaws of an open one want more. A cap
screw with a key from above, a hole farther from the wall or a wider counterbore lets it be tightened.`,
	Rows:      []string{"D29"},
	Source:    []string{"a box spanner's wall of 1.5 mm: common practice; hexagons: ISO 4017 (from memory)"},
	Limits:    []string{"spanner_wall"},
	Level:     finding.Stop,
	Judgement: finding.Thumb,
	Trips:     exampleByWall(5),
	Sound:     exampleByWall(8),
	OnJoint:   spannerHasNoRoom,
})

func spannerHasNoRoom(j *eval.Joint, a *Ask) {
	if j.Screw == nil || j.Screw.Model.Head.V != "hexagon" {
		return
	}
	room, concerns := j.HeadRoom()
	if !concerns {
		return
	}
	r, ok := Need(a, room)
	if !ok || r.Near < r.Sweep-0.0005 {
		return // the head itself does not go there: told of with it
	}
	want := round(r.Sweep + a.Limit("spanner_wall"))
	if r.Near >= want-0.0005 {
		a.Clear(finding.Margin{}, "")
		return
	}
	what := "metal of " + j.Screw.Passes[0].Part.Path() + " stands"
	if r.Sunk {
		what = "the wall of its counterbore is"
	}
	f := a.Say(j.Item.Path()+"+"+r.Hole.Name(), placeIn(j, "head"), "a spanner over the hexagon of %s usually wants %s from its axis, and %s %s from the axis of %s",
		j.Screw.Model.Size.V, mm(want), what, mm(round(r.Near)), r.Hole.Name())
	f.Margin = Room(round(r.Near), want)
	f.Also = []finding.Note{{Place: r.Hole.Feature.Item.At, Says: r.Hole.Name()}}
}
