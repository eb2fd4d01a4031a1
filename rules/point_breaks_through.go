package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "point-breaks-through",
	Title: "the drill's point comes out of the far side of a blind hole, or leaves a skin",
	Why: `The depth on the drawing is of the full diameter; the point lies beyond it, 0.3 of the diameter for the usual
drill. What looks like a floor of a millimetre is no floor at all.`,
	Rows:      []string{"D2", "G12"},
	Source:    []string{"point length 0.300 D at 118 degrees, 0.207 D at 135: geometry, seen in print"},
	Limits:    []string{"thin_wall"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Deaf:      Holding | Mounting,
	Trips:     replaced(exampleHole(), "diameter = 6", "diameter = 6\n    depth    = 18.5"),
	Sound:     replaced(exampleHole(), "diameter = 6", "diameter = 6\n    depth    = 16"),
	OnCut:     pointBreaksThrough,
	OnTurn:    asCut(pointBreaksThrough),
})

func pointBreaksThrough(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || c.Kind != "drill" || k.Choice.By != "drilling" {
		return
	}
	for _, w := range k.Works {
		if w.Through || w.Target.Form == nil || w.Target.Sub != "" {
			continue
		}
		if j := k.Part.Joint; k.Before.Alone != "" && j != nil && j.Crosses(w.Target.Form) {
			a.Clear(finding.Margin{}, "") // drawn to go on in the other piece of the split
			continue
		}
		left, ok := k.MetalBelow(&w)
		if !ok {
			continue
		}
		if left < 0.0005 && len(w.Target.Form.Feature.Meets.V) > 0 {
			a.Clear(finding.Margin{}, "") // it is drawn to break into another
			continue
		}
		want := a.Limit("thin_wall")
		if left >= want-0.0005 {
			a.Clear(Room(round(left), want), "metal below the point in "+w.Target.Name())
			continue
		}
		says := "leaves a skin of " + mm(round(left)) + " below it"
		if left < 0.0005 {
			says = "comes out below by " + mm(round(-left))
		}
		f := a.Say(w.Target.Name()+"+point", k.Place("tool", "makes"), "%s is %s deep to its full diameter, and the point of %s, %s long, %s; usually %s at least is left",
			w.Target.Name(), mm(w.Depth), k.ToolPath(), mm(round(w.Point)), says, mm(want))
		f.Margin = Room(round(left), want)
	}
}
