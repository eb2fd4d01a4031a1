package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:      "head-does-not-stand-up",
	Title:     "the dividing head does not turn upright or so far, or the rotary table does not stand on its edge",
	Why:       `Simple heads have a fixed level axis, others tilt within limits, and many rotary tables lie flat only. An angle plate under either may do.`,
	Rows:      []string{"A13"},
	Source:    []string{"look-up in the shop"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     replaced(exampleUpright(60), "stands_up     = true", "stands_up     = false"),
	Sound:     exampleUpright(60),
	OnHold:    headDoesNotStandUp,
})

func headDoesNotStandUp(h *eval.Holding, a *Ask) {
	d := h.Choice.Divided
	if d == nil {
		return
	}
	if d.Leans() {
		headLeans(h, d, a)
		return
	}
	var can model.Known[bool]
	says := ""
	switch {
	case d.Head != nil && d.Upright:
		can, says = d.Head.StandsUp, "its axis is to stand upright, and %s does not turn up"
	case d.Table != nil && !d.Upright:
		can, says = d.Table.StandsUp, "its axis is to lie level, and %s does not stand on its edge"
	default:
		return
	}
	yes, ok := Need(a, can)
	switch {
	case !ok:
	case yes:
		a.Clear(finding.Margin{}, "")
	default:
		f := a.Say(d.Item().Path()+".stands_up", h.Place("axis", "hold"), says, d.Item().Path())
		f.Also = []finding.Note{{Place: can.At, Says: "what it can do"}}
	}
}

// headLeans compares the angle of a leaning axis with how far the head tilts.
func headLeans(h *eval.Holding, d *eval.Divided, a *Ask) {
	if d.Head == nil {
		a.Asks("what does %s stand on, so that its axis rises %s degrees above the table?", d.Item().Path(), figure(d.Slope))
		return
	}
	tilts, ok := Need(a, d.Head.Tilts)
	if !ok || len(tilts) != 2 {
		return
	}
	if d.Slope > tilts[0]-0.0005 && d.Slope < tilts[1]+0.0005 {
		a.Clear(finding.Margin{}, "")
		return
	}
	f := a.Say(d.Item().Path()+".tilts", h.Place("axis", "hold"), "its axis is to rise %s degrees above the table, and that of %s goes from %s to %s degrees",
		figure(d.Slope), d.Item().Path(), figure(tilts[0]), figure(tilts[1]))
	f.Also = []finding.Note{{Place: d.Head.Tilts.At, Says: "what it can do"}}
}
