package eval

import (
	"fmt"

	"fettle/eval/reckon/dividing"
	"fettle/schema/model"
)

// Indexing words the settings of an operation for the list of what was chosen: "dividing_plate.a,
// 1 turn and 5 holes in the circle of 20". False where nothing is divided, or nothing exact is known.
func Indexing(d Divider, st *Step) (words []string, ok bool) {
	all, wrong := st.Divisions()
	if wrong != "" {
		return nil, false
	}
	plate, circle := st.Written()
	d = d.Only(plate, circle)
	for _, dv := range all {
		if d.Dial {
			s, err := d.Rotary.Step(dv.Job)
			if err != nil {
				return nil, false
			}
			words = append(words, dialWords(d.Rotary, s))
			continue
		}
		ways := d.For(dv).Ways(dv.Job)
		if len(ways) == 0 || ways[0].Method == dividing.Compound {
			continue
		}
		words = append(words, SettingWords(ways[0]))
	}
	return words, len(words) > 0
}

func dialWords(r dividing.Rotary, s dividing.DialStep) string {
	says := turnsOf(s.Turns) + " and " + model.Figure(dividing.Degrees(dividing.Of(s.Lines, 1).Times(r.Line))) + " deg on the dial"
	if s.Turns == 0 {
		says = model.Figure(dividing.Degrees(dividing.Of(s.Lines, 1).Times(r.Line))) + " deg on the dial"
	}
	if s.PerSpace.Num != 0 {
		says += ", read each from the first place: within " + model.Figure(dividing.Degrees(s.AtMost)) + " deg"
	}
	return says
}

func turnsOf(n int64) string {
	if n == 1 {
		return "1 turn"
	}
	return fmt.Sprintf("%d turns", n)
}

// SettingWords tells one move of a setting.
func SettingWords(s dividing.Setting) string {
	c := s.Crank
	holes := fmt.Sprintf("%d holes in the circle of %d", c.Holes, c.Circle)
	if c.Holes == 1 {
		holes = fmt.Sprintf("1 hole in the circle of %d", c.Circle)
	}
	switch {
	case s.Method == dividing.Direct && c.Holes == 0:
		return turnsOf(c.Turns) + " of the spindle"
	case s.Method == dividing.Direct:
		return "direct, " + holes
	case c.Holes == 0 && s.Method == dividing.Plain:
		return turnsOf(c.Turns) + " of the crank in any circle"
	}
	says := holes
	if c.Turns > 0 {
		says = turnsOf(c.Turns) + " and " + holes
	}
	if c.Holes == 0 {
		says = turnsOf(c.Turns)
	}
	if s.Plate != "" {
		says = s.Plate + ", " + says
	}
	switch s.Method {
	case dividing.Compound:
		way := "with"
		if s.Against {
			way = "against"
		}
		says += fmt.Sprintf(", and the plate %d holes in the circle of %d %s the crank", s.Back.Holes, s.Back.Circle, way)
	case dividing.Differential:
		says += ", " + trainWords(s.Train)
	}
	return says
}

func trainWords(t dividing.Train) string {
	says := fmt.Sprintf("wheel %d on the spindle driving %d on the plate", t.Spindle, t.Plate)
	if t.Pairs == 2 {
		says = fmt.Sprintf("wheel %d on the spindle driving %d, %d with it driving %d on the plate", t.Spindle, t.StudIn, t.StudOut, t.Plate)
	}
	switch t.Idlers {
	case 0:
	case 1:
		says += ", 1 idler"
	default:
		says += fmt.Sprintf(", %d idlers", t.Idlers)
	}
	return says
}

// Setting is how one thing is divided: its places, and the move from one to the next.
type Setting struct {
	Division Division
	Move     dividing.Setting
}

// Settings are those of the words of Indexing, where plates or the spindle's own holes do it; a
// dial's moves are not among them.
func Settings(d Divider, st *Step) (out []Setting) {
	all, wrong := st.Divisions()
	if wrong != "" || d.Dial {
		return nil
	}
	plate, circle := st.Written()
	d = d.Only(plate, circle)
	for _, dv := range all {
		if ways := d.For(dv).Ways(dv.Job); len(ways) > 0 && ways[0].Method != dividing.Compound {
			out = append(out, Setting{dv, ways[0]})
		}
	}
	return out
}
