package rules

import (
	"fmt"
	"math"

	"fettle/eval"
	"fettle/eval/reckon/screwcut"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "thread-cannot-be-cut",
	Title: "no change wheels that are there cut the thread's lead",
	Why: `A lathe cuts a lead by the wheels between spindle and lead screw. Where no train gives it, not even nearly, the thread must
be cut with a die or tap, or be another. A train that is a little off serves as long as the error over what is engaged is
little against the tolerance of the pitch diameter.`,
	Rows: []string{"D18", "H12"},
	Source: []string{"driver/driven = lead cut / lead of the screw; every train of two pairs tried, a wheel used once (meshing: from memory, checked by eval/reckon/screwcut)",
		"an error of the lead over the engaged length counts 1.732 times on the pitch diameter of a 60 degree thread: geometry, ISO 965-1; half of its tolerance may go to it: our own share",
		"the engaged length is the thread's, at most one and a half diameters: common practice; of a thread without limits 500 parts in a million: our own"},
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
	if c == nil || c.Kind != "threading_tool" || m == nil || k.Choice.Tool.Thread.Pitch <= 0 || k.Step.Step.Wheels.Is() {
		return
	}
	screw, ok := Need(a, m.LeadScrew)
	wheels, ok2 := Need(a, m.Wheels)
	_, ok3 := Need(a, m.FixedTrain)
	if !ok || !ok2 || !ok3 {
		return
	}
	t := k.Choice.Tool.Thread
	for _, w := range k.Works {
		if w.Target.Form == nil || w.Target.Form.Feature.Kind != "thread" || w.Wrong != "" {
			continue
		}
		lead, err := eval.LeadOf(w.Target.Form, t.Pitch)
		if err != nil {
			return
		}
		near := k.NearLead(w.Target.Form)
		found, err := eval.Trains(m, lead, eval.NearWorm)
		if err != nil {
			return
		}
		if len(found.Trains) > 0 && math.Abs(found.Trains[0].PPM) <= near {
			a.Clear(finding.Margin{}, "")
			continue
		}
		turns := screw.Lead
		if screw.TPI > 0 {
			turns = 25.4 / screw.TPI
		}
		f := a.Say(m.Path()+".wheels+"+t.String(), k.Place("wheels", "tool", "makes"), "no train of the %d wheels of %s cuts the lead of %s, %s mm, on a lead screw of %s mm%s",
			len(wheels), m.Path(), t, figure(round(lead.MM())), figure(round(turns)), nearestLead(k, w.Target.Form, found, near))
		f.Also = []finding.Note{{Place: m.Wheels.At, Says: "its wheels"}}
	}
}

// nearestLead says how near the best train comes, and what the thread bears.
func nearestLead(k *eval.Turn, f *eval.Form, found screwcut.Answer, near float64) string {
	_, engaged, known := k.Part.LeadRoom(f)
	switch {
	case len(found.Trains) == 0:
		return ", not within a fiftieth"
	case !known:
		return " within " + figure(near) + " parts in a million"
	}
	best := found.Trains[0]
	return fmt.Sprintf(" nearly enough: the best, %s, cuts %s mm, which is %s mm off over an engaged length of %s mm; the tolerance of its pitch diameter bears %s",
		best.String(), figure(round(best.Lead)), figure(round(math.Abs(best.Over(engaged)))), figure(round(engaged)), figure(round(near*engaged/1e6)))
}
