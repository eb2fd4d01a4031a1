package solid

import (
	"math"
	"sync"
)

// This file cuts shapes with level planes. Over a band of height, an outline is bounded from
// within (what is inside at every level of the band) and from without (what is inside at some
// level). Both are exact at a single level but for rounds that lean or cones that lie, which
// are cut as prisms of many faces, inscribed from within and circumscribed from without.

// band is a stretch of height. Where lo is hi it is one level.
type band struct{ lo, hi float64 }

func (b band) mid() float64    { return (b.lo + b.hi) / 2 }
func (b band) height() float64 { return b.hi - b.lo }

// upright says whether the axis of a round is square to the level planes, lying whether it
// lies in one.
func (s *Shape) upright() bool { return math.Abs(s.axis[2]) > 1-1e-12 }
func (s *Shape) lying() bool   { return math.Abs(s.axis[2]) < 1e-9 }

// constant says whether the outline is the same at every level between the shape's ends.
func (s *Shape) constant() bool {
	switch s.kind {
	case round:
		return s.upright() && s.r0 == s.r1
	case prism:
		for i := range s.faces {
			if n := s.faces[i].N; n[2] != 0 && n[2]*n[2] < 1-1e-15 {
				return false
			}
		}
	case ball:
		return false
	}
	return true
}

// levels adds the heights at which the outline begins, ends or changes its way of growing.
func (s *Shape) levels(out []float64) []float64 {
	out = append(out, s.lo[2], s.hi[2])
	switch s.kind {
	case prism:
		for _, c := range s.corners {
			out = append(out, c[2])
		}
	case ball:
		return s.ballLevels(out)
	case round:
		if s.upright() {
			break
		}
		spread := math.Sqrt(max(0, 1-s.axis[2]*s.axis[2]))
		e := s.end()
		out = append(out, s.from[2], s.from[2]-s.r0*spread, s.from[2]+s.r0*spread,
			e[2], e[2]-s.r1*spread, e[2]+s.r1*spread)
	}
	return out
}

// fineness is the number of faces a leaning round is given.
const (
	coarse = 16
	finest = 512
	fair   = 64 // for areas, where the polygon has the round's own area
)

// inner gives what the shape covers at every level of a band; outer what it covers at some.
func (s *Shape) inner(b band, n int) flat {
	if s.kind == empty || b.mid() <= s.lo[2] || b.mid() >= s.hi[2] {
		return flat{}
	}
	switch s.kind {
	case box:
		return rectangle(pt{s.lo[0], s.lo[1]}, pt{s.hi[0], s.hi[1]})
	case prism:
		return cutFaces(s.faces, s.lo, s.hi, b, false)
	case ball:
		return s.ballFlat(b, false)
	}
	if s.upright() {
		return disc(pt{s.from[0], s.from[1]}, min(s.radiusAt(b.lo), s.radiusAt(b.hi)))
	}
	if s.lying() && s.r0 == s.r1 {
		return s.strip(min(s.halfWidth(b.lo), s.halfWidth(b.hi)))
	}
	if s.lying() {
		return s.lyingCone(max(math.Abs(b.lo-s.from[2]), math.Abs(b.hi-s.from[2])), n/4, false)
	}
	return cutFaces(s.facets(n, math.Cos(math.Pi/float64(n))), s.lo, s.hi, b, false)
}

func (s *Shape) outer(b band, n int) flat {
	if s.kind == empty || b.mid() <= s.lo[2] || b.mid() >= s.hi[2] {
		return flat{}
	}
	switch s.kind {
	case box:
		return rectangle(pt{s.lo[0], s.lo[1]}, pt{s.hi[0], s.hi[1]})
	case prism:
		return cutFaces(s.faces, s.lo, s.hi, b, true)
	case ball:
		return s.ballFlat(b, true)
	}
	if s.upright() {
		return disc(pt{s.from[0], s.from[1]}, max(s.radiusAt(b.lo), s.radiusAt(b.hi)))
	}
	if s.lying() && s.r0 == s.r1 {
		return s.strip(s.halfWidth(between(s.from[2], b.lo, b.hi)))
	}
	if s.lying() {
		return s.lyingCone(math.Abs(between(s.from[2], b.lo, b.hi)-s.from[2]), n/4, true)
	}
	return cutFaces(s.facets(n, 1), s.lo, s.hi, b, true)
}

// section gives the outline at one level. A leaning round becomes a polygon of its own area;
// a lying cone a fine one.
func (s *Shape) section(z float64) flat {
	b := band{z, z}
	if s.kind == ball {
		return s.ballFlat(b, false)
	}
	if s.kind == round && s.lying() && s.r0 != s.r1 {
		return s.inner(b, finest/4)
	}
	if s.kind == round && !s.upright() && !(s.lying() && s.r0 == s.r1) {
		if z <= s.lo[2] || z >= s.hi[2] {
			return flat{}
		}
		a := math.Pi / fair
		return cutFaces(s.facets(fair, math.Sqrt(a/math.Tan(a))), s.lo, s.hi, b, true)
	}
	return s.inner(b, fair)
}

// radiusAt gives the radius of an upright round at a height, held within its ends.
func (s *Shape) radiusAt(z float64) float64 {
	t := between((z-s.from[2])*s.axis[2], 0, s.h)
	return s.r0 + s.slope()*t
}

// halfWidth gives half the width of a lying cylinder at a height.
func (s *Shape) halfWidth(z float64) float64 {
	z -= s.from[2]
	return math.Sqrt(max(0, s.r0*s.r0-z*z))
}

// strip gives the rectangle of half-width w along the axis of a lying cylinder.
func (s *Shape) strip(w float64) flat {
	if !(w > 0) {
		return flat{}
	}
	e := s.end()
	a, b := pt{s.from[0], s.from[1]}, pt{e[0], e[1]}
	n := pt{-s.axis[1], s.axis[0]}.times(w)
	return polygon([]pt{a.sub(n), b.sub(n), b.add(n), a.add(n)})
}

// lyingCone gives the outline of a lying frustum at a distance c from its axis: where the
// radius g, which grows evenly along the axis, is more than c, half its width is √(g² − c²), an
// arc of a hyperbola. With g = c·cosh t and half the width c·sinh t, n equal steps of t give
// chords, which lie within, or (wide) tangents, which meet at (cosh m, sinh m)·c/cosh(step/2)
// where m is the middle of the step.
func (s *Shape) lyingCone(c float64, n int, wide bool) flat {
	small, large := min(s.r0, s.r1), max(s.r0, s.r1)
	if c >= large {
		return flat{}
	}
	n = max(n, 2)
	half := make([]pt, 0, n+3) // radius and half width, from the thin end to the thick one
	start := max(small, c)
	if c < 1e-9*large { // a trapezium; the width at c is short by less than 1e-17 of it
		half = append(half, pt{start, start}, pt{large, large})
	} else {
		t0, t1 := math.Acosh(start/c), math.Acosh(large/c)
		add := func(t, f float64) { half = append(half, pt{c * math.Cosh(t) * f, c * math.Sinh(t) * f}) }
		h := (t1 - t0) / float64(n)
		add(t0, 1)
		for i := range n {
			if wide {
				add(t0+h*(float64(i)+0.5), 1/math.Cosh(h/2))
			} else if i > 0 {
				add(t0+h*float64(i), 1)
			}
		}
		add(t1, 1)
	}
	a, d := pt{s.from[0], s.from[1]}, pt{s.axis[0], s.axis[1]}
	side := pt{-d.y, d.x}
	if s.r1 < s.r0 { // keep the corners anticlockwise
		side = side.times(-1)
	}
	ps := make([]pt, 0, 2*len(half))
	for _, q := range half {
		ps = append(ps, a.add(d.times((q.x-s.r0)/s.slope())).sub(side.times(q.y)))
	}
	for i := len(half) - 1; i >= 0; i-- {
		if q := half[i]; q.y > 0 {
			ps = append(ps, a.add(d.times((q.x-s.r0)/s.slope())).add(side.times(q.y)))
		}
	}
	return polygon(ps)
}

// facets gives a round as the half-spaces of a prism of n sides whose faces touch the round
// scaled by f; f = 1 circumscribes, f = cos(π/n) inscribes.
func (s *Shape) facets(n int, f float64) []Half {
	e1 := square(s.axis)
	e2 := s.axis.Cross(e1)
	k := f * s.slope()
	l := math.Sqrt(1 + k*k)
	out := make([]Half, 0, n+2)
	out = append(out, Half{s.axis, s.axis.Dot(s.from) + s.h}, Half{s.axis.Times(-1), -s.axis.Dot(s.from)})
	for _, cs := range circle(n) {
		u := e1.Times(cs.x).Add(e2.Times(cs.y))
		nrm := u.Sub(s.axis.Times(k)).Times(1 / l)
		out = append(out, Half{nrm, nrm.Dot(s.from) + f*s.r0/l})
	}
	return out
}

var circles sync.Map // n to the n places on the unit circle; only ever the same answer

func circle(n int) []pt {
	if c, ok := circles.Load(n); ok {
		return c.([]pt)
	}
	c := make([]pt, n)
	for i := range c {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		c[i] = pt{cos, sin}
	}
	circles.Store(n, c)
	return c
}

// cutFaces gives the outline that half-spaces leave over a band: at every level of it, or
// (wide) a bound of what they leave at some.
func cutFaces(faces []Half, lo, hi Vec, b band, wide bool) flat {
	one := make([]pt, 4, len(faces)+6)
	two := make([]pt, 0, len(faces)+6)
	one[0], one[1], one[2], one[3] = pt{lo[0], lo[1]}, pt{hi[0], lo[1]}, pt{hi[0], hi[1]}, pt{lo[0], hi[1]}
	for i := range faces {
		f := &faces[i]
		if f.N[0] == 0 && f.N[1] == 0 {
			continue
		}
		low, high := f.N[2]*b.lo, f.N[2]*b.hi
		c := f.C - max(low, high)
		if wide {
			c = f.C - min(low, high)
		}
		two = clipped(one, pt{f.N[0], f.N[1]}, c, two)
		one, two = two, one
		if len(one) < 3 {
			return flat{}
		}
	}
	return polygon(one)
}
