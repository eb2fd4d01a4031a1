package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "pin-in-blind-hole",
	Title: "a pin is pressed or glued in a blind hole, and the air has no way out",
	Why: `The air is shut up below the pin: it is pushed out again, or the glue is, and nothing ever gets hold of the pin to draw
it. Drill the hole through, file a flat along the pin, or take a pin with a thread in its end.`,
	Rows:      []string{"D24"},
	Source:    []string{"common practice"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     exampleBlindPin("    depth    = 12\n"),
	Sound:     exampleBlindPin(""),
	OnJoint:   pinInBlindHole,
})

// exampleBlindPin is a pin pressed in a hole with what is written of its depth.
func exampleBlindPin(depth string) string {
	s := examplePin(`"8 H7"`, `"8 s6"`, `"H7/s6"`)
	return replaced(s, "    diameter = \"8 H7\"\n", "    diameter = \"8 H7\"\n"+depth)
}

func pinInBlindHole(j *eval.Joint, a *Ask) {
	f := j.Fit
	if f == nil {
		return
	}
	tight := f.Model.Joined.V == "glued"
	if !tight {
		pressed, ok := Need(a, f.Pressed())
		if !ok || !pressed {
			return
		}
	}
	if !f.AirShut() {
		a.Clear(finding.Margin{}, "")
		return
	}
	how := "pressed"
	if f.Model.Joined.Is() {
		how = f.Model.Joined.V
	}
	m := a.Say(f.Hole.Path+"+"+f.Shaft.Path, j.Item.At, "%s is %s in %s, which is blind: the air below it has no way out, and nothing gets hold of it again", f.Shaft.Part.Path(), how, f.Hole.Path)
	m.Also = []finding.Note{{Place: f.Hole.Form.Feature.Item.At, Says: "the hole"}}
}
