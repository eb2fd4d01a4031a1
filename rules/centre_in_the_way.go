package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "centre-in-the-way",
	Title: "the end that is worked on has a centre in it",
	Why: `While a centre supports the end, its middle cannot be faced, drilled or bored. A half centre lets a tool come nearly to the
middle; else the end is made before the centre goes in, or with the centre drawn back and little metal standing out.`,
	Rows:      []string{"A12"},
	Source:    []string{"geometry; common practice"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleCentred(""),
	Sound:     exampleCentred("support = \"withdrawn\""),
	OnTurn:    centreInTheWay,
})

// exampleCentred faces the end that the centre of the examples supports.
func exampleCentred(more string) string {
	return exampleTurned(`
  centre_hole "seat" {
    into = "right"
  }
`, inThree+"\n    support = { by = centre.live }", `
    operation {
      makes   = centre_hole.seat
      support = "withdrawn"
    }
    operation {
      makes = face.right
      `+more+`
    }`)
}

func centreInTheWay(k *eval.Turn, a *Ask) {
	if k.Hold.Unplayed != "" || !k.Hold.CentreStands() {
		return
	}
	for _, w := range k.Works {
		f := w.Target.Form
		end := f == nil && !w.Target.Outside && w.Target.Face == k.Hold.FreeEnd() && k.Choice.By != "parting"
		onAxis := f != nil && w.Inside && f.Into.Face == k.Hold.FreeEnd()
		if !end && !onAxis || w.Wrong != "" {
			continue
		}
		half := k.Hold.Choice.Support != nil && k.Hold.Choice.Support.Centre != nil && k.Hold.Choice.Support.Centre.Half.V
		if k.Choice.Withdrawn || end && half {
			a.Clear(finding.Margin{}, "")
			continue
		}
		a.Say(k.Hold.Work.SetUp.Path()+".support+"+w.Target.Name(), k.Place("support", "makes"), "%s is made from the end that %s supports; the middle of it cannot be reached",
			w.Target.Name(), centreWord(k.Hold))
	}
}

// centreWord names the centre in the free end.
func centreWord(h *eval.Chucking) string {
	if s := h.Choice.Support; s != nil && s.Centre != nil {
		return s.Centre.Path()
	}
	return "a centre"
}
