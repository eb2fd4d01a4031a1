package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "teeth-undercut",
	Title: "so few teeth are undercut: their feet are hollowed",
	Why: `Below 2/sin² of the pressure angle (17.1 teeth at 20 degrees, 31.9 at 14.5) a rack-shaped cutter hollows the foot of the
tooth. The wheel is weaker and runs less smoothly; clockwork lives with it. A shifted profile, a larger angle or more teeth help.`,
	Rows:      []string{"H7"},
	Source:    []string{"2/sin² of the pressure angle: any gear text; reckon/gear"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     pinionOf(12, ""),
	Sound:     pinionOf(18, ""),
	OnPart:    teethUndercut,
})

// pinionOf is the wheel of the examples with few teeth of module 1.
func pinionOf(count float64, more string) string {
	s := replaced(exampleWheel(more, "", "", ""), "count  = 60\n    module = 0.5", "count  = "+figure(count)+"\n    module = 1")
	return replaced(replaced(s, "  diameter = 31\n  length", "  diameter = "+figure(count+2)+"\n  length"), "from     = 60\n    diameter = 31", "from     = 60\n    diameter = "+figure(count+2))
}

func teethUndercut(p *eval.PartTrace, a *Ask) {
	for _, f := range p.Part.Forms {
		if f.Tooth == nil || !f.Tooth.Involute {
			continue
		}
		b := f.Tooth.Blank
		if !b.Undercut {
			a.Clear(finding.Margin{Has: float64(f.Tooth.Count), Wants: hundredthUp(b.LeastTeeth), Unit: "teeth"}, "the teeth of "+f.Name())
			continue
		}
		m := a.Say(p.Part.Label+"."+f.Name()+".undercut", placeOf(f, "count"), "%s has %d teeth at %s deg: below %s a rack-shaped cutter undercuts them; a shift of %s modules at least would not",
			f.Name(), f.Tooth.Count, figure(f.Tooth.Wheel.Pressure), hundredth(b.LeastTeeth), hundredth(b.LeastShift+0.005))
		m.Margin = finding.Margin{Has: float64(f.Tooth.Count), Wants: hundredthUp(b.LeastTeeth), Unit: "teeth"}
	}
}

// hundredthUp is a count of teeth as it is printed.
func hundredthUp(x float64) float64 { return float64(int(x*100+0.5)) / 100 }
