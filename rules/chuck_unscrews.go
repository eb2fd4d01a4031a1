package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "chuck-unscrews",
	Title: "a screwed chuck is run, or braked, so that it can come off",
	Why: `A chuck that goes on by a right-hand thread is tightened by every cut that runs forward, and loosened by one that runs in
reverse, or by a hard brake. A left-hand thread does not ask for it: it is cut forward, with the lead screw reversed.`,
	Rows:      []string{"C20"},
	Source:    []string{"principle of a screwed spindle nose: common practice"},
	Level:     finding.Danger,
	Judgement: finding.Fact,
	Caution: "A chuck that comes off a turning spindle falls with all its weight. Do not reverse a screwed nose without a lock, turn by hand " +
		"instead, and follow the machine's manual.",
	Trips:  exampleWaist(inThree, `spindle = "reverse"`),
	Sound:  exampleWaist(inThree, `spindle = "forward"`),
	OnTurn: chuckUnscrews,
})

func chuckUnscrews(k *eval.Turn, a *Ask) {
	h := k.Hold
	m := h.Choice.Machine
	if m == nil || h.Unplayed != "" || h.Choice.Chuck == nil && h.Choice.Faceplate == nil || k.Choice.ByHand {
		return
	}
	if !k.Choice.Reverse {
		a.Clear(finding.Margin{}, "")
		return
	}
	a.Asks("is %s locked on the spindle against unscrewing?", h.Choice.HeldBy())
	nose, ok := Need(a, m.Nose)
	if !ok {
		return
	}
	if !nose.Screwed() {
		a.Clear(finding.Margin{}, "")
		return
	}
	locked, ok := Need(a, m.NoseLock)
	switch {
	case !ok:
	case locked:
		a.Clear(finding.Margin{}, "")
	default:
		a.Say(m.Path()+".nose+reverse", k.Place("spindle", "tool"), "%s is screwed on the %s nose of %s without a lock, and the spindle runs in reverse: the cut unscrews it",
			h.Choice.HeldBy(), nose.Thread, m.Path())
	}
}
