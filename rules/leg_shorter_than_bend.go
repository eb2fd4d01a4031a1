package rules

import (
	"fmt"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "leg-shorter-than-bend",
	Title: "a leg of bent sheet is shorter than the corner of its bend",
	Why: `Over the outside of a right-angled bend the corner alone takes the inside radius and the thickness from either leg.
What is drawn shorter than that has no straight metal to take hold of, and cannot be folded. A smaller radius, a longer leg, or a leg
that is cut back after folding is the cure.`,
	Rows:      []string{"I6"},
	Source:    []string{"(inside radius + thickness) times the tangent of half the angle, from the outside corner: geometry"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     replaced(exampleBend("annealed", "    inside_radius = 2\n"), "{ right = 20 }", "{ right = 2.5 }"),
	Sound:     exampleBend("annealed", "    inside_radius = 2\n"),
	OnPart:    legShorterThanBend,
})

func legShorterThanBend(p *eval.PartTrace, a *Ask) {
	for _, s := range p.Part.FlatSheets() {
		for i, k := range s.Straights() {
			straight, ok := Need(a, k)
			if !ok {
				continue
			}
			f, side := s.Folds[max(0, i-1)], 1
			which := "beyond " + f.Form.Name()
			if i == 0 {
				f, side = s.Folds[0], 0
				which = "before " + f.Form.Name()
			} else if i < len(s.Folds) {
				which = fmt.Sprintf("between %s and %s", f.Form.Name(), s.Folds[i].Form.Name())
			}
			if straight > 1e-6 {
				a.Clear(Room(round(straight), 0), "what is straight "+which)
				continue
			}
			m := a.Say(p.Part.Label+"."+which, f.Form.Feature.Item.At, "the leg %s is %s over its outside, and the corners of its bends take %s of that: nothing of it is straight",
				which, mm(round(f.Leg[side])), mm(round(f.Leg[side]-straight)))
			m.Margin = Room(round(straight), 0)
		}
	}
}
