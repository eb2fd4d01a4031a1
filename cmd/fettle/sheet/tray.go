package sheet

import (
	"slices"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// tray is what is laid out before the work begins, each thing once, in the order of its first use.
type tray struct {
	rows [][]string
	seen map[string]bool
}

func (t *tray) put(what, thing string, at finding.Spot, missing bool) {
	if thing == "" || thing == "-" || t.seen[thing] {
		return
	}
	t.seen[thing] = true
	mark := ""
	if missing {
		mark = "MISSING"
	}
	t.rows = append(t.rows, []string{"☐", thing, what, at.String(), mark})
}

// tray lists what holds the work, tools, what holds them, instruments and sources of heat, and after them what is bought
// and goes into these parts.
func (m *maker) tray(parts []*eval.PartTrace) {
	t := tray{seen: map[string]bool{}}
	for _, p := range parts {
		for i := range p.Moments {
			t.moment(&p.Moments[i])
		}
	}
	for _, j := range m.c.Result.Trace.Joints {
		t.driver(j)
	}
	t.bought(m.c.Result.Trace, parts)
	m.page.heading(2, "tray", "To lay out, in order of use")
	m.page.table([]string{"", "thing", "for", "first at", ""}, t.rows)
}

func (t *tray) moment(x *eval.Moment) {
	switch {
	case x.Hold != nil:
		t.held(x.Hold)
	case x.Chuck != nil:
		t.chucked(x.Chuck)
	case x.Cut != nil:
		c := &x.Cut.Choice
		t.atBench(x.Cut)
		t.put(c.By, c.Tool.Path(), x.Cut.Spot, false)
		t.put(c.By, missing(c.NoTool, c.By, x.Cut.Step), x.Cut.Spot, true)
		for _, h := range c.Mounts {
			t.put("holds the tool", h.Path(), x.Cut.Spot, false)
		}
	case x.Turn != nil:
		c := &x.Turn.Choice
		t.put(c.By, c.Tool.Path(), x.Turn.Spot, false)
		t.put(c.By, missing(c.NoTool, c.By, x.Turn.Step), x.Turn.Spot, true)
		if c.Post != nil {
			t.put("holds the tool", c.Post.Path(), x.Turn.Spot, false)
		}
		for _, h := range c.Mounts {
			t.put("holds the tool", h.Path(), x.Turn.Spot, false)
		}
		if w, ok := x.Turn.Train(); ok {
			t.put("change wheels", w.String(), x.Turn.Spot, false)
		}
	case x.Measure != nil && x.Measure.With != nil:
		t.put("measuring", x.Measure.With.Path(), x.Measure.Spot, false)
	case x.Measure != nil && !x.Measure.Tried:
		if g, ok := x.Measure.Gauged(); ok {
			t.put("measuring", g.Set.Path(), x.Measure.Spot, !g.Set.Here())
			return
		}
		t.put("measuring", "an instrument for "+x.Measure.Name, x.Measure.Spot, true)
	case x.Heat != nil && x.Heat.Source != nil:
		t.put(x.Heat.Does, x.Heat.Source.Path(), x.Heat.Spot, false)
	}
}

// atBench puts what hand work is held in.
func (t *tray) atBench(k *eval.Cut) {
	if k.Step.Work.Kind != "bench" {
		return
	}
	for _, r := range k.Step.Work.SetUp.Hold.V {
		if r.Item != nil && r.Item.Kind != "part" && r.Item.Kind != "assembly" {
			t.put("holds the work", r.Item.Path(), k.Spot, false)
		}
	}
}

// held puts what a set-up on a mill or drill press is held with.
func (t *tray) held(h *eval.Holding) {
	c := &h.Choice
	const holds = "holds the work"
	if c.Divided != nil {
		t.put("divides", c.Divided.Item().Path(), h.Spot, false)
	}
	if h.Carried != nil && h.Carried.Unplayed == "" {
		t.put(holds, h.Carried.Choice.HeldBy(), h.Spot, false)
		t.carrier(h.Carried)
	}
	if c.Vise != nil {
		does := holds
		if n, ok := c.Vise.Force.Get(); ok && n > 0 {
			does += ", pressing with " + model.Figure(n) + " N at your usual pull; what a cut wants is not reckoned"
		}
		t.put(does, c.Vise.Path(), h.Spot, false)
	}
	if c.Soft != nil {
		t.put(holds, c.Soft.Path(), h.Spot, false)
	}
	if c.Clamps != nil {
		t.put(holds, c.Clamps.Path(), h.Spot, false)
	}
	if c.Plate != nil {
		t.put(holds, c.Plate.Path(), h.Spot, false)
	}
	if h.Vee != nil {
		t.put(holds, h.Vee.Block.Path(), h.Spot, false)
	}
	if c.Pair != nil && c.Height > 0 {
		t.put("under the work", c.Pair.Member(c.Height), h.Spot, false)
	}
	if s, ok := h.SineSet(); ok {
		t.put("sets the tilt", s.Bar.Path(), h.Spot, !s.Bar.Here())
		if s.Made {
			t.put("under the sine bar", s.Stack.Set.Path(), h.Spot, false)
		} else {
			t.put("under the sine bar", "slip gauges for "+model.Figure(s.Wants)+" mm", h.Spot, true)
		}
	}
	if c.RoundBar > 0 {
		t.put("at the moving jaw", "round bar of ⌀"+model.Figure(c.RoundBar)+" mm", h.Spot, false)
	}
}

// chucked puts what a set-up on a lathe is held with.
func (t *tray) chucked(c *eval.Chucking) {
	const holds = "holds the work"
	t.put(holds, c.Choice.HeldBy(), c.Spot, false)
	t.carrier(c)
	if c.Choice.Bush != nil {
		t.put(holds, c.Choice.Bush.Path(), c.Spot, false)
	}
	if c.Choice.Between != "" {
		t.put("between jaws and work", c.Choice.Between, c.Spot, false)
	}
	if s := c.Choice.Support; s != nil {
		switch {
		case s.Centre != nil:
			t.put("supports the work", s.Centre.Path(), c.Spot, false)
		case s.Steady != nil:
			t.put("supports the work", s.Steady.Path(), c.Spot, false)
		case s.Item != nil:
			t.put("supports the work", s.Item.Path(), c.Spot, false)
		}
	}
}

// carrier puts what turns the work between centres.
func (t *tray) carrier(c *eval.Chucking) {
	if d := c.Choice.Driver; d != nil {
		t.put("turns the work", d.Path(), c.Spot, !d.Here())
	} else if d, ok := c.Carrier(); ok && (c.Choice.Centres || c.Work.SetUp.Driver.Is()) {
		t.put("turns the work", d.Path(), c.Spot, !d.Here())
	}
}

// driver puts what a screw is driven with: as the shop says of its screws, else of the standard of their head.
func (t *tray) driver(j *eval.Joint) {
	if j.Screw == nil || j.Unplayed != "" {
		return
	}
	if by := j.Driver(); by != "" {
		t.put("drives "+j.Screw.Thread.V.String()+" screws", by, j.Spot, false)
	}
}

// bought puts bearings, pins, screws, circlips and parts that are bought ready.
func (t *tray) bought(trace *eval.Trace, parts []*eval.PartTrace) {
	for _, b := range trace.BoughtThings() {
		if slices.ContainsFunc(parts, func(p *eval.PartTrace) bool { return slices.Contains(b.Of, p.Part) }) {
			t.put("bought, for "+b.For, b.Thing, b.Spot, b.Missing)
		}
	}
}
