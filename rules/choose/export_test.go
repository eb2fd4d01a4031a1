package choose

import (
	"fmt"
	"strings"

	"fettle/eval"
	"fettle/rules"
	"fettle/schema/model"
)

// listener makes the choices as ever, and asks the rules of every candidate besides: what a rule
// says must be the same whatever is chosen of that to which it is deaf.
type listener struct {
	*chooser
	wrong func(says string)
	asked map[string]int // how often a rule said anything of candidates that it is deaf to
}

// ListenForDeaf makes a build on paper, and tells of every rule that hears a choice to which it
// says that it is deaf, and of every holding and operation
// for which the search passed over what is better.
func ListenForDeaf(b *model.Build, asked map[string]int, wrong func(says string)) {
	for _, p := range b.Parts {
		l := &listener{newChooser(b, shelfOf(&b.Shop), Effort), wrong, asked}
		l.player.Part(b, p, l)
	}
}

// said is what the rules that are deaf to some choices say, each in words.
func said(vs []rules.Verdict, to rules.Choice) map[string]string {
	out := map[string]string{}
	for _, v := range vs {
		if v.Rule.Deaf&to != to {
			continue
		}
		var b strings.Builder
		fmt.Fprint(&b, v.Kind)
		for _, f := range v.Found {
			fmt.Fprint(&b, "; ", f.Level)
		}
		out[v.Rule.Name] = b.String()
	}
	return out
}

func (l *listener) same(where string, to rules.Choice, a, b []rules.Verdict) {
	x, y := said(a, to), said(b, to)
	for name, s := range x {
		l.asked[name]++
		if y[name] != s {
			l.wrong(fmt.Sprintf("%s: %s says %q, and of a choice that it is deaf to %q", where, name, s, y[name]))
		}
	}
	for name, s := range y {
		if _, ok := x[name]; !ok {
			l.wrong(fmt.Sprintf("%s: %s says nothing, and of a choice that it is deaf to %q", where, name, s))
		}
	}
}

func (l *listener) Cut(h *eval.Holding, before *eval.State, st *eval.Step) eval.CutChoice {
	all := l.cuts(h, before, st)
	ask := func(h *eval.Holding, k eval.CutChoice) []rules.Verdict {
		return l.runner.AtCut(l.player.Make(h, before, st, k))
	}
	listen(l, st, all, func(k *eval.CutChoice) *eval.Pick { return &k.Tool },
		func(k eval.CutChoice) []rules.Verdict { return ask(h, k) })
	if h.Unplayed == "" && st.Work.Kind == "setup" {
		for _, hc := range fewOf(l.holds(h.Part, h.Before, st.Work)) {
			other := l.player.Hold(h.Part, h.Before, st.Work, hc)
			if other.Unplayed != "" || other.Choice.Machine != h.Choice.Machine {
				continue
			}
			for _, k := range all {
				l.same(st.Spot.String()+" held otherwise", rules.Holding, ask(h, k), ask(other, k))
			}
		}
	}
	best := l.chooser.Cut(h, before, st)
	l.asIfAllWereTried(st, best.Words(), len(all), func(i int) (string, score) { return all[i].Words(), rate(ask(h, all[i])) })
	return best
}

func (l *listener) Turn(h *eval.Chucking, before *eval.State, st *eval.Step) eval.TurnChoice {
	all := l.turns(h, before, st)
	ask := func(h *eval.Chucking, k eval.TurnChoice) []rules.Verdict {
		return l.runner.AtTurn(l.player.Turn(h, before, st, k))
	}
	listen(l, st, all, func(k *eval.TurnChoice) *eval.Pick { return &k.Tool },
		func(k eval.TurnChoice) []rules.Verdict { return ask(h, k) })
	if others, why := l.chuckings(h.Part, h.Before, st.Work); why == "" && h.Unplayed == "" {
		for _, hc := range fewOf(others) {
			other := l.player.Chuck(h.Part, h.Before, st.Work, hc)
			if other.Unplayed != "" || other.Choice.Machine != h.Choice.Machine {
				continue
			}
			for _, k := range all {
				l.same(st.Spot.String()+" held otherwise", rules.Holding, ask(h, k), ask(other, k))
			}
		}
	}
	best := l.chooser.Turn(h, before, st)
	l.asIfAllWereTried(st, best.Words(), len(all), func(i int) (string, score) { return all[i].Words(), rate(ask(h, all[i])) })
	return best
}

// asIfAllWereTried holds that the search took the first of the best.
func (l *listener) asIfAllWereTried(st *eval.Step, took string, n int, candidate func(int) (string, score)) {
	best, least := "", worst
	for i := range n {
		if words, s := candidate(i); s.less(least) {
			best, least = words, s
		}
	}
	if took != best {
		l.wrong(fmt.Sprintf("%s: of all candidates the first of the best is %s; the search took %s", st.Spot, best, took))
	}
}

// fewOf is three or so of many, spread over them.
func fewOf[T any](all []T) (out []T) {
	by := max(1, len(all)/3)
	for i := 0; i < len(all); i += by {
		out = append(out, all[i])
	}
	return out
}

func listen[T any](l *listener, st *eval.Step, all []T, tool func(*T) *eval.Pick, ask func(T) []rules.Verdict) {
	for i := 1; i < len(all); i++ {
		if *tool(&all[i]) == *tool(&all[i-1]) {
			l.same(st.Spot.String()+" mounted otherwise", rules.Mounting, ask(all[i-1]), ask(all[i]))
		}
		l.same(st.Spot.String()+" with another tool", rules.Mounting|rules.Tool, ask(all[i-1]), ask(all[i]))
	}
}

// Hold compares the way to hold a piece that the search took with the first of the best, each
// tried with the whole of its work.
func (l *listener) Hold(p *eval.Part, before *eval.State, w *eval.Work) eval.HoldChoice {
	all := l.holds(p, before, w)
	took := l.chooser.Hold(p, before, w)
	best, least := "", worst
	for i := range all {
		h := l.player.Hold(p, before, w, all[i])
		s := inTurn(w, before, rate(l.runner.AtHold(h)), worst, remaining{}, func(s *eval.State, st *eval.Step) ([]rules.Verdict, score, *eval.State) {
			k := l.player.Make(h, s, st, l.chooser.Cut(h, s, st))
			return l.runner.AtCut(k), score{}, k.After
		})
		if s.less(least) {
			best, least = all[i].Words(), s
		}
		if s == (score{}) {
			break
		}
	}
	if took.Words() != best {
		l.wrong(fmt.Sprintf("%s: of all ways to hold it the first of the best is %s, with %v against it; the search took %s", w.Spot, best, least, took.Words()))
	}
	return took
}

// Chuck does the same on a lathe.
func (l *listener) Chuck(p *eval.Part, before *eval.State, w *eval.Work) (eval.ChuckChoice, bool) {
	took, ok := l.chooser.Chuck(p, before, w)
	all, why := l.chuckings(p, before, w)
	if !ok || !p.Round || why != "" {
		return took, ok
	}
	best, least := "", worst
	for i := range all {
		h := l.player.Chuck(p, before, w, all[i])
		s := inTurn(w, before, rate(l.runner.AtChuck(h)), worst, remaining{}, func(s *eval.State, st *eval.Step) ([]rules.Verdict, score, *eval.State) {
			k := l.player.Turn(h, s, st, l.chooser.Turn(h, s, st))
			return l.runner.AtTurn(k), score{}, k.After
		})
		if s.less(least) {
			best, least = all[i].Words(), s
		}
		if s == (score{}) {
			break
		}
	}
	if took.Words() != best {
		l.wrong(fmt.Sprintf("%s: of all ways to hold it the first of the best is %s, with %v against it; the search took %s", w.Spot, best, least, took.Words()))
	}
	return took, ok
}
