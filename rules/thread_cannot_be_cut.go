package rules

import (
	"fettle/eval"
	"fettle/eval/reckon/screwcut"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "thread-cannot-be-cut",
	Title: "no change wheels that are there cut the thread's lead",
	Why: `A lathe cuts a lead by the wheels between spindle and lead screw. Where no train gives it, not even nearly, the thread must
be cut with a die or tap, or be another; a train that is a little off serves short threads, and its error is said.`,
	Rows: []string{"D18", "H12"},
	Source: []string{"driver/driven = lead cut / lead of the screw; every train of two pairs tried, a wheel used once (meshing: from memory, checked by eval/reckon/screwcut)",
		"500 parts in a million over an engaged length of one diameter is a few micrometres: our own limit"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleThread("M16x0.7"),
	Sound:     exampleThread("M16x2"),
	OnTurn:    threadCannotBeCut,
})

// exampleThread cuts a thread on the end with a single point.
func exampleThread(size string) string {
	return exampleTurned(`
  outside "waist" {
    from     = 40
    diameter = 16
  }

  thread "end" {
    on   = outside.waist
    size = "`+size+`"
    from = 45
    to   = 60
  }
`, inThree, `
    operation {
      makes = outside.waist
    }
    operation {
      makes = thread.end
      tool  = threading_tool.metric
    }`)
}

func threadCannotBeCut(k *eval.Turn, a *Ask) {
	c, m := k.Choice.Tool.Cutter, k.Lathe()
	if c == nil || c.Kind != "threading_tool" || m == nil || k.Choice.Tool.Thread.Pitch <= 0 {
		return
	}
	screw, ok := Need(a, m.LeadScrew)
	wheels, ok2 := Need(a, m.Wheels)
	_, ok3 := Need(a, m.FixedTrain)
	if !ok || !ok2 || !ok3 {
		return
	}
	t := k.Choice.Tool.Thread
	lead, err := screwcut.Millimetres(t.Pitch)
	if err != nil {
		return
	}
	found, err := eval.Trains(m, lead, eval.NearThread)
	switch {
	case err != nil:
		return
	case len(found.Trains) > 0:
		a.Clear(finding.Margin{}, "")
		return
	}
	f := a.Say(m.Path()+".wheels+"+t.String(), k.Place("wheels", "tool", "makes"), "no train of the %d wheels of %s cuts the lead of %s, %s mm, on a lead screw of %s mm within %s parts in a million",
		len(wheels), m.Path(), t, figure(round(t.Pitch)), figure(round(screw.Lead)), figure(eval.NearThread))
	f.Also = []finding.Note{{Place: m.Wheels.At, Says: "its wheels"}}
}
