package reckon

import (
	"fmt"
	"iter"
	"strings"

	"fettle/eval/reckon/dividing"
)

// usualBound is up to how many holes the circles that would serve are listed: plates have
// few circles that are larger.
const usualBound = 100

// serve says which circles would do it.
func (q *divided) serve() error {
	s, err := dividing.Serve(q.head, q.job, usualBound)
	if err != nil {
		return err
	}
	if q.noRatio {
		q.step("A direct plate serves if its holes can be divided by %d.", s.Direct)
		return nil
	}
	q.exact("least circle that serves", dividing.Of(s.Least, 1), "holes", "worked out")
	var sizes []string
	for _, c := range s.Sizes {
		sizes = append(sizes, fmt.Sprint(c))
	}
	says := fmt.Sprintf("A circle serves alone if its holes can be divided by %d: up to %d, %s.", s.Least, usualBound, strings.Join(sizes, ", "))
	switch {
	case s.Least == 1:
		says = "The move is whole turns: any hole serves, and no plate is wanted."
	case len(sizes) == 0:
		says = fmt.Sprintf("A circle serves alone only if its holes can be divided by %d.", s.Least)
	}
	switch {
	case q.plates || len(q.settings) > 0:
		q.step("%s", says)
	case q.rotary.Line.Num == 0:
		q.say("%s: %s", q.asked(), strings.ToLower(says[:1])+says[1:])
	}
	return nil
}

// dial says the move on the dial of a rotary table.
func (q *divided) dial() error {
	if q.rotary.Line.Num == 0 {
		return nil
	}
	s, err := q.rotary.Step(q.job)
	if err != nil {
		return err
	}
	turn := dividing.Of(1, 1).Over(q.head.Ratio)
	q.say("%s by the dial: a move is %s and %s.", q.asked(), counted(s.Turns, "turn"), arc(s.Exact))
	q.step("A turn of the handle is 360 / %s = %s, a line of the dial %s; beyond %s there remain %s.", q.head.Ratio, arc(turn), arc(q.rotary.Line), counted(s.Turns, "whole turn"), arc(s.Exact))
	if s.PerSpace.Num == 0 {
		q.say("That is a line of the dial: the places are exact.")
	} else {
		readings := ""
		if !q.Yes("table") {
			readings = " (--table prints the readings)"
		}
		q.say("That is between two lines. Read from the first place each time, to the nearest line%s, no place is off by more than %s seconds of arc%s.",
			readings, round(dividing.Seconds(s.AtMost), 2), q.atRadius(s.AtMost))
	}
	if s.AtClosing.Valid() && s.AtClosing.Num != 0 {
		q.say("The same move each time, rounded to a line, would be off by %s seconds of arc at closing%s.", off(s.AtClosing), q.atRadius(s.AtClosing.Abs()))
		q.value("dial, off at closing", dividing.Seconds(s.AtClosing), "seconds of arc", "worked out")
	}
	q.value("dial, turns", float64(s.Turns), "", "worked out")
	q.value("dial, reading", dividing.Degrees(s.Exact), "degrees", "worked out")
	q.value("dial, off at most", dividing.Seconds(s.AtMost), "seconds of arc", "worked out")
	return nil
}

// positions prints the running table, of the dial where there is one, of the first exact
// setting, or of the nearest holes.
func (q *divided) positions() {
	if !q.Yes("table") {
		return
	}
	all := append(q.settings, q.trains()...)
	switch {
	case q.rotary.Line.Num != 0:
		q.readings()
	case len(all) > 0:
		q.running(dividing.Table(q.job, all[0]), all[0], false)
	case q.near.Rounded.Circle > 0:
		q.running(q.near.Rounded.Table(q.head, q.job), dividing.Setting{Method: dividing.Plain}, true)
	}
}

// running makes a table of positions; errs says that it has a column of errors.
func (q *divided) running(lines iter.Seq[dividing.Position], s dividing.Setting, errs bool) {
	t := Table{Title: "Every position: turns from the first place, hole counted from the first hole as 0",
		Head: []Column{right("move"), right("place"), right("angle"), right("turns"), right("hole")}}
	if s.Method == dividing.Compound {
		t.Head = append(t.Head, right("second pin"))
	}
	if errs {
		t.Head = append(t.Head, right("off, seconds"))
	}
	for p := range lines {
		if q.full(&t) {
			break
		}
		row := []string{fmt.Sprint(p.Move), fmt.Sprint(p.Place), arc(p.Work), fmt.Sprint(p.Turns), fmt.Sprint(p.Hole)}
		if s.Method == dividing.Compound {
			row = append(row, fmt.Sprint(p.Back))
		}
		if errs {
			row = append(row, off(p.Error))
		}
		t.Rows = append(t.Rows, row)
	}
	q.out.Tables = append(q.out.Tables, t)
}

// readings makes the table of dial readings.
func (q *divided) readings() {
	t := Table{Title: "Every position: turns of the handle from the first place, and the dial's nearest line",
		Head: []Column{right("place"), right("angle"), right("turns"), right("dial"), right("off, seconds")}}
	for r := range q.rotary.Table(q.job) {
		if q.full(&t) {
			break
		}
		reading := q.rotary.Line.Times(dividing.Of(r.Dial.Lines, 1))
		t.Rows = append(t.Rows, []string{fmt.Sprint(r.Place), arc(r.Work), fmt.Sprint(r.Dial.Turns), arc(reading), off(r.Error)})
	}
	q.out.Tables = append(q.out.Tables, t)
}

// full says whether a table has as many lines as are printed, and says so on the page.
func (q *divided) full(t *Table) bool {
	switch n := len(t.Rows); {
	case n >= mostLinesAll:
		q.say("The table ends after %d lines; %d places are asked for.", n, q.job.Places)
		return true
	case n >= mostLines && !q.All():
		q.say("The table ends after %d lines; --all goes on to %d.", n, mostLinesAll)
		return true
	}
	return false
}

// close adds where it is from, and the caution.
func (q *divided) close() {
	q.out.Sources = append(q.out.Sources, "turns = ratio / divisions: Practical Treatise on Milling and Milling Machines; US Army course OD1644; Machinery's Handbook")
	if len(q.trains()) > 0 {
		q.out.Sources = append(q.out.Sources, "rule of idlers: common practice of the heads that the handbooks' tables are for; yours may differ")
	}
	q.out.Caution = "Turn the crank with the cutter clear of the work and stopped, always the same way to keep the slack on one side, and lock the spindle for the cut where the head's manual says so. " +
		"Mark every place lightly and see that the last comes back to the first before cutting."
}
