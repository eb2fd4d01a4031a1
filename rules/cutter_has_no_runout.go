package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "cutter-has-no-runout",
	Title: "the disc cutter does not run out beside the teeth: it cuts the shoulder, the hub or the jaws",
	Why: `A disc of diameter D that cuts h deep reaches sqrt(h (D - h)) beyond its middle. Until the middle is at the end of the teeth
their floor is not there, so that so much must be free beside them: no shoulder or hub above the floor of the gaps, no
jaws. A longer hub or mandrel, a hub put on afterwards, or a smaller cutter gives the room.`,
	Rows:      []string{"H9"},
	Source:    []string{"half chord of a circle at a height h: sqrt(h (D - h)), geometry"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Caution:   "Turn the spindle by hand through a full turn at both ends of the cut before starting.",
	Trips:     replaced(exampleWheel("", "", "", ""), "    to       = 60\n    diameter = 16", "    to       = 60\n    diameter = 29"),
	Sound:     exampleWheel("", "", "", ""),
	OnCut:     cutterHasNoRunout,
})

func cutterHasNoRunout(k *eval.Cut, a *Ask) {
	if k.Unplayed != "" {
		return
	}
	for i := range k.Works {
		w := &k.Works[i]
		if !w.Facing {
			continue
		}
		all, lacks := k.RunOuts(w)
		a.Lack(lacks...)
		for _, o := range all {
			side := "left"
			if o.Right {
				side = "right"
			}
			if o.Has >= o.Wants-0.0005 {
				if o.Wants > 0 {
					a.Clear(Room(round(o.Has), round(o.Wants)), "the run-out of "+k.ToolPath()+" beside "+w.Target.Name())
				}
				continue
			}
			what := "metal " + mm(round(2*o.Radius)) + " across stands"
			if o.Thing != "" {
				what = o.Thing + " stand"
			}
			f := a.Say(k.ToolPath()+"+"+w.Target.Name()+"+"+side, k.Place("tool", "makes"),
				"%s, %s across, cuts %s mm beyond the %s end of %s, and %s %s mm from it",
				k.ToolPath(), mm(k.Choice.Tool.Size), figure(round(o.Wants)), side, w.Target.Name(), what, figure(round(o.Has)))
			f.Margin = Room(round(o.Has), round(o.Wants))
		}
		if len(all) > 0 {
			a.Clear(finding.Margin{}, "")
		}
	}
}

// jawsOfTeeth says whether a meeting is a gear cutter reaching the jaws beside the teeth that it
// cuts, which another rule speaks of.
func jawsOfTeeth(k *eval.Cut, n eval.Near) bool {
	if k.Choice.Tool.Cutter == nil || n.BodyItem != k.Choice.Tool.Cutter.Item {
		return false
	}
	for i := range k.Works {
		all, _ := k.RunOuts(&k.Works[i])
		for _, o := range all {
			if o.Item != nil && o.Item == n.ThingItem && o.Has < o.Wants-0.0005 {
				return true
			}
		}
	}
	return false
}
