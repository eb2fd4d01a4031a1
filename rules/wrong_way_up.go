package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "wrong-way-up",
	Title: "the tool cannot get at what is made: its face does not look at the spindle",
	Why: `An upright spindle reaches only what looks up: a hole from its mouth, a pocket from its open side.
A saw on an upright spindle cuts level planes only, so the slit must lie level in the holding.`,
	Rows:      []string{"B3"},
	Source:    []string{"geometry of the dry run", "a circular saw on an upright spindle cuts level planes only: geometry"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     replaced(replaced(exampleSlit(""), `up        = "front"`, `up        = "top"`), `jaws      = "top"`, `jaws      = "back"`),
	Sound:     exampleSlit(""),
	OnCut:     wrongWayUp,
})

func wrongWayUp(k *eval.Cut, a *Ask) {
	if k.Unplayed != "" || k.Step.Work.Kind != "setup" || handMade(k.Choice.By) {
		return
	}
	for _, w := range k.Works {
		f := w.Target.Form
		switch {
		case w.Facing:
			a.Clear(finding.Margin{}, "")
		case w.Wrong != "":
			a.Say(k.Hold.Work.SetUp.Path()+".up", k.Hold.Place("tilt", "axis", "up", "hold"), "%s cannot be made in this holding: %s", w.Target.Name(), w.Wrong)
		case f != nil && (f.Feature.Kind == "slit" || f.Feature.Kind == "split"):
			lo, hi := acrossFaces(f)
			if k.LevelSpindle() {
				a.Say(k.Hold.Work.SetUp.Path()+".up", k.Hold.Place("jaws", "back", "up", "hold"),
					"the saw on a level spindle cuts square to it, and %s does not stand so: put %s or %s towards the column", f.Name(), lo, hi)
				continue
			}
			a.Say(k.Hold.Work.SetUp.Path()+".up", k.Hold.Place("up", "hold"),
				"the saw on an upright spindle cuts level planes only, and %s stands on edge with %s up: it lies level with %s or %s up",
				f.Name(), k.Hold.Choice.Up, lo, hi)
		case k.LevelSpindle():
			a.Say(k.Hold.Work.SetUp.Path()+".up", k.Hold.Place("jaws", "back", "up", "hold"),
				"%s is entered from %s, which does not look at the spindle: it lies level and comes from the column; put %s towards the column%s",
				w.Target.Name(), w.Entry.Name, k.Hold.Here(w.Entry.Face), bladeWould(&w))
		default:
			a.Say(k.Hold.Work.SetUp.Path()+".up", k.Hold.Place("up", "hold"),
				"%s is entered from %s, which does not look at the spindle while %s is up: put %s up%s",
				w.Target.Name(), w.Entry.Name, k.Hold.Choice.Up, k.Hold.Here(w.Entry.Face), otherWayIn(&w, k.Hold.Choice.Up))
		}
	}
}

// bladeWould says that a disc cutter on the arbor would do what a shank cutter cannot as the piece lies.
func bladeWould(w *eval.Working) string {
	if f := w.Target.Form; f != nil && (f.Feature.Kind == "slot" || f.Feature.Kind == "step") {
		return ", or mill it with a side and face cutter"
	}
	return ""
}

// otherWayIn says that what is made is open at the side that is up, so that it can be entered there.
func otherWayIn(w *eval.Working, up model.Face) string {
	f := w.Target.Form
	if f == nil {
		return ""
	}
	through := f.Through && up == f.Into.Face.Opposite() && (w.Target.Sub == "" || w.Target.Sub == "thread" && w.Through)
	beside := f.Feature.Kind == "step" && up == f.Side
	if !through && !beside {
		return ""
	}
	return `, or enter it there (from = "` + up.String() + `")`
}

func acrossFaces(f *eval.Form) (string, string) {
	return [3]string{"left", "front", "bottom"}[f.Across], [3]string{"right", "back", "top"}[f.Across]
}

// handMade says whether a process is worked by hand.
func handMade(by string) bool {
	switch by {
	case "filing", "scraping", "scribing", "polishing", "lapping", "broaching":
		return true
	}
	return false
}
