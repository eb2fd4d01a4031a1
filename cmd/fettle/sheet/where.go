package sheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"fettle/eval"
	"fettle/eval/solid"
	"fettle/schema/model"
)

// Where an operation on a mill is made, from the place that its set-up counts from: in figures, and
// in turns and lines of the machine's own dials. The figures are those of the tool's middle, its
// radius already counted in.

// fewPlaces is how many places stand in the operation's own lines; more get a table.
const fewPlaces = 3

// where says in the operation's lines where it is made, or gives a table that says it.
func (m *maker) where(h *eval.Holding, k *eval.Cut, put func(a, b string)) (table []Block) {
	if table, ok := m.ruled(h, k, put); ok {
		return table
	}
	if table, ok := m.racked(h, k, put); ok {
		return table
	}
	ps := placesOf(k)
	if len(ps) == 0 || m.sweeps(h, k, put) {
		return nil
	}
	piece, pose := asPut(h, k)
	z := zeroOf(h, k, piece, pose)
	d, known := m.axes(h.Choice.Machine)
	if k.LevelSpindle() {
		known = [3]bool{}
	}
	if turnedOn(h, k) && len(ps) > 1 {
		// The tool stays where it is; the table turns.
		put("the others", strconv.Itoa(len(ps)-1)+" more, the table turned on and the tool left where it is")
		ps = ps[:1]
	}
	if len(ps) > fewPlaces || len(ps) > 1 && known[0] && known[1] {
		put("tool's middle at", strconv.Itoa(len(ps))+" places, in the table below")
		return []Block{placeTable(ps, z, d, known)}
	}
	var words []string
	for _, p := range ps {
		s := at(z, p.from)
		if e := at(z, p.to); e != s {
			s += " to " + e
		}
		words = append(words, s)
	}
	put("tool's middle at", strings.Join(words, "; "))
	if len(ps) == 1 && known[0] && known[1] {
		s := onDials(z, d, ps[0].from)
		if e := onDials(z, d, ps[0].to); e != s {
			s += "; to " + e
		}
		put("on the dials", s)
	}
	return nil
}

// turnedOn says whether the places of an operation are made by turning the table that the piece is
// clamped to.
func turnedOn(h *eval.Holding, k *eval.Cut) bool {
	return h.Choice.Divided != nil && h.Carried == nil && len(k.Choice.Index) > 0
}

// asPut is the piece as it stands before an operation, turned as for the first place of it.
func asPut(h *eval.Holding, k *eval.Cut) (*solid.Piece, solid.Pose) {
	piece := k.Stood().Piece
	if len(k.Works) > 0 && k.Works[0].Turn != nil {
		piece = piece.Placed(*k.Works[0].Turn)
	}
	return piece.Placed(h.Pose), h.Pose
}

func at(z zero, v solid.Vec) string {
	q := z.of(v)
	return fmt.Sprintf("x %s, y %s", model.Figure(tidy(q[0])), model.Figure(tidy(q[1])))
}

// tidy takes the last digits of a sum away, to a tenth of a Grain.
func tidy(x float64) float64 { return math.Round(x*1e4) / 1e4 }

// aside is which way a figure below nought lies.
func (z zero) aside(axis int) string {
	switch {
	case axis == 1 && z.sy < 0:
		return "front"
	case axis == 1:
		return "back"
	case z.sx < 0:
		return "right"
	}
	return "left"
}

func onDials(z zero, d [3]dial, v solid.Vec) string {
	q := z.of(v)
	var out []string
	for i, name := range []string{"x", "y"} {
		s := name + " " + d[i].reads(q[i])
		if tidy(q[i]) < 0 {
			s += " to the " + z.aside(i)
		}
		out = append(out, s)
	}
	return strings.Join(out, ", ")
}

// placeTable lists places by their numbers on the drawing; of a stretch both ends.
func placeTable(ps []place, z zero, d [3]dial, known [3]bool) Block {
	b := Block{Kind: Table, Head: []string{"place", "x", "y"}}
	both := known[0] && known[1]
	if both {
		b.Head = append(b.Head, "x: turns + lines", "y: turns + lines")
	}
	row := func(name string, v solid.Vec) {
		q := z.of(v)
		r := []string{name, model.Figure(tidy(q[0])), model.Figure(tidy(q[1]))}
		for i := range 2 {
			if both {
				s := d[i].short(q[i])
				if tidy(q[i]) < 0 {
					s += " to the " + z.aside(i)
				}
				r = append(r, s)
			}
		}
		b.Rows = append(b.Rows, r)
	}
	for i, p := range ps {
		if len(b.Rows) >= mostPlaces {
			more := make([]string, len(b.Head))
			more[0] = "and " + strconv.Itoa(len(ps)-i) + " more"
			b.Rows = append(b.Rows, more)
			break
		}
		n := strconv.Itoa(i + 1)
		if level(p.from, p.to) {
			row(n, p.from)
			continue
		}
		row(n+", from", p.from)
		row(n+", to", p.to)
	}
	return b
}

// down says how deep each target is made, each depth once.
func (m *maker) down(h *eval.Holding, k *eval.Cut, put func(a, b string)) {
	said := map[string]bool{}
	once := func(a, b string) {
		if !said[a+b] {
			said[a+b] = true
			put(a, b)
		}
	}
	for i := range k.Works {
		if w := &k.Works[i]; w.Wrong == "" && len(w.Moves) > 0 {
			m.depth(h, k, w, once)
		}
	}
}

func (m *maker) depth(h *eval.Holding, k *eval.Cut, w *eval.Working, put func(a, b string)) {
	piece := k.Stood().Piece
	if w.Turn != nil {
		piece = piece.Placed(*w.Turn)
	}
	z := zeroOf(h, k, piece.Placed(h.Pose), h.Pose)
	if w.Target.Form != nil && w.Target.Form.Tooth != nil {
		put("gaps deep", model.Figure(w.Depth)+" mm from the outside")
	} else if w.Target.Form != nil && w.Target.Form.Rack != nil {
		put("gaps deep", model.Figure(tidy(w.Depth))+" mm from the face")
		if k.SetBy(w.Target.Form) == 2 {
			return // the first gap says how far down
		}
	}
	low := math.Inf(1)
	for _, v := range w.Moves {
		low = min(low, v.From[2], v.To[2])
	}
	if k.LevelSpindle() {
		if r := k.Stack.Diameter.Or(0) / 2; r > 0 {
			from := z.names[2]
			if from == "its top" {
				from = "the top of the piece"
			}
			put("down", length(z.at[2]-low+r)+" from "+from+" to the cutter's lowest edge: touch it with the cutter, then bring the table up so far")
		}
		if h.Seat.Is() {
			put("its axis", length(low)+" above the table")
		}
		return
	}
	if f := w.Target.Form; f != nil && f.Scale != nil && !f.Feature.Deep.Is() {
		put("down", "until its lines can be read well: how deep they are is not said; try it on a spare piece")
		return
	}
	way := tidy(z.at[2] - low)
	from := "the top of the piece"
	if z.names[2] != "its top" {
		from = z.names[2]
	}
	s := model.Figure(way) + " mm from " + from + " to " + tip(k) + point(w, k.Choice.By)
	if way < 0 {
		s = model.Figure(-way) + " mm above " + from + " to " + tip(k)
	}
	if d, known := m.axes(h.Choice.Machine); known[2] {
		s += " (" + d[2].reads(way) + " of the z dial)"
	}
	if mc := h.Choice.Machine; mc != nil && way > 0 {
		if d, ok := m.dialOf(mc.Dials.Quill.Turn, mc.Dials.Quill.Division); ok {
			s += " (" + d.reads(way) + " of the quill's dial)"
		}
	}
	put("down"+ofWhich(k, w.Target.Name()), s)
	m.kerf(h, k, w, low, way, put)
}

// kerf says how high a disc cutter that lies level stands, and what of that is half its own width; of one
// that cuts teeth, how it comes on the axis of the work.
func (m *maker) kerf(h *eval.Holding, k *eval.Cut, w *eval.Working, low, way float64, put func(a, b string)) {
	t := k.Choice.Tool.Cutter
	if t == nil || !w.Level || !t.Width.Is() || !(t.Width.V > 0) {
		return
	}
	half, name, cut := t.Width.V/2, "saw", "kerf"
	if t.Kind != "slitting_saw" {
		name, cut = "cutter", "width"
	}
	put("of that", model.Figure(tidy(way-half))+" mm to the middle of the cut and "+model.Figure(half)+" mm, half the "+cut+" of "+
		model.Figure(t.Width.V)+" mm: touch the top with the "+name+"'s lower face and go down the whole "+model.Figure(way)+" mm")
	if d := h.Choice.Divided; d != nil && h.Part.Round && d.CentreHeight().Is() {
		axis := h.Pose.Point(solid.Vec{})
		high := d.CentreHeight().V + low - axis[2]
		put("on centre", "the cutter's middle "+length(tidy(high+half))+" above the table, as high as the axis of the work: its lower face at "+
			length(tidy(high))+", its upper at "+length(tidy(high+2*half)))
		return
	}
	if h.Seat.Is() {
		on := "what the piece stands on"
		if h.Choice.Pair != nil && h.Choice.Height > 0 {
			on = "the parallels"
		}
		put(name+"'s lower face", model.Figure(tidy(low-h.Seat.V))+" mm above "+on)
	}
}

// ofWhich names a target where an operation makes several; "" where it makes one.
func ofWhich(k *eval.Cut, name string) string {
	for i := range k.Works {
		if k.Works[i].Target.Name() != name {
			return ", " + name
		}
	}
	return ""
}
