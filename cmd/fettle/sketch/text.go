package sketch

import (
	"fmt"
	"math"
	"strings"
	"unicode"
)

// Lettering. A text's room is reckoned from a table of widths no letter of the usual plain
// typefaces exceeds, so that it does not depend on what the reader has installed.

// capital is the height of capitals in parts of the size of type, of usual plain typefaces
// (common practice: 0.70 to 0.73).
const capital = 0.72

// widths of letters in parts of the size of type; what is not listed is as wide as it is high
// (measured on a wide plain typeface, rounded up).
var widths = func() map[rune]float64 {
	m := map[rune]float64{}
	for s, w := range map[string]float64{
		" .,:;'|!ijl": 0.4, "ftrI()[]{}-/\\\"": 0.46, "0123456789": 0.64, "Jcszkvxy": 0.6,
		"abdeghnopquLEFPTYZSBK_?<>~^*#$": 0.7, "ACDGHNOQRUVX&": 0.8, "+=±×": 0.84, "°": 0.5, "ØR": 0.8,
	} {
		for _, r := range s {
			m[r] = w
		}
	}
	return m
}()

// Room gives the width in mm that a text takes up at a height of capitals.
func Room(words string, height float64) float64 {
	sum := 0.0
	for _, r := range plain(words) {
		w, ok := widths[r]
		if !ok {
			w = 1.05
		}
		sum += w
	}
	return sum * height / capital
}

// plain gives a text with what does not print, or turns the direction of writing, replaced.
func plain(s string) string {
	return strings.Map(func(r rune) rune {
		if r == unicode.ReplacementChar || !unicode.IsPrint(r) || unicode.Is(unicode.Mn, r) || unicode.Is(unicode.Me, r) {
			return '?'
		}
		return r
	}, s)
}

// escape makes a text fit to stand in SVG.
func escape(s string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "'", "&#39;").Replace(plain(s))
}

// Figure gives a size for a drawing: to 0.001 mm, without nought at its end.
func Figure(mm float64) string {
	s := strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.3f", mm), "0"), ".")
	if s == "-0" || s == "" {
		return "0"
	}
	return s
}

// box is the room a thing takes up on the sheet.
type box struct{ lo, hi Point }

func (b box) grown(by float64) box {
	return box{Point{b.lo.X - by, b.lo.Y - by}, Point{b.hi.X + by, b.hi.Y + by}}
}

func (b box) meets(o box) bool {
	return b.lo.X < o.hi.X && o.lo.X < b.hi.X && b.lo.Y < o.hi.Y && o.lo.Y < b.hi.Y
}

// box gives the room of a text, with what hangs below its foot line.
func (t Text) box() box {
	w, below := Room(t.Words, t.Height), 0.35*t.Height
	if t.End && t.Turn == 0 {
		t.At.X -= w
	}
	if t.Turn == 0 {
		return box{Point{t.At.X, t.At.Y - below}, Point{t.At.X + w, t.At.Y + 1.1*t.Height}}
	}
	return box{Point{t.At.X - 1.1*t.Height, t.At.Y}, Point{t.At.X + below, t.At.Y + w}}
}

// crossedBy says whether a straight stretch comes into a box.
func (b box) crossedBy(p, q Point) bool {
	lo, hi := 0.0, 1.0
	d := q.sub(p)
	for _, c := range [2][4]float64{{p.X, d.X, b.lo.X, b.hi.X}, {p.Y, d.Y, b.lo.Y, b.hi.Y}} {
		if math.Abs(c[1]) < 1e-12 {
			if c[0] <= c[2] || c[0] >= c[3] {
				return false
			}
			continue
		}
		t0, t1 := (c[2]-c[0])/c[1], (c[3]-c[0])/c[1]
		lo, hi = max(lo, min(t0, t1)), min(hi, max(t0, t1))
	}
	return lo < hi
}

// free says whether a text would overlap no text and no wide line, and lie on the sheet. Other
// lines may not run through it either, but may pass within the grace of half a millimetre.
func (d *Drawing) free(t Text) bool {
	b := t.box()
	if b.lo.X < 1 || b.lo.Y < 1 || b.hi.X > d.Width-1 || b.hi.Y > d.Height-1 {
		return false
	}
	if w := d.within; w != (box{}) && (b.lo.X < w.lo.X || b.lo.Y < w.lo.Y || b.hi.X > w.hi.X || b.hi.Y > w.hi.Y) {
		return false
	}
	for _, o := range d.Texts {
		if b.grown(0.5).meets(o.box()) {
			return false
		}
	}
	for i := range d.Strokes {
		s := &d.Strokes[i]
		room := b
		if s.Pen == Wide {
			room = b.grown(0.5 + wide/2)
		}
		for k := range s.Points[1:] {
			if room.crossedBy(s.Points[k], s.Points[k+1]) {
				return false
			}
		}
	}
	for _, h := range d.Heads {
		if b.meets(h.box()) {
			return false
		}
	}
	return true
}
