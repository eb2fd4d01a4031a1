package rules

import (
	"fettle/eval"
	"fettle/eval/reckon/gear"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "gear-cutter-of-other-range",
	Title: "the cutter is not for these teeth: pitch, pressure angle or number of teeth",
	Why: `A form cutter is right for a few counts of teeth of one module or diametral pitch and one pressure angle. Modules and diametral
pitches have near twins that look alike, 14.5 and 20 degrees do not run together, and the numbers of a set run from the rack in one
series and from the pinion in another: only the range printed on the cutter counts.`,
	Rows:      []string{"H4", "H5"},
	Source:    []string{"ranges of form cutters: printed on them; reckon/gear, Cutter.Serves"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Mounting,
	Trips:     replaced(exampleWheel("", "", "", ""), "teeth          = [55, 134]", "teeth          = [35, 54]"),
	Sound:     exampleWheel("", "", "", ""),
	OnCut:     gearCutterOfOtherRange,
})

func gearCutterOfOtherRange(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || k.Hold.Unplayed != "" {
		return
	}
	for _, t := range k.Step.Makes {
		if t.Form == nil || t.Form.Tooth == nil || !t.Form.Tooth.Involute {
			continue
		}
		if c.Kind != "gear_cutter" {
			if oneOf(c.Kind, "fly_cutter", "angle_cutter") {
				continue // its edge may be ground to the form
			}
			if c.Kind == "slitting_saw" || k.Step.Step != nil && (k.Step.Step.Leaves.Is() || k.Step.Step.DownTo.Depth.Is()) {
				a.Clear(finding.Margin{}, "") // gashing beforehand
				continue
			}
			a.Say(k.ToolPath()+"+"+t.Form.Name(), k.Place("tool", "makes"), "%s is no cutter for the teeth of wheels, and %s are involute", k.ToolPath(), t.Form.Name())
			continue
		}
		fit, why := t.Form.Tooth.Served(c)
		switch fit {
		case gear.Yes:
			a.Clear(finding.Margin{}, "")
		case gear.No:
			f := a.Say(k.ToolPath()+"+"+t.Form.Name(), k.Place("tool", "makes"), "%s is not for %s (%d teeth, module %.4g mm, %s deg): %s",
				k.ToolPath(), t.Form.Name(), t.Form.Tooth.Count, t.Form.Tooth.Wheel.Module, figure(t.Form.Tooth.Wheel.Pressure), why)
			f.Also = []finding.Note{{Place: c.At, Says: "the cutter"}}
		default:
			a.Lack(cutterLacks(c)...)
		}
	}
}

// cutterLacks is what must be read on the cutter before it is known to serve.
func cutterLacks(c *model.Cutter) (out []model.Lack) {
	if !c.Module.Is() && !c.DiametralPitch.Is() {
		out = append(out, c.Module.Missing()...)
	}
	out = append(out, c.ForTeeth.Missing()...)
	return append(out, c.PressureAngle.Missing()...)
}
