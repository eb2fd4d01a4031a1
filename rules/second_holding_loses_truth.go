package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "second-holding-loses-truth",
	Title: "two surfaces that must run true to each other are turned in two holdings",
	Why: `What is turned in one holding runs true to itself. Taken out and gripped again, the piece runs out by what the chuck does:
a tenth in three jaws, a few hundredths set by an indicator. Turn both in one holding, hold by the first in soft jaws or
a collet, or set it true by indicator.`,
	Rows: []string{"E5"},
	Source: []string{"three jaws 0.05 to 0.1 mm, four jaws by indicator 0.01 to 0.03, bored soft jaws 0.02: common practice, to be set by the shop",
		"what the owner states of the chuck, where it is stated"},
	Limits:    []string{"three_jaw_again", "four_jaw_again", "soft_jaws_again"},
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
	if !p.Part.Round || p.End == nil {
		return
	}
	at := turnedIn(p)
	for _, f := range p.Part.Forms {
		m := f.Feature
		for _, r := range []struct {
			said   bool
			to     model.Known[model.Ref]
			within model.Known[float64]
			word   string
		}{{m.Concentric.Said, m.Concentric.To, m.Concentric.Within, "concentric"}, {m.RunoutTo.Said, m.RunoutTo.To, m.RunoutTo.Within, "runout"}} {
			if !r.said || !r.to.Is() || !r.within.Is() {
				continue
			}
			mine, other := at[f], at[p.Part.FormOf(r.to.V.Item)]
			if mine == nil || other == nil {
				continue
			}
			if mine == other {
				a.Clear(finding.Margin{}, "")
				continue
			}
			later, first := mine, p.Part.FormOf(r.to.V.Item)
			if mine.Before.Key != other.Before.Key && before(p, mine, other) {
				later, first = other, f
			}
			lost, how := losesTruth(later, setTo(p, later, first, at), a)
			if lost <= r.within.V+0.0005 {
				a.Clear(Bound(lost, r.within.V, "mm"), f.Name()+" and "+r.to.V.Path())
				continue
			}
			says := a.Say(p.Part.Label+"."+f.Name()+"."+r.word, r.within.At, "%s and %s are to run true within %s, and are turned in two holdings; %s usually brings a piece back within %s",
				f.Name(), plainRef(p, r.to.V), mm(r.within.V), how, mm(lost))
			says.Margin = Bound(lost, r.within.V, "mm")
		}
	}
}

func plainRef(p *eval.PartTrace, r model.Ref) string {
	if f := p.Part.FormOf(r.Item); f != nil {
		return f.Name()
	}
	return r.Path()
}

// turnedIn says in which holding each feature was last turned.
func turnedIn(p *eval.PartTrace) map[*eval.Form]*eval.Chucking {
	out := map[*eval.Form]*eval.Chucking{}
	for _, m := range p.Moments {
		if m.Turn == nil {
			continue
		}
		for _, w := range m.Turn.Works {
			if w.Target.Form != nil && w.Target.Sub == "" && w.Wrong == "" {
				out[w.Target.Form] = m.Turn.Hold.Root()
			}
		}
	}
	return out
}

// before says whether one holding comes before another in the work.
func before(p *eval.PartTrace, one, other *eval.Chucking) bool {
	for _, m := range p.Moments {
		switch m.Chuck {
		case one:
			return true
		case other:
			return false
		}
	}
	return false
}

// losesTruth is how far a piece usually runs out when it is gripped again so, full reading.
func losesTruth(h *eval.Chucking, set truth, a *Ask) (float64, string) {
	c := &h.Choice
	within, said := h.Work.SetUp.Within.Get()
	switch {
	case said && set != setToOther:
		return within, "set within what the set-up says it"
	case c.Soft:
		return a.Limit("soft_jaws_again"), "a holding in bored soft jaws (soft_jaws_again)"
	case c.Centres:
		return 0, "a holding between centres"
	case set == setToIt && c.Chuck != nil:
		return a.Limit("four_jaw_again"), c.Chuck.Path() + ", set true by that surface (four_jaw_again),"
	case c.Chuck != nil && c.Chuck.Independent.V && set != setToOther:
		return a.Limit("four_jaw_again"), c.Chuck.Path() + ", set by indicator (four_jaw_again),"
	case c.Chuck != nil && c.Chuck.Repeats.Is():
		return c.Chuck.Repeats.V, c.Chuck.Path() + ", as its owner says,"
	case c.Chuck != nil:
		return a.Limit("three_jaw_again"), c.Chuck.Path() + " (three_jaw_again)"
	}
	return a.Limit("soft_jaws_again"), c.HeldBy() + " (soft_jaws_again)"
}

// truth is by which surface a piece is set true.
type truth int

const (
	setByHolding truth = iota // none is named
	setToIt                   // the one to which the other is to run true, or one that was turned with it
	setToOther                // another
)

// setTo says by which surface a holding is set true, as against the one that was turned first.
func setTo(p *eval.PartTrace, h *eval.Chucking, first *eval.Form, at map[*eval.Form]*eval.Chucking) truth {
	r := h.Work.SetUp.TrueTo
	if !r.Is() || r.V.Item == nil {
		return setByHolding
	}
	if t := p.Part.FormOf(r.V.Item); t == first || t != nil && at[t] != nil && at[t] == at[first] {
		return setToIt
	}
	return setToOther
}
