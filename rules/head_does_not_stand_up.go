package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:      "head-does-not-stand-up",
	Title:     "the dividing head does not turn upright, or the rotary table does not stand on its edge",
	Why:       `Simple heads have a fixed level axis, and many rotary tables lie flat only. An angle plate under either may do.`,
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
