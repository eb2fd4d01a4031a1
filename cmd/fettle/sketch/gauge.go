package sketch

import (
	"math"
	"slices"
)

// nearer is how far from the view's edge the first dimension line stands, and rows how many stand
// side by side at most.
const (
	nearer = 5.0
	rows   = 3
)

// gauges draws the sizes of a view: in the order and with the texts on the side with which all find
// room, else with which most do; at last with texts beside their lines farther off. What finds none
// stands in the lines beside the drawing.
func (p *pane) gauges() {
	all := p.inTurn()
	back := slices.Clone(all)
	slices.Reverse(back)
	strokes, heads, words := len(p.d.Strokes), len(p.d.Heads), len(p.d.Texts)
	try := func(n int) (placed int) {
		p.d.Strokes, p.d.Heads, p.d.Texts, p.used = p.d.Strokes[:strokes], p.d.Heads[:heads], p.d.Texts[:words], nil
		for _, g := range [2][]Gauge{all, back}[n/2%2] {
			if p.gauge(g, n%2 == 1, n >= 4) {
				placed++
			}
		}
		return placed
	}
	best, most := 0, -1
	for n := range 8 {
		placed := try(n)
		if placed == len(all) {
			return
		}
		if placed > most {
			best, most = n, placed
		}
	}
	try(best)
}

// gauge draws a size beside or below the view, where its text and lines cross no text; false where
// there is no such place. A text that stands beside its line does so at its end, or at its
// beginning; off: farther from it.
func (p *pane) gauge(g Gauge, beginning, off bool) bool {
	out := g.Out.unit()
	upright := g.Out.X != 0
	m := Dimension{p.put(g.From), p.put(g.To), g.Out, g.Words}
	if l := m.To.sub(m.From); abs(l.cross(out)) < 0.01 {
		return true
	}
	edge := -p.frame.lo.Y
	if upright {
		edge = -p.frame.lo.X
	}
	for k := range rows {
		at := edge + nearer + level*float64(k)
		if upright {
			at -= aside
		}
		a, b := m.From.add(out.times(at-m.From.dot(out))), m.To.add(out.times(at-m.To.dot(out)))
		from, to := m.From, m.To
		if upright && a.Y > b.Y || !upright && a.X > b.X {
			a, b, from, to = b, a, to, from
		}
		if p.taken(upright, k, a, b) {
			continue
		}
		for _, t := range texts(a, b, m.Words, upright, beginning, off) {
			if p.d.free(t) && p.d.open(a, b) && !t.box().crossedBy(a, b) && p.d.headsFree(a, b) &&
				p.d.untouched(from, a.add(out.times(over))) && p.d.untouched(to, b.add(out.times(over))) {
				p.d.dimensionAt(Dimension{from, to, g.Out, g.Words}, out, a, b, t)
				p.used = append(p.used, stretch{upright, k, a, b})
				return true
			}
		}
	}
	return false
}

// stretch is what a dimension line takes up of a row.
type stretch struct {
	upright bool
	row     int
	a, b    Point
}

// taken says whether another dimension line of the row lies along a stretch; one may end where the
// next begins.
func (p *pane) taken(upright bool, row int, a, b Point) bool {
	const touch = 0.1
	return slices.ContainsFunc(p.used, func(s stretch) bool {
		return s.upright == upright && s.row == row && s.a.X+s.a.Y < b.X+b.Y-touch && a.X+a.Y < s.b.X+s.b.Y-touch
	})
}

// texts gives places for the text of a size: over the middle of its line where that is long enough,
// nearer to an end of it, then beside its ends.
func texts(a, b Point, words string, upright, beginning, off bool) (out []Text) {
	w, d := Room(words, letters), b.sub(a)
	l := d.len()
	foot := d.left().times((above + 0.35*letters) / l)
	put := func(t float64) {
		x := Text{At: a.add(d.times(t / l)).add(foot), Words: words, Height: letters}
		if upright {
			x.Turn = 90
		}
		out = append(out, x)
	}
	if w < l-0.4 {
		put((l - w) / 2)
		put(0.2)
		put(l - w - 0.2)
	}
	if upright && w >= l-0.4 { // level, beside the middle of the line
		m := a.add(b).times(0.5)
		out = append(out, Text{At: Point{m.X - over - 0.6, m.Y - letters/2}, Words: words, Height: letters, End: true})
	}
	ends := []float64{l + 2*headLong + 1, -w - 2*headLong - 1}
	if beginning {
		slices.Reverse(ends)
	}
	if off { // beyond the line of another size
		for far := 5.0; far <= 15; far += 5 {
			put(ends[0] + math.Copysign(far, ends[0]))
		}
	}
	put(ends[0])
	put(ends[1])
	return out
}

// inTurn gives the sizes of a view in the order in which they find their places: beside it the
// longest first, which has its text between its arrows, so that a short one finds room beyond it;
// below it the shortest first, since they lie within each other.
func (p *pane) inTurn() []Gauge {
	gs := slices.Clone(p.Gauges)
	long := func(g Gauge) float64 { return p.put(g.To).sub(p.put(g.From)).len() }
	slices.SortStableFunc(gs, func(a, b Gauge) int {
		d := long(b) - long(a)
		if a.Out.X == 0 && b.Out.X == 0 {
			d = -d
		}
		switch {
		case d < -1e-6:
			return -1
		case d > 1e-6:
			return 1
		}
		return 0
	})
	return gs
}

func abs(x float64) float64 { return max(x, -x) }
