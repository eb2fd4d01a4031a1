package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "hands-do-not-pair",
	Title: "a left and a right part are of one hand, or not as many of each are made",
	Why: `Two parts that are the mirror of each other are easily made as two of one hand. The drawing of one names its hand, the other
the other hand, and as many are made of each.`,
	Rows:      []string{"I4"},
	Source:    []string{"look-up in the recipe"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     examplePair(`hand = "right"`),
	Sound:     examplePair(`hand = "left"`),
	OnBuild:   handsDoNotPair,
})

// examplePair has a block of the right hand and its mirror, with an attribute.
func examplePair(attr string) string {
	return replaced(exampleHole(), "  material = \"brass\"\n", "  material = \"brass\"\n  hand     = \"right\"\n") + `
part "other" {
  mirror_of = part.block
  ` + attr + `
}
`
}

func handsDoNotPair(t *eval.Trace, a *Ask) {
	for _, p := range t.Build.Parts {
		if !p.MirrorOf.Is() {
			continue
		}
		for _, o := range t.Build.Parts {
			if o.Item != p.MirrorOf.V.Item {
				continue
			}
			if p.Hand.Is() && o.Hand.Is() && p.Hand.V == o.Hand.V {
				a.Say(p.Label+".hand", p.Hand.At, "%s is the mirror of %s, and both are said to be of the %s hand", p.Label, o.Label, p.Hand.V)
				continue
			}
			if n, m := p.Quantity.Or(1), o.Quantity.Or(1); n != m {
				f := a.Say(p.Label+".quantity", placeAmong(p.Item, "quantity", "mirror_of"), "%s is the mirror of %s, and %d of %s and %d of %s are to be made", p.Label, o.Label, n, p.Label, m, o.Label)
				f.Also = []finding.Note{{Place: placeAmong(o.Item, "quantity"), Says: "how many of the other"}}
				continue
			}
			if !p.Hand.Is() || !o.Hand.Is() {
				a.Asks("which of %s and %s is the left hand? mark the drawings and the pieces", o.Label, p.Label)
			}
			a.Clear(finding.Margin{}, "")
		}
	}
}

// placeAmong is the place of the first of some attributes that is written, else of the block.
func placeAmong(i *model.Item, attrs ...string) text.Place {
	for _, name := range attrs {
		if at := i.Attr(name); at != nil {
			return at.Value.At
		}
	}
	return i.At
}
