package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "bar-too-thick-for-saw",
	Title: "the bar does not go into the only saw that is here",
	Why: `A powered saw takes a section so wide and so high and no more. A hand hacksaw cuts what it does not take, turning the
bar round; so does parting off, or buying the piece cut.`,
	Rows:      []string{"G4"},
	Source:    []string{"look-up: the opening of the saw and the section of the stock, as the shop declares them"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleSawn("[20, 20]"),
	Sound:     exampleSawn("[30, 20]"),
	OnPart:    barTooThickForSaw,
})

// exampleSawn is cut from flat bar of 25 by 15 mm by a saw with an opening.
func exampleSawn(opening string) string {
	return exampleStock(23, 1) + `
power_saw "own" {
  opening = ` + opening + `
}
`
}

func barTooThickForSaw(p *eval.PartTrace, a *Ask) {
	b := &p.Part.Blank
	if p.Start == nil || b.Stock == nil || b.Model != nil && b.Model.Bar.V {
		return // what is parted off its bar is not sawn
	}
	has, ok := eval.SawnSection(b.Stock)
	if !ok {
		return
	}
	opening, saw, limited := eval.SawOpening(p.Part.Build)
	if !limited {
		return
	}
	opens, ok := Need(a, opening)
	if !ok {
		return
	}
	if has[0] <= opens[0]+0.0005 && has[1] <= opens[1]+0.0005 {
		a.Clear(Bound(has[1], opens[1], "mm"), b.Stock.Path()+" in "+saw.Path())
		return
	}
	at := p.Part.At
	if m := p.Part.Part.Blank; m != nil && m.Stock.Said() {
		at = m.Stock.At
	}
	f := a.Say(b.Stock.Path()+"+"+saw.Path()+".opening", at, "%s is %s by %s mm, and %s opens to %s by %s mm", b.Stock.Path(), figure(round(has[0])), figure(round(has[1])), saw.Path(), figure(opens[0]), figure(opens[1]))
	f.Also = []finding.Note{{Place: saw.Opening.At, Says: "its opening"}}
}
