package reckon

import (
	"fmt"
	"math"
	"strings"

	"fettle/eval/reckon/thread"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// percent is the share of thread that a hole leaves, as a step.
func (q *threaded) percent(hole float64) float64 {
	p, _, _ := thread.Percent(q.t, hole)
	q.step("A hole of %s mm leaves (%s - %s) / (%s x %s) = %s %% of thread, on %s.", millimetres(hole), millimetres(q.t.Diameter),
		millimetres(hole), round(q.form.Full, 6), millimetres(q.t.Pitch), round(p, 1), q.form.Basis)
	return p
}

// drill says what to drill: of the drills at hand, else the tables' own.
func (q *threaded) drill() {
	book, source, tabled := handbook.TappingDrill(q.t)
	drawers := q.SizesFrom("drills", "diameter", "drill")
	if len(drawers) > 0 {
		q.atHand(drawers, book)
		return
	}
	if tabled {
		p := q.percent(book)
		q.say("Drill %s for %s: it leaves %s %% of thread, on %s.", q.Says(book), q.t, round(p, 0), q.form.Basis)
		q.value("drill", book, "mm", "the tables")
		q.value("thread left", p, "%", "worked out")
		q.source("tapping drill: " + source)
		return
	}
	hole, _ := thread.Hole(q.t, thread.Usual)
	q.say("The tables have no drill for %s; a hole of %s leaves %d %% of thread, on %s.", q.t, q.Says(hole), thread.Usual, q.form.Basis)
	q.step("Hole for %d %%: %s - %s x %s x %s = %s mm.", thread.Usual, millimetres(q.t.Diameter), round(q.form.Full, 6), millimetres(q.t.Pitch),
		round(thread.Usual/100.0, 2), millimetres(hole))
	q.value("hole", hole, "mm", "worked out")
	q.source(fmt.Sprintf("%d %% of thread: common practice", thread.Usual))
}

// atHand picks from drills that are there, and lists those that would do.
func (q *threaded) atHand(drawers []Found[model.Sizes], book float64) {
	var all model.Sizes
	var from []string
	for _, d := range drawers {
		all.List, all.Series = append(all.List, d.V.List...), append(all.Series, d.V.Series...)
		from = append(from, d.From)
	}
	small, _ := thread.Hole(q.t, mostThread)
	large, _ := thread.Hole(q.t, leastThread)
	q.step("From %d to %d %% of thread leaves a hole of %s to %s mm.", leastThread, mostThread, millimetres(large), millimetres(small))
	q.source(fmt.Sprintf("from %d to %d %% of thread: common practice", leastThread, mostThread))
	c, ok := thread.Drill(q.t, all, leastThread, mostThread)
	if !ok {
		q.out.No = true
		q.say("No drill of %s serves for %s: one from %s is wanted%s.", and(from), q.t, q.Span(small, large), q.tablesSay(book))
		if near, ok := all.Nearest(min(max(book, small), large)); ok {
			p, _, _ := thread.Percent(q.t, near)
			q.say("The nearest there is %s; it would leave %s %% of thread.", q.Says(near), round(p, 0))
		}
		return
	}
	of := owner(drawers, c.Drill)
	p := q.percent(c.Drill)
	if math.Abs(c.Drill-book) < model.Same {
		book = 0
	}
	q.say("Drill %s%s, from %s, for %s: it leaves %s %% of thread, on %s%s.", called(drawers, c.Drill), q.Says(c.Drill), of, q.t, round(p, 0),
		q.form.Basis, q.tablesSay(book))
	q.value("drill", c.Drill, "mm", of)
	q.value("thread left", p, "%", "worked out")
	if c.Source != "" {
		q.source("tapping drill of the tables: " + c.Source)
	}
	q.choices(drawers, all, small, large, c.Drill)
}

func (q *threaded) tablesSay(book float64) string {
	if book == 0 {
		return ""
	}
	return "; the tables say " + q.Says(book)
}

// called gives the name of a drill that has one, "#7, ".
func called(drawers []Found[model.Sizes], mm float64) string {
	for _, d := range drawers {
		for _, m := range d.V.List {
			if m.Name != "" && math.Abs(m.Size-mm) < model.Same {
				return m.Name + ", "
			}
		}
	}
	return ""
}

func owner(drawers []Found[model.Sizes], mm float64) string {
	for _, d := range drawers {
		if d.V.Has(mm) {
			return d.From
		}
	}
	return ""
}

// choices lists the drills that would do; mostChoices bounds a fine series.
func (q *threaded) choices(drawers []Found[model.Sizes], all model.Sizes, small, large, picked float64) {
	const mostChoices = 1000
	t := Table{Title: "Drills that would do", Head: []Column{left("drill"), right("mm"), right("in"), right("% of thread"), left("from")}, Most: 8}
	sizes := all.Within(small, large, mostChoices)
	if len(sizes) == mostChoices {
		t.Title = fmt.Sprintf("Drills that would do, the smallest %d", mostChoices)
	}
	for _, mm := range sizes {
		p, _, _ := thread.Percent(q.t, mm)
		name := strings.TrimSuffix(called(drawers, mm), ", ")
		if math.Abs(mm-picked) < model.Same {
			name, t.Around = strings.TrimSpace(name+" taken"), len(t.Rows)
		}
		t.Rows = append(t.Rows, []string{name, millimetres(mm), inches(mm), round(p, 1), owner(drawers, mm)})
	}
	if len(t.Rows) > 1 {
		q.out.Tables = append(q.out.Tables, t)
	}
}

// hole says what thread a hole leaves that is there.
func (q *threaded) hole() {
	mm, ok := q.Length("hole")
	if !ok {
		return
	}
	if mm >= q.t.Diameter {
		q.out.No = true
		q.say("A hole of %s leaves no thread of %s at all.", q.Says(mm), q.t)
		return
	}
	p := q.percent(mm)
	q.value("thread left in --hole", p, "%", "worked out")
	least, most, ok := handbook.MinorLimits(q.t)
	where := ""
	if ok {
		where = ", within the standard's limits of the nut"
		switch {
		case mm < least-model.Same:
			where = fmt.Sprintf(", below the standard's least of %s", q.Says(least))
		case mm > most+model.Same:
			where = fmt.Sprintf(", above the standard's most of %s", q.Says(most))
		}
	}
	q.say("The hole of %s leaves %s %% of thread%s.", q.Says(mm), round(p, 0), where)
}
