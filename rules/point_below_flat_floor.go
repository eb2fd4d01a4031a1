package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "point-below-flat-floor",
	Title: "a drill's point goes below a floor that is drawn flat",
	Why: `The depth of a hole is that of its full diameter, and the point of a drill lies beyond it. Where the floor is
drawn flat the drill stops short by its point, and an end mill, a slot drill or a boring tool takes the rest.`,
	Rows:      []string{"D2"},
	Source:    []string{"point length 0.300 D at 118 degrees, 0.207 D at 135: geometry, seen in print"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Holding | Mounting,
	Trips:     replaced(exampleHole(), "diameter = 6", "diameter = 6\n    depth    = 12\n    bottom   = \"flat\""),
	Sound: replaced(replaced(exampleHole(), "diameter = 6", "diameter = 6\n    depth    = 12\n    bottom   = \"flat\""),
		"makes = hole.pin", "makes   = hole.pin\n      down_to = 10"),
	OnCut:  pointBelowFloor,
	OnTurn: asCut(pointBelowFloor),
})

func pointBelowFloor(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || c.Kind != "drill" || k.Choice.By != "drilling" || k.Unplayed != "" {
		return
	}
	for _, w := range k.Works {
		f := w.Target.Form
		if f == nil || !f.Flat || f.Through || w.Through || w.Target.Sub != "" || w.Point <= 0 || !f.Depth.Is() {
			continue
		}
		below := w.Depth + w.Point - f.Depth.V
		if below < 0.0005 {
			a.Clear(finding.Margin{}, "")
			continue
		}
		a.Say(w.Target.Name()+"+floor", k.Place("tool", "makes"), "%s has a flat floor %s deep, and the point of %s goes %s below it: drill %s deep, and take the rest with a tool that cuts flat",
			f.Name(), mm(round(f.Depth.V)), k.ToolPath(), mm(round(below)), mm(round(f.Depth.V-w.Point)))
	}
}
