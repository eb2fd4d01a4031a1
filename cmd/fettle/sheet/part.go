package sheet

import (
	"fmt"
	"math"
	"strings"

	"fettle/cmd/fettle/sketch"
	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// part puts one part on the page: its drawing, its dimensions, and its work.
func (m *maker) part(t *eval.PartTrace) error {
	p := m.page
	if !t.Part.OnlyBought() { // which needs no leaf of its own
		p.add(Block{Kind: Part})
	}
	m.mark("part " + t.Part.Label)
	kind, name := "Part ", t.Part.Label
	if t.Part.Joined() {
		kind = "Assembly "
	}
	if s := title(t); s != name {
		name += ": " + s
	}
	p.heading(1, "", kind+name)
	p.para(pieces(t.Part))
	if n := remark(t.Part.Part.Item); n != "" {
		p.para(sentence(n))
	}
	if b := t.Part.Part.Blank; b != nil && remark(b.Item) != "" {
		p.para("Of the raw piece: " + sentence(remark(b.Item)))
	}
	if t.Part.OnlyBought() {
		m.bought(t)
		return nil
	}
	if t.End == nil {
		p.para("Not made on paper: " + t.Part.Unplayed + ".")
		return nil
	}
	m.flatSheet(t)
	if m.w.Pictures {
		m.later(func() ([]Block, error) {
			all := sizes(t)
			all.Paper = sketch.Column
			d, left, err := sketch.Part(title(t), t.End.Piece, sketch.FirstAngle, all)
			if err != nil {
				return nil, fmt.Errorf("part %s: %w", t.Part.Label, err)
			}
			out := []Block{{Kind: Picture, SVG: d.SVG(), Words: "The " + endOfWork(t) + ", in first angle projection", True: true}}
			if len(left) > 0 {
				out = append(out, Block{Kind: Para, Words: "For these the drawing has no room: " + strings.Join(left, "; ") + "."})
			}
			return out, nil
		})
	}
	p.table([]string{"dimension", "as drawn", "limits, mm"}, m.dimensions(t))
	m.asked(t)
	m.said(finding.Spot{Part: t.Part.Label}, "") // what is said of the part as a whole
	m.mates(t)
	m.work(t)
	return nil
}

// dimensions lists the sizes of a part with their limits.
func (m *maker) dimensions(t *eval.PartTrace) (rows [][]string) {
	general := m.c.Build.Recipe.General
	put := func(name string, of *model.Item, attr string, s model.Known[drawing.Size]) {
		if !s.Is() {
			return
		}
		rows = append(rows, []string{name, written(s.V), limits(limitsIn(t, s.V, general, of, attr))})
	}
	mp := t.Part.Part
	forms := t.Part.Forms
	if t.Part.Joined() { // the others stand with their parts
		forms, _ = t.MadeTogether()
	} else {
		put("diameter", mp.Item, "diameter", mp.Diameter)
	}
	laid := map[string][][]string{} // by feature; of the part itself ""
	all := t.Part.Laid()
	for i, l := range all {
		of, name := "", l.Attr
		if l.Form != nil {
			of, name = l.Form.Name(), l.Form.Name()+", "+l.Attr
		}
		if l.Placed {
			if math.Abs(l.To-l.From) < model.Grain {
				continue
			}
			name = strings.Replace(name, ", at", ", place", 1)
			name = strings.Replace(name, ", points", ", point", 1) + numbered(all, i) + " along the " + [3]string{"length", "width", "height"}[l.Axis]
		}
		laid[of] = append(laid[of], []string{name, written(l.Size), limits(limitsIn(t, l.Size, general, l.Of, l.Attr))})
	}
	if !t.Part.Joined() {
		rows = append(rows, laid[""]...)
	}
	for _, f := range forms {
		m := f.Feature
		put(f.Name()+", diameter", m.Item, "diameter", m.Diameter)
		if o := m.OverRollers; o.Rollers.Is() {
			put(f.Name()+map[bool]string{true: ", over", false: ", between"}[m.Sort.V == "tongue"]+" rollers of "+model.Figure(o.Rollers.V), m.Item, "over_rollers.size", o.Size)
		}
		if len(f.Mouths) > 0 && m.Depth.Is() && m.Depth.V.Size.Nominal > 0 {
			put(f.Name()+", depth", m.Item, "depth", model.Sure(m.Depth.V.Size))
		}
		if f.Lathe != nil || f.Skew != nil || f.Seat != nil || len(f.Copies) > 0 {
			if m.Width.From != model.Chosen || m.Form.V != "vee" { // that of a vee follows from its depth
				put(f.Name()+", width", m.Item, "width", m.Width)
			}
		}
		put(f.Name()+", counterbore diameter", m.Item, "counterbore.diameter", m.Counterbore.Diameter)
		put(f.Name()+", counterbore depth", m.Item, "counterbore.depth", m.Counterbore.Depth)
		put(f.Name()+", countersink diameter", m.Item, "countersink.diameter", m.Countersink.Diameter)
		for _, s := range roundSizes(f) {
			put(f.Name()+", "+strings.ReplaceAll(s.attr, "_", " "), m.Item, s.attr, s.size)
		}
		rows = append(rows, laid[f.Name()]...)
		delete(laid, f.Name())
	}
	return rows
}

// limitsIn are the limits of a size of a part: where it is left as the stock is, those of the stock.
func limitsIn(t *eval.PartTrace, s drawing.Size, general model.General, of *model.Item, attr string) model.Known[eval.Limits] {
	f := t.Part.FormOf(of)
	if l, ok := t.AsStock(f, attr, s); ok && (f != nil || of == t.Part.Part.Item) {
		return l
	}
	return eval.LimitsOf(s, general, of, attr)
}

// numbered is the number of a place among those that its feature is at, in the order written; "" of the only one.
func numbered(all []eval.Laid, i int) string {
	mine, n := 0, 0
	for j, l := range all {
		if l.Placed && l.Form == all[i].Form && l.Attr == all[i].Attr && l.Axis == all[i].Axis {
			n++
			if j == i {
				mine = n
			}
		}
	}
	if n < 2 {
		return ""
	}
	return fmt.Sprint(" ", mine)
}

func written(s drawing.Size) string {
	if s.Written != "" {
		return s.Written
	}
	if s.Unit == drawing.Inch { // worked out in a recipe of inches
		return s.String()
	}
	return model.Figure(s.Nominal)
}

func limits(l model.Known[eval.Limits]) string {
	if !l.Is() {
		return "not said"
	}
	return fmt.Sprintf("%s to %s", model.Figure(l.V.Lo), model.Figure(l.V.Hi))
}

// setting puts one holding on the page, and what is cut in it.
func (m *maker) setting(t *eval.PartTrace, g *group, happened map[finding.Spot]*eval.Moment) {
	p := m.page
	p.heading(2, "", t.Part.Label+" › "+g.name)
	m.mark(t.Part.Label + " " + g.name)
	if why := g.unplayed(0); why != "" {
		p.para("Not made on paper: " + sentence(why))
		return
	}
	rows := append(g.holding(), m.putUp(g)...)
	putting(&rows)("note", remark(g.work().SetUp.Item))
	p.facts(rows)
	if !g.drawn() { // else its first operation shows it
		m.picture(g, 0, "As it is put up")
	}
	m.said(g.spot(), g.spot().Step)
	m.steps(t, g, happened)
	asked := map[string]bool{}
	for _, q := range m.c.Result.Questions {
		if q.Spot.Part == t.Part.Label && q.Spot.SetUp == g.spot().SetUp && g.spot().Step == "" && !asked[q.Asks] {
			asked[q.Asks] = true
			p.add(Block{Kind: Caution, Words: "To ask at the machine: " + sentence(q.Asks)})
		}
	}
}

// drawn says whether the first operation of a set-up is drawn.
func (g *group) drawn() bool {
	return len(g.cuts)+len(g.turns) > 0 && g.unplayed(1) == ""
}

func (g *group) spot() finding.Spot {
	if g.chuck != nil {
		return g.chuck.Spot
	}
	return g.hold.Spot
}

func (m *maker) picture(g *group, step int, words string) {
	if !m.w.Pictures {
		return
	}
	brief := g.shown
	g.shown = true
	m.later(func() ([]Block, error) {
		d, err := g.draw(Asked{Step: step, Brief: brief})
		if err != nil {
			return []Block{{Kind: Para, Words: "No drawing: " + sentence(err.Error())}}, nil
		}
		return []Block{{Kind: Picture, SVG: d.Narrowed().SVG(), Words: words, True: true}}, nil
	})
}

// said puts on the page what was found at a spot, but for dangers, which stand in front too.
func (m *maker) said(s finding.Spot, step string) {
	for i := range m.c.Findings {
		f := &m.c.Findings[i]
		for _, at := range f.Spots {
			if at.Part == s.Part && at.SetUp == s.SetUp && at.Step == step {
				m.finding(f, &at)
				break
			}
		}
	}
	for _, a := range m.c.Result.Accepted {
		if a.Spot.Part == s.Part && a.Spot.SetUp == s.SetUp && a.Spot.Step == step {
			m.page.para("Accepted, " + a.Rule + ": " + sentence(a.Words()))
		}
	}
}

// holding says how the piece is put up.
func (g *group) holding() (rows [][]string) {
	put := putting(&rows)
	if c := g.chuck; c != nil {
		put("machine", path(c.Choice.Machine))
		switch {
		case c.Choice.Chuck != nil:
			put("held in", c.Choice.Chuck.Path())
		case c.Choice.Collets != nil:
			put("held in", fmt.Sprintf("%s[%s]", c.Choice.Collets.Path(), model.Figure(c.Choice.Collet)))
		case c.Choice.Mandrel != nil:
			put("held on", c.Choice.Mandrel.Path())
		case c.Choice.Faceplate != nil:
			put("held on", c.Choice.Faceplate.Path())
		case c.Choice.Centres:
			put("held", "between centres")
		}
		if c.Choice.Reversed {
			put("jaws", "turned round")
		}
		if c.Choice.AnglePlate != nil {
			put("towards the plate", c.Choice.End.String())
		} else if c.Choice.Faceplate != nil {
			put("against the plate", c.Choice.End.String())
		} else {
			put(heldEnd(c), c.Choice.End.String())
			standsOut(c, put)
		}
		put("turns about", c.TurnsOn())
		if c.Gripped > 0 {
			put("gripped on", gripped(c))
		}
		return rows
	}
	h := g.hold
	put("machine", path(h.Choice.Machine))
	if h.Choice.Vise != nil {
		put("held in", h.Choice.Vise.Path())
		if h.Vee == nil {
			put("on the fixed jaw", h.Choice.Back.String())
		} else {
			put("in a vee block", h.Vee.Block.Path())
		}
	}
	if h.Choice.Clamps != nil {
		put("held by", h.Choice.Clamps.Path())
		if h.Vee != nil {
			put("in a vee block", h.Vee.Block.Path())
		}
		if h.Choice.Plate != nil {
			put("against", h.Choice.Plate.Path())
		}
	}
	if d := h.Choice.Divided; d != nil {
		put("on", d.Item().Path())
	}
	put("up", h.Choice.Up.String())
	if h.Choice.Pair != nil && h.Choice.Height > 0 {
		put("on parallels", h.Choice.Pair.Member(h.Choice.Height)+", "+model.Figure(h.Choice.Height)+" mm high")
	}
	if h.Choice.Packing > 0 {
		put("packing", model.Figure(h.Choice.Packing)+" mm")
	}
	if h.JawTop.Is() && h.Choice.Vise != nil {
		put("above the jaws", model.Figure(h.Hi[2]-h.JawTop.V)+" mm")
	}
	return rows
}

func path(m *model.Machine) string {
	if m == nil {
		return ""
	}
	return m.Path()
}

func makes(s *eval.Step) string {
	var names []string
	for _, t := range s.Makes {
		names = append(names, t.Name())
	}
	return strings.Join(names, ", ")
}
