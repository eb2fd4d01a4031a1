package reckon

import (
	"errors"
	"fmt"
	"math"

	"fettle/eval/reckon/thread"
)

// classes gives the limits of a class, or of the usual two.
func (q *threaded) classes() error {
	class := q.Text("class")
	if class == "" {
		return nil
	}
	list := []string{class}
	if class == "usual" {
		screw, nut := thread.UsualClasses(q.t)
		if screw == "" {
			return fmt.Errorf("no classes are known here for the series %s", q.t.Series)
		}
		list = []string{screw, nut}
	}
	t := Table{Title: "Limits of size, mm", Head: []Column{left("class"), right("major least"), right("most"), right("effective least"), right("most"), right("minor least"), right("most")}}
	for _, c := range list {
		l, err := thread.LimitsOf(q.t, c)
		if err != nil {
			return err
		}
		row := []string{c}
		for _, f := range []struct {
			name string
			mm   float64
		}{{"major least", l.MajorLo}, {"major most", l.MajorHi}, {"effective least", l.PitchLo}, {"effective most", l.PitchHi}, {"minor least", l.MinorLo}, {"minor most", l.MinorHi}} {
			cell := ""
			if f.mm > 0 {
				cell = round(f.mm, 3)
				q.value(c+" "+f.name, f.mm, "mm", l.Source)
			}
			row = append(row, cell)
		}
		t.Rows = append(t.Rows, row)
		by := "the tables"
		if !l.FromTable {
			by = "the standard's formulas, and tables as far as they go"
		}
		q.step("Class %s: limits from %s.", c, by)
		q.source("limits: " + l.Source)
	}
	q.out.Tables = append(q.out.Tables, t)
	return nil
}

// wires gives the size over three wires.
func (q *threaded) wires() error {
	wire, ok := q.Length("wire")
	if !ok {
		return nil
	}
	effective, _, _, _ := thread.Diameters(q.t)
	w, err := thread.WiresFor(q.t)
	if err != nil {
		return err
	}
	over, slope, err := thread.Over(q.t, effective, wire)
	if err != nil {
		return fmt.Errorf("--wire: %w", err)
	}
	q.say("Over three wires of %s the basic effective diameter measures %s; the best wire is %s.", q.Says(wire), q.Says(over), q.Says(w.Best))
	if slope >= 0.0005 {
		q.say("The slope of the thread adds %s mm to it, which plain tables leave out.", round(slope, 4))
	}
	a, _ := thread.Angle(q.t)
	half := a / 2 * math.Pi / 180
	q.step("Over wires: %s + %s x %s - %s x %s = %s mm; best wire %s x %s = %s mm.", millimetres(effective), round(1+1/math.Sin(half), 5), millimetres(wire),
		round(1/(2*math.Tan(half)), 6), millimetres(q.t.Pitch), millimetres(over), round(1/(2*math.Cos(half)), 6), millimetres(q.t.Pitch), millimetres(w.Best))
	q.value("over three wires", over, "mm", "worked out")
	q.value("best wire", w.Best, "mm", "worked out")
	q.value("slope adds", slope, "mm", "worked out")
	q.source("size over wires: handbook formula, from memory")
	return nil
}

// strength says what a length of thread holds.
func (q *threaded) strength() error {
	length, ok := q.Length("engaged")
	screw, okScrew := q.Number("screw-strength")
	nut, okNut := q.Number("nut-strength")
	switch {
	case !ok && (okScrew || okNut):
		return errors.New("--screw-strength and --nut-strength are of --engaged: say how long the thread is")
	case !ok:
		return nil
	case !okScrew || !okNut:
		return errors.New("--engaged wants --screw-strength and --nut-strength, MPa")
	}
	hole, _ := q.Length("hole")
	breaks, okBreak := thread.Breaks(q.t, screw)
	stripScrew, stripNut, err := thread.Strips(q.t, length, hole, screw, nut)
	if err != nil || !okBreak {
		return cmpErr(err, errors.New("the screw has no core to reckon with"))
	}
	need, err := thread.LengthToBreak(q.t, hole, screw, nut)
	if err != nil {
		return err
	}
	first, force := "the screw breaks", breaks
	if stripScrew < force {
		first, force = "the screw's thread strips", stripScrew
	}
	if stripNut < force {
		first, force = "the tapped thread strips", stripNut
	}
	q.say("With %s of thread first %s, at %s N. From %s of thread on the screw breaks, at %s N, before any thread strips.", q.Says(length), first, round(force, 0), q.Says(math.Ceil(need*10)/10), round(breaks, 0))
	area, _ := thread.StressArea(q.t)
	q.step("The screw breaks at %s mm2 x %s MPa = %s N; its thread strips at %s N, the tapped one at %s N (shear 0.577 of tension, basic sizes).", round(area, 2), plain(screw), round(breaks, 0), round(stripScrew, 0), round(stripNut, 0))
	q.value("breaks", breaks, "N", "worked out")
	q.value("screw's thread strips", stripScrew, "N", "worked out")
	q.value("tapped thread strips", stripNut, "N", "worked out")
	q.value("length to break", need, "mm", "worked out")
	q.source("stress area: ISO 898-1, from memory; shear areas: FED-STD-H28, from memory")
	q.out.Caution = "Forces at which threads break are not forces to load them with: loose limits take up to a fifth off, dry, bent or shaken screws more. Where someone would be hurt if it gave way, have it worked out by one who is licensed to."
	return nil
}

// alike lists threads that could be taken for it.
func (q *threaded) alike() {
	if !q.Yes("alike") {
		return
	}
	looks := thread.LookAlikes(q.t, math.Max(0.2, 0.05*q.t.Diameter), 0.06)
	if len(looks) == 0 {
		q.say("The tables have no thread that could be taken for it.")
		return
	}
	t := Table{Title: "Threads that could be taken for it", Head: []Column{left("thread"), right("larger mm"), right("pitch longer mm"), right("flanks degrees"), right("turns before it binds")}, Most: 10}
	for _, l := range looks {
		turns := "does not"
		if l.Enters > 0 {
			turns = round(l.Enters, 1)
		}
		t.Rows = append(t.Rows, []string{l.Thread.String(), signed(l.Diameter), signed(l.Pitch), plain(l.Angle), turns})
	}
	var names []string
	for _, l := range looks[:min(len(looks), 3)] {
		names = append(names, l.Thread.String())
	}
	q.say("%s could be taken for it: screwed together they go in and strip, or bind.", and(names))
	q.out.Tables = append(q.out.Tables, t)
	q.source("sizes and pitches of the tables; turns before it binds: our estimate, a twelfth of the pitch over the difference")
}
