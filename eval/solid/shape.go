package solid

import "math"

type kind uint8

const (
	empty kind = iota
	box
	round // a cylinder or the frustum of a cone
	prism // what several planes leave
	ball  // or what two planes leave of it
)

// Shape is a convex body. The zero Shape is empty.
type Shape struct {
	kind   kind
	lo, hi Vec // the least box round it; of a box the box itself

	// round
	from, axis Vec // the middle of the first end; unit direction to the other
	h          float64
	r0, r1     float64

	// ball: from is its middle, r0 its radius; the planes lie at these distances along axis
	t0, t1 float64

	// prism
	faces   []Half
	corners []Vec
}

// Half is the half of space where N·p ≤ C; N is a unit vector pointing out of the metal.
type Half struct {
	N Vec
	C float64
}

// far bounds what no plane bounds, in mm.
const far = 1e5

// Box gives the box between two corners, square to the axes; empty where it has no inside.
func Box(lo, hi Vec) Shape {
	for i := range lo {
		if !(lo[i] < hi[i]) || !finite(lo) || !finite(hi) {
			return Shape{}
		}
	}
	return Shape{kind: box, lo: lo, hi: hi}
}

// Cylinder gives the cylinder of radius r with flat ends about the line between two places.
func Cylinder(from, to Vec, r float64) Shape { return Cone(from, to, r, r) }

// Cone gives the frustum of a cone about the line between two places, with a radius at each
// end. One radius may be 0.
func Cone(from, to Vec, r0, r1 float64) Shape {
	d := to.Sub(from)
	h := d.Len()
	if !finite(from) || !finite(to) || !finite(Vec{r0, r1, h}) || !(h > 0) || !(r0 >= 0) || !(r1 >= 0) || r0+r1 == 0 {
		return Shape{}
	}
	s := Shape{kind: round, from: from, axis: d.Unit(), h: h, r0: r0, r1: r1}
	s.bound()
	return s
}

// Prism gives what several half-spaces have in common, at most 200 m across; each N may have
// any length; what is not a number or no direction is left out. It is empty where they have nothing in common.
func Prism(faces ...Half) Shape {
	var all []Half
	for _, f := range faces {
		if l := f.N.Len(); l > 0 && finite(f.N) && finite(Vec{f.C, l}) {
			all = append(all, Half{f.N.Unit(), f.C / l})
		}
	}
	for i := range 3 {
		all = append(all, Half{along(i), far}, Half{along(i).Times(-1), far})
	}
	return hull(all)
}

// hull works out the corners where three faces meet within all others, and drops the faces
// that have none.
func hull(all []Half) Shape {
	s := Shape{kind: prism}
	used := make([]bool, len(all))
	for i := range all {
		for j := i + 1; j < len(all); j++ {
			for k := j + 1; k < len(all); k++ {
				v, ok := corner(all[i], all[j], all[k])
				if !ok || !within(all, v) {
					continue
				}
				used[i], used[j], used[k] = true, true, true
				s.addCorner(v)
			}
		}
	}
	if len(s.corners) < 4 {
		return Shape{}
	}
	for i, f := range all {
		if used[i] {
			s.faces = append(s.faces, f)
		}
	}
	s.bound()
	return s
}

func (s *Shape) addCorner(v Vec) {
	for _, c := range s.corners {
		if c.Sub(v).Len() < 1e-9 {
			return
		}
	}
	s.corners = append(s.corners, v)
}

// corner gives the place that three planes share (Cramer's rule).
func corner(a, b, c Half) (Vec, bool) {
	bc := b.N.Cross(c.N)
	d := a.N.Dot(bc)
	if math.Abs(d) < 1e-9 {
		return Vec{}, false
	}
	v := bc.Times(a.C).Add(c.N.Cross(a.N).Times(b.C)).Add(a.N.Cross(b.N).Times(c.C))
	return v.Times(1 / d), true
}

func within(all []Half, v Vec) bool {
	for _, f := range all {
		if f.N.Dot(v) > f.C+1e-9 {
			return false
		}
	}
	return true
}

// bound works out the least box round a round or a prism.
func (s *Shape) bound() {
	if s.kind == prism {
		s.lo, s.hi = s.corners[0], s.corners[0]
		for _, c := range s.corners {
			s.lo, s.hi = least(s.lo, c), most(s.hi, c)
		}
		return
	}
	if s.kind == ball {
		for i := range 3 {
			s.lo[i], s.hi[i] = s.supportBall(along(i).Times(-1))[i], s.supportBall(along(i))[i]
		}
		return
	}
	to := s.end()
	for i := range 3 {
		spread := math.Sqrt(max(0, 1-s.axis[i]*s.axis[i]))
		s.lo[i] = min(s.from[i]-s.r0*spread, to[i]-s.r1*spread)
		s.hi[i] = max(s.from[i]+s.r0*spread, to[i]+s.r1*spread)
	}
}

// end gives the middle of the second end of a round.
func (s *Shape) end() Vec { return s.from.Add(s.axis.Times(s.h)) }

// slope is how much the radius of a round grows per mm of its axis.
func (s *Shape) slope() float64 { return (s.r1 - s.r0) / s.h }

// Bounds gives the least box round the shape; false where it is empty.
func (s Shape) Bounds() (lo, hi Vec, ok bool) { return s.lo, s.hi, s.kind != empty }

// Placed gives the shape as it stands in the machine.
func (s Shape) Placed(q Pose) Shape {
	switch s.kind {
	case box:
		if q.squared() {
			a, b := q.Point(s.lo), q.Point(s.hi)
			return Shape{kind: box, lo: least(a, b), hi: most(a, b)}
		}
		return s.asPrism().Placed(q)
	case round:
		t := Shape{kind: round, from: q.Point(s.from), axis: q.Dir(s.axis), h: s.h, r0: s.r0, r1: s.r1}
		t.bound()
		return t
	case ball:
		t := Shape{kind: ball, from: q.Point(s.from), axis: q.Dir(s.axis), r0: s.r0, t0: s.t0, t1: s.t1}
		t.bound()
		return t
	case prism:
		t := Shape{kind: prism, faces: make([]Half, len(s.faces)), corners: make([]Vec, len(s.corners))}
		for i, f := range s.faces {
			n := q.Dir(f.N)
			t.faces[i] = Half{n, f.C + n.Dot(q.shift)}
		}
		for i, c := range s.corners {
			t.corners[i] = q.Point(c)
		}
		t.bound()
		return t
	}
	return s
}

// asPrism gives a box as a prism.
func (s Shape) asPrism() Shape {
	t := Shape{kind: prism, lo: s.lo, hi: s.hi}
	for i := range 3 {
		t.faces = append(t.faces, Half{along(i), s.hi[i]}, Half{along(i).Times(-1), -s.lo[i]})
	}
	for i := range 8 {
		c := s.lo
		for a := range 3 {
			if i>>a&1 == 1 {
				c[a] = s.hi[a]
			}
		}
		t.corners = append(t.corners, c)
	}
	return t
}

// depth gives how far a place is inside the shape: at most its distance to the nearest
// border, negative outside, and exact in sign.
func (s *Shape) depth(v Vec) float64 {
	d := math.Inf(1)
	switch s.kind {
	case box:
		for i := range 3 {
			d = min(d, v[i]-s.lo[i], s.hi[i]-v[i])
		}
	case round:
		w := v.Sub(s.from)
		t := w.Dot(s.axis)
		k := s.slope()
		out := w.Sub(s.axis.Times(t)).Len()
		d = min(t, s.h-t, (s.r0+k*t-out)/math.Sqrt(1+k*k))
	case prism:
		for _, f := range s.faces {
			d = min(d, f.C-f.N.Dot(v))
		}
	case ball:
		return s.ballDepth(v)
	default:
		return math.Inf(-1)
	}
	return d
}

// hit gives the stretch of the straight line o + t·d inside the shape; false where there is
// none. d need not be a unit vector.
func (s *Shape) hit(o, d Vec) (a, b float64, ok bool) {
	a, b = math.Inf(-1), math.Inf(1)
	switch s.kind {
	case box:
		for i := range 3 {
			if !clip(&a, &b, o[i], d[i], s.hi[i]) || !clip(&a, &b, -o[i], -d[i], -s.lo[i]) {
				return 0, 0, false
			}
		}
		return a, b, true
	case prism:
		for i := range s.faces {
			f := &s.faces[i]
			if !clip(&a, &b, f.N.Dot(o), f.N.Dot(d), f.C) {
				return 0, 0, false
			}
		}
		return a, b, true
	case round:
		return s.hitRound(o, d)
	case ball:
		return s.hitBall(o, d)
	}
	return 0, 0, false
}

// clip keeps of a stretch what satisfies no + t·nd ≤ c.
func clip(a, b *float64, no, nd, c float64) bool {
	if math.Abs(nd) < 1e-14 {
		return no <= c && *a < *b
	}
	t := (c - no) / nd
	if nd > 0 {
		*b = min(*b, t)
	} else {
		*a = max(*a, t)
	}
	return *a < *b
}

// hitRound solves |w(t)|² ≤ r(t)², a quadratic A·t² + 2B·t + C ≤ 0, between the end planes.
func (s *Shape) hitRound(o, d Vec) (a, b float64, ok bool) {
	a, b = math.Inf(-1), math.Inf(1)
	w := o.Sub(s.from)
	wz, dz := w.Dot(s.axis), d.Dot(s.axis)
	if !clip(&a, &b, wz, dz, s.h) || !clip(&a, &b, -wz, -dz, 0) {
		return 0, 0, false
	}
	k := s.slope()
	wp, dp := w.Sub(s.axis.Times(wz)), d.Sub(s.axis.Times(dz))
	rz := s.r0 + k*wz
	A, B, C := dp.Dot(dp)-k*k*dz*dz, wp.Dot(dp)-k*dz*rz, wp.Dot(wp)-rz*rz
	if math.Abs(A) < 1e-14 {
		if math.Abs(B) < 1e-14 {
			return a, b, C <= 0
		}
		ok = clip(&a, &b, C, 2*B, 0)
		return a, b, ok
	}
	D := B*B - A*C
	if D <= 0 {
		return a, b, A < 0
	}
	q := -B - math.Copysign(math.Sqrt(D), B)
	t0, t1 := q/A, C/q
	if t0 > t1 {
		t0, t1 = t1, t0
	}
	if A > 0 {
		a, b = max(a, t0), min(b, t1)
		return a, b, a < b
	}
	// The line runs within the cone's own slope: it is inside before t0 and after t1, and
	// the end planes leave one of the two, since the radius is nowhere negative between.
	if min(b, t0)-a > b-max(a, t1) {
		b = min(b, t0)
	} else {
		a = max(a, t1)
	}
	return a, b, a < b
}
