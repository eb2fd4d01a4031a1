package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "grip-too-shallow",
	Title: "too little of the piece's height lies between the jaws",
	Why: `A cut pushes sideways at the top of the piece; the jaws hold it at the foot. The less of its
height they grip, the less it takes to tip it out, however hard they press: friction alone is no
measure of that.`,
	Rows: []string{"A14", "C11"},
	Source: []string{"a third to a half of the height: common practice",
		"that tipping decides, and not friction alone: worked for a block in a vise by a friction-cone linear program"},
	Limits:    []string{"vise_grip_share"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     replaced(exampleSlit(""), "parallels = 12", "parallels = 14"),
	Sound:     exampleSlit(""),
	OnHold:    gripTooShallow,
})

func gripTooShallow(h *eval.Holding, a *Ask) {
	if h.Jaws() == nil || !pushedSideways(h.Work) {
		return
	}
	fixed, ok := Need(a, h.Fixed)
	moving, ok2 := Need(a, h.Moving)
	if !ok || !ok2 || !fixed.Touches || !moving.Touches {
		return
	}
	if h.Part.Round && h.Choice.Up.Axis() != 0 {
		a.Clear(finding.Margin{}, "") // a round bar lies between the jaws: they touch it along a line, at its middle
		return
	}
	grip, height := min(fixed.Grip, moving.Grip), h.Hi[2]-h.Lo[2]
	want := a.Limit("vise_grip_share") * height
	if grip >= want-0.0005 {
		a.Clear(Room(grip, want), "the grip of "+h.Choice.Vise.Path())
		return
	}
	f := a.Say(h.Choice.Vise.Path()+"+"+h.Work.SetUp.Path(), h.Place("grip", "parallels", "hold"),
		"%s grips %s of the piece's %s mm of height; usually at least %s mm (%s of it) is wanted for a cut from the side%s", h.Choice.Vise.Path(), mm(grip), tenth(height), tenthUp(want),
		hundredth(a.Limit("vise_grip_share")), lower(h, want-grip))
	f.Margin = Room(grip, want)
}

// lower says how the piece may stand lower, where it can by so much.
func lower(h *eval.Holding, by float64) string {
	switch on := h.Choice.Height; {
	case on <= 0, by > on:
		return ""
	case on-by < 1: // no parallels are so low
		return ": it would do on the bed, without parallels"
	}
	return ": parallels " + tenthUp(by) + " mm lower would do"
}

// pushedSideways says whether anything in a set-up is cut from the side: all but work on
// the axis of holes.
func pushedSideways(w *eval.Work) bool {
	for _, st := range w.Steps {
		if st.Kind != "operation" {
			continue
		}
		for _, t := range st.Makes {
			if t.Form == nil {
				return true
			}
			switch t.Form.Feature.Kind {
			case "hole", "chamfer", "radius":
			default:
				return true
			}
		}
	}
	return false
}
