package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "mandrel-in-the-way",
	Title: "a cut goes where the mandrel, its nut or its shoulder stands",
	Why: `A mandrel fills the bore that it holds by. Its nut presses on the free end: that end is not faced, and nothing is bored or
drilled from it, while the nut is on. A shoulder larger than the work is turned down to stands where the tool runs out.`,
	Rows:      []string{"C15"},
	Source:    []string{"geometry; common practice"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleNut("M10", "face.right"),
	Sound:     exampleNut("M10", "outside.waist"),
	OnTurn:    mandrelInTheWay,
})

// exampleNut turns a disc that a nut clamps on a stub mandrel.
func exampleNut(nut, makes string) string {
	s := exampleMandrel("10", "20", "  nut      = \""+nut+"\"\n")
	s = replaced(s, "  setup \"first\"", "  outside \"waist\" {\n    from     = 5\n    diameter = 18\n  }\n\n  setup \"first\"")
	return replaced(s, "      makes = face.right\n", "      makes = "+makes+"\n")
}

func mandrelInTheWay(k *eval.Turn, a *Ask) {
	h := k.Hold
	m := h.Choice.Mandrel
	if m == nil || h.Unplayed != "" {
		return
	}
	for _, w := range k.Works {
		if w.Wrong != "" {
			continue
		}
		at := m.Path() + "+" + w.Target.Name()
		switch k.MeetsMandrel(&w) {
		case eval.MeetsNut:
			f := a.Say(at, k.Place("makes"), "%s is made from the end that the nut of %s, %s, presses on: it cannot be reached while the nut holds the work", w.Target.Name(), m.Path(), m.Nut.V)
			f.Also = []finding.Note{{Place: m.Nut.At, Says: "its nut"}}
		case eval.MeetsBody:
			a.Say(at, k.Place("makes"), "%s is made where %s fills the bore that it holds by", w.Target.Name(), m.Path())
		case eval.MeetsShoulder:
			f := a.Say(at, k.Place("makes"), "%s ends at the shoulder of %s, ⌀%s mm, which stands out beyond the ⌀%s mm that it is turned to: the tool runs into it",
				w.Target.Name(), m.Path(), figure(m.Shoulder.V), figure(round(2*min(w.R0, w.R1))))
			f.Also = []finding.Note{{Place: m.Shoulder.At, Says: "its shoulder"}}
		default:
			a.Clear(finding.Margin{}, "")
		}
	}
}
