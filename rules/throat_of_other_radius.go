package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "throat-of-other-radius",
	Title: "what finishes a throated worm wheel is smaller than its worm, or of another pitch or hand",
	Why: `The hollow and the gaps of a throated wheel lie round the worm. A hob, a tap or the swing of a fly cutter that is smaller than the
worm's outside leaves metal at the edges of the rim, and the worm rides on them; a little larger does no harm. A tap stands for a
hob only if its pitch is the worm's, pi times the module, and its thread of the same hand.`,
	Rows: []string{"H12"},
	Source: []string{"worm outside d1 + 2 m, throat radius d1/2 - m: metric worm formula sheets; geometry",
		"three pitches in mesh and a play of 0.04 modules: common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Mounting,
	Trips:     exampleThroated("30"),
	Sound:     exampleThroated("34"),
	OnCut:     throatOfOtherRadius,
})

// exampleThroated is a throated wheel for a worm that measures 32 mm outside, gashed and then finished by
// a hob of a diameter.
func exampleThroated(hob string) string {
	s := exampleWheel("", "", "down_to = 4\n      tool    = gear_cutter.half\n    }\n    operation {\n      makes = teeth.cut\n      tool  = gear_cutter.hob", "")
	s = replaced(s, "count  = 60\n    module = 0.5", "count    = 30\n    worm     = part.worm.worm.thread\n    throated = true")
	s = replaced(replaced(s, "  diameter = 31\n  length   = 64", "  diameter = 66.5\n  length   = 76"), "from     = 60\n    diameter = 31", "from     = 60\n    diameter = 66.5")
	s = replaced(s, "module         = 0.5\n", "module         = 2\n")
	s = replaced(s, "teeth          = [55, 134]", "teeth          = [26, 34]")
	return s + `
part "worm" {
  material = "mild steel"
  diameter = 32
  length   = 40

  worm "thread" {
    module = 2
  }
}

gear_cutter "hob" {
  kind           = "hob"
  module         = 2
  pressure_angle = 20
  form           = "involute"
  diameter       = ` + hob + `
  width          = 30
  bore           = 16
}
`
}

func throatOfOtherRadius(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || k.Hold.Unplayed != "" {
		return
	}
	for _, t := range k.Step.Makes {
		if t.Form == nil || t.Form.Tooth == nil || t.Form.Tooth.Throat == nil || !eval.Hollows(c) {
			continue
		}
		d, ok := k.Choice.Tool.Size, true
		switch {
		case c.Kind == "fly_cutter" && !c.SwingOf.Is():
			a.Lack(c.SwingOf.Missing()...)
			ok = false
		case !(d > 0):
			a.Lack(c.Diameter.Missing()...)
			ok = false
		}
		if ok {
			throatOf(k, t.Form, d, a)
		}
	}
}

// throatOf holds a tool of a diameter against the worm.
func throatOf(k *eval.Cut, f *eval.Form, d float64, a *Ask) {
	c, th := k.Choice.Tool.Cutter, f.Tooth.Throat
	cause := k.ToolPath() + "+" + f.Name() + "+throat"
	worm := f.Feature.Worm.V.Path()
	if tip := th.Drive.WormTip; d < tip-0.0005 {
		m := a.Say(cause, k.Place("tool", "makes"), "%s cuts round a diameter of %s, and %s measures %s: the worm rides on the edges of the rim", k.ToolPath(), mm(round(d)), worm, mm(round(tip)))
		m.Margin = Room(round(d), round(tip))
		return
	}
	if c.Kind == "tap" && k.Choice.Tool.Thread.Pitch > 0 {
		p := k.Choice.Tool.Thread.Pitch
		if off := math.Abs(p/th.Drive.Pitch-1) * 1e6; off > mostOff {
			a.Say(cause+"+pitch", k.Place("tool", "makes"), "%s has a pitch of %s, and %s one of %s: over three pitches that is %s off", k.ToolPath(), mm(round(p)), worm, mm(round(th.Drive.Pitch)), mm(round(3*math.Abs(p-th.Drive.Pitch))))
			return
		}
		if hand := f.Tooth.Throat.Hand; k.Choice.Tool.Thread.Left != (hand == "left") {
			a.Say(cause+"+hand", k.Place("tool", "makes"), "%s is of the other hand than %s, which is %s-hand", k.ToolPath(), worm, hand)
			return
		}
	}
	a.Clear(Room(round(d), round(th.Drive.WormTip)), k.ToolPath()+" round the worm of "+f.Name())
}
