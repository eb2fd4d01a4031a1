package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "lead-screw-runs-one-way",
	Title: "a left-hand thread is to be cut and the lead screw cannot be reversed against the spindle",
	Why: `A left-hand thread is cut with the spindle forward and the saddle going towards the tailstock: the lead screw turns the other
way, by a tumbler or one wheel more in the train. Where neither is there the thread comes out right-hand.`,
	Rows:      []string{"D18", "C20"},
	Source:    []string{"common practice; look-up in the shop"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleLeftHand("false"),
	Sound:     exampleLeftHand("true"),
	OnTurn:    leadScrewRunsOneWay,
})

// exampleLeftHand cuts a left-hand thread on a lathe whose lead screw reverses, or does not.
func exampleLeftHand(reverses string) string {
	return replaced(exampleThread("M16x2 LH"), "lathe.centre", "lathe.own") + `
lathe "own" {
  swing               = 250
  bore                = 26
  nose                = "M39x4"
  speeds              = [60, 100, 160, 260]
  lead_screw          = 3
  lead_screw_reverses = ` + reverses + `
  wheels              = [20, 30, 40, 60]
  fixed_train         = 1
}
`
}

func leadScrewRunsOneWay(k *eval.Turn, a *Ask) {
	c, m := k.Choice.Tool.Cutter, k.Lathe()
	if c == nil || c.Kind != "threading_tool" || m == nil || k.Hold.Unplayed != "" {
		return
	}
	for _, w := range k.Works {
		f := w.Target.Form
		if f == nil || w.Wrong != "" || !leftHanded(f) {
			continue
		}
		back, ok := Need(a, m.LeadScrewReverses)
		switch {
		case !ok:
		case back:
			a.Clear(finding.Margin{}, "")
		default:
			says := a.Say(m.Path()+".lead_screw_reverses", k.Place("tool", "makes"), "%s is left-hand, and the lead screw of %s cannot be reversed against its spindle: an idler more in the train, or a tumbler, is wanted",
				f.Name(), m.Path())
			says.Also = []finding.Note{{Place: m.LeadScrewReverses.At, Says: "it runs one way"}}
		}
	}
}

// leftHanded says whether a thread or a worm is left-hand.
func leftHanded(f *eval.Form) bool {
	switch f.Feature.Kind {
	case "thread":
		return f.Feature.ThreadSize.V.Left
	case "worm":
		return f.Feature.HandOf.V == "left"
	}
	return false
}
