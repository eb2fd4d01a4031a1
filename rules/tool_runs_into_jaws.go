package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "tool-runs-into-jaws",
	Title: "the cut, or what holds the tool, comes to the turning jaws",
	Why: `The jaws turn with the work and stand out beyond it. A tool post often stands out to the left of the edge: it arrives at
the jaws before the edge does. A parting tool wants some room to the jaw face besides.`,
	Rows:      []string{"C7"},
	Source:    []string{"geometry; a millimetre to the holder and two to a parting tool: common practice"},
	Limits:    []string{"jaw_to_holder", "parting_room", "room"},
	Level:     finding.Danger,
	Judgement: finding.Fact,
	Caution: "Turning jaws throw what touches them. Try the way of the saddle by hand with the spindle still before every cut near a chuck, " +
		"wear eye protection, and follow the machine's manual.",
	Trips:  exampleTurned(headOnly, replaced(inThree, "grip    = 20", "stick_out = 40"), headStep),
	Sound:  exampleTurned(headOnly, replaced(inThree, "grip    = 20", "stick_out = 48"), headStep),
	OnTurn: toolRunsIntoJaws,
})

const headOnly = `
  outside "head" {
    from     = 27
    diameter = 16
  }
`

const headStep = `
    operation {
      makes  = outside.head
      tool   = turning_tool.knife
      holder = tool_post.quick
    }`

func toolRunsIntoJaws(k *eval.Turn, a *Ask) {
	if k.Hold.Unplayed != "" || !k.OnSlides() {
		return
	}
	if k.Hold.Choice.Faceplate != nil {
		a.Asks("do clamps, bolts and corners on %s clear tool, slide and bed when it is turned over by hand?", k.Hold.Choice.Faceplate.Path())
	}
	for _, w := range k.Works {
		if c := k.Hold.Choice.Chuck; k.Hold.Inside && w.Inside && w.Wrong == "" && w.U0 < -0.0005 && w.Had > 0 {
			a.Say(k.Hold.Work.SetUp.Path()+"+"+w.Target.Name()+"+inside", k.Place("makes"), "%s goes %s mm into the jaws of %s, which open in that bore", w.Target.Name(), tenth(-w.U0), c.Path())
			continue
		}
		r, ok := k.JawRoom(&w)
		if !ok {
			continue
		}
		cause := k.Hold.Work.SetUp.Path() + "+" + w.Target.Name()
		switch r.Of {
		case eval.ToolToPlate, eval.ToolToFoot:
			toolRunsIntoPlate(k, a, &w, r)
		case eval.CutToJaws:
			a.Say(cause, k.Place("makes"), "%s runs %s mm into the jaws of %s: %s mm of %s stand out", w.Target.Name(), figure(-r.Room),
				k.Hold.Choice.Chuck.Path(), tenth(k.Hold.Free), k.Part.Label)
		case eval.BladeToJaws:
			bladeNear(k, a, cause, r.Room)
		default:
			holderNear(k, a, cause, r)
		}
	}
}

// bladeNear compares a parting tool with the jaw face; a blade that does not part may come up to it.
func bladeNear(k *eval.Turn, a *Ask, cause string, near float64) {
	if k.Choice.By != "parting" {
		return
	}
	c, room := k.Hold.Choice.Chuck, a.Limit("parting_room")
	if near >= room-0.0005 {
		a.Clear(Room(near, room), "the parting tool to the jaws of "+c.Path())
		return
	}
	f := a.Say(cause, k.Place("makes"), "the parting tool comes to %s mm from the jaws of %s; usually %s mm at least are left (parting_room)", figure(near), c.Path(), figure(room))
	f.Margin = Room(near, room)
}

// holderNear compares the left side of what holds the tool with the jaw face.
func holderNear(k *eval.Turn, a *Ask, cause string, r eval.JawRoom) {
	c, post := k.Hold.Choice.Chuck, k.Choice.Post
	a.Asks("does the tool post clear the jaws of %s by hand, all the way of the cut?", c.Path())
	if len(r.Lacks) > 0 {
		a.Lack(r.Lacks...)
		return
	}
	want := a.Limit("jaw_to_holder")
	if r.Room >= want-0.0005 {
		a.Clear(Room(r.Room, want), post.Path()+" to the jaws of "+c.Path())
		return
	}
	out, ok := Need(a, r.Outside)
	switch {
	case !ok:
		return
	case out >= a.Limit("room")-0.0005:
		a.Clear(Room(out, a.Limit("room")), post.Path()+" outside the jaws of "+c.Path())
		return
	}
	f := a.Say(cause, k.Place("makes", "holder"), "%s stands out %s to the left of the edge, and the cut ends %s mm from the jaws of %s: it meets them",
		post.Path(), mm(r.Left), figure(r.Ends), c.Path())
	if r.Room >= -0.0005 {
		f.Says = post.Path() + " comes to " + figure(r.Room) + " mm from the jaws of " + c.Path() + "; usually " + figure(want) + " mm at least is left (jaw_to_holder)"
	}
	f.Margin = Room(r.Room, want)
}

// toolRunsIntoPlate looks at work on a faceplate: the tool against the plate. Where the clamps stand
// nobody says; that stays a question.
func toolRunsIntoPlate(k *eval.Turn, a *Ask, w *eval.Turning, r eval.JawRoom) {
	near, what, want := r.Room, k.Hold.Choice.Faceplate.Path(), a.Limit("room")
	if r.Of == eval.ToolToFoot {
		what = "the end of the foot of " + k.Hold.Choice.AnglePlate.Path()
	}
	if a.Lack(r.Lacks...); len(r.Lacks) > 0 {
		return
	}
	if near < want-0.0005 {
		says := "is turned to " + figure(near) + " mm from " + what
		if near < 0 {
			says = "lies " + figure(-near) + " mm behind " + what + ", which turns outside the tool's edge"
		}
		f := a.Say(k.Hold.Work.SetUp.Path()+"+"+w.Target.Name(), k.Place("makes"), "%s %s; usually %s at least is left", w.Target.Name(), says, mm(want))
		f.Margin = Room(near, want)
		return
	}
	a.Clear(Room(near, want), "the tool to "+what)
	if len(k.Hold.Work.SetUp.Clamps) == 0 {
		a.Lack(model.Lack{Fact: k.Hold.Work.SetUp.Path() + ".clamps"})
	}
}
