package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "hole-breaks-out",
	Title: "a hole or its thread breaks out of the side of the part",
	Why: `Where the drill comes through the side it is pushed out of line, and the thread has no metal. The
place or the size on the drawing is wrong, or the side is cut away only after drilling.`,
	Rows:      []string{"D6", "I6"},
	Source:    []string{"arithmetic on the drawing; a thread counts with its major diameter"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     replaced(exampleHole(), "front = 15", "front = 2.8"),
	Sound:     replaced(exampleHole(), "front = 15", "front = 8"),
	OnPart:    holeBreaksOut,
})

func holeBreaksOut(p *eval.PartTrace, a *Ask) {
	if p.Part.Unplayed != "" {
		return
	}
	for _, f := range p.Part.Forms {
		if f.Wrong != "" || len(f.Mouths) > 0 && outside(p.Part, f) {
			continue // told of on its own
		}
		side := p.Part.SideWall(f)
		switch {
		case !side.Known:
		case side.Wall < -0.001:
			m := a.Say(p.Part.Label+"."+f.Name(), placeOf(f, "at"), "%s reaches %s mm beyond the side of %s", f.Name(), figure(round(-side.Wall)), p.Part.Label)
			m.Margin = Room(round(side.Wall), 0)
		default:
			a.Clear(Room(round(side.Wall), 0), "metal beside "+f.Name())
		}
	}
}
