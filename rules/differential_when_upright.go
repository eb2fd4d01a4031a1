package rules

import (
	"fettle/eval"
	"fettle/eval/reckon/dividing"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "differential-when-upright",
	Title: "the wheels of the differential do not reach with the axis upright",
	Why: `A train from the spindle to the plate stands behind the head and turns the plate as the spindle turns. With the axis
tilted or upright the end of the spindle is not where the train begins, so that a number that only the train divides cannot be made.`,
	Rows:      []string{"H1"},
	Source:    []string{"differential indexing wants the spindle level: Practical Treatise on Milling and Milling Machines"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleUpright(61),
	Sound:     exampleUpright(60),
	OnCut:     differentialWhenUpright,
})

// exampleUpright is the wheel of the examples with its axis upright on a head that has wheels.
func exampleUpright(count int) string {
	s := replaced(exampleWheel("", `axis = "upright"`, "", ""), "wheels = []", "wheels = [24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100]")
	return replaced(replaced(s, "stands_up     = false", "stands_up     = true"), "count  = 60", "count  = "+figure(float64(count)))
}

func differentialWhenUpright(k *eval.Cut, a *Ask) {
	d, ok := k.Hold.Divider()
	on := k.Hold.Choice.Divided
	if !ok || k.Hold.Unplayed != "" || !on.Upright || on.Head == nil || d.Direct {
		return
	}
	all, _ := k.Step.Divisions()
	for _, dv := range all {
		ways := d.Ways(dv.Job)
		served := len(ways) > 0 && ways[0].Method != dividing.Compound
		switch {
		case !served && len(d.Lacks) > 0 && len(d.Head.Gear.Wheels) > 0:
			a.Lack(d.Lacks...)
			continue
		case served || !upright(d, dv):
			a.Clear(finding.Margin{}, "")
			continue
		}
		level := d
		level.Head.Gear.Axis = dividing.Level
		a.Say(d.Item.Path()+"+"+dv.Says()+"+upright", k.Place("axis", "index", "makes"),
			"%s has no circle for %s; its wheels would make them (%s), and they reach only with the axis level: it stands upright",
			d.Item.Path(), dv.Says(), eval.SettingWords(level.Ways(dv.Job)[0]))
	}
}
