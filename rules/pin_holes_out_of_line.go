package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "pin-holes-out-of-line",
	Title: "the holes for pins that two parts share are made in each part alone, and may not line up",
	Why: `A pin that stands tight in its holes leaves them nothing: two parts with two pins go together only where both pairs of holes
lie on the same places to a few thousandths, closer than two set-ups bring them. Clamp the parts together and drill and ream both in
one set-up, or make the holes of one through those of the other.`,
	Rows:      []string{"F19"},
	Source:    []string{"sum of the position errors of both holes along one axis against half of the least play of the pin in either; the parts may shift against each other, so a pair of holes shares its error"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleBearings("±0.05", ""),
	Sound:     exampleBearings("±0.05", exampleLineBored("one")+replaced(replaced(exampleLineBored("two"), `"pair"`, `"pair again"`), `"line"`, `"second"`)),
	OnBuild:   pinHolesOutOfLine,
})

func pinHolesOutOfLine(t *eval.Trace, a *Ask) {
	said := map[[2]*eval.Part]bool{}
	for _, p := range t.Pinned() {
		if p.OneGo {
			a.Clear(finding.Margin{}, "")
			continue
		}
		off, ok := Need(a, p.Off)
		free, ok2 := Need(a, p.Free)
		between := [2]*eval.Part{p.One.Hole.Part, p.Two.Hole.Part}
		if !ok || !ok2 || said[between] {
			continue
		}
		if off <= free+1e-6 {
			a.Clear(Bound(round(off), round(free), "mm"), "the holes of a pin in "+plainHole(p.One)+" and "+plainHole(p.Two))
			continue
		}
		said[between] = true
		f := a.Say("pins of "+between[0].Path()+"+"+between[1].Path(), p.One.Hole.Form.Feature.Item.At,
			"%s and %s share a pin and are made in each part alone: by their limits they may lie %s off each other, and the pin leaves them %s; drill and ream both with the parts clamped together, or one through the other",
			plainHole(p.One), plainHole(p.Two), mm(round(off)), mm(round(free)))
		f.Margin = Bound(round(off), round(free), "mm")
		f.Also = []finding.Note{{Place: p.Two.Hole.Form.Feature.Item.At, Says: "the other hole"}}
		f.Spots = []finding.Spot{p.OneJoint.Spot}
	}
}
