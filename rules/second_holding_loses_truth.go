package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "second-holding-loses-truth",
	Title: "two surfaces that must lie true to each other are made in two holdings",
	Why: `What is turned in one holding runs true to itself. Taken out and gripped again, the piece runs out by what the chuck does:
a tenth in three jaws, a few hundredths set by an indicator. On a mill it lies off by what edge finder and dials do, and leans
as the vise and what is under the piece do. Make both in one holding, hold by the first in soft jaws or a collet, or set it
true by indicator and say within what (within).`,
	Rows: []string{"E5"},
	Source: []string{"three jaws 0.05 to 0.1 mm, four jaws by indicator 0.01 to 0.03, bored soft jaws 0.02: common practice, to be set by the shop",
		"what the owner states of the chuck, where it is stated",
		"0.02 to 0.05 mm by the dials of a mill: common practice, the better figure taken; an end faced again out by 0.05 mm: own limit"},
	Limits:    []string{"three_jaw_again", "four_jaw_again", "soft_jaws_again", "ends_again", "dials_again"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     twoHoldings("0.05"),
	Sound:     twoHoldings("0.2"),
	OnPart:    secondHoldingLosesTruth,
})

// twoHoldings turns the two ends of a piece in two holdings; one must run true to the other.
func twoHoldings(within string) string {
	s := exampleTurned(`
  outside "head" {
    from     = 0
    to       = 30
    diameter = 18
  }

  outside "waist" {
    from       = 30
    to         = 60
    diameter   = 16
    concentric = { to = outside.head, within = `+within+` }
  }
`, replaced(inThree, "grip    = 20", "grip    = 25"), `
    operation {
      makes = outside.waist
    }`)
	return replaced(s, "  setup \"turn\"", "  setup \"first\" {\n"+replaced(inThree, `"left"`, `"right"`)+"\n\n    operation {\n      makes = outside.head\n    }\n  }\n\n  setup \"turn\"")
}

func secondHoldingLosesTruth(p *eval.PartTrace, a *Ask) {
	if p.End == nil {
		return
	}
	var at map[string]*eval.Worked
	for _, c := range p.Part.Conditions() {
		if c.OfForm() {
			continue
		}
		if at == nil {
			at = p.LastWorked(true)
		}
		for _, to := range c.To {
			truthOf(p, &c, to, at, a)
		}
	}
}

// truthOf judges one condition against one of its datums. What nobody works here, or is left as the
// stock, has no holding to lose its truth in.
func truthOf(p *eval.PartTrace, c *eval.Condition, to model.Ref, at map[string]*eval.Worked, a *Ask) {
	datum, ok := p.Part.Datum(to)
	mine, other := at[c.Target.Name()], at[datum.Name()]
	if !ok || mine == nil || other == nil || mine.AtBench() || other.AtBench() {
		return
	}
	name, against, within := c.Target.Name(), datum.Name(), c.Within.V
	if mine.Together(other) {
		a.Clear(finding.Margin{}, "")
		return
	}
	later := mine
	if laterOf(p, mine, other) == other {
		later = other
	}
	lost, how := lostIn(later, c, a)
	if lost <= within+0.0005 {
		a.Clear(Bound(lost, within, "mm"), name+" and "+against)
		return
	}
	f := a.Say(p.Part.Label+"."+name+"."+c.Word, c.Within.At, "%s and %s are %s within %s, and are %s in two holdings; %s usually brings a piece back within %s",
		name, against, truths[c.Word], mm(within), madeBy(mine, other), how, mm(lost))
	f.Margin = Bound(lost, within, "mm")
}

var truths = map[string]string{
	"concentric": "to run true", "runout": "to run true", "square": "to be square", "parallel": "to be parallel",
	"symmetric": "to be symmetric", "position": "to lie true to each other",
}

func madeBy(mine, other *eval.Worked) string {
	if mine.Chuck != nil && other.Chuck != nil {
		return "turned"
	}
	return "made"
}

// laterOf is the one of two that was worked in the later holding.
func laterOf(p *eval.PartTrace, one, other *eval.Worked) *eval.Worked {
	for _, m := range p.Moments {
		switch {
		case m.Cut != nil && m.Cut.Hold == holdOf(one), m.Turn != nil && m.Turn.Hold == one.Chuck:
			return other
		case m.Cut != nil && m.Cut.Hold == holdOf(other), m.Turn != nil && m.Turn.Hold == other.Chuck:
			return one
		}
	}
	return one
}

func holdOf(w *eval.Worked) *eval.Holding {
	if w.Cut == nil {
		return nil
	}
	return w.Cut.Hold
}

// lostIn is how wide a zone the second holding usually wants for a condition, mm: of axes twice how far
// they lie apart, the swing of an indicator; of faces how much they lean over their width.
func lostIn(later *eval.Worked, c *eval.Condition, a *Ask) (float64, string) {
	leans := oneOf(c.Word, "square", "parallel")
	turned := later.Chuck
	if turned == nil {
		turned = later.Cut.Hold.Carried
	}
	if turned != nil {
		lost, how := losesTruth(turned, a)
		if ends := a.Limit("ends_again"); leans && lost > ends {
			return ends, how + " faced again (ends_again),"
		}
		return lost, how
	}
	h := later.Cut.Hold
	if within, said := h.Work.SetUp.Within.Get(); said {
		return within, "set within what the set-up says it"
	}
	by := "a holding on the table"
	if h.Choice.Vise != nil {
		by = h.Choice.Vise.Path()
	}
	off := a.Limit("dials_again")
	if leans {
		return off, by + " (dials_again)"
	}
	return 2 * off, by + ", its place found by the dials (dials_again to either side),"
}

// losesTruth is how far a piece usually runs out when it is gripped again so, full reading.
func losesTruth(h *eval.Chucking, a *Ask) (float64, string) {
	c := &h.Choice
	within, said := h.Work.SetUp.Within.Get()
	switch {
	case said:
		return within, "set within what the set-up says it"
	case c.Soft:
		return a.Limit("soft_jaws_again"), "a holding in bored soft jaws (soft_jaws_again)"
	case c.Centres:
		return 0, "a holding between centres"
	case c.Chuck != nil && c.Chuck.Independent.V:
		return a.Limit("four_jaw_again"), c.Chuck.Path() + ", set by indicator (four_jaw_again),"
	case c.Chuck != nil && c.Chuck.Repeats.Is():
		return c.Chuck.Repeats.V, c.Chuck.Path() + ", as its owner says,"
	case c.Chuck != nil:
		return a.Limit("three_jaw_again"), c.Chuck.Path() + " (three_jaw_again)"
	}
	return a.Limit("soft_jaws_again"), c.HeldBy() + " (soft_jaws_again)"
}
