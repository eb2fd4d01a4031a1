package sheet

import (
	"fmt"
	"math"
	"strconv"

	"fettle/cmd/fettle/sketch"
	"fettle/eval"
	"fettle/eval/solid"
	"fettle/schema/model"
)

// ruled says how the lines of a straight scale are set by the dials: where the first stands, and a table of
// all, counted from the first.
func (m *maker) ruled(h *eval.Holding, k *eval.Cut, put func(a, b string)) (table []Block, ok bool) {
	for i := range k.Works {
		w := &k.Works[i]
		f := w.Target.Form
		if f == nil || f.Scale == nil || f.Scale.Ruled == nil {
			continue
		}
		ok = true
		r, known := k.Ruling(f)
		if w.Wrong != "" || len(w.Moves) == 0 || !known {
			continue
		}
		piece, pose := asPut(h, k)
		z := zeroOf(h, k, piece, pose)
		begins := ", where it begins at the edge"
		if f.Scale.Ruled.Round != nil {
			begins = ", over the axis"
		}
		put("first line", at(z, edgeOf(h, f))+begins)
		axis := "xy"[r.Axis : r.Axis+1]
		put("the others", fmt.Sprintf("%d more, in %s, to the %s: in the table below, each counted from the first, never from the one before", f.Scale.Count, axis, runsTo(r.Axis, h, f)))
		if len(r.Lacks) == 0 {
			put("one line of "+r.Readby, model.Figure(r.Line)+" mm"+rounding(&r, "line"))
		}
		turnedUnder(f, put)
		table = append(table, m.ruledTable(m.axisDial(h.Choice.Machine, r.Axis), f))
	}
	return table, ok
}

// ruledTurn says the same of a scale that is ruled along work on a lathe.
func (m *maker) ruledTurn(k *eval.Turn, put func(a, b string)) (table []Block) {
	for i := range k.Works {
		w := &k.Works[i]
		r, known := k.Ruling(w.Target.Form)
		if w.Wrong != "" || !known {
			continue
		}
		f := w.Target.Form
		way := "towards the tailstock"
		if f.Scale.Ruled.Way*k.Hold.Sign < 0 {
			way = "towards the headstock"
		}
		datum, d := k.Hold.Datum()
		put("first line", model.Figure(tidy(k.Hold.At(f.Scale.Ruled.First)-d))+" mm from "+datum)
		put("the others", fmt.Sprintf("%d more, %s: in the table below, each counted from the first, never from the one before", f.Scale.Count, way))
		if len(r.Lacks) == 0 {
			put("one line of "+r.Readby, model.Figure(r.Line)+" mm"+rounding(&r, "line"))
		}
		turnedUnder(f, put)
		scaleAsks(f, put)
		table = append(table, m.ruledTable(nil, f))
	}
	return table
}

// turnedUnder says how the lines of a scale along round work are drawn.
func turnedUnder(f *eval.Form, put func(a, b string)) {
	if r := f.Scale.Ruled.Round; r != nil {
		put("each line", "the point stands still at its place, and the work is turned under it by hand, by the angle in the table")
	}
}

// axisDial is the dial of an axis of a machine; nil where it is not known.
func (m *maker) axisDial(machine *model.Machine, axis int) *dial {
	if d, known := m.axes(machine); known[axis] {
		return &d[axis]
	}
	return nil
}

// edgeOf is where the first line begins, in the machine's frame.
func edgeOf(h *eval.Holding, f *eval.Form) solid.Vec {
	r := f.Scale.Ruled
	var v solid.Vec
	if r.Round != nil {
		return h.Pose.Point(solid.Vec{r.First, 0, 0}).Add(solid.Vec{0, 0, r.Round.Radius})
	}
	v[r.Runs], v[r.Lines], v[f.Into.Face.Axis()] = r.First, f.Scale.Edge, f.Into.At
	return h.Pose.Point(v)
}

// runsTo is which way the scale runs on the machine.
func runsTo(axis int, h *eval.Holding, f *eval.Form) string {
	var v solid.Vec
	v[f.Scale.Ruled.Runs] = f.Scale.Ruled.Way
	d := h.Pose.Dir(v)
	switch {
	case axis == 0 && d[0] < 0:
		return "left"
	case axis == 0:
		return "right"
	case d[1] < 0:
		return "front"
	}
	return "back"
}

// rounding says how far lines, or gaps, come off their places, and what would gather.
func rounding(r *eval.Ruling, what string) string {
	if r.Off < 1e-6 {
		return "; every " + what + " falls on one"
	}
	s := "; to the nearest one a " + what + " is up to " + model.Figure(tidy(r.Off)) + " mm off its place"
	if r.Adds > 1e-6 {
		s += ", and by adding the rounded space each time the last would be " + model.Figure(tidy(r.Adds)) + " mm off"
	}
	return s
}

// ruledTable lists the lines of a straight scale by their way from the first.
func (m *maker) ruledTable(d *dial, f *eval.Form) Block {
	b := Block{Kind: Table, Head: []string{"line", "from the first, mm"}}
	if d != nil {
		b.Head = append(b.Head, "turns + lines")
	}
	b.Head = append(b.Head, "long, mm")
	round := f.Scale.Ruled.Round
	if round != nil {
		b.Head = append(b.Head, "turned by, degrees")
	}
	g := &f.Feature.Figures
	figured := g.Said && g.Every.V > 0
	if figured {
		b.Head = append(b.Head, "figure")
	}
	for i := range f.Scale.Count + 1 {
		if len(b.Rows) >= mostPlaces {
			more := make([]string, len(b.Head))
			more[0] = "and " + strconv.Itoa(f.Scale.Count+1-i) + " more"
			b.Rows = append(b.Rows, more)
			break
		}
		way := f.Scale.Ruled.Spacing * float64(i)
		row := []string{strconv.Itoa(i + 1), model.Figure(tidy(way))}
		if d != nil {
			row = append(row, d.short(way))
		}
		row = append(row, model.Figure(f.Scale.LengthOf(i)))
		if round != nil {
			row = append(row, model.Figure(math.Round(round.Turns(f.Scale.LengthOf(i))*10)/10))
		}
		if figured {
			row = append(row, figureAt(f, i))
		}
		b.Rows = append(b.Rows, row)
	}
	return b
}

// figureAt is the figure beside a line; "" where it has none.
func figureAt(f *eval.Form, line int) string {
	g := &f.Feature.Figures
	if line%g.Every.V != 0 {
		return ""
	}
	return model.Figure(g.First.V + float64(line/g.Every.V)*g.Step.Or(float64(g.Every.V)))
}

// scaleNote is what the drawing says of a scale.
func scaleNote(p *eval.Part, f *eval.Form) sketch.Note {
	r := f.Scale.Ruled
	if r == nil {
		return onRound(p, f, fmt.Sprintf("%d divisions over %s°", f.Scale.Count, model.Figure(f.Scale.Over)))
	}
	if r.Round != nil {
		return onRound(p, f, spaced(f))
	}
	at := f.Lo.Add(f.Hi).Times(0.5)
	return sketch.Note{In: facing(f.Into.Face.Axis()), At: at, Words: spaced(f)}
}

// spaced says how many divisions a straight scale has, and how long it is.
func spaced(f *eval.Form) string {
	long := f.Scale.Ruled.Spacing * float64(f.Scale.Count)
	return fmt.Sprintf("%d divisions of %s, over %s mm", f.Scale.Count, written(f.Feature.Spacing.V), model.Figure(math.Round(long*1e4)/1e4))
}

// isRuled says whether a working is one of the lines of a straight scale, or of the gaps of a rack.
func isRuled(w *eval.Working) bool {
	f := w.Target.Form
	return f != nil && (f.Scale != nil && f.Scale.Ruled != nil || f.Rack != nil)
}
