package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:      "feature-not-possible",
	Title:     "what the drawing says of a feature gives no shape in this part",
	Why:       `A place off the part, a depth from a face that is not square to it, an edge between faces that do not meet: the figures contradict each other, and nobody could make it.`,
	Rows:      []string{"I6"},
	Source:    []string{"geometry of the drawing"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     replaced(exampleHole(), "left = 20, front = 15", "left = 45, front = 15"),
	Sound:     exampleHole(),
	OnPart:    featureNotPossible,
})

func featureNotPossible(p *eval.PartTrace, a *Ask) {
	for _, f := range p.Part.Forms {
		switch {
		case f.Later:
		case f.Wrong != "":
			a.Say(p.Part.Label+"."+f.Name(), f.Feature.Item.At, "%s cannot be as it is written: %s", f.Name(), f.Wrong)
		case len(f.Lacks) > 0:
			a.Lack(f.Lacks...)
		case len(f.Mouths) > 0 && outside(p.Part, f):
			a.Say(p.Part.Label+"."+f.Name(), placeOf(f, "at"), "%s lies off the part: its axis misses the %s face", f.Name(), f.Into.Name)
		default:
			if why := p.Part.Contradicts(f); why != "" {
				a.Say(p.Part.Label+"."+f.Name(), f.Feature.Item.At, "%s cannot be as it is written: %s", f.Name(), why)
				continue
			}
			a.Clear(finding.Margin{}, "")
		}
	}
}

// outside says whether the axis of a hole misses the finished part.
func outside(p *eval.Part, f *eval.Form) bool {
	for _, m := range f.Mouths {
		for i := range 3 {
			if i != f.Into.Face.Axis() && (m[i] < p.Low[i]-0.001 || m[i] > p.High()[i]+0.001) {
				return true
			}
		}
	}
	return false
}
