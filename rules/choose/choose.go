// Package choose fills in what a recipe leaves open: machine, holding, parallels, tool,
// holder, speed. It tries candidates in a stated order, plays each, asks the rules, and
// takes the first that is clear; where none is, the one with the least trouble. What is
// written in the recipe is never overruled.
package choose

import (
	"fettle/eval"
	"fettle/rules"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// Choice is one thing that was chosen.
type Choice struct {
	Spot   finding.Spot
	What   string // "machine", "hold", "parallels", "tool", "holder", "speed", …
	Item   string // "vise.small", "drill.jobbers[7.8]"
	Why    string // a short clause
	Margin finding.Margin
}

// Effort is how many moments may be played for one build before the search contents itself
// with what it has.
const Effort = 20000

// Choose makes a build on paper and fills in what it leaves open. Effort bounds the moments
// that are played, never the time: the same input gives the same bytes.
func Choose(b *model.Build, effort int) (*eval.Trace, []rules.Verdict, []Choice) {
	c := &chooser{build: b, player: eval.NewPlayer(), runner: rules.NewRunner(b), effort: effort,
		best: map[cutKey]eval.CutChoice{}, turned: map[cutKey]eval.TurnChoice{}}
	t := c.player.Play(b, c)
	vs := c.runner.All(t)
	return t, vs, listed(t)
}

type chooser struct {
	build  *model.Build
	player *eval.Player
	runner *rules.Runner
	effort int
	best   map[cutKey]eval.CutChoice
	turned map[cutKey]eval.TurnChoice
}

// cutKey tells operations apart for the memory of what was best.
type cutKey struct {
	hold, state eval.Key
	step        *eval.Step
}

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

func rate(vs []rules.Verdict) (s score) {
	for _, v := range vs {
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

// Settled forgets the candidates of a stretch of work that is done.
func (c *chooser) Settled(ms []eval.Moment) {
	c.runner.Keep(ms)
	clear(c.best)
	clear(c.turned)
}

func (c *chooser) spent() bool { return c.player.Moments > c.effort }

// Blank takes the stock that is written, else the first bar that the part can be cut from.
func (c *chooser) Blank(p *eval.Part) *model.Stock {
	if p.Part.Blank != nil && p.Part.Blank.Stock.Is() {
		s, _ := model.Find(c.build.Shop.Stock, p.Part.Blank.Stock.V.Item)
		return s
	}
	return c.stock(p)
}

// Hold tries the ways to hold the piece, each with the whole of its work, and takes the
// first that gives no trouble and leaves no question.
func (c *chooser) Hold(p *eval.Part, before *eval.State, w *eval.Work) eval.HoldChoice {
	all := c.holds(p, before, w)
	best, bestScore := all[0], score{1 << 30}
	for _, h := range all {
		s := c.tryHold(p, before, w, h, bestScore)
		if s.less(bestScore) {
			best, bestScore = h, s
		}
		if s == (score{}) || c.spent() {
			break
		}
	}
	return best
}

// tryHold plays a stretch of work in one holding, until it is no better than the best so far: what is
// still to come only adds to the score.
func (c *chooser) tryHold(p *eval.Part, before *eval.State, w *eval.Work, hc eval.HoldChoice, bound score) score {
	h := c.player.Hold(p, before, w, hc)
	s := rate(c.runner.AtHold(h))
	state := before
	for _, st := range w.Steps {
		if !s.less(bound) {
			break
		}
		if st.Kind != "operation" {
			continue
		}
		k := c.player.Make(h, state, st, c.Cut(h, state, st))
		s = s.add(rate(c.runner.AtCut(k)))
		state = k.After
	}
	return s
}

// Cut tries the tools and the ways to mount them, and takes the first that gives no trouble
// and leaves no question.
func (c *chooser) Cut(h *eval.Holding, before *eval.State, st *eval.Step) eval.CutChoice {
	key := cutKey{h.Key, before.Key, st}
	if best, ok := c.best[key]; ok {
		return best
	}
	all := c.cuts(h, before, st)
	best, bestScore := all[0], score{1 << 30}
	if len(all) > 1 {
		for _, k := range all {
			s := rate(c.runner.AtCut(c.player.Make(h, before, st, k)))
			if s.less(bestScore) {
				best, bestScore = k, s
			}
			if s == (score{}) || c.spent() {
				break
			}
		}
	}
	c.best[key] = best
	return best
}

// mostCuts bounds what is tried for one operation.
const mostCuts = 60

func (c *chooser) cuts(h *eval.Holding, before *eval.State, st *eval.Step) []eval.CutChoice {
	k := c.asked(h, before, st)
	base := eval.CutChoice{By: k.by, ByHand: k.byHand}
	if s := st.Step; s != nil {
		base.Out = s.ToolOut.V
		base.Climb = s.Cutting.V == "climb"
		base.Turned = s.Mounted.V == "turned over"
		base.From = s.From.V.Face
	}
	if handWork(k.by) {
		base.ByHand = true
		return []eval.CutChoice{base}
	}
	var out []eval.CutChoice
	for _, t := range c.tools(k) {
		for _, ms := range c.mounts(k, h.Choice.Machine, t) {
			cc := base
			cc.Tool, cc.Mounts = t, ms
			c.turning(k, &cc)
			out = append(out, cc)
			if len(out) == mostCuts {
				return out
			}
		}
	}
	if len(out) == 0 {
		base.NoTool = c.noTool(k)
		out = append(out, base)
	}
	return out
}

func handWork(by string) bool {
	switch by {
	case "filing", "scraping", "scribing", "polishing", "lapping":
		return true
	}
	return false
}

// noTool says why there is none: no shop, a pinned thing that is not there, or none that
// suits.
func (c *chooser) noTool(k *asked) string {
	for _, r := range k.pinnedTools() {
		if r.Item == nil {
			return r.Text + " is in no shop that was named"
		}
	}
	if c.build.Shop.Label == "" && len(c.build.Shop.Cutters) == 0 {
		return "no shop was named"
	}
	return "none"
}

// With takes the instrument that is written, else the first that is here and gives no
// trouble.
func (c *chooser) With(p *eval.Part, h *eval.Holding, s *eval.State, st *eval.Step) *model.Instrument {
	shop := &c.build.Shop
	if refs := st.Step.With.V; len(refs) > 0 {
		i, _ := model.Find(shop.Instruments, refs[0].Item)
		return i
	}
	var best *model.Instrument
	bestScore := score{1 << 30}
	for _, i := range shop.Instruments {
		if !i.Here() || !measures(i.Kind) {
			continue
		}
		sc := rate(c.runner.AtMeasure(c.player.Measure(p, h, s, st, i)))
		if sc.less(bestScore) {
			best, bestScore = i, sc
		}
		if sc == (score{}) {
			break
		}
	}
	return best
}

func measures(kind string) bool {
	switch kind {
	case "edge_finder", "protractor", "thread_gauge", "dial_indicator", "dial_test_indicator", "feelers":
		return false
	}
	return true
}
