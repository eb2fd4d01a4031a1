package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "drill-snatches-in-brass",
	Title: "a drill with sharp lips opens out a hole in brass or bronze",
	Why: `In brass and bronze the lips of an ordinary drill screw themselves into a hole that is there already: the drill is pulled
out of its chuck, the piece out of the vise. A flat stoned along each lip stops it; so does one drill from the solid, or
boring.`,
	Rows:      []string{"D13"},
	Source:    []string{"common practice"},
	Level:     finding.Danger,
	Judgement: finding.Fact,
	Caution:   "Clamp work that is drilled, never hold it in the hand, and keep sleeves and hair away from the spindle.",
	Deaf:      Holding | Mounting,
	Trips:     openedInBrass("sharp"),
	Sound:     openedInBrass("blunted"),
	OnCut:     drillSnatchesInBrass,
	OnTurn:    asCut(drillSnatchesInBrass),
})

// openedInBrass drills a block of brass in two goes, the second with a drill whose lips are so.
func openedInBrass(lips string) string {
	s := replaced(exampleHole("to = 4", "tool = drill.jobbers[4]"), "    }\n  }\n}\n", `    }
    operation {
      makes = hole.pin
      tool  = drill.own
    }
  }
}
`)
	return s + `
drill "own" {
  diameter = 6
  lips     = "` + lips + `"
}
`
}

func drillSnatchesInBrass(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if k.Choice.By != "drilling" || c == nil || c.Kind != "drill" || k.Unplayed != "" {
		return
	}
	group, ok := k.MaterialGroup().Get()
	if !ok || !oneOf(group, "brass_free_cutting", "bronze") {
		return
	}
	for i := range k.Works {
		w := &k.Works[i]
		if w.Target.Sub != "" || w.Had <= eval.WebShare*w.Diameter+1e-6 || w.Had >= w.Diameter-0.001 || w.Wrong != "" {
			continue
		}
		lips, known := c.Lips.Get()
		if lips == "blunted" {
			a.Clear(finding.Margin{}, "")
			return
		}
		how := "its lips sharp"
		if !known {
			how = "its lips as they are ground for steel (no shop says that they are blunted)"
		}
		f := a.Say(c.Path()+".lips+"+w.Target.Name(), k.Place("tool", "makes"), "%s, %s, opens %s out from %s to %s mm in %s: it snatches; stone its lips flat (lips = \"blunted\"), drill in one go, or bore",
			k.ToolPath(), how, w.Target.Name(), figure(round(w.Had)), figure(round(w.Diameter)), k.Part.Material.V.Name)
		if known {
			f.Also = []finding.Note{{Place: c.Lips.At, Says: "its lips"}}
		}
		return
	}
}
