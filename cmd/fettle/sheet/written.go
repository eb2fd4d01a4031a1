package sheet

import (
	"fmt"
	"strings"

	"fettle/eval"
	"fettle/schema/model"
)

// asWritten says what a set-up is written with that only the hands can see to. h is nil on a lathe.
func asWritten(u *model.SetUp, h *eval.Holding, put func(a, b string)) {
	if at, ok := u.OnTable.Get(); ok && len(at) == 2 && h != nil {
		put("on the table", "its middle "+length(at[0])+" from the left end of the table and "+length(at[1])+" from its front")
	}
	if u.Moved.V {
		put("moved", "the holding has been moved on the table: find the zero again")
	}
	if u.Zero.Kept.Is() {
		put("zero", "kept from the set-up before; leave the dials as they are")
	}
	if b, ok := u.Beside.Get(); ok {
		put("lies against", b.Path())
	}
	if t, ok := u.TrueTo.Get(); ok {
		put("set true by", t.Path())
	}
	if h != nil {
		clamped(h, put)
		if t := h.Above(); t > 0 {
			put("on top", length(t)+" of metal or wood, to be cut into")
		}
	}
	soft(u, put)
	put("note", noteOf(u.Item))
}

func noteOf(i *model.Item) string {
	if i == nil {
		return ""
	}
	if a := i.Attr("note"); a != nil {
		return a.Value.Text
	}
	return ""
}

// noted is the note of a step, as rows.
func noted(st *eval.Step) [][]string {
	if n := noteOf(st.Item()); n != "" {
		return [][]string{{"note", n}}
	}
	return nil
}

// clamped says where the tips of the clamps press, from the left end and the back of the piece as it lies.
func clamped(h *eval.Holding, put func(a, b string)) {
	for i, b := range h.Bearings() {
		what := "clamp"
		if i > 0 {
			what = "and"
		}
		put(what, length(tidy(b.At[0]-h.Lo[0]))+" from the left end, "+length(tidy(h.Hi[1]-b.At[1]))+" from the back")
	}
}

// soft says how soft jaws are cut for the piece.
func soft(u *model.SetUp, put func(a, b string)) {
	s := u.Soft
	var words []string
	if s.Of.Is() {
		words = append(words, s.Of.V.Path())
	}
	if s.Bored.Is() {
		words = append(words, "bored to ⌀"+written(s.Bored.V)+" under load")
	}
	if s.Depth.Is() {
		words = append(words, "with a step "+length(s.Depth.V)+" behind their face")
	}
	if s.Step.Is() && s.Step.V > 0 {
		words = append(words, "with a step "+length(s.Step.V)+" above the bed, that the piece sits on")
	}
	put("soft jaws", strings.Join(words, ", "))
}

// stop says where a work stop stands.
func stop(st *model.Stop, put func(a, b string)) {
	if !st.Said || !st.Against.Is() {
		return
	}
	s := "against " + st.Against.V.Path() + ", touching it with the piece down on what it stands on; every other piece goes against it alike"
	switch {
	case st.ClearOfTool.Is() && st.ClearOfTool.V:
		s += "; it stands clear of the tool"
	case st.ClearOfTool.Is():
		s += "; IT STANDS IN THE TOOL'S WAY: take it away before cutting"
	default:
		s += "; whether the tool clears it is not known: turn by hand along the whole cut"
	}
	put("stop", s)
}

// marked puts marking out, punching or stamping on the page.
func (m *maker) marked(k *eval.Marking) {
	st := k.Step.Step
	what := "Mark out "
	if st.StampedFigures.Is() {
		what = "Stamp " + st.StampedFigures.V + " on "
	}
	b := Block{Kind: Tick, Words: what + plain(k.Spot.Part, paths(st.Out.V))}
	if st.Punched.V {
		b.Rows = append(b.Rows, []string{"then", "punch the centres of the holes"})
	}
	if a := st.Item.Attr("from"); a != nil {
		var from []model.Ref
		for _, v := range a.Value.List {
			from = append(from, v.Ref)
		}
		b.Rows = append(b.Rows, []string{"from", plain(k.Spot.Part, paths(from))})
	}
	if st.With.Is() {
		b.Rows = append(b.Rows, []string{"with", paths(st.With.V)})
	}
	if n := noteOf(st.Item); n != "" {
		b.Rows = append(b.Rows, []string{"note", n})
	}
	m.page.add(b)
	m.mark(k.Spot.String())
	m.said(k.Spot, k.Spot.Step)
}

// plain leaves the name of the part away that a block stands in.
func plain(part, path string) string { return strings.ReplaceAll(path, "part."+part+".", "") }

func paths(refs []model.Ref) string {
	var names []string
	for _, r := range refs {
		names = append(names, r.Path())
	}
	return strings.Join(names, ", ")
}

// heated says how a heat is done.
func heated(h *eval.Heating) (rows [][]string) {
	put := func(what, words string) {
		if words != "" {
			rows = append(rows, []string{what, words})
		}
	}
	if h.Least > 0 {
		put("heat", figures(h.Least, h.Most)+" °C")
	}
	switch s, ok := h.Soak(); {
	case s.Said.Is():
		put("at heat for", model.Figure(s.Said.V)+" min, as written")
	case ok && !s.Colour:
		put("at heat for", fmt.Sprintf("%.0f to %.0f min, usual for %s of thickness", s.Least, s.Most, length(s.Thick)))
	}
	put("quench", h.SetUp.Quench.V)
	if h.Source != nil {
		put("with", h.Source.Path())
	}
	put("note", noteOf(h.SetUp.Item))
	return rows
}

// joined lists what is put together and taken apart at the benches of a part, each with its tick.
func (m *maker) joined(t *eval.PartTrace, begin func()) {
	for _, w := range t.Part.Work {
		for _, j := range []struct {
			what string
			refs []model.Ref
		}{{"take apart", w.SetUp.Opens.V}, {"join", w.SetUp.Joins.V}} {
			if w.Kind == "bench" && len(j.refs) > 0 {
				begin()
				m.page.add(Block{Kind: Tick, Words: w.Spot.SetUp + ": " + j.what + " " + paths(j.refs)})
			}
		}
	}
}
