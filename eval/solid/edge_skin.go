package solid

import "math"

// surface is one smooth surface of a convex body: a plane, the side of a cylinder or cone, or a
// ball. It runs on past the edges of the body it belongs to.
type surface struct {
	kind   skinKind
	body   int // the number of its convex in the wire; -1 of none
	lo, hi Vec // a box that holds what of it is on its body

	n Vec     // a plane: n·p = c, n out of the body
	c float64 //

	from, axis Vec     // a turned one: the middle of its first end and its axis; of a ball the middle
	e1, e2     Vec     // square to the axis
	r0, k, h   float64 // radius at the start, its growth per mm, length; of a ball the radius
}

type skinKind uint8

const (
	plain  skinKind = iota // a plane
	turned                 // a cylinder or a cone
	globe                  // a ball
)

// sameness is how near a surface must pass by a place to pass through it, in mm: half a
// Grain, so that two surfaces less than a Grain apart are one.
const sameness = Grain / 2

// rim is how far a curve is followed beyond the box of its surfaces, in mm: far less than
// sameness, so that what overhangs is too short to be a stretch.
const rim = 1e-5

// depth gives how far a place is inside, negative outside, and is the true distance but on
// the far side of a cone's point.
func (s *surface) depth(v Vec) float64 {
	switch s.kind {
	case plain:
		return s.c - s.n.Dot(v)
	case globe:
		return s.r0 - v.Sub(s.from).Len()
	}
	w := v.Sub(s.from)
	t := w.Dot(s.axis)
	return (s.r0 + s.k*t - w.Sub(s.axis.Times(t)).Len()) / math.Sqrt(1+s.k*s.k)
}

// out gives the unit normal out of the body at a place of the surface.
func (s *surface) out(v Vec) Vec {
	switch s.kind {
	case plain:
		return s.n
	case globe:
		return v.Sub(s.from).Unit()
	}
	w := v.Sub(s.from)
	w = w.Sub(s.axis.Times(w.Dot(s.axis))).Unit()
	return w.Sub(s.axis.Times(s.k)).Times(1 / math.Sqrt(1+s.k*s.k))
}

// across gives the unit vector square to the axis at an angle.
func (s *surface) across(angle float64) Vec {
	sin, cos := math.Sincos(angle)
	return s.e1.Times(cos).Add(s.e2.Times(sin))
}

// ruling gives the straight line of a turned skin at an angle, o + t·d, with t along the axis.
func (s *surface) ruling(angle float64) (o, d Vec) {
	u := s.across(angle)
	return s.from.Add(u.Times(s.r0)), s.axis.Add(u.Times(s.k))
}

// quadratic gives the surface along a straight line as a·t² + 2b·t + c, nought on it and
// negative inside (of a cone within its double).
func (s *surface) quadratic(o, d Vec) (a, b, c float64) {
	if s.kind == plain {
		return 0, s.n.Dot(d) / 2, s.n.Dot(o) - s.c
	}
	w := o.Sub(s.from)
	if s.kind == globe {
		return d.Dot(d), w.Dot(d), w.Dot(w) - s.r0*s.r0
	}
	wz, dz := w.Dot(s.axis), d.Dot(s.axis)
	w, d = w.Sub(s.axis.Times(wz)), d.Sub(s.axis.Times(dz))
	r := s.r0 + s.k*wz
	return d.Dot(d) - s.k*s.k*dz*dz, w.Dot(d) - s.k*dz*r, w.Dot(w) - r*r
}

// roots solves a·t² + 2b·t + c = 0, the lesser first; scale is the size of a in which it
// counts as nought. n is how many there are; a double one counts as one.
func roots(a, b, c float64) (t0, t1 float64, n int) {
	if math.Abs(a) < 1e-12 {
		if math.Abs(b) < 1e-12 {
			return 0, 0, 0
		}
		return -c / (2 * b), -c / (2 * b), 1
	}
	d := b*b - a*c
	if d < 0 {
		if d < -1e-13*(b*b+math.Abs(a*c)) {
			return 0, 0, 0
		}
		d = 0
	}
	q := -b - math.Copysign(math.Sqrt(d), b)
	if q == 0 {
		return 0, 0, 1
	}
	t0, t1 = q/a, c/q
	if t0 > t1 {
		t0, t1 = t1, t0
	}
	if t0 == t1 {
		return t0, t1, 1
	}
	return t0, t1, 2
}

// chunk is one convex body of a piece: part of the blank, what a removal takes, or what it
// leaves standing.
type chunk struct {
	skins  []surface
	lo, hi Vec
}

// wire is a piece taken apart into surfaces, and the memory that telling its edges needs.
type wire struct {
	p      *Piece
	bodies []chunk
	parts  []part
	lo, hi Vec // the box round the blank, a rim larger

	inside []bool // see spot
	pass   []passing
	ray    scan
}

// part is one blank and what is taken from it; metal is where any part of a piece has it.
type part struct {
	stock int // the number of the blank's body
	cuts  []taking
}

// taking is one removal: the bodies from take to end are its Take and its Less; number is its
// own in Removals.
type taking struct{ take, end, number int }

func (p *Piece) wire() *wire {
	w := &wire{p: p}
	w.lo, w.hi = Vec{math.Inf(1), math.Inf(1), math.Inf(1)}, Vec{math.Inf(-1), math.Inf(-1), math.Inf(-1)}
	for _, l := range p.each() {
		w.member(l.piece, l.number)
	}
	g := Vec{rim, rim, rim}
	w.lo, w.hi = w.lo.Sub(g), w.hi.Add(g)
	w.inside = make([]bool, len(w.bodies))
	return w
}

// member takes a blank and its removals, with their numbers, into the wire.
func (w *wire) member(p *Piece, numbers []int) {
	if p.blank.kind == empty {
		return
	}
	m := part{stock: len(w.bodies)}
	w.add(&p.blank)
	w.lo, w.hi = least(w.lo, p.blank.lo), most(w.hi, p.blank.hi)
	for i, r := range p.cuts {
		t := taking{take: len(w.bodies), number: numbers[i]}
		w.add(&r.Take)
		for j := range r.Less {
			w.add(&r.Less[j])
		}
		t.end = len(w.bodies)
		m.cuts = append(m.cuts, t)
	}
	w.parts = append(w.parts, m)
}

// add takes a shape into the wire; an empty one gets a body without skins that nothing meets.
func (w *wire) add(s *Shape) {
	g := Vec{sameness, sameness, sameness}
	b := chunk{skins: s.skins(), lo: s.lo.Sub(g), hi: s.hi.Add(g)}
	if len(b.skins) == 0 {
		b.lo, b.hi = Vec{far, far, far}, Vec{-far, -far, -far}
	}
	for i := range b.skins {
		k := &b.skins[i]
		r := Vec{rim, rim, rim}
		k.body, k.lo, k.hi = len(w.bodies), s.lo.Sub(r), s.hi.Add(r)
		for a := range 3 {
			if k.kind == plain && math.Abs(k.n[a]) == 1 {
				k.lo[a], k.hi[a] = k.n[a]*k.c-rim, k.n[a]*k.c+rim
			}
		}
	}
	w.bodies = append(w.bodies, b)
}

// skins gives the surfaces of a shape; where all of them hold a place, the shape does.
func (s *Shape) skins() (out []surface) {
	switch s.kind {
	case box:
		for i := range 3 {
			out = append(out, surface{n: along(i), c: s.hi[i]}, surface{n: along(i).Times(-1), c: -s.lo[i]})
		}
	case prism:
		for _, f := range s.faces {
			out = append(out, surface{n: f.N, c: f.C})
		}
	case ball:
		out = append(out, surface{kind: globe, from: s.from, r0: s.r0})
		if !s.whole() {
			at := s.axis.Dot(s.from)
			out = append(out, surface{n: s.axis, c: at + s.t1}, surface{n: s.axis.Times(-1), c: -at - s.t0})
		}
	case round:
		side := surface{kind: turned, from: s.from, axis: s.axis, r0: s.r0, k: s.slope(), h: s.h}
		side.e1 = square(s.axis)
		side.e2 = s.axis.Cross(side.e1)
		at := s.axis.Dot(s.from)
		out = append(out, side, surface{n: s.axis, c: at + s.h}, surface{n: s.axis.Times(-1), c: -at})
	}
	return out
}

// holds says whether a body holds a place or has it on a surface.
func (b *chunk) holds(v Vec) bool {
	for i := range 3 {
		if v[i] < b.lo[i] || v[i] > b.hi[i] {
			return false
		}
	}
	for i := range b.skins {
		if b.skins[i].depth(v) < -sameness {
			return false
		}
	}
	return true
}

// touch says whether two boxes have a place in common, a border too.
func touch(alo, ahi, blo, bhi Vec) bool {
	for i := range 3 {
		if alo[i] > bhi[i] || blo[i] > ahi[i] {
			return false
		}
	}
	return true
}
