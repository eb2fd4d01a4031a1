package choose

import (
	"fettle/eval"
	"fettle/rules"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// How the search is kept short.
//
// Candidates are tried in their order until one has nothing against it. Where none has, all
// would be tried: twelve ways to mount a tap in each of twenty-five heights of parallels, and
// all for a question that is about the tap. So each rule says to which choices it is deaf: what
// it says of a cut cannot change by another holding, another mounting, or another tool. What
// such rules say of one candidate is the least that any other has against it which differs in
// these choices alone; where that is no better than the best so far, the others are passed over.
//
// For the mountings of one tool and for tools in one holding the bound is exact: the same
// candidate is taken as if all had been tried. For holdings it takes the piece that comes to
// a step to be the same in whatever way it was held before: a holding that would lead to
// another tool at an earlier step, and so to a better later one, is not looked for. No recipe, case
// or example of the tests is such a one: there too the search takes what it would if all were tried.

// score ranks candidates: fewer dangers and stops, then fewer scraps, fewer words of
// advice, fewer open questions. A candidate whose trouble turned into an open question is
// not taken for cured: open ranks after clear and before every trouble.
type score [4]int

func (s score) less(t score) bool {
	for i := range s {
		if s[i] != t[i] {
			return s[i] < t[i]
		}
	}
	return false
}

func (s score) add(t score) score {
	for i := range s {
		s[i] += t[i]
	}
	return s
}

// worst is above every score.
var worst = score{1 << 30}

func rate(vs []rules.Verdict) (s score) { return rateDeaf(vs, 0) }

// rateDeaf counts what those rules say that are deaf to all of these choices.
func rateDeaf(vs []rules.Verdict, to rules.Choice) (s score) {
	for i := range vs {
		v := &vs[i]
		if v.Rule.Deaf&to != to {
			continue
		}
		switch v.Kind {
		case rules.Open:
			s[3]++
		case rules.Trouble:
			for _, f := range v.Found {
				switch f.Level {
				case finding.Danger, finding.Stop:
					s[0]++
				case finding.Scrap:
					s[1]++
				default:
					s[2]++
				}
			}
		}
	}
	return s
}

// tooled is what was found best for an operation, and the least that is against it in any
// holding on the same machine.
type tooled[T any] struct {
	best  T
	least score
}

// withTool tries candidates for an operation; those of one tool stand together in the list. Those
// that lose are let go of.
func withTool[T any](c *chooser, all []T, tool func(*T) *eval.Pick, ask func(T) (vs []rules.Verdict, letGo func())) tooled[T] {
	out := tooled[T]{best: all[0]}
	if len(all) == 1 {
		vs, _ := ask(all[0])
		out.least = rateDeaf(vs, rules.Holding)
		return out
	}
	bestScore, least := worst, worst
	loses := func() {}
	bound := func(vs []rules.Verdict, to rules.Choice) {
		if s := rateDeaf(vs, to|rules.Holding); s.less(least) {
			least = s
		}
	}
	for i := 0; i < len(all); {
		vs, letGo := ask(all[i])
		s := rate(vs)
		if s.less(bestScore) {
			loses()
			out.best, bestScore, loses = all[i], s, letGo
		} else {
			letGo()
		}
		bound(vs, 0)
		if s == (score{}) || c.spent() {
			return out
		}
		if !rateDeaf(vs, rules.Mounting|rules.Tool).less(bestScore) {
			bound(vs, rules.Mounting|rules.Tool)
			out.least = least
			return out
		}
		at := i
		i++
		if !rateDeaf(vs, rules.Mounting).less(bestScore) {
			bound(vs, rules.Mounting)
			for i < len(all) && *tool(&all[i]) == *tool(&all[at]) {
				i++
			}
		}
	}
	if len(all) < mostCuts {
		out.least = least
	}
	return out
}

// held tries the ways to hold a piece, each with the whole of its work. Try gives the score of
// one way, or any that is no better than the bound, as soon as it cannot be better: what is
// still to come adds at least what is left.
func held[H any](c *chooser, w *eval.Work, all []H, machine func(*H) *model.Machine, try func(h H, bound score, left remaining) score) H {
	best, bestScore := all[0], worst
	left := remaining{}
	of := newMemory() // of the best: of the others nothing is asked again
	for i, h := range all {
		if i > 0 && machine(&all[i]) != machine(&all[i-1]) {
			left = remaining{}
		}
		if !left.from(w.Steps).less(bestScore) {
			continue
		}
		c.remember(newMemory())
		s := try(h, bestScore, left)
		if s.less(bestScore) {
			best, bestScore, of = h, s, c.memory()
		}
		if s == (score{}) || c.spent() {
			break
		}
	}
	c.remember(of)
	return best
}

// memory is all that is remembered of the work in one holding.
type memory struct {
	played eval.Memory
	said   rules.Memory
	best   map[cutKey]tooled[eval.CutChoice]
	turned map[cutKey]tooled[eval.TurnChoice]
}

func newMemory() memory {
	return memory{eval.NewMemory(), rules.NewMemory(), map[cutKey]tooled[eval.CutChoice]{}, map[cutKey]tooled[eval.TurnChoice]{}}
}

func (c *chooser) memory() memory {
	return memory{c.player.Memory, c.runner.Memory, c.best, c.turned}
}

func (c *chooser) remember(m memory) {
	c.player.Memory, c.runner.Memory, c.best, c.turned = m.played, m.said, m.best, m.turned
}

// remaining is what is against the steps of a stretch of work in every holding on one machine.
type remaining map[*eval.Step]score

func (r remaining) note(st *eval.Step, s score) {
	if had, ok := r[st]; !ok || s.less(had) {
		r[st] = s
	}
}

func (r remaining) from(steps []*eval.Step) (s score) {
	for _, st := range steps {
		s = s.add(r[st])
	}
	return s
}

// inTurn plays the operations of a stretch of work in one holding against which s is said
// already, until it is no better than the bound.
func inTurn(w *eval.Work, before *eval.State, s, bound score, left remaining,
	make func(*eval.State, *eval.Step) (vs []rules.Verdict, least score, after *eval.State)) score {
	state := before
	for i, st := range w.Steps {
		if !s.add(left.from(w.Steps[i:])).less(bound) {
			return bound
		}
		if st.Kind != "operation" && st.Kind != "shift" {
			continue
		}
		vs, least, after := make(state, st)
		left.note(st, least)
		s, state = s.add(rate(vs)), after
	}
	return s
}
