package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "reamer-bottoms",
	Title: "a reamer's lead meets the floor of a blind hole before the hole is to size",
	Why: `A reamer cuts on its lead, and what lies beside the lead stays small. A hand reamer's lead is a quarter of its flutes; in a blind
hole it needs that much room below the last full diameter. A machine reamer cuts on a short bevel, which the drill's point clears.`,
	Rows:      []string{"D3"},
	Source:    []string{"lead of a hand reamer about a quarter of its flutes: common practice; the point of a drill 0.300 D at 118 degrees: geometry"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Holding | Mounting,
	Trips:     exampleBlindReamed("12"),
	Sound:     exampleBlindReamed("1"),
	OnCut:     reamerBottoms,
	OnTurn:    asCut(reamerBottoms),
})

// exampleBlindReamed reams a blind hole with a reamer whose lead is so long.
func exampleBlindReamed(lead string) string {
	s := replaced(exampleHole("to = 5.8"), "    diameter = 6\n", "    diameter = \"6 H7\"\n    depth    = 12\n")
	return replaced(s, "    }\n  }\n}\n", `    }
    operation {
      makes = hole.pin
      tool  = reamer.own
    }
  }
}
`) + `
reamer "own" {
  diameter = 6
  lead     = ` + lead + `
}
`
}

func reamerBottoms(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || c.Kind != "reamer" || k.Choice.By != "reaming" || k.Unplayed != "" {
		return
	}
	for i := range k.Works {
		w := &k.Works[i]
		f := w.Target.Form
		if f == nil || w.Target.Sub != "" || w.Through || w.Wrong != "" || !f.Depth.Is() {
			continue
		}
		s := k.Part.Feature(k.Before, f)
		if s.Through || !s.Begun {
			continue
		}
		lead, ok := Need(a, k.TipLength())
		if !ok {
			continue
		}
		has, want := s.Depth+s.Point, f.Depth.V+lead
		if has >= want-0.0005 {
			a.Clear(Room(round(has), round(want)), "the room below "+f.Name()+" for the lead of its reamer")
			continue
		}
		m := a.Say(w.Target.Name()+"+lead", k.Place("tool", "makes"), "%s is to be %s deep at its size and the lead of %s is %s; the hole is drilled %s deep with its point, and stays small below %s",
			f.Name(), mm(round(f.Depth.V)), k.ToolPath(), mm(round(lead)), mm(round(has)), mm(round(max(0, has-lead))))
		m.Margin = Room(round(has), round(want))
	}
}
