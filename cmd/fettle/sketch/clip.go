package sketch

import "fettle/eval/solid"

// within gives the parts of a line that lie in a frame. What is cut loses its form as an arc.
func (s Stroke) within(f box) (out []Stroke) {
	inside := func(p Point) bool {
		return p.X >= f.lo.X-1e-9 && p.X <= f.hi.X+1e-9 && p.Y >= f.lo.Y-1e-9 && p.Y <= f.hi.Y+1e-9
	}
	whole := true
	for _, p := range s.Points {
		whole = whole && inside(p)
	}
	if whole {
		return []Stroke{s}
	}
	var run []Point
	end := func() {
		if len(run) > 1 {
			out = append(out, Stroke{Pen: s.Pen, Points: run})
		}
		run = nil
	}
	for i := range s.Points[1:] {
		a, b, ok := f.clip(s.Points[i], s.Points[i+1])
		if !ok {
			end()
			continue
		}
		if len(run) == 0 || run[len(run)-1] != a {
			end()
			run = []Point{a}
		}
		run = append(run, b)
		if b != s.Points[i+1] {
			end()
		}
	}
	end()
	return out
}

// clip gives the part of a straight line within the box.
func (f box) clip(a, b Point) (p, q Point, ok bool) {
	d := b.sub(a)
	t0, t1 := 0.0, 1.0
	for _, e := range [4][2]float64{{-d.X, a.X - f.lo.X}, {d.X, f.hi.X - a.X}, {-d.Y, a.Y - f.lo.Y}, {d.Y, f.hi.Y - a.Y}} {
		switch {
		case e[0] == 0 && e[1] < 0:
			return a, b, false
		case e[0] < 0:
			t0 = max(t0, e[1]/e[0])
		case e[0] > 0:
			t1 = min(t1, e[1]/e[0])
		}
	}
	if t1-t0 < 1e-12 {
		return a, b, false
	}
	p, q = a, b
	if t0 > 0 {
		p = a.add(d.times(t0))
	}
	if t1 < 1 {
		q = a.add(d.times(t1))
	}
	return p, q, true
}

// metal is the box round the piece; of one that leans, round what it sweeps, where that is given.
func (s *Setting) metal() (lo, hi solid.Vec) {
	if s.Swept {
		return s.Lo, s.Hi
	}
	return extents(s.Piece)
}

// extents gives the least box round a piece.
func extents(p *solid.Piece) (lo, hi solid.Vec) {
	for a := range 3 {
		lo[a], hi[a] = p.Extent(a, -1), p.Extent(a, 1)
	}
	return lo, hi
}
