package reckon

import (
	"math/big"
	"strings"

	"fettle/schema/model"
)

// shopDials are the places of the shop's machines that have a dial: thing, name, and the members that
// say turn, line, count of lines and what it reads.
var shopDials = []struct{ kind, name, turn, division, lines string }{
	{"mill", "x", "dials.x.turn", "dials.x.division", "dials.x.lines"},
	{"mill", "y", "dials.y.turn", "dials.y.division", "dials.y.lines"},
	{"mill", "z", "dials.z.turn", "dials.z.division", "dials.z.lines"},
	{"mill", "quill", "dials.quill.turn", "dials.quill.division", "dials.quill.lines"},
	{"lathe", "top slide", "top_slide.turn", "top_slide.division", "top_slide.lines"},
	{"lathe", "cross slide", "cross_slide.turn", "cross_slide.division", "cross_slide.lines"},
}

// owned holds every dial of the shop against itself: lines times value is the turn.
func (q *dialled) owned() error {
	t := Table{Head: []Column{left("dial"), right("turn mm"), right("line mm"), right("lines"), left("closes")}}
	bad, open := 0, 0
	for _, i := range q.Things("mill", "lathe") {
		for _, p := range shopDials {
			if p.kind != i.Kind {
				continue
			}
			turn, hasTurn := saidFigure(i, p.turn)
			value, hasValue := saidFigure(i, p.division)
			count, hasCount := saidFigure(i, p.lines)
			if !hasTurn && !hasValue {
				continue
			}
			cells := []string{i.Path() + ", " + p.name, orUnknown(turn, hasTurn), orUnknown(value, hasValue), orUnknown(count, hasCount), ""}
			cells[3], cells[4] = closing(turn, value, count, hasTurn && hasValue && value.Sign() > 0, hasCount)
			if cells[4] == "not known" {
				open++
			}
			if strings.HasPrefix(cells[4], "no:") {
				bad++
			}
			t.Rows = append(t.Rows, cells)
		}
	}
	switch {
	case len(t.Rows) == 0:
		q.say("The machines of the shop say nothing of their dials: division, turn and lines are wanted.")
		return nil
	case bad > 0:
		q.out.No = true
		q.say("Of the shop's %s %d cannot be right: lines times value is not the turn.", counted(len(t.Rows), "dial"), bad)
	default:
		q.say("No dial of the shop's %s is found not to close.", counted(len(t.Rows), "dial"))
	}
	if open > 0 {
		q.say("Of %d not enough is known.", open)
	}
	q.out.Tables = append(q.out.Tables, t)
	q.out.Values = append(q.out.Values, figure("dials that do not close", float64(bad), "", "worked out"))
	return nil
}

// closing gives the lines and whether they close.
func closing(turn, value, count *big.Rat, known, counted bool) (lines, says string) {
	lines = orUnknown(count, counted)
	if !known {
		return lines, "not known"
	}
	n := new(big.Rat).Quo(turn, value)
	switch {
	case !n.IsInt() || counted && n.Cmp(count) != 0:
		return lines, "no: the turn holds " + round(asFloat(n), 4) + " such lines"
	case counted:
		return lines, "yes"
	}
	return lines, "yes, with " + n.RatString() + " lines: count them"
}

func saidFigure(i *model.Item, name string) (*big.Rat, bool) {
	v, ok := Member(i, name)
	if !ok || v.Kind != model.Number {
		return new(big.Rat), false
	}
	return decimal(v.Num), true
}

func orUnknown(x *big.Rat, known bool) string {
	if !known {
		return "?"
	}
	return round(asFloat(x), 6)
}
