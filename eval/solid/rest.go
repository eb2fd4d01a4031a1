package solid

import (
	"cmp"
	"math"
	"slices"
)

// What is left when a cut separates the piece.
//
// A plane cut (a saw, a parting tool) is exact: the plane through the middle of the removal holds
// no metal at all, by the covering test, and the piece is what lies on either side of it. What
// such planes leave is then looked at for pieces that no plane sets free (the slug of a trepan, an
// opening cut out of sheet): columns of cells between the extreme planes of all shapes, each with
// its exact stretches of metal along z, are joined where a straight level line between them runs
// in metal. So what is said to hang together does; what is said to lie apart may hang together by
// necks narrower than the pitch of the columns.

// Rest is one of the pieces that are left.
type Rest struct {
	Piece  *Piece  // nil where no plane sets it free
	Exact  bool    // set free by a plane, or all there is
	Lo, Hi Vec     // the box round it; of one that is not exact to a pitch in x and y
	Volume float64 // mm³; of one that is not exact by its columns
	At     Vec     // a place in its metal
	Pitch  float64 // of the columns that found it, mm
}

// Rest gives the pieces that are left, the heaviest first; one piece where nothing is separated,
// none where no metal is left. Columns stand at most pitch apart in x and y, but never more
// than 40,000 of them; 0 stands for a sixtieth of the longer side.
func (p *Piece) Rest(pitch float64) []Rest {
	if p.blank.kind == empty {
		return nil
	}
	var out []Rest
	for _, q := range p.sawn(0) {
		all := q.flood(pitch)
		if len(all) == 1 {
			r := &all[0]
			r.Piece, r.Exact, r.Volume = q, true, q.Volume()
		}
		out = append(out, all...)
	}
	heaviest(out)
	return out
}

// sawn gives what the planes of removals leave.
func (p *Piece) sawn(deep int) []*Piece {
	if deep > 12 {
		return []*Piece{p}
	}
	if below, above, ok := p.parted(p.cuts); ok {
		return append(below.sawn(deep+1), above.sawn(deep+1)...)
	}
	return []*Piece{p}
}

// Parted gives the two pieces that the last removals leave, those from number n on: it looks for a
// plane through the middle of one of them, square to one of its flat faces, that holds no metal
// at all. Exact where it says yes; of what no such plane sets free it says no.
func (p *Piece) Parted(n int) (below, above *Piece, ok bool) {
	if n < 0 || n > len(p.cuts) || p.blank.kind == empty {
		return nil, nil, false
	}
	return p.parted(p.cuts[n:])
}

// parted looks at some of the removals.
func (p *Piece) parted(cuts []*Removal) (below, above *Piece, ok bool) {
	for _, c := range cuts {
		for _, f := range c.Take.flats() {
			far, near := c.Take.support(f.N).Dot(f.N), c.Take.support(f.N.Times(-1)).Dot(f.N)
			m := (far + near) / 2
			if !(m < p.blank.support(f.N).Dot(f.N)-Grain) || !(m > p.blank.support(f.N.Times(-1)).Dot(f.N)+Grain) || !p.bare(f.N, m) {
				continue
			}
			below, above := p.Split(f.N, m, 0, c.By)
			if below.any() && above.any() {
				return below, above, true
			}
		}
	}
	return nil, nil, false
}

// bare says whether a plane n·v = c holds no metal for certain.
func (p *Piece) bare(n Vec, c float64) bool {
	q := p.Placed(Attitude(n, square(n)))
	for _, l := range q.Lumps() {
		if l.blank.kind == empty || c <= l.blank.lo[2] || c >= l.blank.hi[2] {
			continue
		}
		s := &scene{}
		s.near(l, Vec{l.blank.lo[0], l.blank.lo[1], c - hair}, Vec{l.blank.hi[0], l.blank.hi[1], c + hair})
		s.outlines(band{c, c}, finest/4, true)
		if _, ok := s.uncovered(s.region(), s.opens); ok {
			return false
		}
	}
	return true
}

// any says whether metal is left.
func (p *Piece) any() bool {
	_, ok := p.top()
	return ok
}

const mostColumns = 40000

// columns is the grid of a flood.
type columns struct {
	p      *Piece
	xs, ys []float64
	first  []int // of the spans of each column in spans; one more at the end
	spans  []Span
	root   []int
	z0     float64
	scan   scan
}

// flood gives the pieces by columns.
func (p *Piece) flood(pitch float64) []Rest {
	lo, hi := p.blank.lo, p.blank.hi
	if !(pitch > 0) || math.IsInf(pitch, 0) {
		pitch = max(hi[0]-lo[0], hi[1]-lo[1]) / 60
	}
	c := &columns{p: p, z0: lo[2] - 1}
	for c.xs, c.ys = p.cellsAlong(0, pitch), p.cellsAlong(1, pitch); len(c.xs)*len(c.ys) > mostColumns && pitch < hi.Sub(lo).Len(); {
		pitch *= 1.3
		c.xs, c.ys = p.cellsAlong(0, pitch), p.cellsAlong(1, pitch)
	}
	for i := 0; i+1 < len(c.xs); i++ {
		for k := 0; k+1 < len(c.ys); k++ {
			c.first = append(c.first, len(c.spans))
			x, y := c.middle(i, k)
			c.spans = append(c.spans, p.line(Vec{x, y, c.z0}, Vec{0, 0, 1}, &c.scan)...)
		}
	}
	c.first = append(c.first, len(c.spans))
	c.root = make([]int, len(c.spans))
	for i := range c.root {
		c.root[i] = i
	}
	c.link()
	return c.gather(pitch)
}

// cellsAlong gives the borders of cells along an axis: the extreme planes of all shapes, no two
// farther apart than pitch.
func (p *Piece) cellsAlong(axis int, pitch float64) []float64 {
	lo, hi := p.blank.lo[axis], p.blank.hi[axis]
	xs := []float64{lo, hi}
	p.shapes(func(s *Shape) {
		if s.kind != empty {
			xs = append(xs, s.lo[axis], s.hi[axis])
		}
	})
	xs = tidy(xs, lo, hi, Grain/2)
	var out []float64
	for i := 0; i+1 < len(xs); i++ {
		n := max(1, int(math.Ceil((xs[i+1]-xs[i])/pitch-1e-9)))
		for k := range min(n, mostColumns) {
			out = append(out, xs[i]+(xs[i+1]-xs[i])*float64(k)/float64(n))
		}
	}
	return append(out, xs[len(xs)-1])
}

func (c *columns) middle(i, k int) (x, y float64) {
	return (c.xs[i] + c.xs[i+1]) / 2, (c.ys[k] + c.ys[k+1]) / 2
}

// link joins stretches of neighbouring columns, corner to corner too.
func (c *columns) link() {
	ny := len(c.ys) - 1
	for i := 0; i+1 < len(c.xs); i++ {
		for k := range ny {
			for _, d := range [4][2]int{{1, 0}, {0, 1}, {1, 1}, {1, -1}} {
				if a, b := i+d[0], k+d[1]; a+1 < len(c.xs) && b >= 0 && b < ny {
					c.pair(i, k, a, b)
				}
			}
		}
	}
}

func (c *columns) pair(i, k, a, b int) {
	ny := len(c.ys) - 1
	m, n := i*ny+k, a*ny+b
	x0, y0 := c.middle(i, k)
	x1, y1 := c.middle(a, b)
	for s := c.first[m]; s < c.first[m+1]; s++ {
		for t := c.first[n]; t < c.first[n+1]; t++ {
			lo, hi := max(c.spans[s].A, c.spans[t].A), min(c.spans[s].B, c.spans[t].B)
			if hi-lo < Grain || c.find(s) == c.find(t) {
				continue
			}
			for _, f := range [5]float64{0.5, 0.02, 0.98, 0.25, 0.75} {
				z := c.z0 + lo + (hi-lo)*f
				if c.metal(Vec{x0, y0, z}, Vec{x1, y1, z}) {
					c.root[c.find(s)] = c.find(t)
					break
				}
			}
		}
	}
}

// metal says whether a straight line from a to b runs in metal throughout.
func (c *columns) metal(a, b Vec) bool {
	d := b.Sub(a)
	l := d.Len()
	for _, x := range c.p.line(a, d.Unit(), &c.scan) {
		if x.A <= Grain && x.B >= l-Grain {
			return true
		}
	}
	return false
}

func (c *columns) find(i int) int {
	for c.root[i] != i {
		c.root[i] = c.root[c.root[i]]
		i = c.root[i]
	}
	return i
}

// gather adds up what hangs together.
func (c *columns) gather(pitch float64) []Rest {
	number := map[int]int{}
	var out []Rest
	ny := len(c.ys) - 1
	for i := 0; i+1 < len(c.xs); i++ {
		for k := range ny {
			for s := c.first[i*ny+k]; s < c.first[i*ny+k+1]; s++ {
				x := c.spans[s]
				n, ok := number[c.find(s)]
				if !ok {
					n = len(out)
					number[c.find(s)] = n
					inf := math.Inf(1)
					mx, my := c.middle(i, k)
					out = append(out, Rest{Lo: Vec{inf, inf, inf}, Hi: Vec{-inf, -inf, -inf}, Pitch: pitch, At: Vec{mx, my, c.z0 + (x.A+x.B)/2}})
				}
				r := &out[n]
				r.Lo = least(r.Lo, Vec{c.xs[i], c.ys[k], c.z0 + x.A})
				r.Hi = most(r.Hi, Vec{c.xs[i+1], c.ys[k+1], c.z0 + x.B})
				r.Volume += x.Len() * (c.xs[i+1] - c.xs[i]) * (c.ys[k+1] - c.ys[k])
			}
		}
	}
	return out
}

// heaviest sorts what is left by volume, the most first.
func heaviest(rs []Rest) {
	slices.SortStableFunc(rs, func(a, b Rest) int { return cmp.Compare(b.Volume, a.Volume) })
}
