package solid

import "math"

// Wall is the least metal between a removal and whatever is next to it.
type Wall struct {
	Known   bool    // false where the removal leaves no metal standing beside it
	Thick   float64 // mm
	At      Vec     // where it begins, on the removal's own surface
	To      Vec     // where it ends
	Between string  // the removal asked about
	And     string  // what is on the other side; "" for the blank's own surface
}

// Wall gives the least wall between a removal, which need not be one of the piece's own, and
// any surface of the piece or other removal. Removals of the same name count as one with it.
// It is worked out as the least distance between convex bodies, whose line is then looked at
// by a ray, and by rays from critical places of the removal's surface towards all others.
func (p *Piece) Wall(r Removal) Wall {
	w := Wall{Thick: math.Inf(1), Between: r.By}
	p.Cut(r).walls(&r, &w)
	w.Known = !math.IsInf(w.Thick, 1)
	if !w.Known {
		w.Thick = 0
	}
	return w
}

// walls looks along rays from critical places of a removal's surface.
func (p *Piece) walls(r *Removal, w *Wall) {
	var s scan
	look := func(at, out Vec) {
		if r.takes(at, hair) { // on a surface that lies within the rest of it
			return
		}
		from := at.Sub(out.Times(1))
		for _, x := range p.line(from, out, &s) {
			if x.B <= 1+hair {
				continue
			}
			if math.Abs(x.A-1) > Grain || x.LeaveBy >= 0 && p.name(x.LeaveBy) == r.By {
				return // the metal there was taken by another, or the wall is within the removal
			}
			if x.Len() < w.Thick {
				w.Thick, w.At, w.To, w.And = x.Len(), at, from.Add(out.Times(x.B)), p.name(x.LeaveBy)
			}
			return
		}
	}
	p.pairs(r, look)
	p.around(r, look)
}

// pairs looks along the line of least distance to every other removal and to every flat of
// the blank.
func (p *Piece) pairs(r *Removal, look func(at, out Vec)) {
	for _, c := range p.cuts {
		if c.By == r.By {
			continue
		}
		a := distance(&r.Take, &c.Take, c.Take.from.Sub(r.Take.from))
		if a.d > Grain {
			look(a.a, a.b.Sub(a.a).Unit())
		}
	}
	for _, l := range p.Lumps() {
		for _, f := range l.blank.flats() {
			look(r.Take.support(f.N), f.N)
		}
	}
}

// flats gives the plane faces of a shape.
func (s *Shape) flats() []Half {
	switch s.kind {
	case box:
		return s.asPrism().faces
	case prism:
		return s.faces
	case round:
		return []Half{{s.axis, s.axis.Dot(s.end())}, {s.axis.Times(-1), -s.axis.Dot(s.from)}}
	case ball:
		return s.ballFlats()
	}
	return nil
}

// around looks outwards from critical places of the removal's surface, and inwards from what
// it left standing.
func (p *Piece) around(r *Removal, look func(at, out Vec)) {
	p.surface(&r.Take, 1, look)
	for i := range r.Less {
		p.surface(&r.Less[i], -1, look)
	}
}

// surface looks from the ends of a round and from stations along it, or from places on the
// faces of a box or a prism; out of the shape where sign is 1, into it where -1.
func (p *Piece) surface(s *Shape, sign float64, look func(at, out Vec)) {
	if s.kind == ball {
		for _, d := range p.ballDirections(s) {
			look(s.from.Add(d.Times(s.r0*(1-1e-12))), d.Times(sign))
		}
		for _, f := range s.flats() {
			look(s.support(f.N), f.N.Times(sign))
		}
		return
	}
	if s.kind != round {
		for _, f := range s.flats() {
			s.onFace(f, func(at, out Vec) { look(at, out.Times(sign)) })
		}
		return
	}
	dirs := p.directions(s)
	k := s.slope()
	for _, t := range p.stations(s) {
		c := s.from.Add(s.axis.Times(t))
		for _, d := range dirs {
			look(c.Add(d.Times(s.r0+k*t)), d.Sub(s.axis.Times(k)).Unit().Times(sign))
		}
	}
	if sign < 0 {
		return // the ends of what was left standing are inside of the metal or the blank's own
	}
	for _, end := range []struct {
		c, n Vec
		r    float64
	}{{s.from, s.axis.Times(-1), s.r0}, {s.end(), s.axis, s.r1}} {
		look(end.c, end.n)
		for _, d := range dirs {
			look(end.c.Add(d.Times(end.r*(1-1e-6))), end.n)
		}
	}
	p.mouths(s, look)
}

// mouths looks from the mouth of a round in each flat of the blank, along that flat towards
// the others: a leaning hole can be nearest to an edge there. Among 64 places of the mouth
// the nearest is short by at most a thousandth of the radius.
func (p *Piece) mouths(s *Shape, look func(at, out Vec)) {
	var flats []Half
	for _, l := range p.Lumps() {
		flats = append(flats, l.blank.flats()...)
	}
	e1 := square(s.axis)
	e2 := s.axis.Cross(e1)
	for i, f := range flats {
		if math.Abs(math.Abs(f.N.Dot(s.axis))-1) < 1e-9 {
			continue // square to it, the mouth is like any other station
		}
		var mouth []Vec
		for _, u := range circle(fair) {
			d := e1.Times(u.x).Add(e2.Times(u.y))
			a := s.from.Add(d.Times(s.r0))
			way := s.end().Add(d.Times(s.r1)).Sub(a)
			if n := f.N.Dot(way); math.Abs(n) > 1e-12 {
				if t := (f.C - hair - f.N.Dot(a)) / n; t >= 0 && t <= 1 {
					mouth = append(mouth, a.Add(way.Times(t)))
				}
			}
		}
		for j, g := range flats {
			if i == j || len(mouth) == 0 {
				continue
			}
			best := mouth[0]
			for _, v := range mouth {
				if v.Dot(g.N) > best.Dot(g.N) {
					best = v
				}
			}
			look(best, g.N)
		}
	}
}

// onFace looks from the corners of a face, the middles between them, and its own middle.
func (s *Shape) onFace(f Half, look func(at, out Vec)) {
	corners := s.corners
	if s.kind == box {
		corners = s.asPrism().corners
	}
	var on []Vec
	var sum Vec
	for _, c := range corners {
		if math.Abs(f.N.Dot(c)-f.C) < hair {
			on = append(on, c)
			sum = sum.Add(c)
		}
	}
	if len(on) == 0 {
		return
	}
	m := sum.Times(1 / float64(len(on)))
	look(m, f.N)
	for i, a := range on {
		look(m.Add(a.Sub(m).Times(1-1e-4)), f.N)
		for _, b := range on[i+1:] {
			look(m.Add(a.Add(b).Times(0.5).Sub(m).Times(1-1e-4)), f.N)
		}
	}
}

// directions gives the directions square to a round's axis in which walls can be least:
// towards other rounds' axes and the faces of everything, and sixteen all round.
func (p *Piece) directions(s *Shape) (out []Vec) {
	add := func(v Vec) {
		v = v.Sub(s.axis.Times(v.Dot(s.axis)))
		l := v.Len()
		if l < 1e-9 {
			return
		}
		v = v.Times(1 / l)
		for _, o := range out {
			if o.Dot(v) > 1-1e-12 {
				return
			}
		}
		out = append(out, v)
	}
	see := func(o *Shape) {
		if o.kind == ball {
			add(o.from.Sub(s.from))
			add(s.from.Sub(o.from))
		}
		if o.kind == round {
			add(o.from.Sub(s.from))
			add(s.from.Sub(o.from)) // the far side of a round blank
			add(o.end().Sub(s.from))
			add(o.axis.Cross(s.axis))
			add(s.axis.Cross(o.axis))
		}
		for _, f := range o.flats() {
			add(f.N)
			add(f.N.Times(-1))
		}
	}
	p.shapes(see)
	e1 := square(s.axis)
	e2 := s.axis.Cross(e1)
	for _, u := range circle(16) {
		add(e1.Times(u.x).Add(e2.Times(u.y)))
	}
	return out
}

// stations gives the lengths along a round's axis at which what is beside it can change: just
// before and after the ends of everything, and the middles between.
func (p *Piece) stations(s *Shape) []float64 {
	ts := []float64{0, s.h}
	see := func(o *Shape) {
		for _, d := range [2]Vec{s.axis, s.axis.Times(-1)} {
			ts = append(ts, o.support(d).Sub(s.from).Dot(s.axis))
		}
	}
	p.shapes(see)
	ts = tidy(ts, 0, s.h, Grain)
	var out []float64
	for i := 0; i+1 < len(ts); i++ {
		a, b := ts[i], ts[i+1]
		in := min(step, (b-a)/4)
		out = append(out, a+in, (a+b)/2, b-in)
	}
	return out
}
