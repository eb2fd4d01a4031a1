package solid

import "math"

// curve is where two surfaces meet, or a contour of one. A straight one is o + t·u, u a unit
// vector. A conic is o + cos t·u + sin t·v. A ruled one runs over the straight lines of the
// turned skin a and takes on each the place where it meets b, the first or the second.
type curve struct {
	kind    curveKind
	o, u, v Vec
	a, b    *surface // the surfaces; b is nil for a contour

	second     bool
	mid, sweep float64 // a ruled one: its angles are mid ± sweep

	lo, hi float64 // of t
	pts    []Vec   // places evenly along t, of conics and ruled ones
	step   float64 // no two neighbours of pts are farther apart along the curve, in mm
}

type curveKind uint8

const (
	straight curveKind = iota
	conic
	ruled
)

// stations is the number of stretches between the places from which roots are sought.
const stations = 48

// at gives the place at t. On a ruled curve t runs from -1 to 1, and the angle changes with
// it so that the ends, at which the curve leaves its ruling as a root does, are smooth.
func (c *curve) at(t float64) Vec {
	switch c.kind {
	case straight:
		return c.o.Add(c.u.Times(t))
	case conic:
		sin, cos := math.Sincos(t)
		return c.o.Add(c.u.Times(cos)).Add(c.v.Times(sin))
	}
	v, _ := c.onRuling(c.mid + c.sweep*(3*t-t*t*t)/2)
	return v
}

// onRuling gives the place of a ruled curve at an angle, and how far along the axis it is.
// Where the ruling misses b it is where it comes nearest.
func (c *curve) onRuling(angle float64) (Vec, float64) {
	o, d := c.a.ruling(angle)
	qa, qb, qc := c.b.quadratic(o, d)
	t0, t1, n := roots(qa, qb, qc)
	switch {
	case n == 0 && math.Abs(qa) > 1e-12:
		t0 = -qb / qa
	case c.second:
		t0 = t1
	}
	t0 = between(t0, -2*Grain, c.a.h+2*Grain) // beyond, rulings that never meet b begin
	return o.Add(d.Times(t0)), t0
}

// along gives the direction of the curve at t, a unit vector.
func (c *curve) along(t float64) Vec {
	switch c.kind {
	case straight:
		return c.u
	case conic:
		sin, cos := math.Sincos(t)
		return c.v.Times(cos).Sub(c.u.Times(sin)).Unit()
	}
	h := 1e-5
	a, b := max(c.lo, t-h), min(c.hi, t+h)
	d := c.at(b).Sub(c.at(a)).Unit()
	v := c.at(t)
	if x := c.a.out(v).Cross(c.b.out(v)); x.Len() > 1e-3 {
		x = x.Unit()
		if x.Dot(d) < 0 {
			x = x.Times(-1)
		}
		return x
	}
	return d
}

// mark fills in the places along a curve that is not straight.
func (c *curve) mark() {
	if c.kind == straight || c.pts != nil {
		return
	}
	c.pts = make([]Vec, stations+1)
	for i := range c.pts {
		c.pts[i] = c.at(c.param(i))
		if i > 0 {
			c.step = max(c.step, c.pts[i].Sub(c.pts[i-1]).Len()*1.1)
		}
	}
}

func (c *curve) param(i int) float64 { return c.lo + (c.hi-c.lo)*float64(i)/stations }

// bounds gives a box that holds the curve's range.
func (c *curve) bounds() (lo, hi Vec) {
	switch c.kind {
	case straight:
		a, b := c.at(c.lo), c.at(c.hi)
		return least(a, b), most(a, b)
	case conic:
		for i := range 3 {
			d := math.Hypot(c.u[i], c.v[i])
			lo[i], hi[i] = c.o[i]-d, c.o[i]+d
		}
		return lo, hi
	}
	c.mark()
	lo, hi = c.pts[0], c.pts[0]
	for _, p := range c.pts {
		lo, hi = least(lo, p), most(hi, p)
	}
	s := Vec{c.step, c.step, c.step}.Times(0.5)
	return lo.Sub(s), hi.Add(s)
}

// sag is how far the chords of drawn points may leave their curve, in mm.
const sag = 0.005

// points gives places from t0 to t1 whose chords leave the curve by no more than sag, and
// their t.
func (c *curve) points(t0, t1 float64) (ps []Vec, ts []float64) {
	n := 1
	switch c.kind {
	case conic:
		r := max(c.u.Len(), c.v.Len())
		n = max(2, int(math.Ceil(math.Abs(t1-t0)/(2*math.Acos(max(0.5, 1-sag/r))))))
	case ruled:
		n = 4
	}
	ps, ts = append(ps, c.at(t0)), append(ts, t0)
	for i := range n {
		t := t0 + (t1-t0)*float64(i+1)/float64(n)
		v := c.at(t)
		if c.kind == ruled {
			ps, ts = c.refine(ts[len(ts)-1], t, ps[len(ps)-1], v, 9, ps, ts)
			continue
		}
		ps, ts = append(ps, v), append(ts, t)
	}
	return ps, ts
}

// refine adds the places after a up to b, halving until the chords are near enough.
func (c *curve) refine(t0, t1 float64, a, b Vec, deep int, ps []Vec, ts []float64) ([]Vec, []float64) {
	tm := (t0 + t1) / 2
	m := c.at(tm)
	if deep == 0 || fromChord(m, a, b) < sag {
		return append(ps, b), append(ts, t1)
	}
	ps, ts = c.refine(t0, tm, a, m, deep-1, ps, ts)
	return c.refine(tm, t1, m, b, deep-1, ps, ts)
}

// fromChord gives the distance of a place from the stretch a–b.
func fromChord(v, a, b Vec) float64 {
	d := b.Sub(a)
	l := d.Dot(d)
	if l == 0 {
		return v.Sub(a).Len()
	}
	return v.Sub(a.Add(d.Times(between(v.Sub(a).Dot(d)/l, 0, 1)))).Len()
}
