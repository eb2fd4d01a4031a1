package solid

import "math"

// The least distance between two convex bodies, each known by its support: the place of it
// that lies farthest in a direction. The difference of the bodies is convex, and its place
// nearest to the origin is found by walking over simplices of at most four of its places
// (E. G. Gilbert, D. W. Johnson, S. S. Keerthi, "A fast procedure for computing the distance
// between complex objects in three-dimensional space", IEEE J. Robotics and Automation 4,
// 1988). Each step also gives a plane that keeps the bodies apart, hence a lower bound; the
// walk ends when bound and distance agree.

// body is a convex body known by its support.
type body interface{ support(d Vec) Vec }

// nearest is the answer: distance 0 and no places where the bodies have something in common.
type apartness struct {
	d    float64
	a, b Vec // the nearest places on either
}

// knot is one place of the difference and the places of the bodies it comes from.
type knot struct{ w, a, b Vec }

// distance gives the least distance, to some 1e-6 mm; less than that counts as 0.
func distance(a, b body, guess Vec) apartness { return walk(a, b, guess, false) }

// disjoint says whether the bodies have nothing in common: whether their distance is above 0. It
// is content with the first plane that keeps them apart.
func disjoint(a, b body, guess Vec) bool { return walk(a, b, guess, true).d > 0 }

// walk goes from simplex to simplex until bound and distance agree, or, soon, until the bound
// is above what counts as 0.
func walk(a, b body, guess Vec, soon bool) apartness {
	pick := func(d Vec) knot {
		p, q := a.support(d.Times(-1)), b.support(d)
		return knot{p.Sub(q), p, q}
	}
	if guess.Len() == 0 {
		guess = Vec{1, 0, 0}
	}
	k := pick(guess)
	s, n := [4]knot{k}, 1
	v := k.w
	at := apartness{v.Len(), k.a, k.b}
	for range 100 {
		if at.d < hair {
			return apartness{}
		}
		k = pick(v)
		bound := v.Dot(k.w)
		if v.Dot(v)-bound <= 1e-9*v.Dot(v)+1e-7*at.d || soon && bound > 2*hair*at.d {
			return at
		}
		s[n] = k
		v, n = closest(&s, n+1)
		d := v.Len()
		if n == 4 || d < hair {
			return apartness{}
		}
		if d >= at.d-1e-12 {
			return at // no progress is left in the digits
		}
		at = apartness{d: d}
		at.a, at.b = blend(s[:n], v)
	}
	return at
}

// closest gives the place of a simplex of n corners nearest to the origin, brings the corners
// that it depends on to the front, and says how many they are.
func closest(s *[4]knot, n int) (Vec, int) {
	best, found := math.Inf(1), Vec{}
	kept := 0
	for mask := 1; mask < 1<<n; mask++ {
		var sub [4]knot
		m := 0
		for i := range n {
			if mask>>i&1 == 1 {
				sub[m] = s[i]
				m++
			}
		}
		l, ok := weights(sub[:m])
		if !ok {
			continue
		}
		var v Vec
		for i := range m {
			v = v.Add(sub[i].w.Times(l[i]))
		}
		if d := v.Dot(v); d < best {
			best, found, kept = d, v, mask
		}
	}
	m := 0
	for i := range n {
		if kept>>i&1 == 1 {
			s[m] = s[i]
			m++
		}
	}
	return found, m
}

// blend gives the places of the bodies that belong to the nearest place of a simplex.
func blend(s []knot, _ Vec) (a, b Vec) {
	l, _ := weights(s)
	for i, k := range s {
		a, b = a.Add(k.a.Times(l[i])), b.Add(k.b.Times(l[i]))
	}
	return a, b
}

// weights gives the shares of the corners in the place, of the flat through them, nearest to
// the origin; false where that place is outside of the simplex or the corners are degenerate.
func weights(s []knot) (l [4]float64, ok bool) {
	n := len(s) - 1
	if n == 0 {
		return [4]float64{1}, true
	}
	var m [3][4]float64 // normal equations of min |w0 + Σ t·(wi − w0)|²
	scale := 0.0
	for i := range n {
		ei := s[i+1].w.Sub(s[0].w)
		for j := range n {
			m[i][j] = ei.Dot(s[j+1].w.Sub(s[0].w))
		}
		m[i][3] = -ei.Dot(s[0].w)
		scale = max(scale, m[i][i])
	}
	for i := range n {
		p := i
		for j := i + 1; j < n; j++ {
			if math.Abs(m[j][i]) > math.Abs(m[p][i]) {
				p = j
			}
		}
		m[i], m[p] = m[p], m[i]
		if math.Abs(m[i][i]) <= 1e-14*scale {
			return l, false
		}
		for j := range n {
			if j == i {
				continue
			}
			f := m[j][i] / m[i][i]
			for c := i; c < 4; c++ {
				m[j][c] -= f * m[i][c]
			}
		}
	}
	l[0] = 1
	for i := range n {
		l[i+1] = m[i][3] / m[i][i]
		l[0] -= l[i+1]
	}
	for i := range s {
		if l[i] < 0 {
			return l, false
		}
	}
	return l, true
}

// support of a shape.
func (s *Shape) support(d Vec) Vec {
	switch s.kind {
	case box:
		v := s.lo
		for i := range 3 {
			if d[i] > 0 {
				v[i] = s.hi[i]
			}
		}
		return v
	case prism:
		best := s.corners[0]
		for _, c := range s.corners[1:] {
			if c.Dot(d) > best.Dot(d) {
				best = c
			}
		}
		return best
	case ball:
		return s.supportBall(d)
	}
	out := d.Sub(s.axis.Times(d.Dot(s.axis))).Unit()
	a, b := s.from.Add(out.Times(s.r0)), s.end().Add(out.Times(s.r1))
	if a.Dot(d) > b.Dot(d) {
		return a
	}
	return b
}

// way is the body that one frustum of a stack sweeps on a straight way: what four discs span.
type way struct {
	t Turned
	m Move
}

func (w *way) support(d Vec) Vec {
	out := Vec{d[0], d[1], 0}.Unit()
	best, found := Vec{}, math.Inf(-1)
	for _, tip := range [2]Vec{w.m.From, w.m.To} {
		for _, end := range [2][2]float64{{w.t.Z0, w.t.R0}, {w.t.Z1, w.t.R1}} {
			v := tip.Add(Vec{0, 0, end[0]}).Add(out.Times(end[1]))
			if s := v.Dot(d); s > found {
				best, found = v, s
			}
		}
	}
	return best
}

// bounds gives a box round the way.
func (w *way) bounds() (lo, hi Vec) {
	r := max(w.t.R0, w.t.R1)
	lo, hi = least(w.m.From, w.m.To), most(w.m.From, w.m.To)
	return lo.Add(Vec{-r, -r, w.t.Z0}), hi.Add(Vec{r, r, w.t.Z1})
}

// moved gives the same way shifted.
func (w *way) moved(d Vec) *way {
	return &way{w.t, Move{w.m.From.Add(d), w.m.To.Add(d)}}
}
