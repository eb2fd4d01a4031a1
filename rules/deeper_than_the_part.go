package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "deeper-than-the-part",
	Title: "a depth is written that is greater than the part is thick there",
	Why: `What is written so comes out at the far side, and is taken as going through. If it is to stop in the metal, the depth or the
part is written wrongly; if it is to go through, leave the depth out.`,
	Rows:      []string{"I6"},
	Source:    []string{"geometry of the drawing: the depth against the far side of the part; exactly as deep goes through and is not told of"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     replaced(exampleHole(), "diameter = 6", "diameter = 6\n    depth    = 22"),
	Sound:     replaced(exampleHole(), "diameter = 6", "diameter = 6\n    depth    = 20"),
	OnPart:    deeperThanThePart,
})

func deeperThanThePart(p *eval.PartTrace, a *Ask) {
	for _, f := range p.Part.Forms {
		switch b := f.Beyond; {
		case f.Owner != nil || f.Wrong != "" || len(f.Lacks) > 0:
		case b.Depth > 0:
			s := a.Say(p.Part.Label+"."+f.Name(), placeOf(f, "depth"), "%s is written %s deep, and the part is %s thick there: it is taken as through",
				f.Name(), mm(round(b.Depth)), mm(round(b.Thick)))
			s.Margin = Bound(round(b.Depth), round(b.Thick), "mm")
		case f.Feature.Depth.Is():
			a.Clear(finding.Margin{}, "")
		}
	}
}
