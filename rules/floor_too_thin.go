package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "floor-too-thin",
	Title: "two features, or a feature and a face, leave hardly any metal between them",
	Why: `Depths that are right one by one may leave a skin where they come together from two sides. It gives way under the
cutter, it curls, and what it was to close is open.`,
	Rows:      []string{"G12", "D7"},
	Source:    []string{"arithmetic on the drawing", "0.5 mm in metal: own limit; 1 mm in aluminium and 1.5 in steel are one shop's"},
	Limits:    []string{"thin_wall"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     replaced(exampleSlot(""), "depth = 4\n  }", "depth = 19.7\n  }"),
	Sound:     exampleSlot(""),
	OnPart:    floorTooThin,
})

func floorTooThin(p *eval.PartTrace, a *Ask) {
	if p.Part.Unplayed != "" {
		return
	}
	want := a.Limit("thin_wall")
	for _, w := range append(p.Part.Webs(), p.Part.RoundWebs()...) {
		f, what, at := w.Of, "wall", w.Of.Feature.Item.At
		if w.Floor {
			what, at = "floor", placeOf(f, "depth")
		}
		to := "between " + f.Name() + " and " + w.And
		if w.And == "" {
			to = "from " + f.Name() + " to the " + w.Face.String() + " face"
		}
		thick := round(w.Thick)
		if thick >= want-0.0005 {
			a.Clear(Room(thick, want), "the "+what+" "+to)
			continue
		}
		says := a.Say(p.Part.Label+"."+f.Name()+"+"+w.And+w.Face.String(), at, "the %s %s is %s thick; usually %s at least is left", what, to, mm(thick), mm(want))
		says.Margin = Room(thick, want)
		if g := formNamed(p.Part, w.And); g != nil {
			says.Also = []finding.Note{{Place: g.Feature.Item.At, Says: w.And}}
		}
	}
}
