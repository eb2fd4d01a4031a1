package solid

import "math"

// Balls: whole, or what two planes square to an axis leave of one.

// Ball gives the ball of radius r round a place.
func Ball(c Vec, r float64) Shape { return BallBetween(c, along(0), r, -r, r) }

// BallBetween gives what of a ball lies between two planes square to an axis, at distances
// from its middle that are counted along the axis; a plane outside of the ball cuts nothing.
func BallBetween(c, axis Vec, r, from, to float64) Shape {
	from, to = max(from, -r), min(to, r)
	if !finite(c) || !finite(axis) || !finite(Vec{r, from, to}) || !(r > 0) || !(from < to) || axis.Len() == 0 {
		return Shape{}
	}
	s := Shape{kind: ball, from: c, axis: axis.Unit(), r0: r, t0: from, t1: to}
	s.bound()
	return s
}

// whole says whether no plane cuts the ball.
func (s *Shape) whole() bool { return s.t0 <= -s.r0 && s.t1 >= s.r0 }

// ballDepth is depth of a ball.
func (s *Shape) ballDepth(v Vec) float64 {
	w := v.Sub(s.from)
	t := w.Dot(s.axis)
	d := s.r0 - w.Len()
	if s.whole() {
		return d
	}
	return min(d, t-s.t0, s.t1-t)
}

// hitBall solves |o + t·d − c|² ≤ r² between the planes.
func (s *Shape) hitBall(o, d Vec) (a, b float64, ok bool) {
	w := o.Sub(s.from)
	A := d.Dot(d)
	m := -w.Dot(d) / A
	near := w.Add(d.Times(m)) // the line's place nearest to the middle
	h2 := (s.r0*s.r0 - near.Dot(near)) / A
	if !(h2 > 0) {
		return 0, 0, false
	}
	h := math.Sqrt(h2)
	a, b = m-h, m+h
	if s.whole() {
		return a, b, true
	}
	wz, dz := w.Dot(s.axis), d.Dot(s.axis)
	if !clip(&a, &b, wz, dz, s.t1) || !clip(&a, &b, -wz, -dz, -s.t0) {
		return 0, 0, false
	}
	return a, b, true
}

// supportBall gives the place that lies farthest in a direction.
func (s *Shape) supportBall(d Vec) Vec {
	u := d.Unit()
	t := s.r0 * u.Dot(s.axis)
	if t >= s.t0 && t <= s.t1 {
		return s.from.Add(u.Times(s.r0))
	}
	t = between(t, s.t0, s.t1)
	out := d.Sub(s.axis.Times(d.Dot(s.axis))).Unit()
	return s.from.Add(s.axis.Times(t)).Add(out.Times(s.rimOf(t)))
}

// rimOf gives the radius of a ball's section at a distance from its middle.
func (s *Shape) rimOf(t float64) float64 { return math.Sqrt(max(0, s.r0*s.r0-t*t)) }

// ballLevels adds the heights at which the outline of a ball begins, ends or turns.
func (s *Shape) ballLevels(out []float64) []float64 {
	z := s.from[2]
	out = append(out, z-s.r0, z, z+s.r0)
	if s.whole() {
		return out
	}
	spread := math.Sqrt(max(0, 1-s.axis[2]*s.axis[2]))
	for _, t := range [2]float64{s.t0, s.t1} {
		m, r := z+s.axis[2]*t, s.rimOf(t)*spread
		out = append(out, m-r, m, m+r)
	}
	return out
}

// ballFlat gives the outline over a band: at every level of it, or (wide) a bound of what is
// there at some. A ball cut by planes that are not level leaves a disc cut by straight lines.
func (s *Shape) ballFlat(b band, wide bool) flat {
	lo, hi := b.lo-s.from[2], b.hi-s.from[2]
	far := max(math.Abs(lo), math.Abs(hi))
	if wide {
		far = math.Abs(between(0, lo, hi))
	}
	r, c := s.rimOf(far), pt{s.from[0], s.from[1]}
	d := disc(c, r)
	if s.whole() || s.upright() || !d.ok {
		return d
	}
	ps := []pt{d.lo, {d.hi.x, d.lo.y}, d.hi, {d.lo.x, d.hi.y}}
	for _, end := range [2]struct {
		n Vec
		c float64
	}{{s.axis, s.t1}, {s.axis.Times(-1), -s.t0}} {
		nrm := pt{end.n[0], end.n[1]}
		x, y := end.c-end.n[2]*lo, end.c-end.n[2]*hi // what the plane leaves at either level
		room := min(x, y)
		if wide {
			room = max(x, y)
		}
		ps = clipped(ps, nrm, nrm.dot(c)+room, make([]pt, 0, 6))
	}
	return d.within(polygon(ps))
}

// ballMoment gives the volume and the first moments of a ball between its planes: the
// integrals of π(r² − t²) and of t times that.
func (s *Shape) ballMoment() moment {
	v := func(t float64) float64 { return math.Pi * (s.r0*s.r0*t - t*t*t/3) }
	m := func(t float64) float64 { return math.Pi * (s.r0*s.r0*t*t/2 - t*t*t*t/4) }
	return of(v(s.t1)-v(s.t0), s.from).plus(moment{M: s.axis.Times(m(s.t1) - m(s.t0))}, 1)
}

// ballFlats gives the planes that cut a ball.
func (s *Shape) ballFlats() (out []Half) {
	if s.t1 < s.r0 {
		out = append(out, Half{s.axis, s.axis.Dot(s.from) + s.t1})
	}
	if s.t0 > -s.r0 {
		out = append(out, Half{s.axis.Times(-1), -s.axis.Dot(s.from) - s.t0})
	}
	return out
}

// ballDirections gives the directions from a ball's middle in which walls can be least: towards
// every flat, every axis and middle, and those of a cube's faces, edges and corners; only those
// in which the planes leave the ball's own surface.
func (p *Piece) ballDirections(s *Shape) (out []Vec) {
	add := func(v Vec) {
		l := v.Len()
		for _, sign := range [2]float64{1, -1} {
			u := v.Times(sign / l)
			if t := s.r0 * u.Dot(s.axis); l > 1e-9 && t >= s.t0-hair && t <= s.t1+hair {
				out = append(out, u)
			}
		}
	}
	p.shapes(func(o *Shape) {
		switch o.kind {
		case round:
			w := o.from.Sub(s.from)
			add(w.Sub(o.axis.Times(w.Dot(o.axis))))
			add(w)
			add(o.end().Sub(s.from))
		case ball:
			add(o.from.Sub(s.from))
		}
		for _, f := range o.flats() {
			add(f.N)
		}
	})
	for i := range 27 {
		add(Vec{float64(i%3 - 1), float64(i/3%3 - 1), float64(i/9 - 1)})
	}
	return out
}
