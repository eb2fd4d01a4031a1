package sheet

import (
	"fmt"
	"math"
	"strings"

	"fettle/eval"
	"fettle/eval/reckon/dividing"
	"fettle/eval/reckon/screwcut"
	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// cut puts one operation on a mill or drill press on the page.
func (m *maker) cut(g *group, k *eval.Cut, n int) {
	b := Block{Kind: Tick, Words: fmt.Sprintf("%d  %s: %s", n, k.Choice.By, makes(k.Step))}
	put := func(what, words string) {
		if words != "" && words != "-" {
			b.Rows = append(b.Rows, []string{what, words})
		}
	}
	if k.Unplayed != "" {
		put("not made on paper", k.Unplayed)
		m.page.add(b)
		return
	}
	put("tool", k.Choice.Tool.Path())
	put("MISSING", k.Choice.NoTool)
	var mounts []string
	for _, h := range k.Choice.Mounts {
		mounts = append(mounts, h.Path())
	}
	put("in", strings.Join(mounts, ", in it "))
	if k.Choice.Drawbar != (drawing.Thread{}) {
		put("drawbar", k.Choice.Drawbar.String())
	}
	if k.Stack.Out.Is() && (k.Choice.Out > 0 || k.Stack.OutKnown()) {
		put("tool out", model.Figure(k.Stack.Out.V)+" mm")
	}
	put("speed", speed(k.Choice.Speed, k.Choice.Reverse))
	put("turned on by", strings.Join(k.Choice.Index, "; "))
	running := divided(g.hold, k, put)
	for i := range k.Works {
		m.working(g.hold, k, &k.Works[i], put)
	}
	final := map[*eval.Form]bool{}
	for i := range k.Works {
		final[k.Works[i].Target.Form] = k.Works[i].Final
	}
	m.target(k.Step, final, put, &b)
	m.page.add(b)
	m.page.add(running...)
	m.picture(g, n, "The tool at its deepest")
	m.said(k.Spot, k.Spot.Step)
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

// working says where one target is made and how deep.
func (m *maker) working(h *eval.Holding, k *eval.Cut, w *eval.Working, put func(a, b string)) {
	if w.Wrong != "" || len(w.Moves) == 0 {
		return
	}
	piece := k.Before.Piece
	if w.Turn != nil {
		piece = piece.Placed(*w.Turn)
	}
	piece = piece.Placed(h.Pose)
	zero := solid.Vec{piece.Extent(0, -1), piece.Extent(1, 1), piece.Extent(2, 1)}
	deep := math.Inf(1)
	for _, v := range w.Moves {
		deep = min(deep, v.From[2], v.To[2])
	}
	at := func(v solid.Vec) string {
		return fmt.Sprintf("x %s, y %s", model.Figure(v[0]-zero[0]), model.Figure(zero[1]-v[1]))
	}
	var places []string
	for _, v := range w.Moves {
		s := at(v.From)
		if e := at(v.To); e != s {
			s += " to " + e
		}
		if len(places) == 0 || places[len(places)-1] != s {
			places = append(places, s)
		}
	}
	if len(places) > 12 {
		places = append(places[:12], fmt.Sprintf("and %d more", len(places)-12))
	}
	put("tool's middle at", strings.Join(places, "; "))
	if w.Target.Form != nil && w.Target.Form.Tooth != nil {
		put("gaps deep", model.Figure(w.Depth)+" mm from the outside")
	}
	put("down", model.Figure(zero[2]-deep)+" mm from the top of the piece to "+tip(k)+point(w, k.Choice.By)+m.turns(h, "z", zero[2]-deep))
}

// mostPlaces is how many places a running table on a sheet has at most.
const mostPlaces = 150

// divided says how the arms of the sector stand, and gives the running table of every place.
func divided(h *eval.Holding, k *eval.Cut, put func(a, b string)) (out []Block) {
	d, ok := h.Divider()
	if !ok {
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

// turns says a way in turns and lines of the machine's own dial, where the shop tells of it.
func (m *maker) turns(h *eval.Holding, axis string, way float64) string {
	mc := h.Choice.Machine
	if mc == nil {
		return ""
	}
	d := map[string]model.Dial{"x": mc.Dials.X, "y": mc.Dials.Y, "z": mc.Dials.Z}[axis]
	turn, division := d.Turn, d.Division
	if !turn.Is() || !division.Is() || !(turn.V > 0) || !(division.V > 0) || way < 0 {
		return ""
	}
	full := math.Floor(way/turn.V + 1e-9)
	lines := math.Round((way-full*turn.V)/division.V*10) / 10
	return fmt.Sprintf(" (%s turns and %s lines of its dial)", model.Figure(full), model.Figure(lines))
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
			if final[t.Form] {
				put("finished "+d.attr, written(d.size.V)+", "+limits(eval.LimitsOf(d.size.V, general, f.Item, d.attr))+" mm")
				b.Box = "as made"
			}
		}
	}
}

// turn puts one operation on a lathe on the page.
func (m *maker) turn(g *group, k *eval.Turn, n int) {
	b := Block{Kind: Tick, Words: fmt.Sprintf("%d  %s: %s", n, k.Choice.By, makes(k.Step))}
	put := func(what, words string) {
		if words != "" && words != "-" {
			b.Rows = append(b.Rows, []string{what, words})
		}
	}
	if k.Unplayed != "" {
		put("not made on paper", k.Unplayed)
		m.page.add(b)
		return
	}
	put("tool", k.Choice.Tool.Path())
	put("MISSING", k.Choice.NoTool)
	var mounts []string
	for _, h := range k.Choice.Mounts {
		mounts = append(mounts, h.Path())
	}
	put("in", strings.Join(mounts, ", in it "))
	if k.Choice.Post != nil {
		put("in", k.Choice.Post.Path())
	}
	put("speed", speed(k.Choice.Speed, k.Choice.Reverse))
	if t, ok := k.Train(); ok {
		put("change wheels", trainWords(t))
	}
	if k.Choice.Slide != 0 {
		put("top slide", model.Figure(k.Choice.Slide)+" degrees from the axis")
	}
	put("turned on by", strings.Join(k.Choice.Index, "; "))
	for i := range k.Works {
		turning(k.Choice.By, &k.Works[i], put)
	}
	final := map[*eval.Form]bool{}
	for i := range k.Works {
		final[k.Works[i].Target.Form] = k.Works[i].Final
	}
	m.target(k.Step, final, put, &b)
	m.page.add(b)
	m.picture(g, n, "Before the cut, with the way of the tip")
	m.said(k.Spot, k.Spot.Step)
}

func turning(by string, w *eval.Turning, put func(a, b string)) {
	if w.Wrong != "" {
		return
	}
	switch {
	case w.Depth > 0:
		d := model.Figure(w.Depth) + " mm of full diameter from the finished end"
		if w.Point > 0 {
			d += fmt.Sprintf(", and %s mm of its %s below", model.Figure(w.Point), leading(by))
		}
		put("deep", d)
	case by == "facing":
		put("to", model.Figure(w.U0)+" mm from the jaw face")
		put("comes off", model.Figure(math.Abs(w.U1-w.U0))+" mm of the length")
	case by == "parting":
		put("at", model.Figure(w.U0)+" to "+model.Figure(w.U1)+" mm from the jaw face")
	case math.Abs(w.U1-w.U0) < 1e-9:
		put("at", model.Figure(w.U0)+" mm from the jaw face")
	default:
		put("from the jaw face", model.Figure(w.U0)+" to "+model.Figure(w.U1)+" mm")
		if w.R0 == w.R1 {
			put("leaves", "⌀"+model.Figure(2*w.R0)+" mm")
		} else {
			put("leaves", "⌀"+model.Figure(2*w.R0)+" to ⌀"+model.Figure(2*w.R1)+" mm")
		}
		if w.Off > 0 {
			put("comes off", model.Figure(w.Off)+" mm on the radius at most")
		}
	}
}

// leading is what the end of a tool below full diameter is called.
func leading(by string) string {
	if by == "drilling" || by == "spotting" {
		return "point"
	}
	return "lead"
}

// trainWords says a train from the spindle to the lead screw, and how far off it is.
func trainWords(t screwcut.Train) string {
	if t.Exact {
		return t.String() + " (drivers over driven), exact"
	}
	return fmt.Sprintf("%s (drivers over driven): cuts %s mm, %s parts in a million off", t, model.Figure(t.Lead), model.Figure(math.Round(math.Abs(t.PPM))))
}
