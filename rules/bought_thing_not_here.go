package rules

import (
	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "bought-thing-not-here",
	Title: "a part that is bought ready is lent out, on order, of another size, or too few are there",
	Why: `The build waits in the middle for a bearing or a key. Order it before the first cut, and measure it when it comes: what
it fits is made to it.`,
	Rows:      []string{"G11", "I5"},
	Source:    []string{"look-up in the shop"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleBought("on order"),
	Sound:     exampleBought("here"),
	OnBuild:   boughtThingNotHere,
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

func boughtThingNotHere(t *eval.Trace, a *Ask) {
	for _, p := range t.Parts {
		r, ok := p.Part.Part.Bought.As.Get()
		if !ok || r.Item == nil {
			continue
		}
		w := ordered{ref: r, at: p.Part.Part.Bought.As.At, spot: finding.Spot{Part: p.Part.Label}, many: p.Part.Part.Quantity.Or(1)}
		if !w.lacks(t.Build, a) {
			pinNotSold(t.Build, p.Part.Part, w, a)
		}
	}
	said := map[string]bool{}
	for _, j := range t.Joints {
		if j.Fit == nil {
			continue
		}
		for _, d := range []*eval.Dimension{&j.Fit.Hole, &j.Fit.Shaft} {
			if d.Of == nil || d.Part != nil || said[d.Of.Path()] {
				continue
			}
			said[d.Of.Path()] = true
			w := ordered{ref: model.Ref{Item: d.Of}, at: d.At, spot: j.Spot, many: 1}
			w.lacks(t.Build, a)
		}
	}
	for _, l := range t.PinLengths() {
		pinOfNoLength(&l, a)
	}
}

// ordered is a thing of the shop that a part is bought as, or that a fit names.
type ordered struct {
	ref  model.Ref
	at   text.Place
	spot finding.Spot
	many int
}

// lacks says so where the thing is not here, or too few are.
func (w *ordered) lacks(build *model.Build, a *Ask) bool {
	for _, b := range build.Shop.All {
		if b != w.ref.Item {
			continue
		}
		if s := b.Attr("state"); s != nil {
			switch s.Value.Text {
			case "lent out", "to make", "on order":
				m := a.Say(b.Path()+".state", w.at, "%s is not here: its state is %q", w.ref.Path(), s.Value.Text)
				m.Also = []finding.Note{{Place: s.Value.At, Says: "its state"}}
				m.Spots = []finding.Spot{w.spot}
				return true
			}
		}
		if q := b.Attr("quantity"); q != nil && q.Value.Kind == model.Number && int(q.Value.Num) < w.many {
			m := a.Say(b.Path()+".quantity", w.at, "the build takes %s of %s; the shop has %s", figure(float64(w.many)), w.ref.Path(), figure(q.Value.Num))
			m.Margin = finding.Margin{Has: q.Value.Num, Wants: float64(w.many), Unit: "pieces"}
			m.Also = []finding.Note{{Place: q.Value.At, Says: "how many are here"}}
			m.Spots = []finding.Spot{w.spot}
			return true
		}
		a.Clear(finding.Margin{}, "")
	}
	return false
}

// pinNotSold says so where a part is bought as a pin of a diameter or a length that the shop has not.
func pinNotSold(build *model.Build, m *model.Part, w ordered, a *Ask) {
	pins, ok := model.Find(build.Shop.Pins, w.ref.Item)
	if !ok {
		return
	}
	for _, s := range []struct {
		name string
		has  model.Known[drawing.Size]
		of   model.Known[model.Sizes]
	}{{"diameter", m.Diameter, pins.Diameter}, {"length", m.Length, pins.Lengths}} {
		if !s.has.Said() || !s.of.Is() || s.of.V.Has(s.has.V.Nominal) {
			continue
		}
		n, ok := s.of.V.Nearest(s.has.V.Nominal)
		if !ok {
			continue
		}
		f := a.Say(pins.Path()+"."+s.name+"+"+m.Path(), m.Item.Attr(s.name).Value.At, "%s has no pin of a %s of %s; the nearest is %s", pins.Path(), s.name, mm(s.has.V.Nominal), mm(n))
		f.Also = []finding.Note{{Place: s.of.At, Says: "what is here"}}
		f.Spots = []finding.Spot{w.spot}
	}
}

// pinOfNoLength notes the length of a pin that is left open, where the shop does not say how long its pins are.
func pinOfNoLength(l *eval.PinLength, a *Ask) {
	if !l.Length.Is() {
		a.Lack(l.Length.Missing()...)
	}
}
