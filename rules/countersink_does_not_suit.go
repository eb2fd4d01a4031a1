package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "countersink-does-not-suit",
	Title: "the countersink has another angle, is too small, or does not reach into so small a hole",
	Why: `A screw head sits only in a cone of its own angle, 90 degrees metric and 82 in inches. A countersink cuts no wider than it is, and
many end in a flat or a hole: its edges begin at a diameter, and a smaller hole is not touched by them.`,
	Rows:      []string{"B15"},
	Source:    []string{"look-up: angle, diameter and tip as the shop declares them; geometry"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Deaf:      Holding | Mounting,
	Trips:     exampleSunk(`{ diameter = 10, angle = 90 }`, "90", "7"),
	Sound:     exampleSunk(`{ diameter = 10, angle = 90 }`, "90", "3"),
	OnCut:     countersinkDoesNotSuit,
	OnTurn:    asCut(countersinkDoesNotSuit),
})

// exampleSunk sinks a hole of 6 mm by a countersink of 12 mm of its own.
func exampleSunk(sink, angle, least string) string {
	return replaced(replaced(exampleHole("tool  = drill.jobbers[6]"), "diameter = 6", "diameter = 6\n    countersink = "+sink), "    }\n  }\n}\n", `    }
    operation {
      makes = hole.pin.countersink
      tool  = countersink.own
    }
  }
}
`) + `
countersink "own" {
  diameter = 12
  angle    = ` + angle + `
  least    = ` + least + `
  shank    = 10
  overall  = 60
}
`
}

func countersinkDoesNotSuit(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || c.Kind != "countersink" || k.Unplayed != "" {
		return
	}
	for i := range k.Works {
		w := &k.Works[i]
		f := w.Target.Form
		if f == nil || w.Target.Sub != "countersink" || w.Wrong != "" {
			continue
		}
		cause := f.Name() + ".countersink+" + k.ToolPath()
		if want := f.Feature.Countersink.Angle; want.Is() {
			if has, ok := Need(a, c.Angle); ok && abs(has-want.V) > 0.01 {
				s := a.Say(cause+".angle", k.Place("tool", "makes"), "%s cuts a cone of %s degrees, and %s is to have %s", k.ToolPath(), figure(has), w.Target.Name(), figure(want.V))
				s.Also = []finding.Note{{Place: c.Angle.At, Says: "its angle"}}
				continue
			}
		}
		if d := k.Choice.Tool.Size; d > 0 && w.Diameter > d+0.0005 {
			s := a.Say(cause+".diameter", k.Place("tool", "makes"), "%s cuts %s at the most, and %s is to be %s wide", k.ToolPath(), mm(d), w.Target.Name(), mm(w.Diameter))
			s.Margin = Bound(w.Diameter, d, "mm")
			continue
		}
		least, ok := c.Least.Get()
		if !ok || w.Had == 0 {
			continue // most come to a point
		}
		if w.Had >= least-0.0005 {
			a.Clear(Room(round(w.Had), least), "the tip of "+k.ToolPath()+" in "+f.Name())
			continue
		}
		s := a.Say(cause+".least", k.Place("tool", "makes"), "the edges of %s begin at %s, and %s is %s wide: its tip stands on the rim", k.ToolPath(), mm(least), f.Name(), mm(round(w.Had)))
		s.Margin = Room(round(w.Had), least)
		s.Also = []finding.Note{{Place: c.Least.At, Says: "its tip"}}
	}
}
