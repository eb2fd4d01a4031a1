package sheet

import (
	"fmt"
	"strings"

	"fettle/eval"
	"fettle/eval/reckon/dividing"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// cut puts one operation on a mill or drill press on the page, with the drawing unless another one of the
// set-up shows it.
func (m *maker) cut(g *group, k *eval.Cut, n, with int) {
	b := Block{Kind: Tick, Words: fmt.Sprintf("%d  %s: %s", n, k.Choice.By, makes(k.Step))}
	put := putting(&b.Rows)
	if m.unplayed(k.Unplayed, &b, k.Spot) {
		return
	}
	letCool(k.Step, put)
	m.tool(k.Choice.Tool, missing(k.Choice.NoTool, k.Choice.By, k.Step), k.Choice.Mounts, put)
	put("drawbar", drawbar(k))
	if k.Stack.Out.Is() && (k.Choice.Out > 0 || k.Stack.OutKnown()) {
		put("tool out", model.Figure(k.Stack.Out.V)+" mm")
	}
	byHand(&m.c.Build.Shop, k.Choice.Tool, k.Choice.ByHand, put)
	put("speed", speed(k.Choice.Speed, k.Choice.Reverse))
	passes, cuts := k.Passes()
	oil, _ := k.Oil()
	feeding(k.Feeding(), passes, cuts, oil, put)
	begins(k, put)
	put("turned on by", strings.Join(k.Choice.Index, "; "))
	teeth(k, put)
	running := divided(g.hold, k, put)
	tables := append(m.where(g.hold, k, put), running...)
	if r := k.Stack.Diameter.Or(0) / 2; k.Choice.By == "milling" && r > 0 {
		put("half the tool", model.Figure(r)+" mm, counted in")
	}
	m.down(g.hold, k, put)
	m.nearest(g.hold, k, put)
	threads(k.Works, put)
	final := map[*eval.Form]bool{}
	for i := range k.Works {
		final[k.Works[i].Target.Form] = k.Works[i].Final
	}
	m.target(k.Step, final, put, &b)
	m.drawnWith(n, with, put)
	m.notes(k.Step, put)
	cutAsks(g.hold, k, put)
	m.page.add(b)
	m.mark(k.Spot.String())
	rows, wide := 0, false
	for i := range tables {
		rows += len(tables[i].Rows)
		wide = wide || len(tables[i].Head) > 6
	}
	long := wide || rows > longTable // they do not stand beside the drawing
	if !long {
		m.page.add(tables...)
	}
	if n == with {
		m.picture(g, n, "")
	}
	if long {
		m.page.add(tables...)
	}
	m.said(k.Spot, k.Spot.Step)
}

// drawbar is the thread that is drawn up; "" where nothing is, or it is not known what.
func drawbar(k *eval.Cut) string {
	for _, l := range k.Stack.Links {
		if l.Kind != "drawbar" || l.Has == "" {
			continue
		}
		switch l.Fits {
		case model.Yes:
			return l.Has
		case model.NotKnown:
			return l.Has + "; which ones are here is not said"
		}
	}
	return ""
}

// missing says which tool is not there; "" where one is.
func missing(why, by string, st *eval.Step) string {
	if why == "none" {
		return "a tool for " + by + " " + makes(st)
	}
	return why
}

func (m *maker) drawnWith(n, with int, put func(a, b string)) {
	if n != with && m.w.Pictures {
		put("drawing", "that of "+fmt.Sprint(with))
	}
}

// letCool says that the work is to be cold before a cut.
func letCool(s *eval.Step, put func(a, b string)) {
	if s.Step != nil && s.Step.Cold.V {
		put("first", "let the work cool to the warmth of the room, and measure it once more")
	}
}

func speed(rpm float64, reverse bool) string {
	if rpm == 0 {
		return ""
	}
	s := model.Figure(rpm) + " rev/min"
	if reverse {
		s += ", running reverse"
	}
	return s
}

// mostPlaces is how many places a running table on a sheet has at most.
const mostPlaces = 150

// longTable is how many rows of tables still stand beside a drawing.
const longTable = 14

// divided says how the arms of the sector stand, and gives the running table of every place.
func divided(h *eval.Holding, k *eval.Cut, put func(a, b string)) (out []Block) {
	d, ok := h.Divider()
	if !ok || len(k.Choice.Index) == 0 {
		return nil
	}
	for _, s := range eval.Settings(d, k.Step) {
		c := s.Move.Crank
		if n := c.Span(); n > 0 && s.Move.Method != dividing.Direct {
			put("sector arms", fmt.Sprintf("%d holes between them, the pin's own counted", n))
		}
		if s.Division.Count > mostPlaces || s.Division.Count == 0 {
			continue
		}
		out = append(out, Block{Kind: Table, Head: []string{"place", "turns", "hole", "place", "turns", "hole", "place", "turns", "hole"}, Rows: columns(s)})
	}
	return out
}

// columns lays a running table out in three columns, each read downwards. Turns and holes count
// from the first place.
func columns(s eval.Setting) [][]string {
	var all [][]string
	for p := range dividing.Table(s.Division.Job, s.Move) {
		name := fmt.Sprint(p.Place)
		if p.Move > 0 && p.Place == 1 {
			name = "1 again"
		}
		all = append(all, []string{name, fmt.Sprint(p.Turns), fmt.Sprint(p.Hole)})
	}
	rows := make([][]string, (len(all)+2)/3)
	for i := range rows {
		for c := range 3 {
			if k := c*len(rows) + i; k < len(all) {
				rows[i] = append(rows[i], all[k]...)
			} else {
				rows[i] = append(rows[i], "", "", "")
			}
		}
	}
	return rows
}

// threadOf is a feature's thread as written.
func threadOf(f *model.Feature) string {
	if f.Thread.Size.Is() {
		return f.Thread.Size.V.String()
	}
	if f.ThreadSize.Is() {
		return f.ThreadSize.V.String()
	}
	return ""
}

// tip is the place of the tool that the depth reaches to.
func tip(k *eval.Cut) string {
	if t := k.Choice.Tool.Cutter; t != nil {
		switch t.Kind {
		case "slitting_saw":
			return "the saw's lower face"
		case "gear_cutter", "side_and_face_cutter":
			return "the cutter's lower face"
		}
	}
	return "the tip"
}

// point says how much of a depth is below full diameter.
func point(w *eval.Working, by string) string {
	if !(w.Point > 0) {
		return ""
	}
	return fmt.Sprintf(", of which %s mm are its %s", model.Figure(w.Point), leading(by))
}

// target says the size that the operation is to bring about, and leaves room for the size as made
// where it is the finished one.
func (m *maker) target(s *eval.Step, final map[*eval.Form]bool, put func(a, b string), b *Block) {
	general := m.c.Build.Recipe.General
	for _, t := range s.Makes {
		if t.Form == nil {
			continue
		}
		f := t.Form.Feature
		if t.Sub == "thread" || f.Kind == "thread" {
			put("thread", threadOf(f))
		}
		if t.Sub != "" {
			continue
		}
		for _, d := range []struct {
			attr string
			size model.Known[drawing.Size]
		}{{"diameter", f.Diameter}, {"width", f.Width}} {
			if !d.size.Is() {
				continue
			}
			if to := s.Step; to != nil && to.To.Is() {
				put("to", written(to.To.V.Size)+" now; "+written(d.size.V)+" when finished")
				continue
			}
			if final[t.Form] && !(d.attr == "diameter" && f.Thread.Said) {
				l := eval.LimitsOf(d.size.V, general, f.Item, d.attr)
				name := "finished " + strings.Replace(d.attr, "diameter", "⌀", 1)
				if len(s.Makes) > 1 {
					name += ", " + t.Name()
				}
				if l.Is() {
					put(name, written(d.size.V)+", "+limits(l)+" mm")
					if d.size.V.Tol != (drawing.Tolerance{}) || m.mate(t.Form) != "" {
						put("if it is otherwise", m.otherwise(t.Form, d.attr, l.V))
					}
				} else {
					put(name, written(d.size.V)+", its limits not said")
				}
				b.Box = "as made"
				b.Boxes = append(b.Boxes, boxesOf(t.Form, name)...)
			}
		}
	}
}

// mostBoxes is how many holes of one feature have a box each to write their size in; of more, the least and
// the greatest are written down.
const mostBoxes = 6

// boxesOf lists what of one size is written down as made: each hole of several, else the size itself.
func boxesOf(f *eval.Form, name string) (out []string) {
	name = strings.TrimPrefix(name, "finished ")
	switch n := len(f.Mouths); {
	case n < 2:
		return []string{name}
	case n > mostBoxes:
		return []string{name + ", the least", name + ", the greatest"}
	default:
		for i := range n {
			out = append(out, fmt.Sprintf("%s, no. %d", name, i+1))
		}
		return out
	}
}

// threads says what holes stand for threads, and what threads come into holes, each once.
func threads(ws []eval.Working, put func(a, b string)) {
	said := map[string]bool{}
	once := func(a, b string) {
		if !said[a+b] {
			said[a+b] = true
			put(a, b)
		}
	}
	for i := range ws {
		if ws[i].Wrong == "" {
			tapped(&ws[i], once)
			forThread(ws[i].Target, &ws[i], once)
		}
	}
}

// nearest says how near the tool, or what holds it, comes to what stands there.
func (m *maker) nearest(h *eval.Holding, k *eval.Cut, put func(a, b string)) {
	var near []string
	in := ""
	if v := h.Choice.Vise; v != nil {
		in = " of " + v.Path()
	}
	for _, c := range closest(h, k) {
		c.thing = strings.TrimSuffix(c.thing, in)
		name := strings.TrimPrefix(c.body.Name, "the cutting part of ")
		if name == "the cutter" {
			name = k.Choice.Tool.Path()
		}
		who := name + " "
		if name == k.Choice.Tool.Path() {
			who = "" // it goes without saying
		}
		switch {
		case c.mm < 0:
			put("CLASH", name+" runs into "+c.thing+" by "+tenthUp(-c.mm)+" mm")
		case c.mm < 0.005:
			near = append(near, who+"just touches "+c.thing)
		case c.least:
			near = append(near, who+"at least "+length(c.mm)+" to "+c.thing)
		default:
			near = append(near, who+length(c.mm)+" to "+c.thing)
		}
	}
	put("comes nearest", strings.Join(near, "; "))
}
