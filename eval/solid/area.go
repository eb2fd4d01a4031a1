package solid

import (
	"math"
	"slices"
)

// Areas and volumes. Between neighbouring rows at which an outline begins, ends, has a corner
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
func (p *plane) area() float64 {
	sum := 0.0
	ys := p.critical()
	for i := 0; i+1 < len(ys); i++ {
		for _, r := range rowsBetween(ys[i], ys[i+1]) {
			for _, m := range p.row(r.y) {
				sum += r.w * m.Len()
			}
		}
	}
	return sum
}

// section fills the plane with the piece's outlines at a height, after the given ones.
func (p *plane) section(s *scene, z float64, more ...flat) {
	p.region = append(p.region[:0], more...)
	p.region = append(p.region, s.blank.section(z))
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

// Volume gives the metal in mm³, to 1e-4 of it for a piece of which a tenth or more is left.
// A piece remembers it, and works it out from that of the piece it was cut from.
func (p *Piece) Volume() float64 {
	p.once.Do(func() { p.volume = p.measure() })
	return p.volume
}

func (p *Piece) measure() float64 {
	if p.same != nil {
		return p.same.Volume()
	}
	if p.past == nil {
		return p.blank.volume()
	}
	v := p.past.Volume()
	for i := len(p.past.cuts); i < len(p.cuts); i++ {
		v -= p.taken(i)
	}
	return max(0, v)
}

// volume gives that of a whole shape: closed forms, of a prism by sections.
func (s *Shape) volume() float64 {
	switch s.kind {
	case box:
		d := s.hi.Sub(s.lo)
		return d[0] * d[1] * d[2]
	case round:
		return math.Pi * s.h / 3 * (s.r0*s.r0 + s.r0*s.r1 + s.r1*s.r1)
	case prism:
		c := s.corners[0]
		sum := 0.0
		for _, f := range s.faces { // pyramids from one corner
			view := s.Placed(Attitude(f.N, square(f.N)))
			lid := band{view.hi[2] - hair, view.hi[2] - hair}
			face := view.inner(lid, coarse)
			pl := plane{region: []flat{face}}
			if face.ok {
				sum += pl.area() * (f.C - f.N.Dot(c)) / 3
			}
		}
		return sum
	}
	return 0
}

// taken gives the metal that a removal took from what the earlier ones had left: its sections
// added up between the heights at which any outline begins, ends or turns, halving where they
// change unevenly.
func (p *Piece) taken(i int) float64 {
	r := p.cuts[i]
	before := &Piece{blank: p.blank, cuts: p.cuts[:i:i]}
	s := scenes.Get().(*scene)
	defer scenes.Put(s)
	s.body = nil
	s.near(before, r.Take.lo, r.Take.hi)
	for j := range r.Less { // what it left standing is not taken
		s.cuts, s.number = append(s.cuts, &Removal{Take: r.Less[j]}), append(s.number, -1)
	}
	lo, hi := max(r.Take.lo[2], p.blank.lo[2]), min(r.Take.hi[2], p.blank.hi[2])
	if !(lo < hi) {
		return 0
	}
	s.levels = r.Take.levels(s.levels[:0])
	s.addLevels(lo, hi)
	var pl plane
	at := func(z float64) float64 {
		pl.section(s, z, r.Take.section(z))
		if !pl.region[0].ok {
			return 0
		}
		return pl.area()
	}
	rough := 0.0
	for i := 0; i+1 < len(s.levels); i++ {
		b := band{s.levels[i], s.levels[i+1]}
		rough += at(b.mid()) * b.height()
	}
	sum := 0.0
	for i := 0; i+1 < len(s.levels); i++ {
		b := band{s.levels[i], s.levels[i+1]}
		if s.constant(b) && r.Take.constant() {
			sum += at(b.mid()) * b.height()
			continue
		}
		sum += halved(at, b, overBand(at, b), 1e-4*rough/(hi-lo), 10)
	}
	return sum
}

func overBand(at func(float64) float64, b band) float64 {
	sum := 0.0
	for _, r := range rowsBetween(b.lo, b.hi) {
		sum += r.w * at(r.y)
	}
	return sum
}

// halved compares a band with its halves until they agree to some mm² for each mm of height.
func halved(at func(float64) float64, b band, whole, error float64, deep int) float64 {
	low, high := band{b.lo, b.mid()}, band{b.mid(), b.hi}
	x, y := overBand(at, low), overBand(at, high)
	if math.Abs(x+y-whole) <= error*b.height() || deep == 0 {
		return x + y
	}
	return halved(at, low, x, error, deep-1) + halved(at, high, y, error, deep-1)
}
