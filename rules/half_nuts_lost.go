package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "half-nuts-lost",
	Title: "the half-nuts are opened on a thread that they do not find again, or must stay shut and the lathe does not reverse",
	Why: `Where the pitch divides the lead screw's the half-nuts fall in at any place and the tool finds its thread. Else they fall in
wrong and the next pass cuts a second thread across the first; they stay shut, and the lathe is run backwards between passes.
A threading dial serves where the unit of the thread is the screw's.`,
	Rows:      []string{"D18"},
	Source:    []string{"pitch and lead counted in whole turns: geometry; common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleHalfNuts("M16x2"),
	Sound:     exampleHalfNuts("M16x1.5"),
	OnTurn:    halfNutsLost,
})

// exampleHalfNuts cuts a thread on a lead screw of 3 mm with the half-nuts opened between passes.
func exampleHalfNuts(size string) string {
	return replaced(exampleThread(size), "makes = thread.end\n", "makes = thread.end\n      half_nuts = \"opened\"\n")
}

func halfNutsLost(k *eval.Turn, a *Ask) {
	c, m := k.Choice.Tool.Cutter, k.Lathe()
	t := k.Choice.Tool.Thread
	if c == nil || c.Kind != "threading_tool" || m == nil || t.Pitch <= 0 {
		return
	}
	screw, ok := Need(a, m.LeadScrew)
	if !ok {
		return
	}
	lead := screw.Lead
	if screw.TPI > 0 {
		lead = 25.4 / screw.TPI
	}
	turns := lead / t.Pitch
	if turns > 0.5 && math.Abs(turns-math.Round(turns)) < 1e-6*turns {
		a.Clear(finding.Margin{}, "")
		return
	}
	nuts := k.Step.Step.HalfNuts
	if nuts.Is() && nuts.V == "opened" {
		f := a.Say(m.Path()+".lead_screw+"+t.String(), nuts.At, "the pitch of %s, %s mm, does not divide the lead of %s, %s mm: opened half-nuts do not find the thread again",
			t, figure(round(t.Pitch)), m.Path(), figure(round(lead)))
		f.Also = []finding.Note{{Place: m.LeadScrew.At, Says: "its lead screw"}}
		return
	}
	back, ok := Need(a, m.Reverse)
	if !ok {
		return
	}
	if back {
		a.Clear(finding.Margin{}, "")
		return
	}
	f := a.Say(m.Path()+".reverse+"+t.String(), k.Place("makes", "tool"), "the pitch of %s, %s mm, does not divide the lead of %s, %s mm, so that the half-nuts stay shut, and its spindle does not run backwards",
		t, figure(round(t.Pitch)), m.Path(), figure(round(lead)))
	f.Also = []finding.Note{{Place: m.Reverse.At, Says: "it does not reverse"}}
}
