package reckon

import (
	"errors"
	"fmt"

	"fettle/eval/reckon/dial"
)

// room answers whether figures go round the rim.
func (q *dialled) room() error {
	rim, ok := q.Length("rim")
	n, numbered := q.Whole("figures")
	if !ok {
		for _, f := range []string{"figures", "digits", "punch", "width", "gap"} {
			if q.given(f) {
				return fmt.Errorf("--%s wants the diameter of the rim: say --rim too", f)
			}
		}
		return nil
	}
	if !numbered {
		return q.spacing(rim)
	}
	digits, ok := q.Whole("digits")
	if !ok {
		digits = len(fmt.Sprint(n - 1))
	}
	gap := 0.3
	if g, ok := q.Length("gap"); ok {
		gap = g
	}
	width, ok := q.Length("width")
	height, high := q.Length("punch")
	least := width
	switch {
	case ok:
	case high:
		least, width = dial.Width(height)
		q.step("A figure %s mm high is %s to %s mm wide (common practice: measure your own punches).", millimetres(height), millimetres(least), millimetres(width))
	default:
		return errors.New("--figures wants the size of the punches: say --punch or --width")
	}
	wide, err := dial.Figures(rim, n, digits, width, gap, q.d.Lines)
	if err != nil {
		return err
	}
	narrow, err := dial.Figures(rim, n, digits, least, gap, q.d.Lines)
	if err != nil {
		return err
	}
	q.fits(narrow, wide, n)
	q.step("Spacing = pi x %s / %d = %s mm; a number needs %d x (%s + %s) = %s mm.", millimetres(rim), n, millimetres(wide.Spacing), digits, millimetres(width), millimetres(gap), millimetres(wide.Needs))
	q.lineSpace(wide.Line)
	q.out.Values = append(q.out.Values, gearLength("figure spacing", wide.Spacing), gearLength("number needs", wide.Needs), gearLength("least rim", wide.Least))
	return nil
}

// fits says it: figures may be as narrow or as wide as the punch's height lets them be.
func (q *dialled) fits(narrow, wide dial.Room, n int) {
	switch {
	case wide.Fits:
		q.say("%d numbers find room: %s apart, of which the widest needs %s.", n, q.Says(wide.Spacing), q.Says(wide.Needs))
	case narrow.Fits:
		q.say("%d numbers find room only if the figures are narrow: %s apart, and a number needs %s. Measure the punches.", n, q.Says(wide.Spacing), q.Span(narrow.Needs, wide.Needs))
	default:
		q.out.No = true
		q.say("%d numbers do not find room: %s apart, and a number needs %s. They fit from a rim of %s on; or take smaller punches or fewer numbers.", n, q.Says(wide.Spacing), q.Says(narrow.Needs), q.Says(narrow.Least))
	}
	q.say("Figures that are to rise as the handle turns clockwise run %s round the dial, seen from the handle; else %s.", dial.Way(true), dial.Way(false))
	q.say("Stamp before the rim is turned to size, with a mandrel in the bore, and skim what swells.")
}

func (q *dialled) spacing(rim float64) error {
	for _, f := range []string{"digits", "punch", "width", "gap"} {
		if q.given(f) {
			return fmt.Errorf("--%s is of figures: say --figures too", f)
		}
	}
	if q.d.Lines == 0 {
		return errors.New("--rim tells the room for lines and figures: say --lines or --figures too")
	}
	r, err := dial.Figures(rim, 1, 1, 0.1, 0, q.d.Lines)
	if err == nil {
		q.lineSpace(r.Line)
	}
	return err
}

func (q *dialled) lineSpace(space float64) {
	if space > 0 {
		q.say("Lines stand %s apart on the rim.", q.Says(space))
		q.out.Values = append(q.out.Values, gearLength("line spacing", space))
	}
}

// strokes answers how far a slide goes for lines of several lengths.
func (q *dialled) strokes() error {
	lengths, ok := q.Lengths("strokes")
	if !ok {
		for _, f := range []string{"discs", "deep", "turn", "line"} {
			if q.given(f) {
				return fmt.Errorf("--%s is of the slide that cuts the lines: say --strokes too", f)
			}
		}
		return nil
	}
	discs, hasDiscs := q.Lengths("discs")
	turn, hasTurn := q.Length("turn")
	line, hasLine := q.Length("line")
	every := []int{10, 5, 1}
	switch {
	case len(lengths) > 3:
		return errors.New("--strokes wants at most three lengths: every tenth, fifth and single line")
	case hasDiscs && len(discs) != len(lengths):
		return fmt.Errorf("--discs wants a cutter for each of the %d --strokes; 0 is a point that is drawn along", len(lengths))
	case !hasTurn || !hasLine:
		return errors.New("--strokes wants --turn and --line of the slide that makes them")
	}
	deep := 0.2
	if d, ok := q.Length("deep"); ok {
		deep = d
	}
	var wanted []dial.Stroke
	for i, l := range lengths {
		s := dial.Stroke{Every: every[3-len(lengths)+i], Length: l}
		if hasDiscs {
			s.Cutter = discs[i]
		}
		wanted = append(wanted, s)
	}
	cut, err := dial.Cut(wanted, deep, turn, line)
	if err != nil {
		return err
	}
	t := Table{Title: "Strokes, from where the tool stands over the end of the rim", Head: []Column{left("lines"), right("long mm"), right("disc mm"), right("beyond mm"),
		right("travel mm"), right("turns"), right("and lines"), right("off mm")}}
	for _, s := range cut {
		disc, beyond := "none", "0"
		if s.Cutter > 0 {
			disc, beyond = millimetres(s.Cutter), millimetres(s.Beyond)
		}
		t.Rows = append(t.Rows, []string{everyWord[s.Every], millimetres(s.Length), disc, beyond, millimetres(s.Travel), fmt.Sprint(s.Turns), fmt.Sprint(s.Lines), signed(s.Off)})
		q.out.Values = append(q.out.Values, gearLength("travel of "+everyWord[s.Every], s.Travel))
	}
	q.out.Tables = append(q.out.Tables, t)
	if hasDiscs {
		q.step("A disc cuts beyond its middle by sqrt(h x (D - h)), h = %s mm deep.", millimetres(deep))
	}
	return nil
}

var everyWord = map[int]string{10: "each 10th", 5: "each 5th", 1: "single"}
