package handbook

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fettle/schema/drawing"
	"fettle/schema/printed"
)

// What the handbook answers is what is printed. Rows that are no test stand in the table's head.
func TestPublished(t *testing.T) {
	counts := map[string]int{}
	for _, r := range printed.Rows(t, "handbook.tsv", 4) {
		counts[r[0]]++
		if said := asPrinted(t, r[0], r[1], r[2]); said != "" {
			t.Errorf("%s %s: %s, printed %s in %s", r[0], r[1], said, r[2], r[3])
		}
	}
	for what, least := range map[string]int{"instrument": 54, "collet": 8, "closes": 5, "cutter bore": 24, "drawbar": 26, "point": 5, "point of": 2, "tap lead": 5, "ream": 11, "pass": 3, "bore keyway": 1} {
		if counts[what] < least {
			t.Errorf("%s: %d rows", what, counts[what])
		}
	}
}

// asPrinted says what is answered where that is not what is printed.
func asPrinted(t *testing.T, what, given, want string) string {
	t.Helper()
	first, rest, _ := strings.Cut(given, "; ")
	words := strings.Fields(given)
	var got []float64
	ok := true
	switch what {
	case "instrument":
		f := printed.Figures(t, rest)
		x, has := InstrumentError(first, f[0], f[1], f[2])
		got, ok = []float64{x}, has
	case "collet":
		c, has := ColletSystem(first)
		f := strings.Fields(want)
		if !has || c.Nut.String() != f[2] {
			return c.Nut.String()
		}
		got, want = []float64{c.Largest, c.Body}, f[0]+" "+f[1]
	case "closes":
		c, has := ColletSystem(words[0])
		got, ok = []float64{c.Closes(printed.Figure(t, words[1]))}, has
	case "cutter bore":
		x, has := CutterBore(words[0], printed.Figure(t, words[1]))
		got, ok = []float64{x}, has
	case "drawbar":
		return drawbarAsPrinted(t, first, rest)
	case "point":
		got = []float64{DrillPoint(printed.Figure(t, given))}
	case "point of":
		f := printed.Figures(t, given)
		got = []float64{f[1] * DrillPoint(f[0])}
	case "tap lead":
		lo, hi, has := TapLead(given)
		got, ok = []float64{lo, hi}, has
	case "pass":
		_, most, _, has := PassDepth(words[0], words[1], words[2], printed.Figure(t, words[3]))
		got, ok = []float64{most}, has
	case "bore keyway":
		d := printed.Figure(t, given)
		k, has := KeyFor(d)
		got, ok = []float64{d + k.Bore}, has
	case "ream":
		return reamAsPrinted(t, words, printed.Figures(t, want))
	default:
		return "no check for it"
	}
	want, within, _ := strings.Cut(want, " within ")
	room := 1e-9
	if within != "" {
		room = printed.Figure(t, within)
	}
	for i, w := range printed.Figures(t, want) {
		if !ok || !(math.Abs(got[i]-w) <= room+1e-9) {
			return fmt.Sprint(got, ok)
		}
	}
	return ""
}

func drawbarAsPrinted(t *testing.T, taper, thread string) string {
	t.Helper()
	of, err1 := drawing.ParseTaper(taper)
	want, err2 := drawing.ParseThread(thread)
	if err1 != nil || err2 != nil {
		return fmt.Sprint(err1, err2)
	}
	want, _ = FillThread(want)
	var names []string
	for _, d := range Drawbars(of) {
		if d.Thread.Diameter == want.Diameter && d.Thread.Pitch == want.Pitch && d.Thread.Series == want.Series {
			return ""
		}
		names = append(names, d.Thread.String())
	}
	return "only " + strings.Join(names, ", ")
}

// reamAsPrinted holds a printed stock to the band at the ends and the middle of its diameters.
func reamAsPrinted(t *testing.T, words []string, stock []float64) string {
	t.Helper()
	from, to := printed.Figure(t, words[1]), printed.Figure(t, words[2])
	for _, d := range []float64{from, (from + to) / 2, to} {
		lo, hi, _, ok := ReamAllowance(words[0], d, "steel_mild")
		if !ok || stock[0] < lo-1e-9 || stock[1] > hi+1e-9 {
			return fmt.Sprintf("%v to %v at %v (%v)", lo, hi, d, ok)
		}
	}
	return ""
}
