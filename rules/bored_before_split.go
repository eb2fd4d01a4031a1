package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "bored-before-split",
	Title: "it is brought to size before the piece is sawn through it",
	Why: `The saw takes its own width out of what it goes through, and cleaning the two faces takes more. A bore at its size before
that comes out too small across the joint when the halves are screwed together: it is no longer round. Saw and clean the joint
first, join the halves, and bore them together; or bore again to size after joining.`,
	Rows:      []string{"F3"},
	Source:    []string{"what is taken out of the joint is gone from the bore: geometry", "saw, face, join, then bore: common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleHalves("", "screws", "bore", "saw"),
	Sound:     exampleHalves("", "screws", "saw", "bore"),
	OnPart:    boredBeforeSplit,
})

func boredBeforeSplit(p *eval.PartTrace, a *Ask) {
	for _, f := range p.Part.Forms {
		if f.Feature.Kind == "split" && !f.Feature.StaysOpen.V {
			a.Lack(f.Lacks...)
		}
	}
	for _, split := range p.Part.Splits() {
		for _, h := range p.Part.Halved(split) {
			halvedBefore(p, a, split, h)
		}
	}
}

// halvedBefore looks at one form that a split cuts lengthwise.
func halvedBefore(p *eval.PartTrace, a *Ask, split *eval.Form, h eval.Halving) {
	f := p.Part.Forms[h.Form]
	sawn := -1 // the moment at which the split is made
	sized, again := "", false
	for i, m := range p.Moments {
		for _, w := range worksOf(m) {
			switch {
			case w.Form == nil || w.Sub != "":
			case w.Form.Feature == split.Feature && sawn < 0:
				sawn = i
				if sized == "" {
					return
				}
			case w.Form.Feature == f.Feature && sawn < 0 && finishedBy(m, h.Form):
				sized = stepOf(m)
			case w.Form.Feature == f.Feature && sawn >= 0:
				again = true
			}
		}
	}
	if sawn < 0 || sized == "" {
		return
	}
	lim := limitsAcross(p, f)
	switch {
	case again:
		a.Clear(finding.Margin{}, "")
	case lim.Is() && h.Size-h.Loses >= lim.V.Lo-0.0005:
		a.Clear(Room(round(h.Size-h.Loses), round(lim.V.Lo)), f.Name()+" across "+split.Name())
	default:
		m := a.Say(p.Part.Label+"."+split.Name()+"+"+f.Name(), p.Moments[sawn].Cut.Place("makes"),
			"%s is at its size (%s) since %s, and %s takes %s out of it: put together again it is %s across the joint; saw first, join the pieces, then make it",
			f.Name(), mm(h.Size), sized, split.Name(), mm(round(h.Loses)), mm(round(h.Size-h.Loses)))
		if lim.Is() {
			m.Margin = Room(round(h.Size-h.Loses), round(lim.V.Lo))
		}
	}
}
