package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:      "tool-not-here",
	Title:     "what the step names is lent out, still to be made, or on order",
	Why:       `A tool counts when it is in the shop. One that is lent, to make or on order holds the job up half way.`,
	Rows:      []string{"B18"},
	Source:    []string{"look-up in the shop"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleHole("tool  = drill.own") + ownDrill("lent out"),
	Sound:     exampleHole("tool  = drill.own") + ownDrill("here"),
	OnCut:     toolNotHere,
	OnTurn:    turnToolNotHere,
})

func ownDrill(state string) string {
	return `
drill "own" {
  diameter = 6
  of       = "HSS"
  state    = "` + state + `"
}
`
}

func toolNotHere(k *eval.Cut, a *Ask) {
	if k.Choice.Tool.Cutter == nil {
		return
	}
	see := func(t *model.Thing, attr string) {
		if t == nil || t.Item == nil {
			return
		}
		if t.Here() {
			a.Clear(finding.Margin{}, "")
			return
		}
		f := a.Say(t.Path()+".state", k.Place(attr), "%s is not here: its state is %q", t.Path(), t.State.V)
		f.Also = []finding.Note{{Place: t.State.At, Says: "its state"}}
	}
	see(&k.Choice.Tool.Cutter.Thing, "tool")
	for _, m := range k.Choice.Mounts {
		switch {
		case m.Holder != nil:
			see(&m.Holder.Thing, "holder")
		case m.Collets != nil:
			see(&m.Collets.Thing, "holder")
		case m.Sleeve != nil:
			see(&m.Sleeve.Thing, "holder")
		}
	}
	h := k.Hold.Choice
	if h.Vise != nil {
		see(&h.Vise.Thing, "hold")
	}
	if h.Clamps != nil {
		see(&h.Clamps.Thing, "hold")
	}
	if h.Machine != nil {
		see(&h.Machine.Thing, "machine")
	}
}

// turnToolNotHere looks at what a lathe adds: the post, and what holds the work.
func turnToolNotHere(k *eval.Turn, a *Ask) {
	toolNotHere(k.AsCut(), a)
	h := &k.Hold.Choice
	things := []*model.Thing{}
	if k.Choice.Post != nil {
		things = append(things, &k.Choice.Post.Thing)
	}
	if h.Chuck != nil {
		things = append(things, &h.Chuck.Thing)
	}
	if h.Collets != nil {
		things = append(things, &h.Collets.Thing)
	}
	if h.Mandrel != nil {
		things = append(things, &h.Mandrel.Thing)
	}
	for _, t := range things {
		if t.Here() {
			continue
		}
		f := a.Say(t.Path()+".state", k.Place("hold", "holder"), "%s is not here: its state is %q", t.Path(), t.State.V)
		f.Also = []finding.Note{{Place: t.State.At, Says: "its state"}}
	}
}
