package sketch

import "slices"

// nearer is how far from the view's edge the first dimension line stands, and rows how many stand
// side by side at most.
const (
	nearer = 5.0
	rows   = 2
)

// gauge draws a size beside or below the view, where its text and lines cross no text. What finds
// no room stands in the list of figures beside the drawing.
func (p *pane) gauge(g Gauge) {
	out := g.Out.unit()
	upright := g.Out.X != 0
	m := Dimension{p.put(g.From), p.put(g.To), g.Out, g.Words}
	if l := m.To.sub(m.From); abs(l.cross(out)) < 0.01 {
		return
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
		for _, t := range texts(a, b, m.Words, upright) {
			if p.d.free(t) && p.d.open(a, b) && !t.box().crossedBy(a, b) && p.d.headsFree(a, b) &&
				p.d.untouched(from, a.add(out.times(over))) && p.d.untouched(to, b.add(out.times(over))) {
				p.d.dimensionAt(Dimension{from, to, g.Out, g.Words}, out, a, b, t)
				return
			}
		}
	}
}

// texts gives places for the text of a size: over the middle of its line where that is long enough,
// nearer to an end of it, then beside its ends.
func texts(a, b Point, words string, upright bool) (out []Text) {
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
	put(l + 2*headLong + 1)
	put(-w - 2*headLong - 1)
	return out
}

// longestFirst gives the sizes of a view, the longest first: it has its text between its arrows, and
// a short one finds room beyond it.
func (p *pane) longestFirst() []Gauge {
	gs := slices.Clone(p.Gauges)
	long := func(g Gauge) float64 { return p.put(g.To).sub(p.put(g.From)).len() }
	slices.SortStableFunc(gs, func(a, b Gauge) int {
		switch {
		case long(a) > long(b)+1e-6:
			return -1
		case long(b) > long(a)+1e-6:
			return 1
		}
		return 0
	})
	return gs
}

func abs(x float64) float64 { return max(x, -x) }
