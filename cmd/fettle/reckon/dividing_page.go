package reckon

import (
	"fmt"
	"slices"
	"strings"

	"fettle/eval/reckon/dividing"
	"fettle/schema/drawing"
)

func (q *divided) say(format string, args ...any) {
	q.out.Says = append(q.out.Says, fmt.Sprintf(format, args...))
}
func (q *divided) step(format string, args ...any) {
	q.out.Steps = append(q.out.Steps, fmt.Sprintf(format, args...))
}
func (q *divided) value(name string, x float64, unit, from string) {
	q.out.Values = append(q.out.Values, figure(name, x, unit, from))
}

// exact gives a value with its fraction.
func (q *divided) exact(name string, x dividing.Fraction, unit, from string) {
	v := figure(name, x.Float(), unit, from)
	v.Words = x.String()
	q.out.Values = append(q.out.Values, v)
}

// asked names the job: "36 divisions at 40 to 1".
func (q *divided) asked() string {
	s := "An angle of " + arc(q.job.Step)
	if q.job.Whole {
		s = counted(int64(q.job.Places), "division")
	}
	if q.job.Spaces > 1 {
		s += fmt.Sprintf(", %d spaces at once", q.job.Spaces)
	}
	if q.noRatio {
		return s
	}
	return s + " at " + q.head.Ratio.String() + " to 1"
}

// arc writes a part of the circle in degrees, minutes and seconds, to a hundredth of a second.
func arc(part dividing.Fraction) string {
	n := part.Times(dividing.Of(129_600_000, 1)).Round()
	deg, min, sec := n/360_000, n/6000%60, n%6000
	s := fmt.Sprintf("%d deg", deg)
	if min > 0 || sec > 0 {
		s += fmt.Sprintf(" %d'", min)
	}
	if sec > 0 {
		s += " " + round(float64(sec)/100, 2) + `"`
	}
	return s
}

// off writes an error in seconds of arc with its sign, above 0 for too far.
func off(part dividing.Fraction) string {
	s := round(dividing.Seconds(part), 2)
	if part.Num > 0 && s != "0" {
		return "+" + s
	}
	return s
}

// way writes a way of a pin: "1 turn and 2 holes in the 18 circle".
func way(c dividing.Count) string {
	holes := counted(int64(c.Holes), "hole") + fmt.Sprintf(" in the %d circle", c.Circle)
	switch {
	case c.Holes == 0:
		return counted(c.Turns, "turn")
	case c.Turns == 0:
		return holes
	}
	return counted(c.Turns, "turn") + " and " + holes
}

// doing says how a setting is made, in one piece of a sentence.
func doing(s dividing.Setting) string {
	switch s.Method {
	case dividing.Direct:
		return fmt.Sprintf("%s of the direct plate of %d", counted(s.Crank.Turns*int64(s.Crank.Circle)+int64(s.Crank.Holes), "hole"), s.Crank.Circle)
	case dividing.Compound:
		return fmt.Sprintf("the crank %s, and the plate itself %s %s", way(s.Crank), way(s.Back), sense(s))
	case dividing.Differential:
		return way(s.Crank) + ", the plate geared to the spindle by " + gearing(s.Train)
	}
	return way(s.Crank)
}

func sense(s dividing.Setting) string {
	if s.Against {
		return "against the crank"
	}
	return "the same way"
}

func gearing(t dividing.Train) string {
	w := fmt.Sprintf("%d on the spindle to %d at the plate", t.Spindle, t.Plate)
	if t.Pairs == 2 {
		w = fmt.Sprintf("%d on the spindle into %d, with %d on the same stud into %d at the plate", t.Spindle, t.StudIn, t.StudOut, t.Plate)
	}
	idlers := "no idler"
	if t.Idlers > 0 {
		idlers = counted(int64(t.Idlers), "idler")
	}
	return w + " and " + idlers + ", so that the plate turns " + plateTurns(t)
}

func plateTurns(t dividing.Train) string {
	if t.Against {
		return "against the crank"
	}
	return "with the crank"
}

// arms says how the sector is set; "" where it is not wanted.
func arms(s dividing.Setting) string {
	var spans []string
	for _, c := range []dividing.Count{s.Crank, s.Back} {
		if c.Span() > 0 && s.Method != dividing.Direct {
			spans = append(spans, fmt.Sprintf("%d holes", c.Span()))
		}
	}
	if len(spans) == 0 {
		return ""
	}
	return " Set the arms to take in " + strings.Join(spans, ", and at the second pin ") + ", the pin's own counted."
}

// trains says whether the trains belong on the page: where nothing simpler is exact, or all is
// asked for.
func (q *divided) trains() []dividing.Setting {
	if len(q.settings) > 0 && !q.All() {
		return nil
	}
	return q.geared.Settings
}

// best says the first setting there is, or that there is none.
func (q *divided) best() {
	all := append(q.settings, q.trains()...)
	switch {
	case len(all) > 0:
		q.first(all[0])
	case q.plates || len(q.head.Direct) > 0:
		q.out.No = q.rotary.Line.Num == 0
		q.say("%s: no setting at hand is exact.", q.asked())
		q.nearest()
	}
	switch {
	case len(q.settings) > 0:
	case q.geared.Allowed == dividing.StandsUp:
		q.say("Differential indexing is left out: the spindle is not level, and its train does not reach the plate.")
	case q.geared.Allowed != dividing.NoWheels && len(all) == 0:
		q.say("No train of the wheels at hand does it, up to %s turns of the plate for one of the spindle.", round(q.geared.Within, 2))
	}
}

// first says the setting that stands first, and what it hangs on.
func (q *divided) first(s dividing.Setting) {
	plate := ""
	if s.Plate != "" && s.Crank.Holes > 0 {
		plate = " (" + s.Plate + ")"
	}
	q.say("%s: %s%s.%s", q.asked(), doing(s), plate, arms(s))
	if s.Method == dividing.Compound && !s.OneSide {
		q.say("This holds only if both circles are on one side of %s: the shop does not tell its sides apart.", s.Plate)
	}
	if s.Method == dividing.Differential {
		if q.geared.Allowed == dividing.IfLevel {
			q.say("This holds only with the spindle level: say --axis.")
		}
		q.say("The lock of the plate is withdrawn. Idlers are by the %s rule: turn the crank, and see that the plate turns %s.", q.rule(), plateTurns(s.Train))
	}
	if first, rounds := q.job.Rounds(); rounds > 1 {
		q.say("%s: every place is reached once in %s of the work, the first of %s.", counted(int64(q.job.Places), "move"), counted(int64(rounds), "round"), counted(int64(first), "move"))
	}
	q.value("turns", float64(s.Crank.Turns), "", s.Method.String())
	q.value("holes", float64(s.Crank.Holes), "", s.Method.String())
	q.value("circle", float64(s.Crank.Circle), "", s.Method.String())
	q.value("arms take in", float64(s.Crank.Span()), "holes", s.Method.String())
	if s.Method == dividing.Compound {
		back := float64(s.Back.Holes)
		if s.Against {
			back = -back
		}
		q.value("second pin, holes", back, "", s.Method.String())
		q.value("second pin, circle", float64(s.Back.Circle), "", s.Method.String())
	}
	q.check(s)
}

func (q *divided) rule() string {
	if q.Text("idlers") == "reversed" {
		return "reversed"
	}
	return "usual"
}

// turns is the first step: the crank's turns for one move.
func (q *divided) turns() {
	t, err := dividing.Turns(q.head, q.job)
	if err != nil || q.noRatio {
		q.exact("step", q.job.Step, "of the circle", "worked out")
		q.step("One move is %s of the circle, %s.", q.job.Step, arc(q.job.Step))
		return
	}
	q.exact("ratio", q.head.Ratio, "", q.from)
	q.exact("turns of the crank for a move", t, "", "worked out")
	whole, rest := t.Whole()
	says := t.String() + " turns"
	if t == dividing.Of(1, 1) {
		says = "1 turn"
	}
	if whole > 0 && rest.Num > 0 {
		says = fmt.Sprintf("%s = %d + %s turns", t, whole, rest)
	}
	q.step("One move is %s of the circle, %s: the crank makes %s x %s = %s (ratio from %s).", q.job.Step, arc(q.job.Step), q.head.Ratio, q.job.Step, says, q.from)
}

// check is the step that plays the first setting.
func (q *divided) check(s dividing.Setting) {
	r, p := q.head.Ratio, s.Crank.Part()
	switch s.Method {
	case dividing.Plain:
		if _, rest := p.Whole(); rest.Num > 0 {
			q.step("%s of %d holes are %d.", rest, s.Crank.Circle, s.Crank.Holes)
		}
	case dividing.Direct:
		q.step("%s of %d holes are %d.", q.job.Step, s.Crank.Circle, s.Crank.Turns*int64(s.Crank.Circle)+int64(s.Crank.Holes))
		return
	case dividing.Compound:
		sign := "+"
		if s.Against {
			sign = "-"
		}
		q.step("%s %s %s = %s turns; neither circle does it alone.", p, sign, s.Back.Part(), r.Times(q.job.Step))
	case dividing.Differential:
		e := s.Train.Ratio()
		q.step("With the crank making %s turns past the plate at a move, the plate must make %s - %s x %s = %s turns for one of the spindle.",
			p, r, dividing.Of(1, 1).Over(q.job.Step), p, e)
		q.step("The wheels give %s: %s, teeth meshing %d times from spindle to plate.", e.Abs(), quotient(s.Train), s.Train.Meshes())
		return
	}
	if q.job.Whole {
		n, k := int64(q.job.Places), int64(q.job.Spaces)
		q.step("Check: %s x %s = %s turns, which is %s of the work.", counted(n, "move"), r.Times(q.job.Step), r.Times(dividing.Of(k, 1)), counted(k, "turn"))
	}
}

func quotient(t dividing.Train) string {
	if t.Pairs == 2 {
		return fmt.Sprintf("%d x %d / (%d x %d)", t.Spindle, t.StudOut, t.StudIn, t.Plate)
	}
	return fmt.Sprintf("%d / %d", t.Spindle, t.Plate)
}

// others lists every setting, in order of preference.
func (q *divided) others() {
	if len(q.settings) > 0 {
		t := Table{Title: "Settings, in order of preference", Head: []Column{left("method"), right("turns"), right("holes"), right("circle"), right("arms"),
			left("second pin"), left("plate")}, Most: 12}
		for _, s := range q.settings {
			row := []string{s.Method.String(), fmt.Sprint(s.Crank.Turns), "", "", "", "", s.Plate}
			if s.Crank.Holes > 0 {
				row[2], row[3], row[4] = fmt.Sprint(s.Crank.Holes), fmt.Sprint(s.Crank.Circle), fmt.Sprint(s.Crank.Span())
			}
			switch {
			case s.Method == dividing.Direct:
				row[4] = ""
			case s.Method == dividing.Compound:
				row[5] = fmt.Sprintf("%d of %d %s", s.Back.Holes, s.Back.Circle, sense(s))
				if !s.OneSide {
					row[5] += ", if on one side"
				}
			case s.Crank.Holes == 0:
				row[6] = "any"
			}
			t.Rows = append(t.Rows, row)
		}
		q.out.Tables = append(q.out.Tables, t.filled())
	}
	t := Table{Title: "With the plate geared to the spindle, turning with the crank or against it, fewest wheels first; wheels that drive (spindle, stud out) may be changed over, and so may wheels that are driven (stud in, plate)",
		Head: []Column{right("turns"), right("holes"), right("circle"), right("spindle"), right("stud in"), right("stud out"), right("plate"), right("idlers"), left("plate turns")}, Most: 12}
	for _, s := range q.trains() {
		row := []string{fmt.Sprint(s.Crank.Turns), fmt.Sprint(s.Crank.Holes), fmt.Sprint(s.Crank.Circle), fmt.Sprint(s.Train.Spindle), "", "",
			fmt.Sprint(s.Train.Plate), fmt.Sprint(s.Train.Idlers), strings.TrimSuffix(plateTurns(s.Train), " the crank")}
		if s.Train.Pairs == 2 {
			row[4], row[5] = fmt.Sprint(s.Train.StudIn), fmt.Sprint(s.Train.StudOut)
		}
		t.Rows = append(t.Rows, row)
	}
	if len(t.Rows) > 0 {
		q.out.Tables = append(q.out.Tables, t.filled())
	}
}

// filled leaves out the columns in which nothing stands.
func (t Table) filled() Table {
	out := t
	out.Head, out.Rows = nil, make([][]string, len(t.Rows))
	for i, c := range t.Head {
		if !slices.ContainsFunc(t.Rows, func(r []string) bool { return r[i] != "" }) {
			continue
		}
		out.Head = append(out.Head, c)
		for n, r := range t.Rows {
			out.Rows[n] = append(out.Rows[n], r[i])
		}
	}
	return out
}

// nearest says what comes nearest, and what it is off by.
func (q *divided) nearest() {
	switch {
	case q.plates && q.near.Single.Method == 0:
		q.say("One move is less than half a hole of every circle: the places could not be told apart.")
	case q.near.Rounded.Circle > 0:
		q.say("Counted from the first place, each time to the nearest hole of the %d circle, no place is off by more than %s seconds of arc%s.",
			q.near.Rounded.Circle, round(dividing.Seconds(q.near.Rounded.AtMost), 2), q.atRadius(q.near.Rounded.AtMost))
		q.value("off at most, places from the first", dividing.Seconds(q.near.Rounded.AtMost), "seconds of arc", "worked out")
	}
	t := Table{Title: "The same move each time, its error adding up (seconds of arc, + too far)", Head: []Column{left("move"), right("a move"), right("at closing")}}
	if q.radius > 0 {
		t.Title = "The same move each time, its error adding up (seconds of arc, and " + q.unit() + " at the radius; + too far)"
		t.Head = append(t.Head, right(q.unit()+" a move"), right(q.unit()+" at closing"))
	}
	for _, s := range []dividing.Setting{q.near.Single, q.near.Compound} {
		if s.Method == 0 {
			continue
		}
		row := []string{doing(s), off(s.PerSpace), ""}
		if s.AtClosing.Valid() {
			row[2] = off(s.AtClosing)
		}
		if q.radius > 0 {
			row = append(row, q.length(s.PerSpace), "")
			if s.AtClosing.Valid() {
				row[4] = q.length(s.AtClosing)
			}
		}
		t.Rows = append(t.Rows, row)
		q.value(s.Method.String()+", off a move", dividing.Seconds(s.PerSpace), "seconds of arc", "worked out")
		if s.AtClosing.Valid() {
			q.value(s.Method.String()+", off at closing", dividing.Seconds(s.AtClosing), "seconds of arc", "worked out")
		}
	}
	if len(t.Rows) > 0 {
		q.out.Tables = append(q.out.Tables, t)
	}
}

// unit is what lengths of a table are in.
func (q *divided) unit() string {
	if q.Units == drawing.Inch {
		return "in"
	}
	return "mm"
}

// length writes an error at the radius with its sign.
func (q *divided) length(part dividing.Fraction) string {
	s, mm := "", dividing.Arc(part, q.radius)
	if s = millimetres(mm); q.Units == drawing.Inch {
		s = inches(mm)
	}
	if mm > 0 && s != "0" {
		return "+" + s
	}
	return s
}

// atRadius adds what an error is at the radius, if one was asked for.
func (q *divided) atRadius(part dividing.Fraction) string {
	if q.radius == 0 {
		return ""
	}
	return ", " + q.Says(dividing.Arc(part, q.radius)) + " at a radius of " + q.Says(q.radius)
}
