package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "grip-cut-away",
	Title: "a jaw touches nothing, or little of what it would have touched before",
	Why: `The metal that a later set-up holds by has to be there still. What was milled, bored or sawn away
earlier leaves the jaw to press on an edge, a thin rib or on nothing. Another order of work, a
tab left standing until the end, or another pair of faces is the cure.`,
	Rows:      []string{"C10", "C9"},
	Source:    []string{"geometry of the dry run", "less than a quarter of the contact left: own limit, geometry of what is held"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleGripGone(16),
	Sound:     exampleGripGone(4),
	OnHold:    gripCutAway,
})

// keptShare is the least share of its contact that a jaw may be left with before the grip
// counts as cut away: below it the jaw presses on an edge.
const keptShare = 0.25

func gripCutAway(h *eval.Holding, a *Ask) {
	if h.Jaws() == nil || missesBoth(h, a) {
		return
	}
	for _, side := range []struct {
		name string
		sign float64
		c    model.Known[eval.Contact]
	}{{"fixed", 1, h.Fixed}, {"moving", -1, h.Moving}} {
		c, ok := Need(a, side.c)
		if !ok || side.sign < 0 && h.BySomething() {
			continue
		}
		// What a jaw touches of a solid piece is at most the jaw against the piece's outline: with
		// enough of that nothing can have been cut away that matters.
		if all := h.Outline(c.Rect); c.Touches && c.Area >= keptShare*all {
			a.Clear(finding.Margin{Has: c.Area, Wants: keptShare * all, Unit: "mm²"}, "what the "+side.name+" jaw touches")
			continue
		}
		by, had, cut := h.CutAway(1, side.sign, c.Rect)
		switch {
		case !c.Touches && !cut:
			a.Say(h.Work.SetUp.Path()+"+"+side.name, h.Place("jaws", "grip", "parallels", "along", "hold"),
				"the %s jaw of %s touches nothing: the piece lies %s", side.name, h.Choice.Vise.Path(), lies(h, c))
		case cut && c.Area < keptShare*had:
			f := a.Say(h.Work.SetUp.Path()+"+"+side.name, h.Place("jaws", "hold"),
				"the %s jaw of %s would press on %s mm² of the %s face, where it had %s mm² before %s",
				side.name, h.Choice.Vise.Path(), tenth(c.Area), c.Face, tenth(had), by.Step)
			f.Margin = finding.Margin{Has: c.Area, Wants: keptShare * had, Unit: "mm²"}
		case had > 0 && cut:
			a.Clear(finding.Margin{Has: c.Area, Wants: keptShare * had, Unit: "mm²"}, "what the "+side.name+" jaw touches")
		default:
			a.Clear(finding.Margin{}, "")
		}
	}
}

// missesBoth tells once of a piece that lies where neither jaw reaches it.
func missesBoth(h *eval.Holding, a *Ask) bool {
	fixed, ok := h.Fixed.Get()
	moving, ok2 := h.Moving.Get()
	if !ok || !ok2 || fixed.Touches || moving.Touches || h.BySomething() || h.Outline(fixed.Rect) > 0 {
		return false
	}
	a.Say(h.Work.SetUp.Path()+"+jaws", h.Place("along", "jaws", "grip", "parallels", "hold"),
		"the jaws of %s touch nothing: the piece lies %s", h.Choice.Vise.Path(), lies(h, fixed))
	return true
}

// lies says where the piece lies that a jaw does not touch.
func lies(h *eval.Holding, c eval.Contact) string {
	switch {
	case h.Lo[2] >= c.Rect.Hi[1]-0.001:
		return mm(h.Lo[2]-c.Rect.Hi[1]) + " above the jaws"
	case h.Hi[0] <= c.Rect.Lo[0]+0.001:
		return "beyond the left end of the jaws"
	case h.Lo[0] >= c.Rect.Hi[0]-0.001:
		return "beyond the right end of the jaws"
	}
	return "clear of it where it looks"
}
