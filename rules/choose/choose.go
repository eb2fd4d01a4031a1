// Package choose fills in what a recipe leaves open: machine, holding, parallels, tool,
// holder, speed. It tries candidates in a stated order, plays each, asks the rules, and
// takes the first that is clear; where none is, the one with the least trouble. What is
// written in the recipe is never overruled.
package choose

import (
	"strings"

	"fettle/eval"
	"fettle/rules"
	"fettle/schema/beside"
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

// Effort is how many moments may be played for one part before the search contents itself
// with what it has. Each part has its own, so that what is said of one hangs neither on the
// others nor on their order.
const Effort = 20000

// Choose makes a build on paper and fills in what it leaves open. Effort bounds the moments
// that are played for each part, never the time: the same input gives the same bytes.
func Choose(b *model.Build, effort int) (*eval.Trace, []rules.Verdict, []Choice) {
	parts, said := make([]*eval.PartTrace, len(b.Parts)), make([][]rules.Verdict, len(b.Parts))
	moments, gaps := make([]int, len(b.Parts)), make([]int, len(b.Parts))
	on := shelfOf(&b.Shop)
	beside.Do(len(b.Parts), func(i int) { // of whoever made it nothing else is kept
		c := newChooser(b, on, effort)
		parts[i] = c.player.Part(b, b.Parts[i], c)
		if !parts[i].Waiting() {
			said[i] = c.runner.Part(parts[i])
		}
		moments[i], gaps[i] = c.player.Moments, c.player.Gaps
	})
	waits := make([]bool, len(parts)) // for an assembly, with work of its own after it
	for i, p := range parts {
		waits[i] = p.Waiting()
	}
	c := newChooser(b, on, effort)
	t := c.player.Together(b, parts, c)
	for i, p := range parts {
		t.Moments, t.Gaps = t.Moments+moments[i], t.Gaps+gaps[i]
		if !waits[i] {
			c.runner.Take(p, said[i])
		}
	}
	vs := c.runner.All(t)
	return t, vs, listed(t)
}

func newChooser(b *model.Build, on *shelf, effort int) *chooser {
	return &chooser{build: b, shelf: on, player: eval.NewPlayer(), runner: rules.NewRunner(b), effort: effort,
		best: map[cutKey]tooled[eval.CutChoice]{}, turned: map[cutKey]tooled[eval.TurnChoice]{}, borne: map[borneKey]float64{}}
}

type chooser struct {
	build  *model.Build
	shelf  *shelf
	player *eval.Player
	runner *rules.Runner
	effort int
	best   map[cutKey]tooled[eval.CutChoice]
	turned map[cutKey]tooled[eval.TurnChoice]
	borne  map[borneKey]float64
}

// cutKey tells operations apart for the memory of what was best.
type cutKey struct {
	hold, state eval.Key
	step        *eval.Step
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
	return held(c, w, c.holds(p, before, w), func(h *eval.HoldChoice) *model.Machine { return h.Machine }, func(hc eval.HoldChoice, bound score, left remaining) score {
		h := c.player.Hold(p, before, w, hc)
		return inTurn(w, before, rate(c.runner.AtHold(h)), bound, left, func(s *eval.State, st *eval.Step) ([]rules.Verdict, score, *eval.State) {
			if st.Kind == "shift" {
				h = c.player.Shift(h, s, st)
				return c.runner.AtHold(h), score{}, s
			}
			h, s, st := h.ForStep(s, st)
			t := c.cut(h, s, st)
			k := c.player.Make(h, s, st, t.best)
			return c.runner.AtCut(k), t.least, k.Left()
		})
	})
}

// Cut tries the tools and the ways to mount them, and takes the first that gives no trouble
// and leaves no question.
func (c *chooser) Cut(h *eval.Holding, before *eval.State, st *eval.Step) eval.CutChoice {
	return c.cut(h, before, st).best
}

func (c *chooser) cut(h *eval.Holding, before *eval.State, st *eval.Step) tooled[eval.CutChoice] {
	key := cutKey{h.Key, before.Key, st}
	t, ok := c.best[key]
	if !ok {
		t = withTool(c, c.cuts(h, before, st), func(k *eval.CutChoice) *eval.Pick { return &k.Tool },
			func(choice eval.CutChoice) ([]rules.Verdict, func()) {
				k := c.player.Make(h, before, st, choice)
				return c.runner.AtCut(k), func() { c.player.LetGo(k.Key); c.runner.LetGo(k, nil) }
			})
		c.best[key] = t
	}
	return t
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
	if d, ok := h.Divider(); ok {
		base.Index, _ = eval.Indexing(d, st)
	}
	if handWork(k.by) || k.step.Work.Kind == "bench" && !drilledByHand(k.by) {
		base.ByHand = true
		return []eval.CutChoice{base}
	}
	var out []eval.CutChoice
	for _, t := range c.tools(k) {
		for _, ms := range c.mounts(k, h.Choice.Machine, t) {
			cc := base
			cc.Tool, cc.Mounts = t, ms
			if eval.Freely(k.target.Form, t.Cutter) {
				cc.Index = nil
			}
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
	case "filing", "scraping", "scribing", "polishing", "lapping", "broaching":
		return true
	}
	return false
}

// drilledByHand says whether hand work wants a drill, a reamer or a tap all the same.
func drilledByHand(by string) bool {
	switch by {
	case "drilling", "spotting", "reaming", "tapping", "countersinking", "counterboring", "threading":
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
	bestScore := worst
	for _, i := range shop.Instruments {
		if !i.AtHand() || !measures(i.Kind, st.Step) {
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

// measures says whether an instrument of a kind is for what a step takes.
func measures(kind string, st *model.Step) bool {
	switch {
	case st.Tries.Is():
		return false
	case st.Runout.Is():
		return kind == "dial_indicator" || kind == "dial_test_indicator"
	}
	if sub := st.Measured.Of.V; strings.HasSuffix(sub.Sub, "angle") || strings.HasSuffix(sub.Text, "angle") || sub.Sub == "tilted.by" {
		return kind == "protractor"
	}
	if st.Measured.Of.V.OfThread() {
		return kind == "thread_gauge"
	}
	switch kind {
	case "edge_finder", "protractor", "thread_gauge", "dial_indicator", "dial_test_indicator", "feelers":
		return false
	}
	return true
}
