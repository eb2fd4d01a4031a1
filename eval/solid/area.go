package solid

import (
	"math"
	"slices"
)

// Areas. Between neighbouring rows at which an outline begins, ends, has a corner
// or crosses another, the length of metal on a level row is a smooth function of the row's
// height but for square roots at the ends of arcs. Gauss-Legendre quadrature after the
// substitution y = m + h·(3t − t³)/2, which smooths those ends, gives it to some 1e-7.

// gauss has the nodes and weights of six-point Gauss-Legendre quadrature over -1 to 1
// (Abramowitz and Stegun, Handbook of Mathematical Functions, table 25.4).
var gauss = [6]struct{ t, w float64 }{
	{-0.932469514203152, 0.171324492379170}, {-0.661209386466265, 0.360761573048139},
	{-0.238619186083197, 0.467913934572691}, {0.238619186083197, 0.467913934572691},
	{0.661209386466265, 0.360761573048139}, {0.932469514203152, 0.171324492379170},
}

// row is one place to measure between two critical heights, and its share of the area.
type rowAt struct{ y, w float64 }

// rowsBetween gives the rows to measure from lo to hi.
func rowsBetween(lo, hi float64) (out [6]rowAt) {
	m, h := (lo+hi)/2, (hi-lo)/2
	for i, g := range gauss {
		out[i] = rowAt{m + h*(3*g.t-g.t*g.t*g.t)/2, g.w * h * 1.5 * (1 - g.t*g.t)}
	}
	return out
}

// plane is one section of a piece: metal is what lies in every outline of the region and in
// no opening.
type plane struct {
	region []flat
	open   []opening
	edges  []float64
	c      cover
	taken  []Span
	metal  []Span
}

// critical works out the heights between which rows change smoothly.
func (p *plane) critical() []float64 {
	p.c.rows = true
	if !p.c.gather(p.region, p.open) {
		p.edges = p.edges[:0]
		return nil
	}
	c := &p.c
	c.list()
	lo, hi := math.Inf(-1), math.Inf(1)
	for _, r := range p.region {
		lo, hi = max(lo, r.lo.y), min(hi, r.hi.y)
	}
	p.edges = append(p.edges[:0], lo, hi)
	for _, q := range c.cand {
		if c.near(q) { // elsewhere no metal begins or ends
			p.edges = append(p.edges, q.y)
		}
	}
	p.edges = tidy(p.edges, lo, hi, 1e-9)
	return p.edges
}

// tidy sorts and keeps what lies from lo to hi, no two nearer than apart.
func tidy(xs []float64, lo, hi, apart float64) []float64 {
	slices.Sort(xs)
	keep := xs[:0]
	for _, x := range xs {
		if x >= lo && x <= hi && (len(keep) == 0 || x-keep[len(keep)-1] > apart) {
			keep = append(keep, x)
		}
	}
	return keep
}

// row gives the stretches of metal on the row at y; overwritten by the next call.
func (p *plane) row(y float64) []Span {
	p.metal, p.taken = p.metal[:0], p.taken[:0]
	a, b := math.Inf(-1), math.Inf(1)
	for i := range p.region {
		x0, x1, ok := p.region[i].row(y)
		if !ok {
			return nil
		}
		a, b = max(a, x0), min(b, x1)
	}
	if !(a < b) {
		return nil
	}
	for i := range p.c.open {
		p.taken = p.c.open[i].row(y, p.taken)
	}
	sortSpans(p.taken)
	at, by := a, -1
	for _, t := range p.taken {
		if t.B <= at {
			continue
		}
		if t.A >= b {
			break
		}
		if t.A-at > hair {
			p.metal = append(p.metal, Span{at, t.A, by, t.EnterBy})
		}
		at, by = t.B, t.EnterBy
	}
	if b-at > hair {
		p.metal = append(p.metal, Span{at, b, by, -1})
	}
	return p.metal
}

// row adds the stretches that an opening takes from a row.
func (o *opening) row(y float64, out []Span) []Span {
	x0, x1, ok := o.take.row(y)
	if !ok {
		return out
	}
	n := len(out)
	out = append(out, Span{x0, x1, o.by, o.by})
	for i := range o.less {
		a, b, ok := o.less[i].row(y)
		if !ok {
			continue
		}
		for k := len(out) - 1; k >= n; k-- {
			x := out[k]
			if b <= x.A || a >= x.B {
				continue
			}
			out = slices.Delete(out, k, k+1)
			if a > x.A {
				out = append(out, Span{x.A, a, o.by, o.by})
			}
			if b < x.B {
				out = append(out, Span{b, x.B, o.by, o.by})
			}
		}
	}
	return out
}

// area gives the area of metal in mm².
func (p *plane) area() float64 { return p.moment(0).V }

// moment gives the area of metal, in V, and its first moments in a plane at a height.
func (p *plane) moment(z float64) (sum moment) {
	ys := p.critical()
	for i := 0; i+1 < len(ys); i++ {
		for _, r := range rowsBetween(ys[i], ys[i+1]) {
			for _, m := range p.row(r.y) {
				l := r.w * m.Len()
				sum = sum.plus(moment{l, Vec{(m.A + m.B) / 2, r.y, z}.Times(l)}, 1)
			}
		}
	}
	return sum
}

// section fills the plane with the piece's outlines at a height, after the given ones.
func (p *plane) section(s *scene, z float64, more ...flat) {
	p.region = append(p.region[:0], more...)
	p.region = append(p.region, s.blank.section(z))
	p.openings(s, z)
}

// openings fills the plane with the outlines of the removals at a height.
func (p *plane) openings(s *scene, z float64) {
	p.open = p.open[:0]
	for i, r := range s.cuts {
		o := opening{take: r.Take.section(z), by: s.number[i]}
		if !o.take.ok {
			continue
		}
		for j := range r.Less {
			if l := r.Less[j].section(z); l.ok {
				o.less = append(o.less, l)
			}
		}
		p.open = append(p.open, o)
	}
}
