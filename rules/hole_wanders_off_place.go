package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "hole-wanders-off-place",
	Title: "the place of a hole is finer than a drill finds it",
	Why: `A drill lets itself in where it likes, and a reamer follows the drill: it makes the hole round and to size where it is, not
where it should be. A hole whose place matters is bored before it is reamed; at the least it is spotted, and drilled with a short
drill.`,
	Rows:      []string{"D5"},
	Source:    []string{"a drill from a spot within 0.05 mm, as a place found by the dials is held to 0.02 to 0.05 mm on a hand-fed mill: common practice; without a spot within 0.15 mm: common practice, own limit"},
	Limits:    []string{"spotted_wander", "drill_wander"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Deaf:      Holding | Mounting,
	Trips:     replaced(exampleHole(), "left = 20,", "left = \"20 ±0.1\","),
	Sound:     replaced(exampleHole(), "left = 20,", "left = \"20 ±0.2\","),
	OnCut:     holeWandersOffPlace,
})

func holeWandersOffPlace(k *eval.Cut, a *Ask) {
	if !oneOf(k.Choice.By, "drilling", "reaming") || k.Choice.Tool.Cutter == nil || k.Unplayed != "" || byLines(k.Step) {
		return
	}
	if st := k.Step.Step; st != nil && st.Located.Said() && !oneOf(st.Located.V.Text, "dials", "stops", "indicated") {
		return // spotted through another part: its place is that part's
	}
	for i := range k.Works {
		w := &k.Works[i]
		f := w.Target.Form
		if f == nil || w.Target.Sub != "" || !w.Final || w.Wrong != "" || len(f.Mouths) == 0 {
			continue
		}
		fs := k.Part.Feature(k.Before, f)
		allowed, of, ok := finest(f)
		if !ok || fs == nil || oneOf(fs.ByProcess, "boring", "milling", "plunging") {
			continue
		}
		limit, name, how := a.Limit("drill_wander"), "drill_wander", "with no spot"
		if fs.Spotted {
			limit, name, how = a.Limit("spotted_wander"), "spotted_wander", "in a spot"
		}
		if allowed >= limit-1e-9 {
			a.Clear(Room(allowed, limit), "the place of "+f.Name())
			return
		}
		does := "is drilled"
		if k.Choice.By == "reaming" {
			does = "is reamed, and a reamer follows the drill"
		}
		says := a.Say(f.Name()+"+wanders", k.Place("makes", "tool"), "%s may lie %s off %s, and %s: a drill that starts %s usually comes within %s (%s)",
			f.Name(), mm(round(allowed)), of, does, how, mm(limit), name)
		says.Margin = Room(allowed, limit)
		return
	}
}
