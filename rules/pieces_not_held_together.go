package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "pieces-not-held-together",
	Title: "two pieces are worked together, and nothing holds one of them",
	Why: `After the saw a part is two pieces. Jaws that press the joint together hold both; so do jaws that grip each of the two, screws, or
solder. A piece that only lies on the other one slips or flies.`,
	Rows:      []string{"F3", "C1"},
	Source:    []string{"geometry of the dry run"},
	Level:     finding.Danger,
	Judgement: finding.Fact,
	Caution:   "Before the spindle turns, pull at each of the two pieces by hand: neither may move.",
	Trips:     replaced(exampleHalves("", "screws", "saw", "bore"), "    up   = \"front\"\n    jaws = \"top\"\n\n    operation {\n      makes = hole.shaft", "    up        = \"top\"\n    jaws      = \"back\"\n    parallels = 4\n\n    operation {\n      makes = hole.screws"),
	Sound:     exampleHalves("", "screws", "saw", "bore"),
	OnHold:    piecesNotHeldTogether,
})

func piecesNotHeldTogether(h *eval.Holding, a *Ask) {
	if !h.Before.Closed || h.Jaws() == nil {
		return
	}
	a.Asks("are the two pieces held together so that neither can move?")
	l, known := h.Loose()
	switch {
	case !known:
		a.Lack(h.Fixed.Missing()...)
		a.Lack(h.Moving.Missing()...)
	case l.Piece == "" || h.Part.Fastened(h.Work):
		a.Clear(finding.Margin{}, "")
	default:
		a.Say(h.Work.SetUp.Path()+"+"+l.Split.Name(), h.Place("jaws", "hold"), "the jaws hold %s of %s alone: nothing joins %s to it, and it lies loose; join the pieces first, or grip them so that the jaws press the joint together",
			otherPiece(l), h.Part.Label, l.Piece)
	}
}

func otherPiece(l eval.Loose) string {
	for _, n := range l.Split.Feature.Pieces.V {
		if n != l.Piece {
			return n
		}
	}
	return l.Split.Name()
}
