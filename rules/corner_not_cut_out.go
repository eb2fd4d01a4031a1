package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "corner-not-cut-out",
	Title: "sheet is folded both ways, and the metal in the corners between the bends is still there",
	Why: `Two legs that rise beside each other leave the corner between them nowhere to go. It is cut out while the sheet is flat,
to where the two bends begin or a little farther.`,
	Rows:      []string{"I6"},
	Source:    []string{"metal of the flat sheet that lies beyond two bends at once: geometry"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleTray(),
	Sound:     exampleBend("annealed", "    inside_radius = 1\n"),
	OnPart:    cornerNotCutOut,
})

// exampleTray folds a bracket both ways with nothing cut out.
func exampleTray() string {
	s := exampleBend("annealed", "    inside_radius = 1\n")
	s = replaced(s, "  bend \"leg\" {\n", "  bend \"side\" {\n    at      = { back = 5 }\n    towards = \"top\"\n    inside_radius = 1\n  }\n\n  bend \"leg\" {\n")
	s = replaced(s, "front = 10 }\n    diameter", "front = 6 }\n    diameter")
	return replaced(s, "makes = [bend.leg]", "makes = [bend.leg, bend.side]")
}

func cornerNotCutOut(p *eval.PartTrace, a *Ask) {
	if p.Lies == nil || p.End.Bent == nil || !p.End.Bent.BothWays(p.Part.Flat) {
		return
	}
	b := p.End.Bent
	if b.Corner == 0 {
		a.Clear(finding.Margin{}, "the corners of "+p.Part.Label)
		return
	}
	a.Say(p.Part.Label+".corners", p.Part.At, "%s is folded both ways, and %s mm² of its sheet lie in the corners between the bends: no step cuts them out before",
		p.Part.Label, tenth(b.Corner/p.Part.Part.Thickness.V.Nominal))
}
