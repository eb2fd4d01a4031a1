package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "hollow-tighter-than-cutter",
	Title: "a hollow of an outline has a smaller radius than the cutter",
	Why: `A cutter that goes round an outline leaves no hollow sharper than its own radius. A smaller cutter, a hole drilled into the
hollow first, a file, or a larger radius on the drawing does it.`,
	Rows:      []string{"B15"},
	Source:    []string{"geometry"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Deaf:      Mounting,
	Trips:     exampleOutline("4"),
	Sound:     exampleOutline("6"),
	OnCut:     hollowTighterThanCutter,
})

// exampleOutline mills a plate on a rotary table to an outline with a hollow of a radius in its back
// edge, with a cutter of 10 mm.
func exampleOutline(radius string) string {
	return `recipe "example" {
  units = "mm"
}

part "plate" {
  material = "brass"
  length   = 60
  width    = 40
  height   = 6

  blank {
    over = { left = 2, right = 2, front = 2, back = 2, top = 0, bottom = 0 }
  }

  outline "edge" {
    points = [[0, 0], [60, 0], [60, 40], [34, 40], [26, 40], [0, 40]]
    arcs   = [{ from = 4, radius = -` + radius + ` }]
  }

  setup "round" {
    machine = mill.bench
    hold    = [clamps.set, rotary_table.flat]
    up      = "top"

    operation {
      makes = outline.edge
      tool  = end_mill.four[10]
    }
  }
}

rotary_table "flat" {
  ratio    = 90
  height   = 80
  diameter = 150
}
`
}

func hollowTighterThanCutter(k *eval.Cut, a *Ask) {
	if k.Choice.Tool.Cutter == nil || k.Choice.By != "milling" || k.Unplayed != "" || k.Step.Work.Kind != "setup" {
		return
	}
	for _, w := range k.Works {
		f := w.Target.Form
		if f == nil || f.Way == nil {
			continue
		}
		d := k.Choice.Tool.Size
		a.Asks("what holds the waste that comes loose when the cutter has gone round %s?", f.Name())
		if f.Sharp() {
			a.Asks("%s leaves a radius of %s mm in the sharp hollow corners of %s: are they filed out, or may it stay?", k.ToolPath(), figure(round(d/2)), f.Name())
		}
		if n := len(f.Middles()); n > 1 && w.Facing {
			a.Asks("%s has arcs about %d middles: is each set over the middle of the table with an indicator before it is swept?", f.Name(), n)
		}
		r, ok := f.Hollow()
		switch {
		case !ok:
			a.Clear(finding.Margin{}, "")
		case d/2 <= r+0.0005:
			a.Clear(Bound(round(d/2), round(r), "mm"), k.ToolPath()+" in the hollow of "+f.Name())
		default:
			m := a.Say(k.ToolPath()+"+"+f.Name(), k.Place("tool", "makes"), "%s has a radius of %s mm, and %s has a hollow of %s mm", k.ToolPath(), figure(round(d/2)), f.Name(), figure(round(r)))
			m.Margin = Bound(round(d/2), round(r), "mm")
		}
	}
}
