package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "hole-near-edge",
	Title: "little metal is left between a hole and the side of the part",
	Why: `A thin wall bulges while it is drilled and lets the drill wander. Small work is full of thinner walls that
hold; this is a word to the careful, not a bar: clamp a block against the side, or drill before the side is brought down.`,
	Rows:      []string{"D6"},
	Source:    []string{"half a diameter to one, of a tapped hole that of its thread: common practice"},
	Limits:    []string{"wall_by_hole"},
	Level:     finding.Advice,
	Judgement: finding.Thumb,
	Trips:     replaced(exampleHole(), "front = 15", "front = 4"),
	Sound:     replaced(exampleHole(), "front = 15", "front = 8"),
	OnPart:    holeNearEdge,
})

func holeNearEdge(p *eval.PartTrace, a *Ask) {
	if p.Part.Unplayed != "" {
		return
	}
	for i, f := range p.Part.Forms {
		if p.End != nil && p.End.Features[i].ByProcess == "boring" {
			continue // the drill before it was smaller, and a bar does not wander
		}
		if f.Wrong != "" || onAxis(p, f) {
			continue // the wall of a turned ring is asked for where it is turned
		}
		side := p.Part.SideWall(f)
		if !side.Known || side.Wall < -0.001 {
			continue
		}
		want := round(a.Limit("wall_by_hole") * 2 * f.Radius())
		if side.Wall >= want-0.0005 {
			a.Clear(Room(round(side.Wall), want), "metal beside "+f.Name())
			continue
		}
		m := a.Say(p.Part.Label+"."+f.Name(), placeOf(f, "at"), "%s leaves %s of metal to the side of %s; usually %s at least, or a block clamped against it while it is drilled",
			f.Name(), mm(round(side.Wall)), p.Part.Label, mm(want))
		m.Margin = Room(round(side.Wall), want)
	}
}

// onAxis says whether a hole lies on the axis of a turned part.
func onAxis(p *eval.PartTrace, f *eval.Form) bool {
	return p.Part.Round && f.Into.Face.Turned() && len(f.Mouths) == 1 && math.Hypot(f.Mouths[0][1], f.Mouths[0][2]) < 0.001
}
