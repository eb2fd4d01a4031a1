package solid

import "math"

// A curve is split where it crosses the surface of a body, so that between two neighbouring
// splits nothing about the metal beside it changes. On straight lines, and on conics against
// planes, the crossings are closed forms. Elsewhere they are looked for between places along
// the curve: depth grows by no more than a mm a mm, so a stretch between two places is free of
// crossings for certain where the depths at its ends add up to more than its length; where
// they do not, the least depth between them is looked for.

// within limits a curve to a box; false where nothing is left.
func (c *curve) within(lo, hi Vec) bool {
	if c.kind != straight {
		a, b := c.bounds()
		return touch(a, b, lo, hi)
	}
	for i := range 3 {
		if math.Abs(c.u[i]) < 1e-14 {
			if c.o[i] < lo[i] || c.o[i] > hi[i] {
				return false
			}
			continue
		}
		t0, t1 := (lo[i]-c.o[i])/c.u[i], (hi[i]-c.o[i])/c.u[i]
		c.lo, c.hi = max(c.lo, min(t0, t1)), min(c.hi, max(t0, t1))
	}
	return c.lo < c.hi
}

// near lists the bodies that a box touches.
func (w *wire) near(lo, hi Vec, out []int) []int {
	for i := range w.bodies {
		if touch(lo, hi, w.bodies[i].lo, w.bodies[i].hi) {
			out = append(out, i)
		}
	}
	return out
}

// splits gives, in order, the ends of the curve's range and where it crosses a surface of the
// bodies.
func (w *wire) splits(c *curve, near []int) []float64 {
	out := []float64{c.lo, c.hi}
	for _, n := range near {
		b := &w.bodies[n]
		for i := range b.skins {
			s := &b.skins[i]
			if s == c.a || s == c.b {
				continue
			}
			from := len(out)
			out = c.crossings(s, out)
			keep := out[:from]
			for _, t := range out[from:] {
				if b.holds(c.at(t)) {
					keep = append(keep, t)
				}
			}
			out = keep
		}
	}
	return tidy(out, c.lo, c.hi, 0)
}

// crossings adds the places at which the curve crosses or touches a surface.
func (c *curve) crossings(s *surface, out []float64) []float64 {
	switch {
	case c.kind == straight:
		t0, t1, n := roots(s.quadratic(c.o, c.u))
		if n > 0 {
			out = append(out, t0)
		}
		if n > 1 {
			out = append(out, t1)
		}
		return out
	case c.kind == conic && s.kind == plain:
		return harmonic(s.n.Dot(c.u), s.n.Dot(c.v), s.c-s.n.Dot(c.o), out)
	case c.kind == conic:
		if a, b, m, ok := c.circleOn(s); ok {
			return harmonic(a, b, m, out)
		}
	}
	return c.sought(s.depth, out)
}

// circleOn gives the crossings of a circle with a ball, or with a turned surface of parallel axis,
// as the roots of a·cos t + b·sin t = m, in mm: the square of a place's distance from the middle
// or the axis has that form.
func (c *curve) circleOn(s *surface) (a, b, m float64, ok bool) {
	r2 := c.u.Dot(c.u)
	if math.Abs(r2-c.v.Dot(c.v)) > 1e-12*r2 || math.Abs(c.u.Dot(c.v)) > 1e-12*r2 {
		return 0, 0, 0, false
	}
	w, r := c.o.Sub(s.from), s.r0
	if s.kind == turned {
		if math.Abs(c.u.Dot(s.axis)) > hair || math.Abs(c.v.Dot(s.axis)) > hair {
			return 0, 0, 0, false
		}
		wz := w.Dot(s.axis)
		w, r = w.Sub(s.axis.Times(wz)), r+s.k*wz
	}
	d := 2 * math.Sqrt(r2)
	return 2 * w.Dot(c.u) / d, 2 * w.Dot(c.v) / d, (r*r - w.Dot(w) - r2) / d, true
}

// harmonic adds where a·cos t + b·sin t = c, from 0 to 2π.
func harmonic(a, b, c float64, out []float64) []float64 {
	r := math.Hypot(a, b)
	if r < hair || math.Abs(c) > r+hair {
		return out
	}
	m, d := math.Atan2(b, a), math.Acos(between(c/r, -1, 1))
	for _, t := range [2]float64{m - d, m + d} {
		if t < 0 {
			t += 2 * math.Pi
		}
		if t > 2*math.Pi {
			t -= 2 * math.Pi
		}
		out = append(out, t)
	}
	return out
}

// sought adds where a function that grows by no more than a mm a mm is nought.
func (c *curve) sought(f func(Vec) float64, out []float64) []float64 {
	c.mark()
	was := f(c.pts[0])
	for i := range stations {
		now := f(c.pts[i+1])
		lo, hi := c.param(i), c.param(i+1)
		switch {
		case (was < 0) != (now < 0):
			out = append(out, c.halved(f, lo, hi, was < 0))
		case math.Abs(was)+math.Abs(now) <= c.step:
			out = c.dip(f, lo, hi, was < 0, out)
		}
		was = now
	}
	return out
}

// halved finds where a function changes its sign between two stations; below says whether it
// is negative at lo.
func (c *curve) halved(f func(Vec) float64, lo, hi float64, below bool) float64 {
	for range 50 {
		if m := (lo + hi) / 2; (f(c.at(m)) < 0) == below {
			lo = m
		} else {
			hi = m
		}
	}
	return (lo + hi) / 2
}

// dip adds the two places between which a function of one sign at both ends has the other, or
// the one at which it comes within a hair of nought.
func (c *curve) dip(f func(Vec) float64, lo, hi float64, below bool, out []float64) []float64 {
	const g = 0.381966011250105 // the golden section
	size := func(t float64) float64 {
		d := f(c.at(t))
		if below {
			return -d
		}
		return d
	}
	x, y := lo, hi
	a, b := x+g*(y-x), y-g*(y-x)
	fa, fb := size(a), size(b)
	for range 40 {
		if min(fa, fb) < 0 {
			m := a
			if fb < fa {
				m = b
			}
			return append(out, c.halved(f, lo, m, below), c.halved(f, m, hi, !below))
		}
		if fa < fb {
			y, b, fb = b, a, fa
			a = x + g*(y-x)
			fa = size(a)
		} else {
			x, a, fa = a, b, fb
			b = y - g*(y-x)
			fb = size(b)
		}
		if y-x < 1e-9*(1+math.Abs(x)) {
			break
		}
	}
	if m := (x + y) / 2; size(m) < hair && m-lo > 1e-6 && hi-m > 1e-6 {
		return append(out, m)
	}
	return out
}
