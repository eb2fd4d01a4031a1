package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "bought-thing-not-here",
	Title: "a part that is bought ready is lent out, on order, or too few are there",
	Why: `The build waits in the middle for a bearing or a key. Order it before the first cut, and measure it when it comes: what
it fits is made to it.`,
	Rows:      []string{"G11", "I5"},
	Source:    []string{"look-up in the shop"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleBought("on order"),
	Sound:     exampleBought("here"),
	OnPart:    boughtThingNotHere,
})

// exampleBought is a bearing in such a state.
func exampleBought(state string) string {
	return `recipe "example" {
  units = "mm"
}

part "race" {
  bought = bearings.small
}

bearings "small" {
  bore    = 8
  outside = 22
  width   = 7
  state   = "` + state + `"
}
`
}

func boughtThingNotHere(p *eval.PartTrace, a *Ask) {
	r, ok := p.Part.Bought.As.Get()
	if !ok || r.Item == nil {
		return
	}
	for _, b := range p.Part.Build.Shop.All {
		if b != r.Item {
			continue
		}
		at := p.Part.Bought.As.At
		if s := b.Attr("state"); s != nil {
			switch s.Value.Text {
			case "lent out", "to make", "on order":
				m := a.Say(b.Path()+".state", at, "%s is not here: its state is %q", r.Path(), s.Value.Text)
				m.Also = []finding.Note{{Place: s.Value.At, Says: "its state"}}
				return
			}
		}
		if q := b.Attr("quantity"); q != nil && q.Value.Kind == model.Number && int(q.Value.Num) < p.Part.Quantity.Or(1) {
			m := a.Say(b.Path()+".quantity", at, "the build takes %s of %s; the shop has %s", figure(float64(p.Part.Quantity.Or(1))), r.Path(), figure(q.Value.Num))
			m.Margin = finding.Margin{Has: q.Value.Num, Wants: float64(p.Part.Quantity.Or(1)), Unit: "pieces"}
			m.Also = []finding.Note{{Place: q.Value.At, Says: "how many are here"}}
			return
		}
		a.Clear(finding.Margin{}, "")
	}
}
