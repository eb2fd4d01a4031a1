package sheet

import (
	"fmt"
	"strconv"

	"fettle/cmd/fettle/sketch"
	"fettle/eval"
	"fettle/eval/solid"
	"fettle/schema/model"
)

// racked says how a rack is set from gap to gap by the dial: where the first gap lies, and a table of all,
// counted from the first.
func (m *maker) racked(h *eval.Holding, k *eval.Cut, put func(a, b string)) (table []Block, ok bool) {
	for i := range k.Works {
		w := &k.Works[i]
		f := w.Target.Form
		if f == nil || f.Rack == nil {
			continue
		}
		ok = true
		r, known := k.Ruling(f)
		if w.Wrong != "" || len(w.Moves) == 0 || !known {
			continue
		}
		axis := "xyz"[r.Axis : r.Axis+1]
		put("first gap", m.firstGap(h, k, w, r.Axis))
		if ps := placesOf(k); len(ps) > 0 {
			put("along each gap", "from "+alongGap(h, k, ps[0], r.Axis))
		}
		if f.Rack.Count > 1 {
			put("the others", fmt.Sprintf("%d more, in %s, %s: in the table below, each counted from the first, never from the one before", f.Rack.Count-1, axis, rackGoes(h, f)))
		}
		if len(r.Lacks) == 0 {
			put("one line of "+r.Readby, model.Figure(r.Line)+" mm"+rounding(&r, "gap"))
		}
		table = append(table, m.rackTable(h, f, r.Axis))
	}
	return table, ok
}

// firstGap is where the first gap of a rack lies as the piece is held, along the axis that sets it: its middle, of
// ratchet teeth the foot of it.
func (m *maker) firstGap(h *eval.Holding, k *eval.Cut, w *eval.Working, axis int) string {
	f := w.Target.Form
	piece, pose := asPut(h, k)
	z := zeroOf(h, k, piece, pose)
	var v solid.Vec
	v[f.Rack.Run], v[f.Into.Face.Axis()] = f.Rack.At(0), f.Into.At
	middle := ": the middle of the cutter's width"
	if s := &f.Rack.Section; s.Ratchet {
		v[f.Rack.Run] += (s.Foot[0][0] + s.Foot[1][0]) / 2
		middle = ": the cutter's point, at the foot of the steep side"
	}
	v = pose.Point(v)
	if c := k.Choice.Tool.Cutter; c.Kind == "end_mill" || c.Kind == "slot_drill" {
		middle = ": the tool's middle"
	}
	if axis == 2 {
		from := z.names[2]
		if from == "its top" {
			from = "the top of the piece"
		}
		return model.Figure(tidy(z.at[2]-v[2])) + " mm below " + from + middle
	}
	return "xy"[axis:axis+1] + " " + model.Figure(tidy(z.of(v)[axis])) + middle
}

// alongGap is the way of the tool's middle through a gap of a rack that an axis sets; where neither way of the table
// is that axis, also how far in it stands.
func alongGap(h *eval.Holding, k *eval.Cut, p place, set int) string {
	piece, pose := asPut(h, k)
	z := zeroOf(h, k, piece, pose)
	axis := 0
	if abs(p.to[1]-p.from[1]) > abs(p.to[0]-p.from[0]) {
		axis = 1
	}
	from, to := z.of(p.from), z.of(p.to)
	s := "xy"[axis:axis+1] + " " + model.Figure(tidy(from[axis])) + " to " + model.Figure(tidy(to[axis]))
	if other := 1 - axis; set != other {
		s += ", at " + "xy"[other:other+1] + " " + model.Figure(tidy(from[other]))
	}
	return s
}

// rackGoes is which way a rack goes on from its first gap on the machine.
func rackGoes(h *eval.Holding, f *eval.Form) string {
	var v solid.Vec
	v[f.Rack.Run] = 1
	switch d := h.Pose.Dir(v); {
	case d[2] > 0.5:
		return "up"
	case d[2] < -0.5:
		return "down"
	case d[0] > 0.5:
		return "to the right"
	case d[0] < -0.5:
		return "to the left"
	case d[1] < 0:
		return "to the front"
	}
	return "to the back"
}

// rackTable lists the gaps of a rack by their way from the first.
func (m *maker) rackTable(h *eval.Holding, f *eval.Form, axis int) Block {
	d, known := m.axes(h.Choice.Machine)
	b := Block{Kind: Table, Head: []string{"gap", "from the first, mm"}}
	if known[axis] {
		b.Head = append(b.Head, "turns + lines")
	}
	for i := range f.Rack.Count {
		if len(b.Rows) >= mostPlaces {
			more := make([]string, len(b.Head))
			more[0] = "and " + strconv.Itoa(f.Rack.Count-i) + " more"
			b.Rows = append(b.Rows, more)
			break
		}
		way := f.Rack.Pitch * float64(i)
		row := []string{strconv.Itoa(i + 1), model.Figure(tidy(way))}
		if known[axis] {
			row = append(row, d[axis].short(way))
		}
		b.Rows = append(b.Rows, row)
	}
	return b
}

// rackNote is what the drawing says of a rack.
func rackNote(p *eval.Part, f *eval.Form) sketch.Note {
	r := f.Rack
	low := p.Low[r.Run]
	words := fmt.Sprintf("rack of %d gaps, %s mm apart, %s deep", r.Count, model.Figure(tidy(r.Pitch)), model.Figure(tidy(r.Deep)))
	switch {
	case r.Involute:
		words = fmt.Sprintf("rack of %d gaps, module %s, %s°, %s deep", r.Count, model.Figure(tidy(r.Gear.Module)), model.Figure(r.Gear.Pressure), model.Figure(tidy(r.Deep)))
	case r.Form == "ratchet":
		words = "ratchet " + words
	}
	words += ", the first " + model.Figure(tidy(r.First-low)) + " from the " + model.FaceOn(r.Run, -1).String()
	return sketch.Note{In: facing(r.Lie), At: f.Lo.Add(f.Hi).Times(0.5), Words: words}
}
