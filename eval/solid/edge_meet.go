package solid

import "math"

// Where two surfaces meet. Straight lines, circles and ellipses are given as such; all else
// runs over the rulings of one of the two. Surfaces that coincide, or are parallel, meet
// nowhere.

// flush is the sine below which two directions are parallel: it moves a place by a hair over
// a metre.
const flush = 1e-9

// meet gives the curves that two surfaces share.
func meet(a, b *surface) []curve {
	if a.kind > b.kind {
		a, b = b, a
	}
	var out []curve
	switch {
	case b.kind == plain:
		out = planes(a, b)
	case a.kind == plain && b.kind == turned:
		out = planeTurned(a, b)
	case a.kind == plain:
		d := a.c - a.n.Dot(b.from)
		out = circleAt(b.from.Add(a.n.Times(d)), a.n, b.r0*b.r0-d*d)
	case b.kind == turned:
		out = bothTurned(a, b)
	case a.kind == turned:
		out = turnedGlobe(a, b)
	default:
		out = globes(a, b)
	}
	for i := range out {
		if out[i].a == nil {
			out[i].a, out[i].b = a, b
		}
	}
	return out
}

func line(o, d Vec) curve { return curve{o: o, u: forward(d.Unit()), lo: -far, hi: far} }

// forward gives a direction or its opposite, so that both give the same.
func forward(d Vec) Vec {
	for i := range d {
		if math.Abs(d[i]) > 1e-9 {
			return d.Times(math.Copysign(1, d[i]))
		}
	}
	return d
}

// circleAt gives a circle about an axis, from its radius squared. The same circle about the
// opposite axis comes out the same.
func circleAt(o, axis Vec, r2 float64) []curve {
	if r2 < hair*hair {
		return nil
	}
	axis = forward(axis)
	r, u := math.Sqrt(r2), square(axis)
	return []curve{{kind: conic, o: o, u: u.Times(r), v: axis.Cross(u).Times(r), hi: 2 * math.Pi}}
}

func planes(a, b *surface) []curve {
	d := a.n.Cross(b.n)
	l := d.Dot(d)
	if l < flush*flush {
		return nil
	}
	// (Goldman's formula for the line of two planes, Graphics Gems, 1990.)
	o := b.n.Cross(d).Times(a.c).Add(d.Cross(a.n).Times(b.c)).Times(1 / l)
	return []curve{line(o, d)}
}

func planeTurned(p, s *surface) []curve {
	cn := p.n.Dot(s.axis)
	off := p.c - p.n.Dot(s.from)
	side := p.n.Sub(s.axis.Times(cn)) // square to the axis, as long as the sine
	sn := side.Len()
	switch {
	case sn < flush:
		t := off / cn
		r := s.r0 + s.k*t
		if r < hair {
			return nil
		}
		return circleAt(s.from.Add(s.axis.Times(t)), s.axis, r*r)
	case s.k == 0 && math.Abs(cn) < flush:
		return sideLines(p, s, off)
	case s.k != 0 && math.Abs(p.n.Dot(s.from)-s.r0/s.k*cn-p.c) < hair:
		return pointLines(s, side.Times(1/sn), -cn/(s.k*sn))
	case math.Abs(cn)-math.Abs(s.k)*sn > 0.05:
		return ellipse(p, s, side.Times(1/sn), cn, sn, off)
	}
	return ruledCurves(s, p)
}

// sideLines gives the lines of a cylinder on a plane along its axis.
func sideLines(p, s *surface, off float64) []curve {
	w := s.r0*s.r0 - off*off
	if math.Abs(off) > s.r0+hair {
		return nil
	}
	o, m := s.from.Add(p.n.Times(off)), s.axis.Cross(p.n).Unit()
	if w <= 0 {
		return []curve{line(o, s.axis)}
	}
	m = m.Times(math.Sqrt(w))
	return []curve{line(o.Sub(m), s.axis), line(o.Add(m), s.axis)}
}

// pointLines gives the lines of a cone on a plane through its point; cos is the cosine of
// their angle from side.
func pointLines(s *surface, side Vec, cos float64) []curve {
	if math.Abs(cos) > 1 {
		return nil
	}
	tip := s.from.Sub(s.axis.Times(s.r0 / s.k))
	m := s.axis.Cross(side).Times(math.Sqrt(1 - cos*cos))
	u := side.Times(cos)
	return []curve{line(tip, s.axis.Add(u.Add(m).Times(s.k))), line(tip, s.axis.Add(u.Sub(m).Times(s.k)))}
}

// ellipse gives that of a cylinder or cone on a slanting plane. Its long axis lies in the
// plane of the skin's axis and the plane's normal, so the two rulings there give its ends.
func ellipse(p, s *surface, side Vec, cn, sn, off float64) []curve {
	end := func(u Vec, nu float64) (Vec, float64) {
		t := (off - s.r0*nu) / (cn + s.k*nu)
		r := s.r0 + s.k*t
		return s.from.Add(s.axis.Times(t)).Add(u.Times(r)), r
	}
	x, rx := end(side, sn)
	y, ry := end(side.Times(-1), -sn)
	if rx < 0 || ry < 0 {
		return nil // on the cone's double
	}
	o, u := x.Add(y).Times(0.5), x.Sub(y).Times(0.5)
	w := o.Sub(s.from)
	t := w.Dot(s.axis)
	w = w.Sub(s.axis.Times(t))
	r := s.r0 + s.k*t
	b2 := r*r - w.Dot(w)
	if b2 < hair*hair {
		return nil
	}
	v := p.n.Cross(u).Unit().Times(math.Sqrt(b2))
	return []curve{{kind: conic, o: o, u: u, v: v, hi: 2 * math.Pi}}
}

func bothTurned(a, b *surface) []curve {
	if a.axis.Cross(b.axis).Len() > flush {
		if b.r0+math.Abs(b.k)*b.h < a.r0+math.Abs(a.k)*a.h {
			a, b = b, a
		}
		return ruledCurves(a, b)
	}
	w := b.from.Sub(a.from)
	t := w.Dot(a.axis) // of b's start along a's axis
	w = w.Sub(a.axis.Times(t))
	kb := b.k * math.Copysign(1, a.axis.Dot(b.axis))
	l := w.Len()
	switch {
	case l < hair/10: // one axis
		if math.Abs(a.k-kb) < flush {
			return nil
		}
		x := (b.r0 - kb*t - a.r0) / (a.k - kb)
		r := a.r0 + a.k*x
		if r < hair {
			return nil
		}
		return circleAt(a.from.Add(a.axis.Times(x)), a.axis, r*r)
	case a.k == 0 && b.k == 0:
		x := (l*l + a.r0*a.r0 - b.r0*b.r0) / (2 * l)
		p := surface{n: w.Times(1 / l)}
		p.c = p.n.Dot(a.from) + x
		return sideLines(&p, a, x)
	}
	return ruledCurves(a, b)
}

func turnedGlobe(s, g *surface) []curve {
	w := g.from.Sub(s.from)
	t := w.Dot(s.axis)
	if w.Sub(s.axis.Times(t)).Len() > hair/10 {
		return ruledCurves(s, g)
	}
	// (x − t)² + (r0 + k·x)² = R²
	t0, t1, n := roots(1+s.k*s.k, s.k*s.r0-t, t*t+s.r0*s.r0-g.r0*g.r0)
	var out []curve
	for i, x := range [2]float64{t0, t1} {
		if r := s.r0 + s.k*x; i < n && r > hair {
			out = append(out, circleAt(s.from.Add(s.axis.Times(x)), s.axis, r*r)...)
		}
	}
	return out
}

func globes(a, b *surface) []curve {
	w := b.from.Sub(a.from)
	l := w.Len()
	if l < hair {
		return nil
	}
	x := (l*l + a.r0*a.r0 - b.r0*b.r0) / (2 * l)
	return circleAt(a.from.Add(w.Times(x/l)), w.Times(1/l), a.r0*a.r0-x*x)
}

// rulings is the number of rulings looked at to find where a ruled curve is.
const rulings = 96

// ruledCurves gives the curves over the rulings of a turned skin: the stretches of angle over
// which the ruling meets b between the skin's ends (a Grain over them included). A stretch
// too narrow for the rulings looked at is found where the ruling comes nearest to b.
func ruledCurves(a, b *surface) []curve {
	var out []curve
	for _, second := range [2]bool{false, true} {
		if second && b.kind == plain {
			break
		}
		c := curve{kind: ruled, a: a, b: b, second: second, lo: -1, hi: 1}
		angles := c.borders()
		if len(angles) == 0 {
			if c.meets(0) {
				c.mid, c.sweep = math.Pi, math.Pi
				out = append(out, c)
			}
			continue
		}
		for i, x := range angles {
			y := angles[next(i, len(angles))]
			if y <= x {
				y += 2 * math.Pi
			}
			if c.meets((x + y) / 2) {
				d := c
				d.mid, d.sweep = (x+y)/2, (y-x)/2
				out = append(out, d)
			}
		}
	}
	return out
}

// meets says whether the ruling at an angle meets b between the ends of a.
func (c *curve) meets(angle float64) bool {
	o, d := c.a.ruling(angle)
	t0, t1, n := roots(c.b.quadratic(o, d))
	if n == 0 {
		return false
	}
	if c.second {
		t0 = t1
	}
	return t0 > -Grain && t0 < c.a.h+Grain
}

// reach is positive where the ruling meets b, in mm² times the square of a's growth.
func (c *curve) reach(angle float64) float64 {
	o, d := c.a.ruling(angle)
	qa, qb, qc := c.b.quadratic(o, d)
	return qb*qb - qa*qc
}

// atEnds adds the angles at which the ruling meets b at an end of a: a stretch of curve nearly
// along the rulings takes up hardly any angle.
func (c *curve) atEnds(out []float64) []float64 {
	for _, t := range [2]float64{-Grain, c.a.h + Grain} {
		if r := c.a.r0 + c.a.k*t; r > hair {
			end := curve{kind: conic, o: c.a.from.Add(c.a.axis.Times(t)), u: c.a.e1.Times(r), v: c.a.e2.Times(r), hi: 2 * math.Pi}
			out = end.crossings(c.b, out)
		}
	}
	return out
}

// borders gives the angles, in order, at which the rulings begin or cease to meet b.
func (c *curve) borders() []float64 {
	out := c.atEnds(nil)
	const step = 2 * math.Pi / rulings
	was := c.crosses(0)
	f := [3]float64{c.reach(-step), c.reach(0), 0}
	for i := range rulings {
		x := float64(i) * step
		f[2] = c.reach(x + step)
		least, most := f[1] < f[0] && f[1] <= f[2], f[1] > f[0] && f[1] >= f[2]
		if least && was > 0 || most && was == 0 {
			out = c.turning(x-step, x+step, least, was, out)
		}
		now := c.crosses(x + step)
		if now != was {
			out = append(out, c.border(x, x+step))
		}
		was, f[0], f[1] = now, f[1], f[2]
	}
	return tidy(out, -step, 2*math.Pi+step, 1e-9)
}

// crosses tells how the ruling at an angle, however long, meets b: 0 not, 1 it does, 2 it does
// and lies more along a cone b than its side. Between 1 and 2 one of the two places runs off
// without end and comes back from the other side, so that the first becomes the second.
func (c *curve) crosses(angle float64) int {
	o, d := c.a.ruling(angle)
	qa, qb, qc := c.b.quadratic(o, d)
	switch _, _, n := roots(qa, qb, qc); {
	case n == 0:
		return 0
	case qa < 0:
		return 2
	}
	return 1
}

// turning looks for the least (or most) reach between two angles by golden section, and adds
// the borders on both sides of it where the rulings there answer otherwise.
func (c *curve) turning(lo, hi float64, down bool, was int, out []float64) []float64 {
	const g = 0.381966011250105
	sign := 1.0
	if down {
		sign = -1
	}
	a, b := lo+g*(hi-lo), hi-g*(hi-lo)
	fa, fb := sign*c.reach(a), sign*c.reach(b)
	x, y := lo, hi
	for range 40 {
		if fa > fb {
			y, b, fb = b, a, fa
			a = x + g*(y-x)
			fa = sign * c.reach(a)
		} else {
			x, a, fa = a, b, fb
			b = y - g*(y-x)
			fb = sign * c.reach(b)
		}
	}
	if m := (x + y) / 2; c.crosses(m) != was && c.crosses(lo) == was && c.crosses(hi) == was {
		return append(out, c.border(lo, m), c.border(m, hi))
	}
	return out
}

// border halves the stretch between an angle that meets and one that does not.
func (c *curve) border(x, y float64) float64 {
	at := c.crosses(x)
	for range 48 {
		if m := (x + y) / 2; c.crosses(m) == at {
			x = m
		} else {
			y = m
		}
	}
	return (x + y) / 2
}
