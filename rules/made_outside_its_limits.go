package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "made-outside-its-limits",
	Title: "a size came out beyond the limits of its drawing",
	Why: `What was measured is written down so that all that follows can be worked out again with it. A size beyond its limits is
a part to make again, or a mate to make to suit; a fit that names it says how.`,
	Rows:      []string{"F6", "E1"},
	Source:    []string{"arithmetic"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleFit(`"8 H7"`, `"8 g6"`, `"H7/g6"`) + madeHole("8.021"),
	Sound:     exampleFit(`"8 H7"`, `"8 g6"`, `"H7/g6"`) + madeHole("8.012"),
	OnJoint:   madeOutsideItsLimits,
})

func madeHole(size string) string {
	return "\nmade {\n  of   = part.block.hole.seat.diameter\n  size = " + size + "\n  on   = \"2026-11-25\"\n}\n"
}

func madeOutsideItsLimits(j *eval.Joint, a *Ask) {
	m := j.Made
	if m == nil || !m.Of.Known {
		return
	}
	size, ok := Need(a, m.Reading)
	lim, ok2 := Need(a, m.Of.Limits)
	if !ok || !ok2 {
		return
	}
	off := max(lim.Lo-size, size-lim.Hi)
	if off <= 0.0005 {
		a.Clear(Room(round(-off), 0), m.Of.Path+" as made")
		return
	}
	a.Say(m.Of.Path+"+made", m.Model.Size.At, "%s came out at %s, and its limits are %s to %s mm: it is off by %s mm",
		m.Of.Path, mm(size), figure(round(lim.Lo)), figure(round(lim.Hi)), figure(round(off)))
}
