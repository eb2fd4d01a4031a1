package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "notch-cutter-of-other-angle",
	Title: "the angle cutter leaves the sides of a gap at another angle than drawn",
	Why: `The sides of a notch, and the back of a ratchet tooth, lie as the edges of the cutter that goes along the gap. Right at the floor, a
cutter of another angle leaves the mouth too wide or too narrow. Teeth that meet in points lose their points by a wider one, and come
out lower; a narrower one leaves a land at their tips, of which a little does no harm. A cutter of that angle, or a bit ground to it, is right.`,
	Source: []string{"the gap that two edges leave: geometry",
		"tips of teeth that meet in points may come out lower by a twentieth of their depth, or with a land of a tenth of their pitch: own limits"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Holding | Mounting,
	Trips:     exampleNotches("45"),
	Sound:     exampleNotches("60"),
	OnCut:     notchCutterOfOtherAngle,
})

// exampleNotches is a wheel with twelve notches whose sides stand 60 degrees apart, and an angle cutter.
func exampleNotches(angle string) string {
	s := replaced(exampleWheel("", "", "", ""), "count  = 60\n    module = 0.5", "count  = 12\n    notch  = { width = \"3 ±0.1\", depth = 2, angle = 60 }")
	return replaced(s, "gear_cutter \"half\" {\n  module         = 0.5\n  pressure_angle = 20\n  form           = \"involute\"\n  teeth          = [55, 134]",
		"angle_cutter \"vee\" {\n  angle          = "+angle)
}

// Of teeth that are to meet in points: the share of their depth by which they may come out lower, and that of their
// pitch that may be left as a land. Our own.
const (
	lowerTips = 0.05
	widerTips = 0.1
)

func notchCutterOfOtherAngle(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || c.Kind != "angle_cutter" || k.Hold.Unplayed != "" {
		return
	}
	for i := range k.Works {
		w := &k.Works[i]
		f := w.Target.Form
		s := f.Section()
		if s == nil || w.Wrong != "" || !w.Final {
			continue
		}
		angle, ok := Need(a, c.Angle)
		if !ok {
			continue
		}
		if math.Abs(angle-s.Included()) < 0.05 {
			a.Clear(finding.Margin{}, "")
			continue
		}
		if width := f.Feature.Notch.Width; width.Is() {
			notchMouth(k, a, w, angle)
		} else {
			notchTips(k, a, w, angle)
		}
	}
}

// notchMouth holds the mouth that a cutter leaves against the limits of its width.
func notchMouth(k *eval.Cut, a *Ask, w *eval.Working, angle float64) {
	f := w.Target.Form
	s := f.Section()
	width := f.Feature.Notch.Width
	lim, ok := eval.LimitsOf(width.V, k.Part.Build.Recipe.General, f.Feature.Item, "notch.width").Get()
	if !ok {
		a.Lack(model.Lack{Fact: f.Feature.Path() + ".notch.width (its limits)", At: width.At})
		return
	}
	leaves := width.V.Nominal + s.MouthBy(angle) - s.Opening()
	if leaves > lim.Lo-1e-6 && leaves < lim.Hi+1e-6 {
		a.Clear(Bound(round(math.Abs(leaves-width.V.Nominal)), round(lim.Hi-width.V.Nominal), "mm"), "the mouths of "+f.Name())
		return
	}
	m := a.Say(k.ToolPath()+"+"+f.Name()+"+angle", k.Place("tool", "makes"), "the sides of %s stand %s degrees apart, and the edges of %s %s: right at the floor it leaves the mouths %s wide, and %s is drawn",
		f.Name(), figure(round(s.Included())), k.ToolPath(), figure(angle), mm(round(leaves)), span(lim))
	m.Also = []finding.Note{{Place: k.Choice.Tool.Cutter.Angle.At, Says: "its angle"}}
}

// notchTips holds what a cutter takes off the tips of teeth that meet in points, or the land that it leaves there, against
// what does no harm.
func notchTips(k *eval.Cut, a *Ask, w *eval.Working, angle float64) {
	f := w.Target.Form
	s := f.Section()
	mouth := s.MouthBy(angle)
	lower, land := s.Deep()*(1-s.Opening()/mouth), s.Opening()-mouth
	margin, does := Bound(round(lower), round(lowerTips*s.Deep()), "mm"), "it takes "+mm(round(lower))+" off the tips of the teeth, which meet in points"
	if land > 0 {
		margin, does = Bound(round(land), round(widerTips*s.Opening()), "mm"), "it leaves a land of "+mm(round(land))+" at the tips of the teeth, which meet in points"
	}
	if margin.Has <= margin.Wants {
		a.Clear(margin, "the tips of "+f.Name())
		return
	}
	m := a.Say(k.ToolPath()+"+"+f.Name()+"+angle", k.Place("tool", "makes"), "the sides of %s stand %s degrees apart, and the edges of %s %s: right at the floor %s",
		f.Name(), figure(round(s.Included())), k.ToolPath(), figure(angle), does)
	m.Margin = margin
	m.Also = []finding.Note{{Place: k.Choice.Tool.Cutter.Angle.At, Says: "its angle"}}
}
