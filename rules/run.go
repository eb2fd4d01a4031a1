package rules

import (
	"fmt"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// Runner asks the rules, and remembers what they said at a moment that was asked before.
type Runner struct {
	Build *model.Build
	Memory
	kept  map[eval.Moment][]Verdict // of stretches of work that are settled
	parts map[*eval.PartTrace][]Verdict

	asking Ask
}

// Memory is what was said of the moments of the stretch of work in hand.
type Memory struct {
	holds    map[*eval.Holding][]Verdict
	cuts     map[*eval.Cut][]Verdict
	chucks   map[*eval.Chucking][]Verdict
	turns    map[*eval.Turn][]Verdict
	measures map[*eval.Measurement][]Verdict
}

// NewMemory is an empty one.
func NewMemory() Memory {
	return Memory{holds: map[*eval.Holding][]Verdict{}, cuts: map[*eval.Cut][]Verdict{}, chucks: map[*eval.Chucking][]Verdict{},
		turns: map[*eval.Turn][]Verdict{}, measures: map[*eval.Measurement][]Verdict{}}
}

// LetGo forgets an operation that was tried and lost; either may be nil.
func (m *Memory) LetGo(k *eval.Cut, t *eval.Turn) {
	delete(m.cuts, k)
	delete(m.turns, t)
}

// NewRunner gives a runner for one build.
func NewRunner(b *model.Build) *Runner {
	return &Runner{Build: b, Memory: NewMemory(), kept: map[eval.Moment][]Verdict{}, parts: map[*eval.PartTrace][]Verdict{}}
}

// ask puts one rule to one thing. A rule that breaks its own promises becomes a finding of
// its own, and the others go on.
func (r *Runner) ask(rule *Rule, spot finding.Spot, put func(*Ask)) (v Verdict) {
	a := &r.asking // one after another; nothing of it is kept
	*a = Ask{build: r.Build, v: Verdict{Rule: rule, Spot: spot}}
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
		if m.Deburr == nil && m.Mark == nil {
			r.kept[m] = r.At(m)
		}
	}
	clear(r.holds)
	clear(r.cuts)
	clear(r.chucks)
	clear(r.turns)
	clear(r.measures)
}

// Part asks about a part and every moment of its making, in the order of the work.
func (r *Runner) Part(p *eval.PartTrace) []Verdict {
	if vs, ok := r.parts[p]; ok {
		return vs
	}
	vs := every(r, nil, finding.Spot{Part: p.Part.Label}, p, func(x *Rule) func(*eval.PartTrace, *Ask) {
		if p.Part.Joined() && !x.Together {
			return nil
		}
		return x.OnPart
	})
	for _, m := range p.Moments {
		vs = append(vs, r.At(m)...)
	}
	clear(r.kept)
	r.parts[p] = vs
	return vs
}

// Take takes over what another runner was told of a part.
func (r *Runner) Take(p *eval.PartTrace, vs []Verdict) { r.parts[p] = vs }

// Fault is the name of the finding that reports a broken rule.
const Fault = "internal-fault"

func fault(rule *Rule, spot finding.Spot, e any) Verdict {
	return Verdict{Rule: rule, Spot: spot, Kind: Trouble, Found: []finding.Finding{{
		Rule: Fault, Level: finding.Stop, Judgement: finding.Fact, Cause: rule.Name, Spots: []finding.Spot{spot},
		Says: fmt.Sprintf("the rule %s failed here by a fault of its own (%v); nothing is said of what it checks", rule.Name, e),
	}}}
}

// every puts the checks of one kind to a thing: those of every rule that has one.
func every[T any](r *Runner, vs []Verdict, spot finding.Spot, thing T, of func(*Rule) func(T, *Ask)) []Verdict {
	for _, rule := range catalogue {
		if check := of(rule); check != nil {
			vs = said(vs, r.ask(rule, spot, func(a *Ask) { check(thing, a) }))
		}
	}
	return vs
}

// once gives what was said of a thing before, or asks now and remembers it.
func once[T comparable](memory map[T][]Verdict, thing T, ask func() []Verdict) []Verdict {
	vs, ok := memory[thing]
	if !ok {
		vs = ask()
		memory[thing] = vs
	}
	return vs
}

// AtHold asks every rule about a holding, and about the chuck that carries the piece on it.
func (r *Runner) AtHold(h *eval.Holding) []Verdict {
	return once(r.holds, h, func() (vs []Verdict) {
		if h.Unplayed != "" {
			return nil
		}
		as := h // the grip is judged before all leans together
		if h.Upright != nil {
			as = h.Upright
		}
		for _, rule := range catalogue {
			if h.Shifted != nil && !rule.Shifted {
				continue
			}
			if rule.OnHold != nil {
				vs = said(vs, r.ask(rule, h.Spot, func(a *Ask) { rule.OnHold(as, a) }))
			}
			if rule.OnChuck != nil && h.Carried != nil {
				vs = said(vs, r.ask(rule, h.Spot, func(a *Ask) { rule.OnChuck(h.Carried, a) }))
			}
		}
		return vs
	})
}

// AtCut asks every rule about a cut.
func (r *Runner) AtCut(k *eval.Cut) []Verdict {
	return once(r.cuts, k, func() []Verdict {
		vs := every(r, nil, k.Spot, k, func(x *Rule) func(*eval.Cut, *Ask) { return x.OnCut })
		for _, v := range r.houseRules(k) {
			vs = said(vs, v)
		}
		return vs
	})
}

// AtChuck asks every rule about a holding on a lathe.
func (r *Runner) AtChuck(h *eval.Chucking) []Verdict {
	return once(r.chucks, h, func() []Verdict {
		if h.Unplayed != "" {
			return nil
		}
		return every(r, nil, h.Spot, h, func(x *Rule) func(*eval.Chucking, *Ask) {
			if h.Shifted != nil && !x.Shifted {
				return nil
			}
			return x.OnChuck
		})
	})
}

// AtTurn asks every rule about an operation on a lathe.
func (r *Runner) AtTurn(k *eval.Turn) []Verdict {
	return once(r.turns, k, func() []Verdict {
		return every(r, nil, k.Spot, k, func(x *Rule) func(*eval.Turn, *Ask) { return x.OnTurn })
	})
}

// AtMeasure asks every rule about a measurement.
func (r *Runner) AtMeasure(m *eval.Measurement) []Verdict {
	return once(r.measures, m, func() []Verdict {
		return every(r, nil, m.Spot, m, func(x *Rule) func(*eval.Measurement, *Ask) { return x.OnMeasure })
	})
}

// AtHeat asks every rule about a heat.
func (r *Runner) AtHeat(h *eval.Heating) []Verdict {
	return every(r, nil, h.Spot, h, func(x *Rule) func(*eval.Heating, *Ask) { return x.OnHeat })
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
	n := 64
	for _, p := range t.Parts {
		n += len(r.Part(p))
	}
	vs := every(r, make([]Verdict, 0, n), finding.Spot{}, r.Build, func(x *Rule) func(*model.Build, *Ask) { return x.OnShop })
	for _, p := range t.Parts {
		vs = append(vs, r.Part(p)...)
	}
	for _, p := range t.Assembled {
		vs = append(vs, r.Part(p)...)
	}
	for _, j := range t.Joints {
		if j.Unplayed != "" {
			continue
		}
		vs = every(r, vs, j.Spot, j, func(x *Rule) func(*eval.Joint, *Ask) { return x.OnJoint })
	}
	for _, h := range t.Heatings {
		vs = append(vs, r.AtHeat(h)...)
	}
	return every(r, vs, finding.Spot{}, t, func(x *Rule) func(*eval.Trace, *Ask) { return x.OnBuild })
}
