package sheet

import (
	"fmt"
	"slices"
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// work puts the work of a part on the page, in the order in which it is done: set-ups, hand work and heat.
func (m *maker) work(t *eval.PartTrace) {
	groups := settings(t)
	happened := map[finding.Spot]*eval.Moment{}
	heats := map[*model.SetUp]*eval.Heating{}
	for i := range t.Moments {
		mo := &t.Moments[i]
		if st := stepOf(mo); st != nil {
			happened[st.Spot] = mo
		}
		if mo.Heat != nil {
			heats[mo.Heat.SetUp] = mo.Heat
		}
	}
	for _, w := range t.Part.Work {
		switch {
		case w.Kind == "heat":
			m.heat(t, w, heats[w.SetUp])
		case w.Kind == "bench":
			m.bench(t, w, happened)
		default:
			for len(groups) > 0 && groups[0].of(w) { // several, where clamps or supports were moved
				m.setting(t, groups[0], happened)
				groups = groups[1:]
			}
		}
	}
	for _, g := range groups {
		m.setting(t, g, happened)
	}
}

func stepOf(mo *eval.Moment) *eval.Step {
	switch {
	case mo.Cut != nil:
		return mo.Cut.Step
	case mo.Turn != nil:
		return mo.Turn.Step
	case mo.Measure != nil:
		return mo.Measure.Step
	case mo.Deburr != nil:
		return mo.Deburr.Step
	}
	return nil
}

// work is the stretch of work that a holding was made for.
func (g *group) work() *eval.Work {
	if g.chuck != nil {
		return g.chuck.Work
	}
	return g.hold.Work
}

// of says whether the holding is the one of a stretch of work. A part that is opened up has its work twice, so it is not asked
// whether they are the same.
func (g *group) of(w *eval.Work) bool {
	own := g.work()
	return own.SetUp == w.SetUp && own.Facing == w.Facing
}

// shifted says whether the holding is one after clamps or a support were moved.
func (g *group) shifted() bool {
	return g.hold != nil && g.hold.Shifted != nil || g.chuck != nil && g.chuck.Shifted != nil
}

// stretch is the steps of a holding: of one after a shift from that on, and up to the next shift that makes
// another of it.
func (g *group) stretch(t *eval.PartTrace) []*eval.Step {
	all, from, next := g.work().Steps, 0, 0
	if g.shifted() {
		from = max(0, slices.IndexFunc(all, func(st *eval.Step) bool { return st.Spot == g.spot() }))
		next = from + 1
	}
	for ; next < len(all); next++ {
		if all[next].Kind == "shift" && slices.ContainsFunc(settings(t), func(o *group) bool { return o.shifted() && o.spot() == all[next].Spot }) {
			break
		}
	}
	return all[from:next]
}

// steps puts the steps of a holding on the page as they are written.
func (m *maker) steps(t *eval.PartTrace, g *group, happened map[finding.Spot]*eval.Moment) {
	n, with := 0, g.runs()
	for _, st := range g.stretch(t) {
		mo := happened[st.Spot]
		switch {
		case mo != nil && mo.Cut != nil:
			n++
			m.cut(g, mo.Cut, n, with[n])
		case mo != nil && mo.Turn != nil:
			n++
			m.turn(g, mo.Turn, n, with[n])
		case mo != nil && mo.Measure != nil:
			m.measure(mo.Measure)
		case mo != nil && mo.Deburr != nil:
			m.burrs(t.Part.Label+" "+g.name, mo.Deburr)
		case st.Kind == "mark":
			m.marking(t.Part.Label+" "+g.name, st)
		case st.Kind == "shift":
			m.shift(t.Part.Label+" "+g.name, st)
		}
	}
}

// bench puts one stretch of hand work on the page.
func (m *maker) bench(t *eval.PartTrace, w *eval.Work, happened map[finding.Spot]*eval.Moment) {
	p, s, own := m.page, w.SetUp, t.Part.Label
	p.heading(2, "", own+" › "+w.Spot.SetUp)
	m.mark(own + " " + w.Spot.SetUp)
	rows := [][]string{}
	put := putting(&rows)
	if s.Hold.Is() {
		put("held by", paths(s.Hold.V, own))
	}
	if s.Tool.Is() {
		put("with", paths(s.Tool.V, own))
	}
	put("by", s.By.V)
	if s.Joins.Is() {
		put("closes", joints(s.Joins.V, own))
	}
	if s.Opens.Is() {
		put("opens", joints(s.Opens.V, own))
	}
	if s.Marks.Is() {
		put("marks", paths(s.Marks.V, own))
	}
	put("note", remark(s.Item))
	p.facts(rows)
	m.said(w.Spot, "")
	before := len(p.Blocks)
	for _, st := range w.Steps {
		switch mo := happened[st.Spot]; {
		case st.Kind == "mark":
			m.marking(own+" "+w.Spot.SetUp, st)
		case mo == nil:
		case mo.Cut != nil:
			m.byHand(mo.Cut)
		case mo.Measure != nil:
			m.measure(mo.Measure)
		case mo.Deburr != nil:
			m.burrs(own+" "+w.Spot.SetUp, mo.Deburr)
		}
	}
	if len(p.Blocks) == before { // it is one thing to do
		p.add(Block{Kind: Tick, Words: bare(w.Spot.SetUp)})
		m.mark(w.Spot.String())
	}
}

// bare is a set-up's name without the kind in front.
func bare(name string) string {
	_, label, ok := strings.Cut(name, " ")
	if !ok {
		return name
	}
	return label
}

// byHand puts one operation on the page that is done without a machine.
func (m *maker) byHand(k *eval.Cut) {
	b := Block{Kind: Tick, Words: makes(k.Step)}
	put := putting(&b.Rows)
	put("by", k.Choice.By)
	put("tool", k.Choice.Tool.Path())
	put(tapWord(k.Choice.Tool))
	put("MISSING", missing(k.Choice.NoTool, k.Choice.By, k.Step))
	put("not made on paper", k.Unplayed)
	bends(k, put)
	m.notes(k.Step, put)
	m.page.add(b)
	m.mark(k.Spot.String())
	m.said(k.Spot, k.Spot.Step)
}

// burrs puts a deburring on the page: which edges, and which stay as they are.
func (m *maker) burrs(where string, d *eval.Deburr) {
	b := Block{Kind: Tick, Words: "Take the burrs off"}
	put := putting(&b.Rows)
	if d.Step.Step != nil {
		if e := d.Step.Step.Edges; e.Is() {
			put("edges", paths(e.V, d.Spot.Part))
		}
		if d.Step.Step.Tool.Is() {
			put("with", paths(d.Step.Step.Tool.V, d.Spot.Part))
		}
		put("note", remark(d.Step.Step.Item))
	}
	if n := len(d.Left); n > 0 && d.Hold != nil {
		put("left", fmt.Sprintf("%d %s that a hand does not reach in this holding", n, plural(n, "edge", "edges")))
	}
	m.page.add(b)
	m.mark(where + " burrs")
}

func plural(n int, one, more string) string {
	if n == 1 {
		return one
	}
	return more
}

// marking puts a marking out, or a stamping, on the page.
func (m *maker) marking(where string, st *eval.Step) {
	s, own := st.Step, st.Spot.Part
	b := Block{Kind: Tick, Words: "Mark out " + paths(s.Out.V, own)}
	put := putting(&b.Rows)
	if s.StampedFigures.Is() {
		b.Words = "Stamp " + paths(s.Out.V, own)
		put("figures", s.StampedFigures.V)
	}
	if a := s.Attr("from"); a != nil {
		put("lines from", said(a.Value, own))
	}
	if s.With.Is() {
		put("with", paths(s.With.V, own))
	}
	if s.Punched.Is() && s.Punched.V {
		put("then", "punch the centres")
	}
	put("note", remark(s.Item))
	m.page.add(b)
	m.mark(where + " marks")
	m.said(st.Spot, st.Spot.Step)
}

// shift puts on the page what is moved while the piece stays where it is.
func (m *maker) shift(where string, st *eval.Step) {
	b := Block{Kind: Tick, Words: "Move, the piece staying where it is"}
	put := putting(&b.Rows)
	for _, name := range []string{"clamps", "support", "packing"} {
		if a := st.Step.Attr(name); a != nil {
			put(name, said(a.Value, st.Spot.Part))
		}
	}
	put("note", remark(st.Step.Item))
	m.page.add(b)
	m.mark(where + " shift")
	m.said(st.Spot, st.Spot.Step)
}

// heat puts one heat on the page.
func (m *maker) heat(t *eval.PartTrace, w *eval.Work, h *eval.Heating) {
	p := m.page
	p.heading(2, "", t.Part.Label+" › "+w.Spot.SetUp)
	m.mark(t.Part.Label + " " + w.Spot.SetUp)
	if h == nil {
		p.para("Not made on paper: " + sentence(w.Unplayed))
		return
	}
	b := Block{Kind: Tick, Words: h.Does}
	heatLines(h, t.Part.Label, putting(&b.Rows))
	p.add(b)
	m.mark(h.Spot.String())
	m.said(h.Spot, h.Spot.Step)
	for _, q := range m.c.Result.Questions {
		if q.Spot == h.Spot {
			p.add(Block{Kind: Caution, Words: sentence(q.Asks)})
		}
	}
	p.add(Block{Kind: Caution, Words: hot})
}

// hot is the usual caution beside work with heat (common practice).
const hot = "Hot metal looks like cold metal. Work where nothing can catch fire and the air is drawn off, with eyes and hands covered, a lid or sand at hand, " +
	"and as the makers of torch, furnace, filler and flux say."

// heatLines say how hot, how long and what for.
func heatLines(h *eval.Heating, own string, put func(a, b string)) {
	s := h.SetUp
	switch {
	case h.Least <= 0:
		put("heat", "not known")
	case h.Most > h.Least:
		put("heat", model.Figure(h.Least)+" to "+model.Figure(h.Most)+" °C")
	default:
		put("heat", model.Figure(h.Least)+" °C")
	}
	if s.Colour.Is() {
		put("as written", s.Colour.V)
	}
	switch k, ok := h.Soak(); {
	case k.Said.Is():
		put("at heat for", model.Figure(k.Said.V)+" min, as written")
	case ok && !k.Colour:
		put("at heat for", fmt.Sprintf("%.0f to %.0f min, usual for %s of thickness", k.Least, k.Most, length(k.Thick)))
	}
	put("quench", s.Quench.V)
	if s.Zone.Is() {
		put("only", paths(s.Zone.V, own))
	}
	if s.Joins.Is() {
		put("joins", joints(s.Joins.V, own))
	}
	switch {
	case h.Solder.Name != "":
		put("filler", h.Solder.Name)
	default:
		put("filler", s.Filler.V)
	}
	if s.Gap.Is() {
		put("gap", written(s.Gap.V)+" mm on one side, cold")
	}
	if h.Source != nil {
		put("with", h.Source.Path())
	}
	put("note", remark(s.Item))
}
