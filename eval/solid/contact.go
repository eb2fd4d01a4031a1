package solid

import (
	"math"
	"slices"
)

// Rect is a rectangle on a plane square to an axis, in the other two co-ordinates in the
// order x, y, z, in mm.
type Rect struct{ Lo, Hi [2]float64 }

// Contact is what a flat jaw or anvil touches.
type Contact struct {
	Touches bool
	Area    float64    // mm², to 1e-4; a line of contact counts with the width that lies within a Grain
	Lo, Hi  [2]float64 // the least rectangle round the touched patch
	Behind  float64    // least metal behind any touched place, straight inwards, in mm
	Thin    Vec        // the touched place that it stands behind
	ThinBy  string     // what ends the metal there; "" for the piece's far side
	On      []string   // what the touched metal was made by, sorted; "" for the blank's own surface
}

// Contact gives what a flat rectangle touches that is pressed on the piece from outside at
// the plane axis = at; sign is the direction, along that axis, that the touched face of the
// piece looks. Metal within a Grain of the plane touches. Metal beyond the plane is cut by
// it, not pushed away: ask Extent first where that matters. Behind is decided in every cell
// that the outlines of removals make, at its corners and ridges; behind a cone, a ball or a
// leaning hole it is exact to a few hundredths only. Where pieces that were joined overlap, the
// area counts twice.
func (p *Piece) Contact(axis int, sign, at float64, r Rect) Contact {
	return p.contact(axis, sign, at, rectangle(pt{r.Lo[0], r.Lo[1]}, pt{r.Hi[0], r.Hi[1]}))
}

// ContactDisc is Contact of a flat round anvil about a place of the plane, in the other two
// co-ordinates in the order x, y, z.
func (p *Piece) ContactDisc(axis int, sign, at float64, middle [2]float64, diameter float64) Contact {
	return p.contact(axis, sign, at, disc(pt{middle[0], middle[1]}, diameter/2))
}

func (p *Piece) contact(axis int, sign, at float64, jaw flat) Contact {
	f := facing(axis, sign)
	q := p.Placed(f)
	z := sign*at - Grain
	if !jaw.ok || !finite(Vec{z, jaw.lo.x + jaw.lo.y, jaw.hi.x + jaw.hi.y}) || q.blank.kind == empty {
		return Contact{}
	}
	c := Contact{Behind: math.Inf(1)}
	c.Lo, c.Hi = [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, l := range q.Lumps() {
		c.lump(q, l, jaw, z, f.Inverse())
	}
	c.Touches = c.Area > Grain*Grain && c.Lo[0] < c.Hi[0]
	if !c.Touches {
		return Contact{}
	}
	slices.Sort(c.On)
	return c
}

// lump adds what a jaw touches of one lump l of q.
func (c *Contact) lump(q, l *Piece, jaw flat, z float64, back Pose) {
	if l.blank.kind == empty {
		return
	}
	s := &scene{}
	s.near(l, Vec{jaw.lo.x, jaw.lo.y, math.Inf(-1)}, Vec{jaw.hi.x, jaw.hi.y, math.Inf(1)})
	m := cells{piece: q, jaw: jaw}
	m.plane.section(s, z, jaw)
	q.shapes(m.add)
	lo, hi := pt{math.Inf(1), math.Inf(1)}, pt{math.Inf(-1), math.Inf(-1)}
	m.walk(func(x, y, w float64) {
		lo, hi = pt{min(lo.x, x), min(lo.y, y)}, pt{max(hi.x, x), max(hi.y, y)}
		first, ok := m.inwards(x, y, z)
		if by := q.name(first.EnterBy); ok && !slices.Contains(c.On, by) {
			c.On = append(c.On, by)
		}
		if ok && first.Len() < c.Behind {
			c.Behind = first.Len()
			c.Thin, c.ThinBy = back.Point(Vec{x, y, z + Grain}), q.name(first.LeaveBy)
		}
	})
	area := m.plane.area()
	if !(area > Grain*Grain && lo.x < hi.x) {
		return
	}
	c.Area += area
	a, b := m.snug(lo, hi)
	for i := range a {
		c.Lo[i], c.Hi[i] = min(c.Lo[i], a[i]), max(c.Hi[i], b[i])
	}
}

// cells walks over a patch cell by cell, where the cells are what the outlines of everything
// that a straight ray through the patch can meet make of it.
type cells struct {
	piece *Piece
	jaw   flat
	plane plane
	lines []flat // outlines seen along the ray, and ridges as flats without width
	ys    []float64
	xs    []float64
	scan  scan
}

// add adds the shadow of a shape.
func (m *cells) add(s *Shape) {
	for _, f := range s.shadow() {
		if f.ok && f.lo.x <= m.jaw.hi.x && f.hi.x >= m.jaw.lo.x && f.lo.y <= m.jaw.hi.y && f.hi.y >= m.jaw.lo.y {
			m.lines = append(m.lines, f)
		}
	}
}

// walk calls f for places of metal in the patch: just inside the corners of every cell, on
// its middle, and at the places of quadrature, whose weights are areas (0 for the others).
func (m *cells) walk(f func(x, y, area float64)) {
	ys := m.plane.critical()
	if len(ys) == 0 {
		return
	}
	c := cover{shapes: m.plane.c.shapes}
	for i := range m.lines {
		c.shapes = append(c.shapes, &m.lines[i])
	}
	c.list()
	m.ys = append(m.ys[:0], ys...)
	for _, q := range c.cand {
		m.ys = append(m.ys, q.y)
	}
	for _, l := range m.lines {
		m.ys = append(m.ys, l.lo.y, l.hi.y)
	}
	m.ys = tidy(m.ys, ys[0], ys[len(ys)-1], hair)
	for i := 0; i+1 < len(m.ys); i++ {
		lo, hi := m.ys[i], m.ys[i+1]
		in := min(step, (hi-lo)/4)
		m.walkRow(lo+in, 0, f)
		m.walkRow(hi-in, 0, f)
		for _, r := range rowsBetween(lo, hi) {
			m.walkRow(r.y, r.w, f)
		}
	}
}

// walkRow walks along one row from break to break.
func (m *cells) walkRow(y, w float64, f func(x, y, area float64)) {
	m.xs = m.xs[:0]
	for i := range m.lines {
		if a, b, ok := m.lines[i].crossing(y); ok {
			m.xs = append(m.xs, a, b)
		}
	}
	metal := m.plane.row(y)
	n := len(m.xs)
	for _, s := range metal {
		m.xs = append(m.xs[:n], s.A, s.B)
		xs := tidy(append([]float64(nil), m.xs...), s.A, s.B, hair)
		for i := 0; i+1 < len(xs); i++ {
			a, b := xs[i], xs[i+1]
			in := min(step, (b-a)/4)
			f(a+in, y, 0)
			f(b-in, y, 0)
			f((a+b)/2, y, w*(b-a))
		}
	}
}

// crossing gives where a row crosses an outline, which may be a ridge without width.
func (f *flat) crossing(y float64) (a, b float64, ok bool) {
	if f.poly == nil && f.r == 0 {
		d := f.b.y - f.a.y
		if y < f.lo.y || y > f.hi.y || d == 0 {
			return 0, 0, false
		}
		x := f.a.x + (f.b.x-f.a.x)*(y-f.a.y)/d
		return x, x, true
	}
	return f.row(y)
}

// inwards gives the first metal straight down from the patch.
func (m *cells) inwards(x, y, z float64) (Span, bool) {
	top := m.piece.blank.hi[2] + 1
	for _, s := range m.piece.line(Vec{x, y, top}, Vec{0, 0, -1}, &m.scan) {
		a, b := top-s.A, top-s.B
		if a >= z-hair && b < z {
			s.A = max(s.A, top-z-Grain)
			return s, true
		}
	}
	return Span{}, false
}

// snug gives the patch's rectangle: places walked lie up to a step inside of its border.
func (m *cells) snug(lo, hi pt) (a, b [2]float64) {
	near := func(x float64, by float64, all []float64) float64 {
		best, d := x, 2*step
		for _, c := range all {
			if e := (c - x) * by; e >= -hair && e <= d {
				best, d = c, e
			}
		}
		return best
	}
	var xs, ys []float64
	for _, q := range m.plane.c.cand {
		xs, ys = append(xs, q.x), append(ys, q.y)
	}
	return [2]float64{near(lo.x, -1, xs), near(lo.y, -1, ys)}, [2]float64{near(hi.x, 1, xs), near(hi.y, 1, ys)}
}

// shadow gives the outlines of a shape seen along Z, and the lines on it where it is nearest
// or thickest: axes of lying and leaning rounds, the inner circle of an upright cone.
func (s *Shape) shadow() []flat {
	switch s.kind {
	case box:
		return []flat{rectangle(pt{s.lo[0], s.lo[1]}, pt{s.hi[0], s.hi[1]})}
	case prism:
		ps := make([]pt, len(s.corners))
		for i, c := range s.corners {
			ps[i] = pt{c[0], c[1]}
		}
		return append([]flat{polygon(around(ps))}, s.edges()...)
	case round:
		c, e := s.from, s.end()
		a, b := pt{c[0], c[1]}, pt{e[0], e[1]}
		if s.upright() {
			return []flat{disc(a, s.r0), disc(a, s.r1), disc(a, hair)}
		}
		ps := append(s.rim(s.from, s.r0), s.rim(e, s.r1)...)
		return []flat{polygon(around(ps)), ridge(a, b)}
	case ball:
		c := pt{s.from[0], s.from[1]}
		return []flat{disc(c, s.r0), disc(c, hair)}
	}
	return nil
}

// edges gives the edges of a prism as ridges: lines between corners that share two faces.
func (s *Shape) edges() (out []flat) {
	for i, a := range s.corners {
		for _, b := range s.corners[i+1:] {
			n := 0
			for _, f := range s.faces {
				if math.Abs(f.N.Dot(a)-f.C) < 1e-6 && math.Abs(f.N.Dot(b)-f.C) < 1e-6 {
					n++
				}
			}
			if n >= 2 {
				out = append(out, ridge(pt{a[0], a[1]}, pt{b[0], b[1]}))
			}
		}
	}
	return out
}

func ridge(a, b pt) flat {
	return flat{ok: true, a: a, b: b, lo: pt{min(a.x, b.x), min(a.y, b.y)}, hi: pt{max(a.x, b.x), max(a.y, b.y)}}
}

// rim gives places on one end circle of a round, seen along Z: for a lying one the two ends.
func (s *Shape) rim(c Vec, r float64) (out []pt) {
	if s.lying() {
		n := pt{-s.axis[1], s.axis[0]}.times(r)
		return []pt{pt{c[0], c[1]}.add(n), pt{c[0], c[1]}.sub(n)}
	}
	e1 := square(s.axis)
	e2 := s.axis.Cross(e1)
	for _, u := range circle(fair) {
		v := c.Add(e1.Times(r * u.x)).Add(e2.Times(r * u.y))
		out = append(out, pt{v[0], v[1]})
	}
	return out
}
