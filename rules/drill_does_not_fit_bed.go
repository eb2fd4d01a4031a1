package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "drill-does-not-fit-bed",
	Title: "work, tool and chucks together are longer than the bed",
	Why: `Between the spindle nose and the tailstock's quill must stand: the chuck, what stands out of it, the drill, and the chuck
that holds the drill. A shorter drill first, a drill in the tool post, or less stick-out makes room.`,
	Rows:      []string{"A11"},
	Source:    []string{"geometry; a drill is held by one and a half diameters: common practice"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleBed(250),
	Sound:     exampleBed(400),
	OnTurn:    drillDoesNotFitBed,
})

// exampleBed drills on the axis in a lathe with so much room in front of its nose.
func exampleBed(room float64) string {
	s := exampleTurned("\n  hole \"axis\" {\n    into     = \"right\"\n    diameter = 8\n    depth    = 20\n  }\n", replaced(inThree, "lathe.centre", "lathe.short"),
		"\n    operation {\n      makes  = hole.axis\n      tool   = drill.jobbers[8]\n      holder = drill_chuck.tail\n    }")
	return s + `
lathe "short" {
  swing             = 200
  bore              = 26
  headstock         = 300
  nose              = "M39x4"
  speeds            = [200, 400, 800]
  nose_to_tailstock = ` + figure(room) + `
  tailstock         = { taper = "MT2", travel = 60 }
}

drill_chuck "tail" {
  shank    = "MT2"
  tail     = "tang"
  range    = [1, 13]
  out      = 80
  diameter = 42
}
`
}

func drillDoesNotFitBed(k *eval.Turn, a *Ask) {
	m := k.Lathe()
	if m == nil || k.Hold.Unplayed != "" || !k.InTailstock() || k.Choice.Tool.Size <= 0 {
		return
	}
	room, ok := Need(a, m.NoseToTailstock)
	need, ok2 := Need(a, k.BedNeeded())
	if !ok || !ok2 {
		return
	}
	need = round(need)
	if need <= room+0.0005 {
		a.Clear(Bound(need, room, "mm"), "the bed of "+m.Path()+" for "+k.ToolPath())
		return
	}
	f := a.Say(m.Path()+".nose_to_tailstock+"+k.ToolPath(), k.Place("tool", "makes"), "chuck, %s mm of %s, %s and its holder take %s mm from the nose of %s, and %s has %s there",
		tenth(k.Hold.Free), k.Part.Label, k.ToolPath(), tenth(need), m.Path(), m.Path(), mm(room))
	f.Margin = Bound(need, room, "mm")
}
