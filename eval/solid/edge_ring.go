package solid

import (
	"cmp"
	"math"
	"slices"
)

// What is metal round a place of a curve. Every surface that passes through the place divides
// the ring round it, square to the curve, into two halves; each body is inside or outside on
// every sector between two such borders; and blank and removals say of each sector whether it
// is metal. The place is on a true edge where the metal's borders in the ring are not one
// straight line: so a step flush with a face, two removals that share a face, and a round that
// runs out tangent into a flat leave no edge, whatever surfaces meet there.

// passing is a surface that passes through a place, and its normal there out of its body.
type passing struct {
	s *surface
	n Vec
}

// stand prepares the answers of towards for a place: which of the bodies near hold it, and
// which surfaces pass through it.
func (w *wire) stand(v Vec, near []int) {
	w.pass = w.pass[:0]
	for i := range w.inside {
		w.inside[i] = false
	}
	for _, n := range near {
		b := &w.bodies[n]
		if !b.holds(v) {
			continue
		}
		w.inside[n] = true
		for i := range b.skins {
			if s := &b.skins[i]; math.Abs(s.depth(v)) <= sameness {
				w.pass = append(w.pass, passing{s, s.out(v)})
			}
		}
	}
}

// towards says whether there is metal beside the place in a direction, and if not whose work
// that is: the number of a removal, or -1 outside the blank. A surface along the direction is
// decided by the second direction.
func (w *wire) towards(d, second Vec) (metal bool, by int) {
	by = -1
	for i := range w.parts {
		p := &w.parts[i]
		if !w.in(p.stock, d, second) {
			continue
		}
		taker := w.taker(p, d, second)
		if taker < 0 {
			return true, -1
		}
		if by < 0 {
			by = taker
		}
	}
	return false, by
}

// taker gives the number of the first removal of a part that takes what is beside the place in
// a direction; -1 of none.
func (w *wire) taker(p *part, d, second Vec) int {
	for _, c := range p.cuts {
		if !w.in(c.take, d, second) {
			continue
		}
		left := false
		for n := c.take + 1; n < c.end; n++ {
			left = left || w.in(n, d, second)
		}
		if !left {
			return c.number
		}
	}
	return -1
}

// in says whether a body holds what is beside the place in a direction.
func (w *wire) in(n int, d, second Vec) bool {
	if !w.inside[n] {
		return false
	}
	for i := range w.pass {
		p := &w.pass[i]
		if p.s.body != n {
			continue
		}
		x := p.n.Dot(d)
		if math.Abs(x) < 1e-7 {
			x = p.n.Dot(second)
		}
		if x >= 0 {
			return false
		}
	}
	return true
}

// border is a change between metal and none in a ring.
type border struct {
	angle float64
	by    int // whose work the side without metal is
}

// ring is the round about a place, square to a direction.
type ring struct {
	e1, e2  Vec
	sectors []sector
	borders []border
}

type sector struct {
	from, to float64 // angles
	metal    bool
	by       int
}

// sliver is the angle below which a sector is none.
const sliver = 1e-4

// trace is where a surface passes through a ring, at an angle.
type trace struct {
	angle float64
	s     *surface
}

// traces gives where surfaces pass through a ring, in order, those within a sliver as one.
func (w *wire) traces(r *ring) (out []trace) {
	var all []trace
	for i := range w.pass {
		x, y := w.pass[i].n.Dot(r.e1), w.pass[i].n.Dot(r.e2)
		if math.Hypot(x, y) < 1e-3 {
			continue // crossed, not followed
		}
		a := math.Mod(math.Atan2(y, x)+2.5*math.Pi, math.Pi)
		all = append(all, trace{a, w.pass[i].s}, trace{a + math.Pi, w.pass[i].s})
	}
	slices.SortStableFunc(all, func(a, b trace) int { return cmp.Compare(a.angle, b.angle) })
	for _, x := range all {
		if n := len(out); n == 0 || x.angle-out[n-1].angle > sliver {
			out = append(out, x)
		}
	}
	if n := len(out); n > 2 && out[0].angle+2*math.Pi-out[n-1].angle <= sliver {
		out = out[:n-1]
	}
	return out
}

// ring works out the round about a place that stand was called for.
func (w *wire) ring(along Vec) ring {
	r := ring{e1: square(along)}
	r.e2 = along.Cross(r.e1)
	at := w.traces(&r)
	for i, x := range at {
		s := sector{from: x.angle, to: at[next(i, len(at))].angle}
		if i == len(at)-1 {
			s.to += 2 * math.Pi
		}
		s.metal, s.by = w.towards(r.dir((s.from+s.to)/2), Vec{})
		r.sectors = append(r.sectors, s)
	}
	for i, s := range r.sectors {
		before := r.sectors[(i+len(r.sectors)-1)%len(r.sectors)]
		if s.metal == before.metal {
			continue
		}
		b := border{angle: s.from, by: s.by}
		if s.metal {
			b.by = before.by
		}
		r.borders = append(r.borders, b)
	}
	return r
}

func (r *ring) dir(a float64) Vec {
	sin, cos := math.Sincos(a)
	return r.e1.Times(cos).Add(r.e2.Times(sin))
}

// tangent is how far two borders may be from one straight line and still be one smooth
// surface: half a degree, common practice of drawing.
const tangent = 0.5 * math.Pi / 180

// smooth says whether the metal's surface runs through the place without an edge.
func (r *ring) smooth() bool {
	return len(r.borders) == 2 && math.Abs(r.borders[1].angle-r.borders[0].angle-math.Pi) < tangent
}

// edge says whether the metal has an edge there, and between whose work.
func (r *ring) edge() (by [2]int, ok bool) {
	if len(r.borders) < 2 || r.smooth() {
		return by, false
	}
	by = [2]int{r.borders[0].by, r.borders[1].by}
	for _, b := range r.borders[2:] { // an edge that metal touches from two sides
		if by[0] == by[1] {
			by[1] = b.by
		}
	}
	if by[0] > by[1] {
		by[0], by[1] = by[1], by[0]
	}
	return by, true
}

// free lists directions out of the place where there is no metal: the middle of each sector,
// and of a wide one two more.
func (r *ring) free() (out []Vec) {
	joined := r.joined()
	for _, s := range joined {
		if s.metal {
			continue
		}
		m, wide := (s.from+s.to)/2, s.to-s.from
		out = append(out, r.dir(m))
		if wide > 2.6 {
			out = append(out, r.dir(m-wide/4), r.dir(m+wide/4))
		}
	}
	return out
}

// joined gives the sectors with neighbours alike made one.
func (r *ring) joined() (out []sector) {
	n := len(r.sectors)
	if len(r.borders) == 0 {
		return nil
	}
	start := 0
	for start < n-1 && r.sectors[start].metal == r.sectors[(start+n-1)%n].metal {
		start++
	}
	for i := range n {
		s := r.sectors[(start+i)%n]
		if k := len(out); k > 0 && out[k-1].metal == s.metal {
			out[k-1].to += s.to - s.from
			continue
		}
		out = append(out, s)
	}
	return out
}

// hides says whether metal beside the curve stands before what is behind it on one side of it
// only, seen from a direction: then what passes behind may change there between visible and
// hidden.
func (r *ring) hides(towards Vec) bool {
	x, y := towards.Dot(r.e1), towards.Dot(r.e2)
	if math.Hypot(x, y) < 1e-9 {
		return false
	}
	view := math.Atan2(y, x)
	var left, right bool
	for _, s := range r.joined() {
		if !s.metal {
			continue
		}
		from := math.Mod(s.from-view+6*math.Pi, 2*math.Pi)
		to := from + s.to - s.from
		const slack = 1e-6
		left = left || from < math.Pi-slack && to > slack || to > 2*math.Pi+slack
		right = right || from < 2*math.Pi-slack && to > math.Pi+slack
	}
	return left != right
}
