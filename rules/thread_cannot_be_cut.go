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

// nearEnough is the error of a train that still serves, parts in a million.
const nearEnough = 500

func threadCannotBeCut(k *eval.Turn, a *Ask) {
	c, m := k.Choice.Tool.Cutter, k.Lathe()
	if c == nil || c.Kind != "threading_tool" || m == nil || k.Choice.Tool.Thread.Pitch <= 0 {
		return
	}
	screw, ok := Need(a, m.LeadScrew)
	wheels, ok2 := Need(a, m.Wheels)
	head, ok3 := Need(a, m.FixedTrain)
	if !ok || !ok2 || !ok3 {
		return
	}
	l := screwcut.Lathe{}
	var err error
	if l.Screw, err = screwcut.Millimetres(screw.Lead); screw.TPI > 0 {
		l.Screw, err = screwcut.PerInch(screw.TPI)
	}
	if err != nil {
		return
	}
	if l.Head, err = screwcut.FractionOf(head); err != nil {
		return
	}
	for _, w := range wheels {
		l.Wheels = append(l.Wheels, int(w))
	}
	t := k.Choice.Tool.Thread
	lead, err := screwcut.Millimetres(t.Pitch)
	if err != nil {
		return
	}
	found, err := screwcut.Trains(l, screwcut.Wanted{Lead: lead, Within: nearEnough, Pairs: 2})
	switch {
	case err != nil:
		return
	case len(found.Trains) > 0:
		a.Clear(finding.Margin{}, "")
		return
	}
	f := a.Say(m.Path()+".wheels+"+t.String(), k.Place("wheels", "tool", "makes"), "no train of the %d wheels of %s cuts the lead of %s, %s mm, on a lead screw of %s mm within %d parts in a million",
		len(wheels), m.Path(), t, figure(round(t.Pitch)), figure(round(screw.Lead)), nearEnough)
	f.Also = []finding.Note{{Place: m.Wheels.At, Says: "its wheels"}}
}
