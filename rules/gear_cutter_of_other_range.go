package rules

import (
	"fmt"
	"math"

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
series and from the pinion in another: only the range printed on the cutter counts. Teeth that lean take the cutter for as many
teeth as have their curve, z / cos^3 of the lean, and clockwork has cutters of its own, whose form is to be known.`,
	Rows:      []string{"H4", "H5"},
	Source:    []string{"ranges of form cutters: printed on them; reckon/gear, Cutter.Serves", "z / cos^3(helix): any gear text (from memory)"},
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
		if !(t.Form.Module() > 0) || t.Form.Tooth != nil && t.Form.Tooth.Inside {
			continue
		}
		if c.Kind != "gear_cutter" {
			if oneOf(c.Kind, "fly_cutter", "angle_cutter") || c.Kind == "tap" && t.Form.Tooth != nil && t.Form.Tooth.Throat != nil {
				continue // its edge may be ground to the form
			}
			if c.Kind == "slitting_saw" || k.Step.Step != nil && (k.Step.Step.Leaves.Is() || k.Step.Step.DownTo.Depth.Is()) {
				a.Clear(finding.Margin{}, "") // gashing beforehand
				continue
			}
			a.Say(k.ToolPath()+"+"+t.Form.Name(), k.Place("tool", "makes"), "%s is no cutter for the teeth of wheels, and %s are %s", k.ToolPath(), t.Form.Name(), t.Form.Feature.Form.Or("involute"))
			continue
		}
		fit, why := t.Form.Served(c)
		switch fit {
		case gear.Yes:
			a.Clear(finding.Margin{}, "")
		case gear.No:
			f := a.Say(k.ToolPath()+"+"+t.Form.Name(), k.Place("tool", "makes"), "%s is not for %s (%s): %s",
				k.ToolPath(), t.Form.Name(), teethWords(t.Form), why)
			f.Also = []finding.Note{{Place: c.At, Says: "the cutter"}}
		default:
			a.Lack(cutterLacks(c, t.Form.Feature.Form.V)...)
		}
	}
}

// teethWords says which teeth a cutter is wanted for.
func teethWords(f *eval.Form) string {
	t := f.Tooth
	if r := f.Rack; r != nil {
		return fmt.Sprintf("a rack of module %.4g mm, %s deg", r.Gear.Module, figure(r.Gear.Pressure))
	}
	if t.Form == "cycloidal" {
		return fmt.Sprintf("%d teeth, module %.4g mm, cycloidal", t.Count, t.Module)
	}
	words := fmt.Sprintf("%d teeth, module %.4g mm, %s deg", t.Count, t.Wheel.Module, figure(t.Wheel.Pressure))
	if v := t.Virtual(); v != t.Count {
		words += fmt.Sprintf("; they lean %s deg, and are cut as %d teeth", figure(round(math.Abs(t.Lean))), v)
	}
	return words
}

// cutterLacks is what must be read on the cutter before it is known to serve.
func cutterLacks(c *model.Cutter, form string) (out []model.Lack) {
	if !c.Module.Is() && !c.DiametralPitch.Is() {
		out = append(out, c.Module.Missing()...)
	}
	if !eval.IsHob(c) {
		out = append(out, c.ForTeeth.Missing()...)
	}
	if form == "cycloidal" {
		return append(out, c.ToothForm.Missing()...)
	}
	return append(out, c.PressureAngle.Missing()...)
}
