package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "cannot-plunge-there",
	Title: "a cutter that does not cut at its middle is to go straight down into metal",
	Why: `Many end mills have a hole or a flat in the middle of their end. Sent straight down they stand on a
pip of metal and burn. A slot drill, a hole drilled first for the way in, or an open side to begin from are the ways out.`,
	Rows:      []string{"B13"},
	Source:    []string{"common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Mounting,
	Trips:     examplePocket("end_mill.four[6]"),
	Sound:     examplePocket("slot_drill.two[6]"),
	OnCut:     cannotPlunge,
})

func cannotPlunge(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || k.Choice.By != "milling" || c.Kind != "end_mill" && c.Kind != "slot_drill" {
		return
	}
	for _, w := range k.Works {
		f := w.Target.Form
		if f == nil || !w.Facing || len(f.Mouths) > 0 || f.OpenBeside(w.Entry.Face) {
			continue
		}
		if d, ok := k.WayIn(&w); ok {
			dead := c.DeadCentre
			if !dead.Is() || d >= dead.V-0.001 {
				a.Clear(finding.Margin{}, "")
				continue
			}
		}
		yes, ok := Need(a, c.CentreCutting)
		switch {
		case !ok:
		case yes:
			a.Clear(finding.Margin{}, "")
		default:
			a.Say(k.ToolPath()+"+"+w.Target.Name(), k.Place("tool"),
				"%s does not cut at its middle, and %s is closed all round: drill a hole for the way in, or use a slot drill", k.ToolPath(), w.Target.Name())
		}
	}
}
