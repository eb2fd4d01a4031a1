package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "grip-not-reached",
	Title: "the jaws take hold of less than the grip that is written",
	Why: `A grip is the height of metal between jaw and piece as it then is. Parallels that are too tall, jaws that are not
so deep, a piece that is not so high or has a step where the jaw presses leave less of it.`,
	Rows:      []string{"A14", "C11"},
	Source:    []string{"geometry of the dry run"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     replaced(exampleSlit(""), "parallels = 12", "parallels = 12\n    grip      = 9"),
	Sound:     replaced(exampleSlit(""), "parallels = 12", "parallels = 12\n    grip      = 8"),
	OnHold:    gripNotReached,
})

func gripNotReached(h *eval.Holding, a *Ask) {
	want, written := h.Work.SetUp.Grip.Get()
	v := h.Jaws()
	if v == nil || !written {
		return
	}
	fixed, ok := Need(a, h.Fixed)
	moving, ok2 := Need(a, h.Moving)
	if !ok || !ok2 || !fixed.Touches || !moving.Touches && !h.BySomething() {
		return
	}
	grip, jaw, c, sign := fixed.Grip, "the jaws of "+v.Path()+" take", fixed, 1.0
	switch {
	case !h.BySomething() && moving.Grip < grip-0.0005:
		grip, jaw, c, sign = moving.Grip, "the moving jaw of "+v.Path()+" takes", moving, -1
	case moving.Grip > grip+0.0005:
		jaw = "the fixed jaw of " + v.Path() + " takes"
	}
	if grip >= want-0.0005 {
		a.Clear(Room(round(grip), want), "the grip of "+v.Path()+" against what is written")
		return
	}
	height, rise, depth := round(h.Hi[2]-h.Lo[2]), h.Choice.Height+h.Choice.Packing+h.Choice.Step, h.Choice.JawDepth().V
	why := "no more metal stands there as the piece then is"
	switch by, _, cut := h.CutAway(1, sign, c.Rect); {
	case cut && grip < min(height, depth-rise)-0.0005:
		why = by.Step + " took metal that the jaw would hold"
	case depth < want-0.0005:
		why = "the jaws are " + mm(depth) + " deep"
	case height < want-0.0005:
		why = "the piece is " + mm(height) + " high as it is held"
	case depth-rise < want-0.0005:
		why = "the jaws are " + mm(depth) + " deep and the piece stands " + mm(rise) + " above the bed; it may stand " + mm(round(depth-want)) + " at most"
	}
	f := a.Say(h.Work.SetUp.Path()+".grip", h.Place("grip"), "%s hold of %s, and a grip of %s is written: %s", jaw, mm(round(grip)), mm(want), why)
	f.Margin = Room(round(grip), want)
}
