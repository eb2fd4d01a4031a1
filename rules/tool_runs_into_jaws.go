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
	if k.Hold.Choice.Faceplate != nil && k.Hold.Unplayed == "" && k.Choice.Tool.Cutter != nil && fromPost(k) {
		toolRunsIntoPlate(k, a)
		return
	}
	if k.Hold.Choice.Chuck == nil || k.Hold.Unplayed != "" || k.Choice.Tool.Cutter == nil {
		return
	}
	for _, w := range k.Works {
		c := k.Hold.Choice.Chuck
		cause := k.Hold.Work.SetUp.Path() + "+" + w.Target.Name()
		if k.Hold.Inside && w.Inside && w.Wrong == "" && w.U0 < -0.0005 && w.Had > 0 {
			a.Say(cause+"+inside", k.Place("makes"), "%s goes %s mm into the jaws of %s, which open in that bore", w.Target.Name(), tenth(-w.U0), c.Path())
			continue
		}
		if w.Inside || w.Had == 0 || w.Wrong != "" || !fromPost(k) {
			continue
		}
		near := round(w.U0)
		if k.Hold.Inside { // the outside is free up to the held end
			near = round(w.U0 + k.Hold.Held)
		}
		switch {
		case near < -0.0005 && w.Target.Outside:
		case near < -0.0005:
			a.Say(cause, k.Place("makes"), "%s runs %s mm into the jaws of %s: %s mm of %s stand out", w.Target.Name(), figure(-near), c.Path(), tenth(k.Hold.Free), k.Part.Label)
			continue
		case k.Choice.By == "parting":
			room := a.Limit("parting_room")
			if near >= room-0.0005 {
				a.Clear(Room(near, room), "the parting tool to the jaws of "+c.Path())
				continue
			}
			f := a.Say(cause, k.Place("makes"), "the parting tool comes to %s mm from the jaws of %s; usually %s mm at least are left (parting_room)", figure(near), c.Path(), figure(room))
			f.Margin = Room(near, room)
			continue
		}
		if k.Choice.Tool.Cutter.Kind == "parting_tool" {
			continue // a blade stands at the left of its holder
		}
		post := k.Choice.Post
		a.Asks("does the tool post clear the jaws of %s by hand, all the way of the cut?", c.Path())
		if post == nil {
			a.Lack(model.Lack{Fact: "tool_post (how far it stands out to the left of the edge)"})
			continue
		}
		left, ok := Need(a, post.LeftOfEdge)
		if !ok {
			continue
		}
		if near-left < a.Limit("jaw_to_holder")-0.0005 && passesOutside(k, a, &w) {
			continue
		}
		holderNear(k, a, cause, max(near, 0), left)
	}
}

// holderNear compares the left side of what holds the tool with the jaw face.
func holderNear(k *eval.Turn, a *Ask, cause string, near, left float64) {
	c, post := k.Hold.Choice.Chuck, k.Choice.Post
	room := round(near - left)
	want := a.Limit("jaw_to_holder")
	if room >= want-0.0005 {
		a.Clear(Room(room, want), post.Path()+" to the jaws of "+c.Path())
		return
	}
	f := a.Say(cause, k.Place("makes", "holder"), "%s stands out %s to the left of the edge, and the cut ends %s mm from the jaws of %s: it meets them",
		post.Path(), mm(left), figure(near), c.Path())
	if room >= -0.0005 {
		f.Says = post.Path() + " comes to " + figure(room) + " mm from the jaws of " + c.Path() + "; usually " + figure(want) + " mm at least is left (jaw_to_holder)"
	}
	f.Margin = Room(room, want)
}

// fromPost says whether the tool of an operation sits on the slides of the lathe.
func fromPost(k *eval.Turn) bool {
	return oneOf(k.Choice.Tool.Cutter.Kind, "turning_tool", "boring_bar", "parting_tool", "threading_tool", "knurling_tool")
}

// passesOutside says whether the holder of a tool stays beyond the circle that the jaws sweep,
// or whether nobody can say for want of how far the tool stands out of it.
func passesOutside(k *eval.Turn, a *Ask, w *eval.Turning) bool {
	sweep, ok := Need(a, k.Hold.Sweeps())
	if c := k.Choice.Tool.Cutter; !oneOf(c.Kind, "turning_tool", "boring_bar", "parting_tool") {
		a.Lack(model.Lack{Fact: "how far " + c.Path() + " stands out of its holder", At: c.At}) // nothing in a shop says it
		return true
	}
	reach, ok2 := Need(a, k.Choice.Tool.Cutter.Reach)
	if !ok || !ok2 {
		return true
	}
	r := min(w.R0, w.R1)
	if k.Choice.By == "facing" {
		r = 0
	}
	room := round(r + reach - sweep/2)
	if room < a.Limit("room")-0.0005 {
		return false
	}
	a.Clear(Room(room, a.Limit("room")), k.Choice.Post.Path()+" outside the jaws of "+k.Hold.Choice.Chuck.Path())
	return true
}

// toolRunsIntoPlate looks at work on a faceplate: the tool against the plate. Where the clamps stand
// nobody says; that stays a question.
func toolRunsIntoPlate(k *eval.Turn, a *Ask) {
	plate := k.Hold.Choice.Faceplate
	a.Asks("do clamps, bolts and corners on %s clear tool, slide and bed when it is turned over by hand?", plate.Path())
	for _, w := range k.Works {
		if w.Inside || w.Had == 0 || w.Wrong != "" {
			continue
		}
		near, want := round(w.U0+k.Hold.Under()), a.Limit("room")
		if near < want-0.0005 {
			f := a.Say(k.Hold.Work.SetUp.Path()+"+"+w.Target.Name(), k.Place("makes"), "%s is turned to %s mm from %s; usually %s at least is left", w.Target.Name(), figure(near), plate.Path(), mm(want))
			f.Margin = Room(near, want)
			continue
		}
		a.Clear(Room(near, want), "the tool to "+plate.Path())
		if len(k.Hold.Work.SetUp.Clamps) == 0 {
			a.Lack(model.Lack{Fact: k.Hold.Work.SetUp.Path() + ".clamps"})
		}
	}
}
