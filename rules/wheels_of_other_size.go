package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "wheels-of-other-size",
	Title: "two sets of teeth that mesh are not of one module, pressure angle or form",
	Why: `Teeth of 24 DP and of module 1, or of 14 1/2 and of 20 degrees, look alike on the bench. Run together they
interfere, wear and growl. Cut both with cutters of one set.`,
	Rows:      []string{"H5"},
	Source:    []string{"module 25.4/DP exactly (ISO 54); the axial module of a worm is that of its wheel in its own plane"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleWheels("count = 40\n    module = 1", "count = 20\n    dp = 24", ""),
	Sound:     exampleWheels("count = 40\n    module = 1", "count = 20\n    module = 1", ""),
	OnJoint:   wheelsOfOtherSize,
})

func wheelsOfOtherSize(j *eval.Joint, a *Ask) {
	o := j.Mesh
	if o == nil {
		return
	}
	m, ok := Need(a, o.Wheel.Module)
	n, ok2 := Need(a, o.Pinion.Module)
	if !ok || !ok2 {
		return
	}
	cause := o.Wheel.Name + "+" + o.Pinion.Name
	at := placeIn(j, "wheel")
	also := []finding.Note{{Place: o.Wheel.Feature.Item.At, Says: o.Wheel.Name}, {Place: o.Pinion.Feature.Item.At, Says: o.Pinion.Name}}
	switch {
	case math.Abs(m-n) > 1e-6*math.Max(m, n):
		f := a.Say(cause, at, "%s is %s and %s is %s, module %s against %s: they do not mesh", o.Wheel.Name, o.Wheel.Size, o.Pinion.Name, o.Pinion.Size, figure(m), figure(n))
		f.Also = also
	case !o.IsWorm && o.Wheel.Form != o.Pinion.Form:
		f := a.Say(cause, at, "the teeth of %s are %s and those of %s %s: they do not mesh", o.Wheel.Name, o.Wheel.Form, o.Pinion.Name, o.Pinion.Form)
		f.Also = also
	case o.Wheel.Form == "involute" && math.Abs(o.Wheel.Pressure-o.Pinion.Pressure) > 1e-6:
		f := a.Say(cause, at, "%s has a pressure angle of %s degrees%s and %s of %s%s: they do not mesh", o.Wheel.Name, figure(o.Wheel.Pressure), leftOpen(o.Wheel),
			o.Pinion.Name, figure(o.Pinion.Pressure), leftOpen(o.Pinion))
		f.Also = also
	default:
		a.Clear(finding.Margin{}, "")
	}
}

// leftOpen says that a pressure angle is not written.
func leftOpen(t eval.Toothed) string {
	if t.Said {
		return ""
	}
	return " (not written)"
}
