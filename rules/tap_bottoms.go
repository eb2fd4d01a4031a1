package rules

import (
	"fettle/eval"
	"fettle/eval/reckon/thread"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "tap-bottoms",
	Title: "the drilled hole is too shallow for the thread and the tap's lead below it",
	Why: `A tap cuts full thread only above its lead. In a blind hole the lead needs depth of its own and a
pitch to spare, or the tap stands on the bottom and breaks while the thread is still short. A bottoming tap last, a
deeper hole, or less thread are the ways out.`,
	Rows:      []string{"D1", "D3"},
	Source:    []string{"full thread, lead and one pitch: a tap maker's rule, seen in print", "leads of 8 to 10, 3 to 5 and 1.5 pitches: Machinery's Handbook 26"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Holding | Mounting,
	Trips:     exampleBlindTap(9.5),
	Sound:     exampleBlindTap(12),
	OnCut:     tapBottoms,
	OnTurn:    asCut(tapBottoms),
})

// exampleBlindTap taps M5, 8 mm of full thread, in a blind hole so deep, with the taps of the
// example shop; the bottoming one is chosen.
func exampleBlindTap(depth float64) string {
	return replaced(exampleTap("4.2"), `thread   = { size = "M5" }`, `depth    = `+figure(depth)+`
    thread   = { size = "M5", depth = 8 }`)
}

func tapBottoms(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || c.Kind != "tap" {
		return
	}
	for _, w := range k.Works {
		f := w.Target.Form
		if w.Target.Sub != "thread" || w.Through || f == nil {
			continue
		}
		s := k.Part.Feature(k.Before, f)
		if s.Through || !s.Begun {
			continue
		}
		full, ok := Need(a, f.Feature.Thread.Depth)
		if !ok {
			continue
		}
		lead, ok := Need(a, k.TipLength())
		if !ok {
			continue
		}
		pitch := k.Choice.Tool.Thread.Pitch
		deep, _ := k.Part.Recess(f)
		want := deep + thread.Blind(full, pitch, lead/pitch)
		if s.Depth >= want-0.0005 {
			a.Clear(Room(s.Depth, round(want)), "the depth of "+f.Name()+" below its thread")
			continue
		}
		m := a.Say(w.Target.Name()+"+depth", k.Place("tool", "makes"), "%s of full thread, %s of lead and a pitch want a hole %s deep; %s is drilled %s",
			mm(full), mm(round(lead)), mm(round(want)), f.Name(), mm(s.Depth))
		m.Margin = Room(s.Depth, round(want))
	}
}
