package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "corner-left-too-round",
	Title: "the tool leaves a larger radius in an inside corner than the drawing allows",
	Why: `An end mill with rounded corners leaves them at the foot of every wall, a turning tool its nose at every shoulder. What sits in
that corner with a sharp edge then rides on the radius and not on its seat. A sharper tool, a relief, or a chamfer on the mate helps.`,
	Rows:      []string{"B15"},
	Source:    []string{"geometry: the radius at the tool's corner or tip as it is declared"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Mounting,
	Trips:     exampleCornered("0.5"),
	Sound:     exampleCornered("0.2"),
	OnCut:     cornerMilled,
	OnTurn:    cornerTurned,
})

// exampleCornered mills a slot that allows 0.2 mm at the foot of its walls with a cutter of such a corner.
func exampleCornered(corner string) string {
	s := replaced(exampleSlot(""), "depth = 4", "depth = 4\n    corner = 0.2")
	return replaced(s, "slot_drill.two[6]", "slot_drill.own") + `
slot_drill "own" {
  diameter     = 6
  of           = "HSS"
  teeth        = 2
  overall      = 72
  flute_length = 19
  shank        = 10
  corner       = ` + corner + `
}
`
}

func cornerMilled(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || k.Unplayed != "" || !oneOf(c.Kind, "end_mill", "slot_drill") {
		return
	}
	for _, w := range k.Works {
		if f := w.Target.Form; f != nil && w.Final && w.Wrong == "" {
			cornerOf(a, f, footCorner(f), c.Corner, k.ToolPath(), k.Place("tool", "makes"))
		}
	}
}

// footCorner is the radius that is allowed where the walls of a milled feature meet its floor.
func footCorner(f *eval.Form) model.Known[float64] {
	switch f.Feature.Kind {
	case "pocket":
		return f.Feature.FloorCorner
	case "slot", "step", "flat", "flats":
		return f.Feature.Corner
	}
	return model.Known[float64]{}
}

func cornerTurned(k *eval.Turn, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || k.Unplayed != "" || c.Kind != "turning_tool" {
		return
	}
	for _, w := range k.Works {
		f := w.Target.Form
		if f == nil || !w.Final || w.Wrong != "" || !oneOf(f.Feature.Kind, "outside", "bore", "groove") {
			continue
		}
		cornerOf(a, f, f.Feature.Corner, c.Nose, k.ToolPath(), k.Place("tool", "makes"))
	}
}

// cornerOf compares what is allowed in a corner with what a tool leaves there. Nothing written: as the
// tool leaves it.
func cornerOf(a *Ask, f *eval.Form, allowed, left model.Known[float64], tool string, at text.Place) {
	most, asked := allowed.Get()
	if !asked {
		return
	}
	r, ok := Need(a, left)
	if !ok {
		return
	}
	if r <= most+0.0005 {
		a.Clear(Bound(r, most, "mm"), tool+" in the corner of "+f.Name())
		return
	}
	m := a.Say(tool+"+"+f.Name()+".corner", at, "%s leaves a radius of %s in the corner of %s, where %s at most is allowed", tool, mm(r), f.Name(), mm(most))
	m.Margin = Bound(r, most, "mm")
}
