package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "hole-wrong-for-tap",
	Title: "the hole gives the tap too much thread to cut, or too little",
	Why: `A hole too small leaves so much metal that the tap breaks; one too large leaves a thread that
strips. The hole should lie within the limits that the standard sets for the nut's inner diameter in the class of the thread,
or near them; where a percent of thread is asked for, within a tenth of a pitch of what leaves it.
And there must be a hole.`,
	Rows: []string{"D14"},
	Source: []string{"limits of the minor diameter, of the class that the drawing gives or the usual one: ISO 965, ASME B1.1, BS 93 and BS 84 as tabled in the handbook",
		"percent of thread on 1.299 P, the base that printed tapping tables use; 55 to 80 is usual: common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Holding | Mounting,
	Trips:     exampleTap("3.8"),
	Sound:     exampleTap("4.2"),
	OnCut:     holeWrongForTap,
	OnTurn:    asCut(holeWrongForTap),
})

// The share of full thread, on 1.299 P, outside of which a hole is spoken of where no
// standard limits are tabled. Common practice.
const leastThread, mostThread = 55.0, 80.0

func holeWrongForTap(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || c.Kind != "tap" || k.Choice.Tool.Thread.Series == "" {
		return
	}
	t := k.Choice.Tool.Thread
	for _, w := range k.Works {
		if w.Target.Sub != "thread" || otherThread(k, w.Target.Form) {
			continue
		}
		if lacks := k.Part.Unnamed(); w.Had == 0 && len(lacks) > 0 {
			a.Lack(lacks...)
			continue
		}
		if w.Had == 0 {
			a.Say(w.Target.Name()+"+tap+none", k.Place("tool", "makes"), "%s is to be tapped %s, and no hole has been drilled there yet", w.Target.Form.Name(), t)
			continue
		}
		p := (t.Diameter - w.Had) / (1.299 * t.Pitch) * 100
		lim, ok := eval.TapLimits(t, w.Target.Form.Feature.Thread.Class)
		least, most := lim.Lo, lim.Hi
		if !ok {
			least, most = t.Diameter-1.299*t.Pitch*mostThread/100, t.Diameter-1.299*t.Pitch*leastThread/100
		}
		// A drilled hole between the standard's limits is right; up to a tenth of the pitch
		// below them is in daily use.
		switch {
		case w.Had < least-0.1*t.Pitch:
			f := a.Say(w.Target.Name()+"+tap", k.Place("tool", "makes"), "a hole of %s for %s leaves %.0f %% of thread on 1.299 P: the tap is likely to break; the hole should be %s to %s",
				mm(w.Had), t, p, figure(round(least)), mm(round(most)))
			f.Margin = Room(w.Had, round(least))
		case w.Had > most+0.0005:
			f := a.Say(w.Target.Name()+"+tap", k.Place("tool", "makes"), "a hole of %s for %s leaves %.0f %% of thread on 1.299 P: it is likely to strip; the hole should be %s to %s",
				mm(w.Had), t, p, figure(round(least)), mm(round(most)))
			f.Margin = Bound(w.Had, round(most), "mm")
		default:
			a.Clear(Bound(w.Had, round(most), "mm"), "the hole for "+t.String())
		}
	}
}
