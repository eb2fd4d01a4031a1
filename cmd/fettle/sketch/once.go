package sketch

import (
	"math"
	"slices"
)

// Of lines that lie on one another one is drawn: two dashed lines over each other, each with
// its own gaps, would read as one that is whole.

// onLine is how near two lines lie to be one, in mm on the paper.
const onLine = 0.03

// once gives what of some lines lies on none of those before them, nor on the others given.
func once(ss, others []Stroke) (out []Stroke) {
	under := slices.Clone(others)
	boxes := make([]box, 0, len(others)+len(ss))
	for i := range under {
		boxes = append(boxes, under[i].box())
	}
	var near []Stroke
	for _, s := range ss {
		near = near[:0]
		for i, b := 0, s.box().grown(onLine); i < len(under); i++ {
			if b.meets(boxes[i].grown(onLine)) {
				near = append(near, under[i])
			}
		}
		var parts []Stroke
		if len(s.Points) == 2 && !s.Arc {
			parts = s.beside(near)
		} else {
			parts = s.apart(near)
		}
		for i := range parts {
			boxes = append(boxes, parts[i].box())
		}
		out, under = append(out, parts...), append(under, parts...)
	}
	return out
}

// box is the room of a line.
func (s *Stroke) box() box {
	b := box{s.Points[0], s.Points[0]}
	for _, p := range s.Points[1:] {
		b.lo = Point{min(b.lo.X, p.X), min(b.lo.Y, p.Y)}
		b.hi = Point{max(b.hi.X, p.X), max(b.hi.Y, p.Y)}
	}
	return b
}

// beside gives the parts of a straight line that lie on no other straight line.
func (s Stroke) beside(others []Stroke) (out []Stroke) {
	a, d := s.Points[0], s.Points[1].sub(s.Points[0])
	l := d.len()
	if l < onLine {
		return nil
	}
	u := d.times(1 / l)
	type span struct{ lo, hi float64 }
	var taken []span
	for i := range others {
		o := &others[i]
		for k := range o.Points[1:] {
			p, q := o.Points[k].sub(a), o.Points[k+1].sub(a)
			if math.Abs(p.cross(u)) < onLine && math.Abs(q.cross(u)) < onLine {
				taken = append(taken, span{min(p.dot(u), q.dot(u)), max(p.dot(u), q.dot(u))})
			}
		}
	}
	slices.SortStableFunc(taken, func(x, y span) int {
		switch {
		case x.lo < y.lo:
			return -1
		case x.lo > y.lo:
			return 1
		}
		return 0
	})
	at := 0.0
	put := func(to float64) {
		if to-at > 0.1 {
			out = append(out, Stroke{Pen: s.Pen, Points: []Point{a.add(u.times(at)), a.add(u.times(to))}})
		}
	}
	for _, t := range taken {
		put(min(t.lo, l))
		at = max(at, t.hi)
	}
	put(l)
	return out
}

// apart gives the parts of a curve that lie on no other line, each with its ends at places of
// the curve.
func (s Stroke) apart(others []Stroke) (out []Stroke) {
	n := len(s.Points) - 1
	start := -1
	close := func(end int) {
		if start < 0 {
			return
		}
		t := s
		t.Points = s.Points[start : end+1]
		if s.Arc {
			f := (s.To - s.From) / float64(n)
			t.From, t.To = s.From+f*float64(start), s.From+f*float64(end)
		}
		out = append(out, t)
		start = -1
	}
	for i := range n {
		m := s.Points[i].add(s.Points[i+1]).times(0.5)
		if covered(m, s.Points[i+1].sub(s.Points[i]), others) {
			close(i)
		} else if start < 0 {
			start = i
		}
	}
	close(n)
	return out
}

// covered says whether a place is on a line that runs in the same direction there, to five
// degrees.
func covered(p, d Point, others []Stroke) bool {
	for i := range others {
		o := &others[i]
		for k := range o.Points[1:] {
			a, e := o.Points[k], o.Points[k+1].sub(o.Points[k])
			l := e.len()
			if l == 0 || math.Abs(d.cross(e)) > 0.087*l*d.len() {
				continue
			}
			t := between(p.sub(a).dot(e)/(l*l), 0, 1)
			if p.sub(a.add(e.times(t))).len() < onLine {
				return true
			}
		}
	}
	return false
}
