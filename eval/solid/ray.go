package solid

import (
	"cmp"
	"math"
	"slices"
)

// Span is a stretch of metal on a straight line, from A to B in mm from the line's start.
// EnterBy and LeaveBy say whose surface it begins and ends at: the number of a removal in
// Removals, or -1 for the blank's own surface. A span that was clipped at the start of the
// ray has EnterBy -1.
type Span struct {
	A, B             float64
	EnterBy, LeaveBy int
}

// Len gives the length of the span in mm.
func (s Span) Len() float64 { return s.B - s.A }

// Ray gives the metal met from a place onwards in a direction, in order. A gap or a span
// shorter than Grain is none.
func (p *Piece) Ray(from, dir Vec) []Span {
	var s scan
	out := p.line(from, dir.Unit(), &s)
	keep := make([]Span, 0, len(out))
	for _, x := range out {
		if x.B < Grain {
			continue
		}
		if x.A < 0 {
			x.A, x.EnterBy = 0, -1
		}
		keep = append(keep, x)
	}
	return keep
}

// Line gives the metal met along the whole straight line through a place; what lies before
// the place has negative figures.
func (p *Piece) Line(through, dir Vec) []Span {
	var s scan
	return p.line(through, dir.Unit(), &s)
}

// scan holds the memory of one ray.
type scan struct {
	open []Span // open stretches; EnterBy the removal
	out  []Span
}

// line works out the spans of metal along a whole line. What it returns is overwritten by
// the next call with the same scan.
func (p *Piece) line(o, d Vec, s *scan) []Span {
	if p.lumps != nil {
		return p.lineJoined(o, d, s)
	}
	s.open, s.out = s.open[:0], s.out[:0]
	a, b, ok := p.blank.hit(o, d)
	if !ok || math.IsInf(a, 0) || math.IsInf(b, 0) {
		return nil
	}
	inv := Vec{1 / d[0], 1 / d[1], 1 / d[2]}
	for i, r := range p.cuts {
		if r.Take.crossed(&o, &inv) {
			s.open = r.stretches(o, d, i, s.open)
		}
	}
	sortSpans(s.open)
	at, by := a, -1
	for _, x := range s.open {
		if x.B <= at {
			continue
		}
		if x.A >= b {
			break
		}
		if x.A-at >= Grain {
			s.add(Span{at, x.A, by, x.EnterBy})
		}
		at, by = x.B, x.EnterBy
	}
	if b-at >= Grain {
		s.add(Span{at, b, by, -1})
	}
	return s.out
}

// crossed says whether a line, given with 1/d for each co-ordinate, may cross the box round a
// shape; a line that runs along a face of it may.
func (s *Shape) crossed(o, inv *Vec) bool {
	a, b := math.Inf(-1), math.Inf(1)
	for i := range 3 {
		if math.IsInf(inv[i], 0) {
			if o[i] < s.lo[i] || o[i] > s.hi[i] {
				return false
			}
			continue
		}
		t0, t1 := (s.lo[i]-o[i])*inv[i], (s.hi[i]-o[i])*inv[i]
		if t0 > t1 {
			t0, t1 = t1, t0
		}
		a, b = max(a, t0), min(b, t1)
	}
	return a <= b+hair
}

// add puts a span behind the others and closes a gap of less than a Grain.
func (s *scan) add(x Span) {
	if n := len(s.out); n > 0 && x.A-s.out[n-1].B < Grain {
		s.out[n-1].B, s.out[n-1].LeaveBy = x.B, x.LeaveBy
		return
	}
	s.out = append(s.out, x)
}

// sortSpans sorts by where they begin; the lists are short and nearly always in order.
func sortSpans(s []Span) {
	if len(s) > 24 {
		slices.SortStableFunc(s, func(x, y Span) int { return cmp.Compare(x.A, y.A) })
		return
	}
	for i := 1; i < len(s); i++ {
		for j := i; j > 0 && s[j].A < s[j-1].A; j-- {
			s[j], s[j-1] = s[j-1], s[j]
		}
	}
}

// stretches adds the stretches of a line that a removal opens.
func (r *Removal) stretches(o, d Vec, i int, out []Span) []Span {
	a, b, ok := r.Take.hit(o, d)
	if !ok {
		return out
	}
	n := len(out)
	out = append(out, Span{a, b, i, i})
	for j := range r.Less {
		la, lb, ok := r.Less[j].hit(o, d)
		if !ok {
			continue
		}
		for k := len(out) - 1; k >= n; k-- {
			x := out[k]
			if lb <= x.A || la >= x.B {
				continue
			}
			out = slices.Delete(out, k, k+1)
			if la > x.A {
				out = append(out, Span{x.A, la, i, i})
			}
			if lb < x.B {
				out = append(out, Span{lb, x.B, i, i})
			}
		}
	}
	return out
}
