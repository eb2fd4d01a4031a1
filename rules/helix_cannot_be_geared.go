package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "helix-cannot-be-geared",
	Title: "nothing turns the piece along the helix of its teeth as the table goes",
	Why: `The piece turns once while the table goes on by the lead of the helix. Wheels from the table's long screw to the dividing head do
it; a head of 40 to 1 on a screw of 5 mm makes a lead of 200 mm with equal wheels, and every other lead wants its own. Where the
nearest train is off by more than the play of the teeth over their width, the wheels bind at one end. Another helix angle near by is
often exact.`,
	Rows: []string{"H12", "H18"},
	Source: []string{"driven over drivers is the lead over ratio times lead of the screw: Practical Treatise on Milling and Milling Machines; search: reckon/screwcut",
		"a play of 0.04 modules: common practice"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Deaf:      Mounting,
	Trips:     replaced(exampleHelical("tilts         = 45", "20"), "[24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100]", "[]"),
	Sound:     exampleHelical("tilts         = 45", "20"),
	OnCut:     helixCannotBeGeared,
})

func helixCannotBeGeared(k *eval.Cut, a *Ask) {
	for _, t := range k.Step.Makes {
		h, lacks, wrong, ok := k.Helix(t.Form)
		if !ok {
			continue
		}
		cause := k.Hold.Choice.Divided.Item().Path() + "+" + t.Form.Name() + "+helix"
		a.Lack(lacks...)
		switch {
		case wrong != "":
			a.Say(cause, k.Place("makes"), "the teeth of %s wind once in %s mm: %s", t.Form.Name(), figure(round(h.Lead)), wrong)
		case len(lacks) > 0:
		case !h.Found:
			a.Say(cause, k.Place("makes"), "the teeth of %s wind once in %s mm, and no train of two pairs of the wheels of %s comes within a fiftieth of it",
				t.Form.Name(), figure(round(h.Lead)), k.Hold.Choice.Divided.Item().Path())
		case h.Off > h.Play+1e-9:
			f := a.Say(cause, k.Place("makes"), "the teeth of %s wind once in %s mm; the nearest train (%s) is off by %s over their %s, and they have %s of play",
				t.Form.Name(), figure(round(h.Lead)), h.Words(), mm(round(h.Off)), mm(round(h.Over)), mm(round(h.Play)))
			f.Margin = Bound(round(h.Off), round(h.Play), "mm")
		default:
			a.Clear(Bound(round(h.Off), round(h.Play), "mm"), "the helix of "+t.Form.Name())
		}
	}
}
