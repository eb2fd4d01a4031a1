package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "seat-cut-away",
	Title: "a parallel carries nothing, so the piece tips when it is knocked down",
	Why: `The piece must rest on both parallels to sit level. Where an earlier cut took the metal above one,
or it is too thick or too thin for the piece, the piece rocks, and what is milled is not square.`,
	Rows:      []string{"C5", "C10"},
	Source:    []string{"geometry of the dry run"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleGripGone(4),
	Sound:     replaced(exampleGripGone(4), "parallels = 6\n\n    operation {\n      makes = hole.pin", "grip      = 8\n    packing   = { under = 10 }\n\n    operation {\n      makes = hole.pin"),
	OnHold:    seatCutAway,
})

func seatCutAway(h *eval.Holding, a *Ask) {
	if h.Choice.Vise == nil || h.Choice.Packing > 0 {
		if h.Choice.Packing > 0 {
			a.Clear(finding.Margin{}, "")
		}
		return
	}
	for _, s := range h.Seats {
		c, ok := Need(a, s.Contact)
		if !ok {
			continue
		}
		if c.Touches && c.Area > 0.01 {
			a.Clear(finding.Margin{}, "")
			continue
		}
		says := s.Name + " carries nothing: no metal of the " + c.Face.String() + " face lies on it"
		if by, _, cut := h.CutAway(2, -1, c.Rect); cut {
			says = s.Name + " carries nothing: " + by.Step + " took the metal of the " + c.Face.String() + " face that would lie on it"
		}
		a.Say(h.Work.SetUp.Path()+"+"+s.Name, h.Place("parallels", "up", "hold"), "%s", says)
	}
}
