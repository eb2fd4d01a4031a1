package rules

import (
	"fettle/eval"
	"fettle/eval/reckon/cutting"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "nut-unwinds",
	Title: "the nut or screw of an arbor is undone by the cut",
	Why: `A cutter held by friction lags behind its arbor while it cuts, and drags washer and nut with
it. Seen from the end where the nut sits, a right-hand nut is tightened only if the arbor turns
anticlockwise there, a left-hand nut only if it turns clockwise. A key in the cutter or a washer
that cannot turn keeps the drag off the nut. A climb cut on a slack screw lets the work drive
the cutter: it leads instead of lagging, and all of this is turned round.`,
	Rows: []string{"B1", "B12"},
	Source: []string{
		"principle: Machinery's Handbook 25 (bench grinder spindles), and accounts of saw blades and screwed chucks",
		"table of 24 cases: derived; checked in eval/reckon/cutting",
	},
	Level:     finding.Danger,
	Judgement: finding.Fact,
	Caution: "A saw that comes loose can burst or be thrown. Stop the spindle and isolate it before tightening; let it coast " +
		"down, never brake it by hand; follow the machine's manual.",
	Trips: exampleSlit(`holder = arbor.left`),
	Sound: exampleSlit(`holder = arbor.stub`),
	OnCut: nutUnwinds,
})

func nutUnwinds(k *eval.Cut, a *Ask) {
	arbor := k.Stack.Holder
	if arbor == nil || arbor.Kind != "arbor" || k.Choice.Tool.Cutter == nil {
		return
	}
	clamp := arbor.Clamp
	by := clamp.By.Or("nut")
	a.Asks("look at the %s from its end: does the cut turn it tighter or looser?", by)
	if clamp.WasherHeld.V || arbor.Key.V {
		a.Clear(finding.Margin{}, "")
		return
	}
	thread, ok := Need(a, clamp.Thread)
	if !ok {
		return
	}
	leads, ok := leadsOf(k, a)
	if !ok {
		return
	}
	// The nut of an upright arbor sits below; forward is clockwise seen from the spindle,
	// so anticlockwise seen from the nut.
	seen, word := cutting.CounterClockwise, "anticlockwise"
	if k.Choice.Reverse {
		seen, word = cutting.Clockwise, "clockwise"
	}
	hand, handWord, right := cutting.RightHand, "right-hand", "left-hand"
	if thread.Left {
		hand, handWord, right = cutting.LeftHand, "left-hand", "right-hand"
	}
	if cutting.Nut(seen, hand, leads, cutting.NoKey) != cutting.Loosens {
		a.Clear(finding.Margin{}, "")
		return
	}
	// Friction alone drives it, as far as is declared. A key would take the trouble away,
	// so it must be known that there is none; a held washer is rare, and is declared
	// where there is one.
	if _, ok := Need(a, arbor.Key); !ok {
		return
	}
	running, cure := "forward", "reverse"
	if k.Choice.Reverse {
		running, cure = cure, running
	}
	why := "the cutter lags in the cut"
	if leads {
		why = "in a climb cut the work drives the cutter ahead"
	}
	f := a.Say(arbor.Path()+".clamp.thread", k.Place("spindle", "cutting", "holder", "tool"),
		"running %s, %s turns %s seen from its %s; %s, and that undoes a %s %s (%s)",
		running, arbor.Path(), word, by, why, handWord, by, thread)
	if !leads {
		f.Says += "; a " + right + " one, or running " + cure + " with the cutter turned over, would tighten"
	}
	f.Also = []finding.Note{{Place: clamp.Thread.At, Says: "the thread of the " + by}}
}

// leadsOf says whether the cutter leads its arbor: in a climb cut on a screw with slack.
func leadsOf(k *eval.Cut, a *Ask) (leads, known bool) {
	if climbs, _ := k.Climbs(); !climbs {
		return false, true
	}
	m := k.Hold.Choice.Machine
	if m == nil {
		return false, false
	}
	s, ok := Need(a, slackOf(m))
	return ok && s > 0, ok
}

// slackOf is the slack of the slides: the larger of the two where both are told.
func slackOf(m *model.Machine) model.Known[float64] {
	b := m.Backlash
	switch {
	case b.X.Is() && b.Y.Is() && b.Y.V > b.X.V:
		return b.Y
	case b.X.Is():
		return b.X
	case b.Y.Is():
		return b.Y
	}
	return b.Bare
}
