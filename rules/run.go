package rules

import (
	"fmt"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// Runner asks the rules, and remembers what they said at a moment that was asked before.
type Runner struct {
	Build    *model.Build
	holds    map[*eval.Holding][]Verdict
	cuts     map[*eval.Cut][]Verdict
	chucks   map[*eval.Chucking][]Verdict
	turns    map[*eval.Turn][]Verdict
	measures map[*eval.Measurement][]Verdict
	kept     map[eval.Moment][]Verdict // of stretches of work that are settled
}

// NewRunner gives a runner for one build.
func NewRunner(b *model.Build) *Runner {
	return &Runner{Build: b, holds: map[*eval.Holding][]Verdict{}, cuts: map[*eval.Cut][]Verdict{},
		chucks: map[*eval.Chucking][]Verdict{}, turns: map[*eval.Turn][]Verdict{},
		measures: map[*eval.Measurement][]Verdict{}, kept: map[eval.Moment][]Verdict{}}
}

// ask puts one rule to one thing. A rule that breaks its own promises becomes a finding of
// its own, and the others go on.
func (r *Runner) ask(rule *Rule, spot finding.Spot, put func(*Ask)) (v Verdict) {
	a := &Ask{build: r.Build, v: Verdict{Rule: rule, Spot: spot}}
	defer func() {
		if e := recover(); e != nil {
			v = fault(rule, spot, e)
		}
	}()
	put(a)
	return a.settle()
}

// said adds a verdict to those of a moment, unless the rule had no concern there: that is
// most of what is asked, and nothing reads it.
func said(vs []Verdict, v Verdict) []Verdict {
	if v.Kind == NoConcern {
		return vs
	}
	return append(vs, v)
}

// Keep forgets what was said at every moment but those of a stretch of work as it was chosen.
// They are asked of again when the whole trace is judged; those of candidates that lost are
// not.
func (r *Runner) Keep(ms []eval.Moment) {
	for _, m := range ms {
		if m.Deburr == nil {
			r.kept[m] = r.At(m)
		}
	}
	clear(r.holds)
	clear(r.cuts)
	clear(r.chucks)
	clear(r.turns)
	clear(r.measures)
}

// Fault is the name of the finding that reports a broken rule.
const Fault = "internal-fault"

func fault(rule *Rule, spot finding.Spot, e any) Verdict {
	return Verdict{Rule: rule, Spot: spot, Kind: Trouble, Found: []finding.Finding{{
		Rule: Fault, Level: finding.Stop, Judgement: finding.Fact, Cause: rule.Name, Spots: []finding.Spot{spot},
		Says: fmt.Sprintf("the rule %s failed here by a fault of its own (%v); nothing is said of what it checks", rule.Name, e),
	}}}
}

// AtHold asks every rule about a holding.
func (r *Runner) AtHold(h *eval.Holding) []Verdict {
	if vs, ok := r.holds[h]; ok {
		return vs
	}
	var vs []Verdict
	if h.Unplayed == "" {
		as := h // the grip is judged before all leans together
		if h.Upright != nil {
			as = h.Upright
		}
		for _, rule := range catalogue {
			if rule.OnHold != nil {
				vs = said(vs, r.ask(rule, h.Spot, func(a *Ask) { rule.OnHold(as, a) }))
			}
			if rule.OnChuck != nil && h.Carried != nil {
				vs = said(vs, r.ask(rule, h.Spot, func(a *Ask) { rule.OnChuck(h.Carried, a) }))
			}
		}
	}
	r.holds[h] = vs
	return vs
}

// AtCut asks every rule about a cut.
func (r *Runner) AtCut(k *eval.Cut) []Verdict {
	if vs, ok := r.cuts[k]; ok {
		return vs
	}
	var vs []Verdict
	for _, rule := range catalogue {
		if rule.OnCut != nil {
			vs = said(vs, r.ask(rule, k.Spot, func(a *Ask) { rule.OnCut(k, a) }))
		}
	}
	for _, v := range r.houseRules(k) {
		vs = said(vs, v)
	}
	r.cuts[k] = vs
	return vs
}

// AtChuck asks every rule about a holding on a lathe.
func (r *Runner) AtChuck(h *eval.Chucking) []Verdict {
	if vs, ok := r.chucks[h]; ok {
		return vs
	}
	var vs []Verdict
	if h.Unplayed == "" {
		for _, rule := range catalogue {
			if rule.OnChuck != nil {
				vs = said(vs, r.ask(rule, h.Spot, func(a *Ask) { rule.OnChuck(h, a) }))
			}
		}
	}
	r.chucks[h] = vs
	return vs
}

// AtTurn asks every rule about an operation on a lathe.
func (r *Runner) AtTurn(k *eval.Turn) []Verdict {
	if vs, ok := r.turns[k]; ok {
		return vs
	}
	var vs []Verdict
	for _, rule := range catalogue {
		if rule.OnTurn != nil {
			vs = said(vs, r.ask(rule, k.Spot, func(a *Ask) { rule.OnTurn(k, a) }))
		}
	}
	r.turns[k] = vs
	return vs
}

// AtMeasure asks every rule about a measurement.
func (r *Runner) AtMeasure(m *eval.Measurement) []Verdict {
	if vs, ok := r.measures[m]; ok {
		return vs
	}
	var vs []Verdict
	for _, rule := range catalogue {
		if rule.OnMeasure != nil {
			vs = said(vs, r.ask(rule, m.Spot, func(a *Ask) { rule.OnMeasure(m, a) }))
		}
	}
	r.measures[m] = vs
	return vs
}

// AtHeat asks every rule about a heat.
func (r *Runner) AtHeat(h *eval.Heating) []Verdict {
	var vs []Verdict
	for _, rule := range catalogue {
		if rule.OnHeat != nil {
			vs = append(vs, r.ask(rule, h.Spot, func(a *Ask) { rule.OnHeat(h, a) }))
		}
	}
	return vs
}

// At asks about a moment.
func (r *Runner) At(m eval.Moment) []Verdict {
	if vs, ok := r.kept[m]; ok {
		return vs
	}
	switch {
	case m.Hold != nil:
		return r.AtHold(m.Hold)
	case m.Cut != nil:
		return r.AtCut(m.Cut)
	case m.Chuck != nil:
		return r.AtChuck(m.Chuck)
	case m.Turn != nil:
		return r.AtTurn(m.Turn)
	case m.Measure != nil:
		return r.AtMeasure(m.Measure)
	case m.Heat != nil:
		return r.AtHeat(m.Heat)
	}
	return nil
}

// All asks every rule about a whole trace, in the order of the work: the shop, then part by
// part the part itself and its moments, then the build.
func (r *Runner) All(t *eval.Trace) []Verdict {
	var vs []Verdict
	for _, rule := range catalogue {
		if rule.OnShop != nil {
			vs = said(vs, r.ask(rule, finding.Spot{}, func(a *Ask) { rule.OnShop(r.Build, a) }))
		}
	}
	for _, p := range t.Parts {
		spot := finding.Spot{Part: p.Part.Label}
		for _, rule := range catalogue {
			if rule.OnPart != nil {
				vs = said(vs, r.ask(rule, spot, func(a *Ask) { rule.OnPart(p, a) }))
			}
		}
		for _, m := range p.Moments {
			vs = append(vs, r.At(m)...)
		}
	}
	for _, j := range t.Joints {
		if j.Unplayed != "" {
			continue
		}
		for _, rule := range catalogue {
			if rule.OnJoint != nil {
				vs = said(vs, r.ask(rule, j.Spot, func(a *Ask) { rule.OnJoint(j, a) }))
			}
		}
	}
	for _, h := range t.Heatings {
		vs = append(vs, r.AtHeat(h)...)
	}
	for _, rule := range catalogue {
		if rule.OnBuild != nil {
			vs = said(vs, r.ask(rule, finding.Spot{}, func(a *Ask) { rule.OnBuild(t, a) }))
		}
	}
	return vs
}
