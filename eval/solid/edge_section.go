package solid

import (
	"errors"
	"math"
)

// A section is found as edges are: the plane of the section is one more surface, the curves it
// shares with the bodies are split, and a stretch is an outline where there is metal on one
// side of it in the plane and none on the other. A plane that lies in a face shows what is
// just behind it, away from the side that its normal points to.

// Side is a stretch of the outline of a section, run through with the metal on its left as
// seen from where the normal points. Points runs that way; an arc may be run from To to From.
type Side struct {
	Edge
	Back bool // an arc: run from To to From
}

// Loop is a closed outline of a section; Area is positive of an outer one and negative of a
// hole, in mm².
type Loop struct {
	Sides []Side
	Area  float64
}

// Section gives the outlines of the metal on a plane through a place. Circles and ellipses are
// exact; areas are to some 1e-6 of the largest loop. It is an error if the normal is none, or
// if an outline does not close, which only metal thinner than a Grain should do.
func (p *Piece) Section(through, normal Vec) ([]Loop, error) {
	l := normal.Len()
	if !finite(through) || !finite(normal) || !(l > 0) || math.IsInf(l, 0) {
		return nil, errors.New("the plane of the section has no normal, or a place that is no number")
	}
	n := normal.Unit()
	w := p.wire()
	cut := surface{body: -1, n: n, c: n.Dot(through)}
	var out []run
	for i := range w.bodies {
		b := &w.bodies[i]
		for j := range b.skins {
			s := &b.skins[j]
			lo, hi := most(s.lo, w.lo), least(s.hi, w.hi)
			if !touch(lo, hi, lo, hi) || !cut.crosses(lo, hi) {
				continue
			}
			for _, c := range meet(&cut, s) {
				out = w.outline(&c, s, n, lo, hi, out)
			}
		}
	}
	return loops(joinRuns(unique(out)), n)
}

// crosses says whether a plane comes within a Grain of a box.
func (s *surface) crosses(lo, hi Vec) bool {
	m, h := lo.Add(hi).Times(0.5), hi.Sub(lo).Times(0.5)
	r := math.Abs(s.n[0])*h[0] + math.Abs(s.n[1])*h[1] + math.Abs(s.n[2])*h[2]
	return math.Abs(s.depth(m)) <= r+Grain
}

// outline adds the stretches of a curve on the section's plane that bound the metal there;
// visible says whether the metal is on the left.
func (w *wire) outline(c *curve, s *surface, n, lo, hi Vec, out []run) []run {
	if !c.within(lo, hi) {
		return out
	}
	a, b := c.bounds()
	near := w.near(a, b, nil)
	ts := w.splits(c, near)
	for i := 0; i+1 < len(ts); i++ {
		r := run{c: c, t0: ts[i], t1: ts[i+1], near: near}
		if r.short(Grain) {
			continue
		}
		m := c.at(r.middle())
		if !w.bodies[s.body].holds(m) {
			continue
		}
		w.stand(m, near)
		left := n.Cross(c.along(r.middle()))
		inLeft, by0 := w.towards(left, n.Times(-1))
		inRight, by1 := w.towards(left.Times(-1), n.Times(-1))
		if inLeft == inRight {
			continue
		}
		r.visible, r.by = inLeft, [2]int{by1, by1}
		if inRight {
			r.by = [2]int{by0, by0}
		}
		out = append(out, r)
	}
	return out
}

// loops puts stretches together end to end.
func loops(runs []run, n Vec) ([]Loop, error) {
	var out []Loop
	used := make([]bool, len(runs))
	for i := range runs {
		if used[i] {
			continue
		}
		used[i] = true
		path := []int{i}
		start, _ := runs[i].directed()
		for {
			last := &runs[path[len(path)-1]]
			_, end := last.directed()
			if end.Sub(start).Len() < joinGap && (len(path) > 1 || !last.short(3*joinGap)) {
				break
			}
			j := following(runs, used, last, end, n)
			if j < 0 {
				return nil, errors.New("an outline of the section does not close")
			}
			used[j] = true
			path = append(path, j)
		}
		out = append(out, loopOf(runs, path, n))
	}
	return out, nil
}

// joinGap is how far apart the ends of an outline's stretches may be: stretches shorter than a
// Grain were left out.
const joinGap = 3 * Grain

// directed gives the ends of a stretch of an outline with the metal on its left.
func (r *run) directed() (from, to Vec) {
	a, b := r.ends()
	if r.visible {
		return a, b
	}
	return b, a
}

// heading gives the direction of an outline's stretch at its start or end.
func (r *run) heading(end bool) Vec {
	t, f := r.t0, 1.0
	if end == r.visible {
		t = r.t1
	}
	if !r.visible {
		f = -1
	}
	return r.c.along(t).Times(f)
}

// following gives the unused stretch that goes on from a place; where there are several, the
// one that turns most to the left, so that metal which only touches itself makes two loops.
func following(runs []run, used []bool, last *run, end Vec, n Vec) int {
	best, most := -1, math.Inf(-1)
	d := last.heading(true)
	for j := range runs {
		if used[j] {
			continue
		}
		if from, _ := runs[j].directed(); from.Sub(end).Len() >= joinGap {
			continue
		}
		e := runs[j].heading(false)
		if turn := math.Atan2(d.Cross(e).Dot(n), d.Dot(e)); turn > most {
			best, most = j, turn
		}
	}
	return best
}

// loopOf gives a closed path as sides, and its area by Green's formula.
func loopOf(runs []run, path []int, n Vec) Loop {
	var l Loop
	o, _ := runs[path[0]].directed()
	for _, i := range path {
		r := &runs[i]
		e := edgeOf(r)
		e.Visible, e.Contour = true, false
		s := Side{Edge: e, Back: !r.visible}
		if s.Back {
			s.Points = backwards(s.Points)
		}
		l.Sides = append(l.Sides, s)
		f := 0.5
		if s.Back {
			f = -0.5
		}
		l.Area += f * r.swept(o, n)
	}
	return l
}

// swept integrates (v − o) × dv along a stretch, seen along n: Gauss-Legendre quadrature over
// eight parts.
func (r *run) swept(o, n Vec) float64 {
	if r.c.kind == straight {
		a, b := r.ends()
		return a.Sub(o).Cross(b.Sub(a)).Dot(n)
	}
	sum := 0.0
	const parts, h = 8, 1e-4
	for i := range parts {
		lo := r.t0 + (r.t1-r.t0)*float64(i)/parts
		half := (r.t1 - r.t0) / parts / 2
		for _, g := range gauss {
			t := lo + half + half*g.t
			d := r.c.at(t + h).Sub(r.c.at(t - h)).Times(1 / (2 * h))
			sum += g.w * half * r.c.at(t).Sub(o).Cross(d).Dot(n)
		}
	}
	return sum
}
