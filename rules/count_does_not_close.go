package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "count-does-not-close",
	Title: "fewer pieces of a part are made than the assemblies take",
	Why: `How many pieces a build takes follows from how often each assembly is made and how many pieces each takes. One too few is found
when the last one is put together, with the bar back in the rack and the set-up gone.`,
	Rows:      []string{"I5"},
	Source:    []string{"counting; a part that stands in several assemblies may go on from one into the next, so the one that takes most counts"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleCounted("2"),
	Sound:     exampleCounted("4"),
	OnBuild:   countDoesNotClose,
})

// exampleCounted is an assembly of two pins in a plate, two of which are wanted.
func exampleCounted(pins string) string {
	return `recipe "example" {
  units = "mm"
}

part "plate" {
  material = "brass"
  length   = 40
  width    = 20
  height   = 8
  quantity = 2
}

part "pin" {
  material = "mild steel"
  diameter = 8
  length   = 20
  quantity = ` + pins + `
}

assembly "pair" {
  of       = [part.plate, part.pin, part.pin]
  quantity = 2
}
`
}

func countDoesNotClose(t *eval.Trace, a *Ask) {
	for _, p := range t.Build.Parts {
		for _, as := range t.Build.Assemblies {
			in := 0
			for _, r := range as.Of.V {
				if r.Item == p.Item {
					in++
				}
			}
			made, taken := p.Quantity.Or(1), in*as.Quantity.Or(1)
			switch {
			case in == 0:
			case made >= taken:
				a.Clear(finding.Margin{}, "")
			default:
				f := a.Say(p.Path()+".quantity+"+as.Path(), placeAmong(p.Item, "quantity"), "%d of %s are made, and %s, of which there are %d, takes %d of it each: %d are wanted",
					made, p.Path(), as.Path(), as.Quantity.Or(1), in, taken)
				f.Also = []finding.Note{{Place: placeAmong(as.Item, "quantity", "of"), Says: "what takes them"}}
			}
		}
	}
}
