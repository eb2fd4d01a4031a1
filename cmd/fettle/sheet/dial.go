package sheet

import (
	"fmt"
	"math"
	"strings"

	"fettle/schema/drawing"
	"fettle/schema/model"
	"fettle/schema/text"
)

// dial is one graduated collar: what a turn and a line of it stand for, in mm, and whether it is
// marked in inches.
type dial struct {
	turn, line float64
	inch       bool
}

// dialOf is a dial of which both are known.
func (m *maker) dialOf(turn, line model.Known[float64]) (dial, bool) {
	if !turn.Is() || !line.Is() || !(turn.V > 0) || !(line.V > 0) || turn.V < line.V {
		return dial{}, false
	}
	inch := m.c.Build.Shop.Unit == drawing.Inch
	if line.Said() {
		inch = inInches(m.c.Build.Sources, line.At, inch)
	}
	return dial{turn.V, line.V, inch}, true
}

// inInches says whether a length is written in inches; as all others are where it does not say.
func inInches(s *text.Sources, at text.Place, others bool) bool {
	all := s.Bytes(at.File)
	if at.From < 0 || at.To > len(all) || at.From > at.To {
		return others
	}
	w := string(all[at.From:at.To])
	switch {
	case strings.Contains(w, "mm"):
		return false
	case strings.Contains(w, "in"), strings.Contains(w, `\"`), strings.Contains(w, "thou"):
		return true
	}
	return others
}

// axes gives the dials of a mill for x, y and z, as far as they are known.
func (m *maker) axes(mc *model.Machine) (out [3]dial, known [3]bool) {
	if mc == nil {
		return out, known
	}
	for i, d := range [3]model.Dial{mc.Dials.X, mc.Dials.Y, mc.Dials.Z} {
		out[i], known[i] = m.dialOf(d.Turn, d.Division)
	}
	return out, known
}

// count is a way in whole turns and lines, to a tenth of a line; the way counts without its sign.
func (d dial) count(way float64) (turns, lines float64) {
	tenths := math.Round(math.Abs(way) / d.line * 10)
	turns = math.Floor(tenths*d.line/10/d.turn + 1e-9)
	lines = math.Round(tenths-turns*d.turn/d.line*10) / 10
	return turns, lines
}

// reads is a way in turns and lines: "4 turns + 25 lines".
func (d dial) reads(way float64) string {
	turns, lines := d.count(way)
	many := func(n float64, what string) string {
		if n == 1 {
			return "1 " + what
		}
		return model.Figure(n) + " " + what + "s"
	}
	switch {
	case turns == 0:
		return many(lines, "line")
	case lines == 0:
		return many(turns, "turn")
	}
	return many(turns, "turn") + " + " + many(lines, "line")
}

// short is the same for a table: "4 + 25".
func (d dial) short(way float64) string {
	turns, lines := d.count(way)
	return fmt.Sprintf("%s + %s", model.Figure(turns), model.Figure(lines))
}

// size is a length as the dial is marked.
func (d dial) size(mm float64) string {
	if d.inch {
		return model.Figure(math.Round(mm/25.4*1e5)/1e5) + " in"
	}
	return model.Figure(mm) + " mm"
}

// slack is that of the screws of a mill's table, x and y; false where it is not known.
func slack(mc *model.Machine) (x, y float64, ok bool) {
	b := mc.Backlash
	switch {
	case b.Bare.Is():
		return b.Bare.V, b.Bare.V, true
	case b.X.Is() && b.Y.Is():
		return b.X.V, b.Y.V, true
	}
	return 0, 0, false
}

// approach says from which side to come to each place, so that the slack of the screws counts
// nowhere.
func (m *maker) approach(mc *model.Machine, z zero, put func(a, b string)) {
	if mc == nil || mc.Kind != "mill" {
		return
	}
	d, known := m.axes(mc)
	if !known[0] && !known[1] {
		return
	}
	words := "from the " + z.aside(0) + " and the " + z.aside(1) + ", to nought and to every place"
	if x, y, ok := slack(mc); ok {
		words += "; slack " + model.Figure(x) + " mm"
		if x != y {
			words += " in x, " + model.Figure(y) + " mm in y"
		}
	}
	put("come to it", words)
	var each []string
	for i, name := range []string{"x", "y"} {
		if known[i] && (i == 0 || !known[0] || d[1] != d[0]) {
			each = append(each, name+" "+d[i].size(d[i].line)+" a line, "+d[i].size(d[i].turn)+" a turn")
		}
	}
	if len(each) == 1 && known[0] && known[1] {
		each[0] = strings.TrimPrefix(each[0], "x ")
	}
	put("dials", strings.Join(each, "; "))
}
