package solid

import (
	"fmt"
	"math"
)

// Blocks and columns: convex shapes that stand in a frame of their own.

// Frame is a place and two directions square to each other; the third is U×V.
type Frame struct{ At, U, V Vec }

// W gives the third direction.
func (f Frame) W() Vec { return f.U.Cross(f.V) }

// Point gives the place that lies u, v and w along the frame's directions.
func (f Frame) Point(u, v, w float64) Vec {
	return f.At.Add(f.U.Times(u)).Add(f.V.Times(v)).Add(f.W().Times(w))
}

// Block gives the block between two corners in a frame, as a box where the frame lies along the
// axes; empty where it has no inside.
func (f Frame) Block(lo, hi Vec) Shape {
	a, b := f.Point(lo[0], lo[1], lo[2]), f.Point(hi[0], hi[1], hi[2])
	if f.squared() {
		if !(lo[0] < hi[0] && lo[1] < hi[1] && lo[2] < hi[2]) {
			return Shape{}
		}
		return Box(least(a, b), most(a, b))
	}
	f.At = f.Point(0, 0, lo[2])
	s, err := f.Column([][2]float64{{lo[0], lo[1]}, {hi[0], lo[1]}, {hi[0], hi[1]}, {lo[0], hi[1]}}, hi[2]-lo[2])
	if err != nil {
		return Shape{}
	}
	return s
}

func (f Frame) squared() bool {
	return Pose{row: [3]Vec{f.U, f.V, f.W()}}.squared()
}

// Column gives the prism over a convex outline in a frame's U and V, as high as h along W. The
// outline may run either way round. It is an error where the outline is not convex, has no area,
// or is not of numbers; h must be more than 0.
func (f Frame) Column(outline [][2]float64, h float64) (Shape, error) {
	if !(h > 0) || math.IsInf(h, 0) {
		return Shape{}, fmt.Errorf("a height of %g mm: it must be more than 0", h)
	}
	ps, err := convex(outline)
	if err != nil {
		return Shape{}, err
	}
	w := f.W()
	s := Shape{kind: prism, faces: []Half{{w, w.Dot(f.At) + h}, {w.Times(-1), -w.Dot(f.At)}}}
	for i, p := range ps {
		e := ps[next(i, len(ps))].sub(p)
		n := f.U.Times(e.y).Add(f.V.Times(-e.x)).Unit()
		at := f.Point(p.x, p.y, 0)
		s.faces = append(s.faces, Half{n, n.Dot(at)})
		s.corners = append(s.corners, at, f.Point(p.x, p.y, h))
	}
	if !finite(s.corners[0]) || !finite(w) {
		return Shape{}, fmt.Errorf("a frame that is not of numbers: %v", f)
	}
	s.bound()
	return s, nil
}

// convex gives an outline anticlockwise, without corners that are none.
func convex(outline [][2]float64) ([]pt, error) {
	var ps []pt
	for _, c := range outline {
		if !finite(Vec{c[0], c[1]}) {
			return nil, fmt.Errorf("an outline with a corner that is no place: %v", c)
		}
		ps = append(ps, pt{c[0], c[1]})
	}
	if areaOf(ps) < 0 {
		for i, j := 0, len(ps)-1; i < j; i, j = i+1, j-1 {
			ps[i], ps[j] = ps[j], ps[i]
		}
	}
	ps = withoutStraight(ps)
	if len(ps) < 3 || areaOf(ps) < hair*hair {
		return nil, fmt.Errorf("an outline without area: %v", outline)
	}
	round := 0.0
	for i, p := range ps {
		q, r := ps[next(i, len(ps))], ps[next(next(i, len(ps)), len(ps))]
		a, b := q.sub(p), r.sub(q)
		if a.cross(b) < 0 {
			return nil, fmt.Errorf("an outline that is not convex at %g, %g", q.x, q.y)
		}
		round += math.Atan2(a.cross(b), a.dot(b))
	}
	if round > 3*math.Pi {
		return nil, fmt.Errorf("an outline that goes round more than once: %v", outline)
	}
	return ps, nil
}

// areaOf gives the area within an outline, positive where it runs anticlockwise.
func areaOf(ps []pt) (sum float64) {
	for i, p := range ps {
		sum += p.cross(ps[next(i, len(ps))])
	}
	return sum / 2
}

// withoutStraight leaves out corners that coincide with the next, or from which the outline goes
// straight on or straight back, within a millionth of a millimetre.
func withoutStraight(ps []pt) []pt {
	for again := true; again && len(ps) >= 3; {
		again = false
		var keep []pt
		for i, p := range ps {
			before, after := ps[(i+len(ps)-1)%len(ps)], ps[next(i, len(ps))]
			if after.sub(p).len() < 1e-9 {
				again = true
				continue
			}
			if len(keep) > 0 {
				before = keep[len(keep)-1]
			}
			a, b := p.sub(before), after.sub(p)
			if math.Abs(a.cross(b)) <= 1e-9*max(a.len(), b.len()) {
				again = true
				continue
			}
			keep = append(keep, p)
		}
		ps = keep
	}
	return ps
}
