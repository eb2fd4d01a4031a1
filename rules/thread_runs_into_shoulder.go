package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "thread-runs-into-shoulder",
	Title: "a thread goes right up to a shoulder with nothing for the tool to run out into",
	Why: `A threading tool needs a turn or two to be drawn out, a die has a lead of two or three threads: up to a shoulder neither
makes full thread. A groove of about three pitches, a shorter thread, or a chamfer in the mate helps.`,
	Rows:      []string{"D17"},
	Source:    []string{"undercuts of about three pitches: drawings by DIN 76 (from memory); no room at all is a matter of geometry"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     replaced(exampleThread("M16x2"), "from = 45", "from = 40"),
	Sound:     exampleThread("M16x2"),
	OnTurn:    threadRunsIntoShoulder,
})

func threadRunsIntoShoulder(k *eval.Turn, a *Ask) {
	pitch := k.Choice.Tool.Thread.Pitch
	if k.Choice.By != "threading" || pitch <= 0 {
		return
	}
	for _, w := range k.Works {
		f := w.Target.Form
		if f == nil || f.Lathe == nil || f.Lathe.Inside || w.Wrong != "" {
			continue
		}
		room, shoulder := k.RunOut(&w)
		if !shoulder || room >= pitch-0.0005 {
			a.Clear(Room(round(room), round(pitch)), "the run-out of "+f.Name())
			continue
		}
		m := a.Say(f.Name()+"+shoulder", k.Place("makes"), "%s ends %s mm from a shoulder, and the tool has no groove to run out into: less than the pitch of %s mm is left; a groove of about three pitches is usual",
			f.Name(), figure(round(room)), figure(round(pitch)))
		m.Margin = Room(round(room), round(pitch))
	}
}
