package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "counterbore-pilot-does-not-fit",
	Title: "the pilot of a counterbore does not run in the hole that is there",
	Why: `The pilot keeps a counterbore on the middle of its hole. It wants the hole drilled first, to a size that it runs in with
little play: drill to the pilot, counterbore, and open the hole out afterwards; or mill the counterbore with an end mill.`,
	Rows:      []string{"D21"},
	Source:    []string{"geometry; two tenths of a millimetre of play: common practice"},
	Limits:    []string{"pilot_play"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Holding | Mounting,
	Trips:     exampleCounterbored("5.5"),
	Sound:     exampleCounterbored("5"),
	OnCut:     counterborePilotDoesNotFit,
	OnTurn:    asCut(counterborePilotDoesNotFit),
})

// exampleCounterbored counterbores a hole of 5 mm with a tool whose pilot is so thick.
func exampleCounterbored(pilot string) string {
	s := replaced(exampleHole(), "diameter = 6\n", "diameter = 5\n    counterbore = { diameter = 9, depth = 5 }\n")
	return replaced(s, "    }\n  }\n}\n", `    }
    operation {
      makes = hole.pin.counterbore
      tool  = counterbore.own
    }
  }
}
`) + `
counterbore "own" {
  diameter = 9
  pilot    = ` + pilot + `
  shank    = 8
  overall  = 80
}
`
}

func counterborePilotDoesNotFit(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if k.Choice.By != "counterboring" || c == nil || c.Kind != "counterbore" || k.Unplayed != "" {
		return
	}
	for i := range k.Works {
		w := &k.Works[i]
		if w.Target.Sub != "counterbore" || w.Target.Form == nil || w.Wrong != "" {
			continue
		}
		had, name := round(w.Had), w.Target.Form.Name()
		pilot, ok := Need(a, c.Pilot)
		if !ok {
			return
		}
		cause := c.Path() + ".pilot+" + name
		var f *finding.Finding
		switch play := a.Limit("pilot_play"); {
		case had == 0:
			f = a.Say(cause, k.Place("tool", "makes"), "the pilot of %s, %s thick, finds no hole: %s is not drilled yet", c.Path(), mm(pilot), name)
		case pilot > had+0.0005:
			f = a.Say(cause, k.Place("tool", "makes"), "the pilot of %s is %s thick and does not go into %s, which is %s mm wide so far", c.Path(), mm(pilot), name, figure(had))
			f.Margin = Bound(pilot, had, "mm")
		case had-pilot > play+0.0005:
			f = a.Say(cause, k.Place("tool", "makes"), "the pilot of %s is %s thick, and %s is %s mm wide: with %s of play it does not keep the middle; usually %s at most (pilot_play)",
				c.Path(), mm(pilot), name, figure(had), mm(round(had-pilot)), mm(play))
			f.Margin = Bound(round(had-pilot), play, "mm")
		default:
			a.Clear(Bound(round(had-pilot), play, "mm"), "the pilot of "+c.Path()+" in "+name)
			continue
		}
		f.Also = []finding.Note{{Place: c.Pilot.At, Says: "its pilot"}}
		return
	}
}
