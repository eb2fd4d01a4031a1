package choose

import (
	"math"

	"fettle/eval"
	"fettle/eval/reckon/balance"
	"fettle/rules"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Turn tries the tools for an operation on a lathe, and takes the first that gives no trouble
// and leaves no question.
func (c *chooser) Turn(h *eval.Chucking, before *eval.State, st *eval.Step) eval.TurnChoice {
	return c.turn(h, before, st).best
}

func (c *chooser) turn(h *eval.Chucking, before *eval.State, st *eval.Step) tooled[eval.TurnChoice] {
	key := cutKey{h.Key, before.Key, st}
	t, ok := c.turned[key]
	if !ok {
		t = withTool(c, c.turns(h, before, st), func(k *eval.TurnChoice) *eval.Pick { return &k.Tool },
			func(choice eval.TurnChoice) ([]rules.Verdict, func()) {
				k := c.player.Turn(h, before, st, choice)
				return c.runner.AtTurn(k), func() { c.player.LetGo(k.Key); c.runner.LetGo(nil, k) }
			})
		c.turned[key] = t
	}
	return t
}

func (c *chooser) turns(h *eval.Chucking, before *eval.State, st *eval.Step) []eval.TurnChoice {
	k := &asked{c: c, part: h.Part, before: before, step: st, chuck: h}
	if len(st.Makes) > 0 {
		k.target = st.Makes[0]
	}
	k.by = k.turnProcess()
	s := st.Step
	base := eval.TurnChoice{By: k.by, Slide: s.TopSlide.V, Withdrawn: s.Kept.V == "withdrawn", Turned: s.Mounted.V == "turned over"}
	base.ByHand = s.TurnedBy.V == "hand" || s.TurnedBy.V == "hand under the spindle"
	if f := k.target.Form; f != nil && f.Feature.Kind == "taper" && !s.TopSlide.Is() && h.Work.SetUp.SetOver.Or(0) == 0 {
		base.Slide = f.Half * 180 / math.Pi
	}
	if d, ok := h.Divider(); ok {
		base.Index, _ = eval.Indexing(d, st)
	}
	if handWork(k.by) {
		base.ByHand = true
		c.turnSpeed(k, &base)
		return []eval.TurnChoice{base}
	}
	var out []eval.TurnChoice
	for _, t := range c.turnTools(k) {
		cc := base
		cc.Tool = t
		for _, ms := range c.onLathe(k, t, &cc) {
			one := cc
			one.Mounts = ms
			c.turnSpeed(k, &one)
			if out = append(out, one); len(out) == mostCuts {
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

// onLathe settles what holds a tool: a post on the slides, or the tailstock.
func (c *chooser) onLathe(k *asked, t eval.Pick, cc *eval.TurnChoice) [][]eval.Mount {
	if fromPost(t.Cutter) {
		cc.Post = c.post(k.step)
		return [][]eval.Mount{nil}
	}
	if t.Cutter.Kind == "die" || cc.ByHand {
		return [][]eval.Mount{nil}
	}
	m := k.chuck.Choice.Machine
	if m == nil {
		return [][]eval.Mount{nil}
	}
	like := *m
	like.Taper = m.Tailstock.Taper
	return c.mounts(k, &like, t)
}

// fromPost says whether a tool sits on the slides of a lathe.
func fromPost(cu *model.Cutter) bool {
	switch cu.Kind {
	case "turning_tool", "boring_bar", "parting_tool", "threading_tool", "knurling_tool":
		return true
	}
	return false
}

// turnProcess is how a target is made on a lathe: as written, else as the tool that is written
// works, else as its kind calls for.
func (k *asked) turnProcess() string {
	if s := k.step.Step; s.By.Is() {
		return s.By.V
	}
	f := k.target.Form
	for _, r := range k.pinnedTools() {
		if r.Item != nil {
			if by := turnedWith(r.Item.Kind, f); by != "" {
				return by
			}
		}
	}
	switch {
	case f == nil && k.target.Outside:
		return "turning"
	case f == nil:
		return "facing"
	case k.target.Sub == "thread":
		return "tapping"
	case k.target.Sub == "counterbore":
		return "counterboring"
	case k.target.Sub == "countersink":
		return "countersinking"
	}
	switch f.Feature.Kind {
	case "bore":
		return "boring"
	case "groove":
		return "grooving"
	case "keyway":
		return "planing"
	case "thread", "worm":
		return "threading"
	case "teeth":
		if f.Tooth != nil && f.Tooth.Inside {
			return "planing"
		}
	case "graduations":
		return "engraving"
	case "knurl":
		return "knurling"
	case "centre_hole":
		return "centring"
	case "hole":
		return k.holeProcess()
	}
	if f.Lathe != nil && f.Lathe.Inside {
		return "boring"
	}
	return "turning"
}

// turnedWith is what a tool of a kind does to a feature, or to an end for nil.
func turnedWith(kind string, f *eval.Form) string {
	switch kind {
	case "turning_tool":
		switch {
		case f == nil:
			return ""
		case f.Scale != nil:
			return "engraving"
		case f.Tooth != nil && f.Tooth.Inside:
			return "planing"
		case f.Lathe != nil && f.Lathe.Inside:
			return "boring"
		}
		return "turning"
	case "boring_bar":
		if f != nil && (f.Feature.Kind == "keyway" || f.Feature.Kind == "teeth") {
			return "planing"
		}
		return "boring"
	case "parting_tool":
		switch {
		case f == nil:
			return "parting"
		case f.Feature.Kind == "groove":
			return "grooving"
		}
		return "turning"
	case "threading_tool", "die":
		if f != nil && f.Scale != nil {
			return "engraving"
		}
		return "threading"
	case "knurling_tool":
		return "knurling"
	case "graver":
		return "engraving"
	case "centre_drill":
		if f != nil && f.Feature.Kind == "centre_hole" {
			return "centring"
		}
		return "spotting"
	}
	return processOf[kind]
}

// turnSpeed sets speed and sense: as written, else the fastest of the lathe that is not above
// the handbook's figure at the largest diameter worked. Work turned by hand has no speed.
func (c *chooser) turnSpeed(k *asked, cc *eval.TurnChoice) {
	s := k.step.Step
	cc.Reverse = cc.CutsReverse()
	if s.Spindle.Is() {
		cc.Reverse = s.Spindle.V == "reverse"
	}
	if cc.Tool.Cutter != nil && (cc.Tool.Cutter.Kind == "die" || cc.Tool.Cutter.Kind == "tap" || cc.Tool.Cutter.Kind == "reamer" && cc.Tool.Cutter.ReamerKind.V == "hand") && !s.TurnedBy.Is() {
		cc.ByHand = true
	}
	switch {
	case s.Speed.Is():
		cc.Speed = s.Speed.V
		return
	case k.setup().Speed.Is():
		cc.Speed = k.setup().Speed.V
		return
	case cc.ByHand && !handWork(cc.By), cc.By == "planing", cc.By == "engraving": // the spindle is held
		return
	}
	m := k.chuck.Choice.Machine
	if m == nil || !m.Speeds.Is() {
		return
	}
	most, ok := c.fastest(k, cc)
	if !ok {
		return
	}
	cc.Speed = within(m.Speeds.V, most)
}

// fastest is the highest speed that the handbook, the chuck and the tool allow.
func (c *chooser) fastest(k *asked, cc *eval.TurnChoice) (float64, bool) {
	t := c.player.Turn(k.chuck, k.before, k.step, *cc)
	d := t.Largest()
	if d <= 0 {
		return 0, false
	}
	of := "HSS"
	if cc.Tool.Cutter != nil {
		of = cc.Tool.Cutter.Of.Or("HSS")
	}
	row, ok := handbook.Speed(eval.TurnedAs(cc.By), of, material(k.part.Makes(k.step)))
	if !ok {
		return 0, false
	}
	most := 1000 * row.Pick / (math.Pi * d)
	if m := k.chuck.Choice.Machine; m != nil {
		most = math.Min(most, c.bearable(k, m, cc.Tool))
	}
	if cc.By == "threading" || cc.By == "knurling" {
		most /= 3 // a third of the turning speed; common practice
	}
	if ch := k.chuck.Choice.Chuck; ch != nil && ch.MaxSpeed.Is() {
		most = math.Min(most, ch.MaxSpeed.V)
	}
	if v, ok := c.balanced(t); ok {
		most = math.Min(most, v)
	}
	if cc.Tool.Cutter != nil && cc.Tool.Cutter.MaxSpeed.Is() {
		most = math.Min(most, cc.Tool.Cutter.MaxSpeed.V)
	}
	return most, true
}

// balanced is the speed up to which work off its middle pulls no more than usual; false where it
// turns about its middle, where weights are on, or where nobody can say.
func (c *chooser) balanced(t *eval.Turn) (float64, bool) {
	u, off := t.Unbalanced()
	m := t.Lathe()
	if !off || !u.Is() || m == nil || !m.Weight.Is() || t.Hold.Work.SetUp.Balance.Is() {
		return 0, false
	}
	most, err := balance.Weight(m.Weight.V, c.thumb("out_of_balance"))
	if err != nil {
		return 0, false
	}
	v, ok, err := balance.SpeedAt(u.V.Most, most)
	return v, ok && err == nil
}
