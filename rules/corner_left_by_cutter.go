package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "corner-left-by-cutter",
	Title: "the cutter leaves a larger radius at the foot of the wall than the drawing allows",
	Why: `An end mill with rounded corners leaves that radius between wall and floor, and a turning tool its own in a shoulder. What is to
sit there rides up on it. A cutter with sharp corners, a relief, or a chamfer on the mate clears it.`,
	Rows:      []string{"B15"},
	Source:    []string{"geometry: the corner of the cutter stays in the work"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Mounting,
	Trips:     exampleCornered("0.2", "0.5"),
	Sound:     exampleCornered("0.5", "0.5"),
	OnCut:     cornerLeftByCutter,
	OnTurn:    cornerLeftByTool,
})

// exampleCornered mills a slot whose floor may have such a radius, with a cutter of 6 mm that has one.
func exampleCornered(allowed, cutter string) string {
	return replaced(replaced(exampleHole("tool  = slot_drill.own"), "hole.pin", "slot.pin"), `  hole "pin" {
    into     = "top"
    at       = { left = 20, front = 15 }
    diameter = 6
  }`, `  slot "pin" {
    into   = "top"
    at     = { front = 15 }
    width  = 6
    depth  = 3
    corner = `+allowed+`
  }`) + `
slot_drill "own" {
  diameter     = 6
  corner       = ` + cutter + `
  teeth        = 2
  overall      = 57
  flute_length = 13
  shank        = 6
}
`
}

func cornerLeftByCutter(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || k.Unplayed != "" || !oneOf(c.Kind, "end_mill", "slot_drill") || !oneOf(k.Choice.By, "milling", "plunging") {
		return
	}
	for i := range k.Works {
		w := &k.Works[i]
		f := w.Target.Form
		if f == nil || w.Target.Sub != "" || w.Wrong != "" || !w.Final {
			continue
		}
		allowed := f.Feature.Corner
		switch f.Feature.Kind {
		case "slot", "step", "flat", "flats":
		case "pocket":
			allowed = f.Feature.FloorCorner
		default:
			continue
		}
		if f.Feature.Kind == "slot" && f.Through {
			continue // it has no floor
		}
		// A corner that nothing is said of is sharp: the table's standing value.
		cornerLeft(k.ToolPath(), f.Name(), c.Corner.Or(0), c.Corner, allowed, k.Place("tool", "makes"), a)
	}
}

func cornerLeftByTool(k *eval.Turn, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || c.Kind != "turning_tool" || k.Unplayed != "" {
		return
	}
	for i := range k.Works {
		w := &k.Works[i]
		f := w.Target.Form
		if f == nil || f.Feature.Kind != "outside" || k.By(w.Target) != "turning" || w.Wrong != "" || !w.Final || !f.Feature.Corner.Is() {
			continue
		}
		nose, ok := Need(a, c.Nose)
		if ok {
			cornerLeft(k.ToolPath(), f.Name(), nose, c.Nose, f.Feature.Corner, k.Place("tool", "makes"), a)
		}
	}
}

func cornerLeft(tool, name string, has float64, of, allowed model.Known[float64], at text.Place, a *Ask) {
	most, ok := allowed.Get()
	if !ok {
		return // as the cutter leaves it
	}
	if has <= most+0.0005 {
		a.Clear(Bound(has, most, "mm"), "the corner of "+tool+" in "+name)
		return
	}
	f := a.Say(name+".corner+"+tool, at, "%s leaves a radius of %s at the foot of the wall, and %s may have %s", tool, mm(has), name, mm(most))
	f.Margin = Bound(has, most, "mm")
	f.Also = []finding.Note{{Place: of.At, Says: "the radius of the tool"}, {Place: allowed.At, Says: "what is allowed"}}
}
