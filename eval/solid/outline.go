package solid

import (
	"fmt"
	"math"
	"slices"
)

// Outlines of sheet and plate, and openings in them, with straight edges and arcs; they need not
// be convex.
//
// What is to go is a region of the plane: beyond an outline, or within an opening. The outline is
// first taken with straight edges: where an arc bulges into the metal its chord, where it bulges
// into what goes the two tangents at its ends, which meet in a corner. What lies within those
// edges is cut into convex parts. Then each arc is put right exactly: into the metal the cylinder
// less what lies on its own side of the chord is taken too; the other way the triangle between
// chord and tangents less the cylinder.

// OutlineArc says that the edge which begins at a point (the first is 0) is an arc of at most
// half a circle: a positive radius bulges outwards, a negative one inwards.
type OutlineArc struct {
	From   int
	Radius float64
}

// mostCorners is the most points an outline has, arcs counted by their parts.
const mostCorners = 500

// Outline takes what lies beyond a closed outline in the frame's U and V, within the rectangle
// lo–hi, which holds the outline; from W = 0 down to depth and out to over.
func (f Frame) Outline(points [][2]float64, arcs []OutlineArc, lo, hi [2]float64, depth, over float64, by string) ([]Removal, error) {
	e, parts, err := outlined(points, arcs, true)
	if err != nil {
		return nil, err
	}
	m := Removal{Take: f.Block(Vec{lo[0], lo[1], -depth}, Vec{hi[0], hi[1], over}), By: by}
	if m.Take.kind == empty {
		return nil, fmt.Errorf("an outline in a rectangle without area: %v to %v", lo, hi)
	}
	g := f
	g.At = f.Point(0, 0, -depth-1)
	for _, ps := range parts {
		s, err := g.Column(places(ps), depth+over+2)
		if err != nil {
			return nil, err
		}
		m.Less = append(m.Less, s)
	}
	return f.arcs([]Removal{m}, e, depth, over, by)
}

// Opening takes what lies within a closed outline.
func (f Frame) Opening(points [][2]float64, arcs []OutlineArc, depth, over float64, by string) ([]Removal, error) {
	e, parts, err := outlined(points, arcs, false)
	if err != nil {
		return nil, err
	}
	g := f
	g.At = f.Point(0, 0, -depth)
	var out []Removal
	for _, ps := range parts {
		s, err := g.Column(places(ps), depth+over)
		if err != nil {
			return nil, err
		}
		out = append(out, Removal{Take: s, By: by})
	}
	return f.arcs(out, e, depth, over, by)
}

// outlined gives an outline's straight edges in convex parts and its arcs; arcs in parts of an
// eighth of a turn or, where their tangents would cross other edges, of a thirty-second.
func outlined(points [][2]float64, arcs []OutlineArc, beyond bool) (e edges, parts [][]pt, err error) {
	for _, part := range [2]float64{math.Pi / 4, math.Pi / 16} {
		if e, err = edgesOf(points, arcs, beyond, part); err != nil {
			return e, nil, err
		}
		if parts, err = convexParts(e.corners); err == nil {
			return e, parts, nil
		}
	}
	return e, nil, err
}

func places(ps []pt) [][2]float64 {
	out := make([][2]float64, len(ps))
	for i, p := range ps {
		out[i] = [2]float64{p.x, p.y}
	}
	return out
}

// edges is an outline with straight edges and what puts its arcs right.
type edges struct {
	corners []pt
	caps    []edgeArc
}

// edgeArc is a part of an arc: its ends in the outline's order, its middle and radius, and the
// corner of its tangents.
type edgeArc struct {
	a, b, middle, corner pt
	r                    float64
	taken                bool // it bulges into the metal
}

// edgesOf reads an outline; beyond says that what lies beyond it goes; part is the most that a
// part of an arc turns.
func edgesOf(points [][2]float64, arcs []OutlineArc, beyond bool, part float64) (e edges, err error) {
	if len(points) < 2 || len(points) > mostCorners {
		return e, fmt.Errorf("an outline of %d points: it has 2 to %d", len(points), mostCorners)
	}
	ps := make([]pt, len(points))
	for i, p := range points {
		if ps[i] = (pt{p[0], p[1]}); !finite(Vec{p[0], p[1]}) {
			return e, fmt.Errorf("point %d of an outline is no place: %v", i+1, p)
		}
	}
	radius := make([]float64, len(ps))
	for _, a := range arcs {
		if a.From < 0 || a.From >= len(ps) {
			return e, fmt.Errorf("an arc from point %d of an outline of %d points", a.From+1, len(ps))
		}
		radius[a.From] = a.Radius
	}
	if turns(ps, radius) < 0 { // make it run anticlockwise
		slices.Reverse(ps)
		slices.Reverse(radius[:len(radius)-1])
	}
	for i, p := range ps {
		e.corners = append(e.corners, p)
		if radius[i] == 0 {
			continue
		}
		if err := e.arc(p, ps[next(i, len(ps))], radius[i], beyond, part); err != nil {
			return e, fmt.Errorf("the arc between %v and %v: %w", p, ps[next(i, len(ps))], err)
		}
	}
	if len(e.corners) > mostCorners {
		return e, fmt.Errorf("an outline of %d corners and parts of arcs: it has at most %d", len(e.corners), mostCorners)
	}
	return e, nil
}

// turns gives the area within an outline, arcs included, positive where it runs anticlockwise.
// Two points with two arcs make a lens or a circle; its chord has no area, so arcs count.
func turns(ps []pt, radius []float64) float64 {
	sum := areaOf(ps)
	if math.Abs(sum) > hair*hair {
		return sum
	}
	return 1 // either way round is the same where all the area is in the arcs
}

// arc adds the parts of an arc of an outline that runs anticlockwise: outwards is to its right.
func (e *edges) arc(a, b pt, radius float64, beyond bool, part float64) error {
	d := b.sub(a)
	l, r := d.len(), math.Abs(radius)
	if !(r >= l/2-Grain) || !(l > 0) || r > far {
		return fmt.Errorf("a radius of %g mm over a chord of %.3f mm: it is at least half of the chord", r, l)
	}
	r = max(r, l/2)
	out := pt{d.y, -d.x}.times(1 / l) // to the right
	side := math.Copysign(1, radius)
	middle := a.add(b).times(0.5).sub(out.times(side * math.Sqrt(r*r-l*l/4)))
	turn := 2 * math.Asin(min(1, l/2/r)) * side // outwards the arc runs anticlockwise round its middle
	n := int(math.Ceil(math.Abs(turn)/part - 1e-9))
	n = max(n, 1)
	from := a.sub(middle)
	at := func(i int, f float64) pt {
		sin, cos := math.Sincos(turn * float64(i) / float64(2*n))
		return middle.add(pt{from.x*cos - from.y*sin, from.x*sin + from.y*cos}.times(f))
	}
	for i := range n {
		c := edgeArc{a: at(2*i, 1), b: at(2*i+2, 1), middle: middle, r: r, corner: at(2*i+1, 1/math.Cos(turn/float64(2*n)))}
		// Beyond an outline the metal is within: an arc outwards bulges into what goes.
		c.taken = (radius > 0) != beyond
		if i == 0 {
			c.a = a
		}
		if i == n-1 {
			c.b = b
		}
		if !c.taken {
			e.corners = append(e.corners, c.corner)
		}
		if i < n-1 {
			e.corners = append(e.corners, c.b)
		}
		e.caps = append(e.caps, c)
	}
	return nil
}

// arcs puts the arcs right.
func (f Frame) arcs(out []Removal, e edges, depth, over float64, by string) ([]Removal, error) {
	low := f
	low.At = f.Point(0, 0, -depth-1)
	for _, c := range e.caps {
		disc := Cylinder(f.Point(c.middle.x, c.middle.y, -depth), f.Point(c.middle.x, c.middle.y, over), c.r)
		if !c.taken {
			g := f
			g.At = f.Point(0, 0, -depth)
			s, err := g.Column(places([]pt{c.a, c.corner, c.b}), depth+over)
			if err != nil {
				continue // an arc so slight that it has no area
			}
			long := Cylinder(f.Point(c.middle.x, c.middle.y, -depth-1), f.Point(c.middle.x, c.middle.y, over+1), c.r)
			out = append(out, Removal{Take: s, Less: []Shape{long}, By: by})
			continue
		}
		d := c.b.sub(c.a)
		l := d.len()
		u := d.times(1 / l)
		in := pt{-u.y, u.x} // towards the arc's own middle, or away from it
		if c.middle.sub(c.a).dot(in) < 0 {
			in = in.times(-1)
		}
		w := 2*c.r + 1
		s, err := low.Column(places([]pt{c.a.sub(u.times(w)), c.b.add(u.times(w)), c.b.add(u.times(w)).add(in.times(w)), c.a.sub(u.times(w)).add(in.times(w))}), depth+over+2)
		if err != nil {
			return nil, err
		}
		out = append(out, Removal{Take: disc, Less: []Shape{s}, By: by})
	}
	return out, nil
}

// convexParts cuts an outline that runs anticlockwise into convex ones: ears are cut off (a
// corner whose triangle holds no other corner), and put together again where that stays convex.
func convexParts(ps []pt) ([][]pt, error) {
	ps = withoutStraight(ps)
	if len(ps) < 3 || !(areaOf(ps) > hair*hair) || crossed(ps) {
		return nil, fmt.Errorf("an outline that crosses itself or has no area")
	}
	left := slices.Clone(ps)
	var parts [][]pt
	for len(left) > 3 {
		i := ear(left)
		if i < 0 {
			return nil, fmt.Errorf("an outline that crosses itself")
		}
		n := len(left)
		parts = append(parts, []pt{left[(i+n-1)%n], left[i], left[next(i, n)]})
		left = slices.Delete(left, i, i+1)
	}
	return merged(append(parts, left)), nil
}

// crossed says whether two edges that are not neighbours cross.
func crossed(ps []pt) bool {
	n := len(ps)
	cut := func(a, b, c, d pt) bool {
		u, v := b.sub(a), d.sub(c)
		return u.cross(c.sub(a))*u.cross(d.sub(a)) < -1e-12 && v.cross(a.sub(c))*v.cross(b.sub(c)) < -1e-12
	}
	for i := range n {
		for j := i + 2; j < n; j++ {
			if next(j, n) != i && cut(ps[i], ps[next(i, n)], ps[j], ps[next(j, n)]) {
				return true
			}
		}
	}
	return false
}

// ear gives the full corner whose triangle holds no other corner and is the least narrow; -1
// where there is none.
func ear(ps []pt) int {
	best, n := -1, len(ps)
	wide := 0.0
	for i, q := range ps {
		p, r := ps[(i+n-1)%n], ps[next(i, n)]
		area := q.sub(p).cross(r.sub(q))
		if area <= 0 {
			continue
		}
		free := !slices.ContainsFunc(ps, func(v pt) bool {
			return v != p && v != q && v != r && q.sub(p).cross(v.sub(p)) >= 0 && r.sub(q).cross(v.sub(q)) >= 0 && p.sub(r).cross(v.sub(r)) >= 0
		})
		if w := area / max(q.sub(p).len(), r.sub(q).len(), p.sub(r).len()); free && w > wide {
			best, wide = i, w
		}
	}
	return best
}

// merged puts neighbouring parts together while they stay convex.
func merged(parts [][]pt) [][]pt {
	for i := 0; i < len(parts); i++ {
		for j := i + 1; j < len(parts); j++ {
			if m, ok := merge(parts[i], parts[j]); ok {
				parts[i] = m
				parts = slices.Delete(parts, j, j+1)
				j = i
			}
		}
	}
	return parts
}

// merge puts two parts together that share an edge, if the result is convex.
func merge(a, b []pt) ([]pt, bool) {
	for i, p := range a {
		q := a[next(i, len(a))]
		j := slices.Index(b, q)
		if j < 0 || b[next(j, len(b))] != p {
			continue
		}
		var m []pt
		for k := range a { // from q all round a to p
			m = append(m, a[(i+1+k)%len(a)])
		}
		for k := 2; k < len(b); k++ { // and from p round b to q, without the two
			m = append(m, b[(j+k)%len(b)])
		}
		for k, v := range m {
			w, x := m[next(k, len(m))], m[next(next(k, len(m)), len(m))]
			if w.sub(v).cross(x.sub(w)) < -1e-9 {
				return nil, false
			}
		}
		return m, true
	}
	return nil, false
}
