package solid

import "math"

// Farthest gives the outermost metal in any direction: its distance from the origin along it,
// which need not be a unit vector, to a Grain; exact where the blank's own farthest place is
// untouched. It is NaN where no metal is left or the direction is none.
func (p *Piece) Farthest(dir Vec) float64 {
	d := dir.Unit()
	if !finite(dir) || d == (Vec{}) {
		return math.NaN()
	}
	best, found := math.Inf(-1), true
	for _, l := range p.Lumps() {
		if l.blank.kind == empty {
			continue
		}
		v := l.blank.support(d)
		for _, c := range l.cuts {
			found = found && c.Take.depth(v) < -hair
		}
		best = max(best, v.Dot(d))
	}
	if found && !math.IsInf(best, 0) {
		return best
	}
	if top, ok := p.Placed(Attitude(d, square(d))).top(); ok {
		return top
	}
	return math.NaN()
}

// Rod is a straight tool with a flat end, mm: its diameter, its length out of the holder, and
// the diameter of the holder; 0 is one wider than anything.
type Rod struct{ Diameter, Length, Holder float64 }

// Reached says whether a rod comes to a place.
type Reached struct {
	OK      bool
	Blocked bool    // the rod meets metal on its way, however long it is
	At      Vec     // there
	By      string  // the removal whose wall stands there; "" for the blank's own surface
	Needs   float64 // the least length out of the holder that lets it come there, mm
}

// Reach says whether a rod reaches a place from a side of the piece: the middle of its end comes
// to the place, on a straight way from beyond the piece against the direction side, which points
// out of the piece. Touching is not meeting; answers are exact to a Grain as those of Meets.
func (p *Piece) Reach(to, side Vec, rod Rod) Reached {
	if !finite(to) || !finite(side) || side.Len() == 0 || !(rod.Diameter > 0) || p.blank.kind == empty {
		return Reached{Blocked: true, At: to, Needs: math.Inf(1)}
	}
	q := Attitude(side, square(side))
	m := p.Placed(q)
	tip := q.Point(to)
	still := Move{tip, tip}
	up := max(m.blank.hi[2]-tip[2], 0) + 1
	if hit, ok := m.Meets(Turned{0, up, rod.Diameter / 2, rod.Diameter / 2, "rod"}, still); ok {
		return Reached{Blocked: true, At: q.Inverse().Point(hit.At), By: hit.By, Needs: math.Inf(1)}
	}
	var r Reached
	if rod.Holder > 0 {
		holder := Turned{0, up, rod.Holder / 2, rod.Holder / 2, "holder"}
		if hit, ok := m.Meets(holder, still); ok {
			r.Needs, r.By, r.At = m.lift(holder, still), hit.By, q.Inverse().Point(hit.At)
		}
	} else if top, ok := m.top(); ok {
		r.Needs = max(0, top-tip[2])
	}
	r.OK = rod.Length >= r.Needs-2*Grain
	return r
}

// Away is a move of a whole stack that clears the piece.
type Away struct {
	Meets bool    // false: it is clear as it is
	By    Vec     // the move; null where it is clear
	Mm    float64 // its length
}

// Away gives the least move, up or level, that clears what a stack sweeps on a straight way of
// the piece. Up and 24 level directions are followed, the best of the level ones refined to a
// quarter of a degree; along each the first place that is clear is sought at twelfths of the
// least move known, then by halving to a tenth of a Grain. The move given was looked at and
// clears; a lesser one may exist where a gap between metal is narrower than those twelfths.
func (p *Piece) Away(stack []Turned, m Move) Away {
	if !p.anyMeets(stack, m) {
		return Away{}
	}
	lo, hi := Vec{math.Inf(1), math.Inf(1), math.Inf(1)}, Vec{math.Inf(-1), math.Inf(-1), math.Inf(-1)}
	for _, t := range stack {
		a, b := (&way{t, m}).bounds()
		lo, hi = least(lo, a), most(hi, b)
	}
	a := Away{Meets: true, Mm: math.Inf(1)}
	try := func(d Vec) {
		limit := math.Inf(1) // for certain beyond the blank
		for i := range 3 {
			switch {
			case d[i] > 1e-9:
				limit = min(limit, (p.blank.hi[i]-lo[i])/d[i])
			case d[i] < -1e-9:
				limit = min(limit, (p.blank.lo[i]-hi[i])/d[i])
			}
		}
		if s, ok := p.firstClear(stack, m, d, min(limit+2*Grain, a.Mm)); ok && s < a.Mm {
			a.Mm, a.By = s, d.Times(s)
		}
	}
	try(Vec{0, 0, 1})
	dir := func(t float64) Vec {
		sin, cos := math.Sincos(t)
		return Vec{snapped(cos), snapped(sin), 0}
	}
	for _, first := range [3]int{0, 2, 1} { // along the axes, between them, the rest
		for i := first; i < 24; i += []int{6, 6, 1}[first%3] {
			try(dir(float64(i) * math.Pi / 12))
		}
	}
	if a.By[2] == 0 {
		for h := math.Pi / 24; h > 0.004; h /= 2 {
			at := math.Atan2(a.By[1], a.By[0])
			try(dir(at - h))
			try(dir(at + h))
		}
	}
	return a
}

// anyMeets says whether any piece of a stack meets metal.
func (p *Piece) anyMeets(stack []Turned, m Move) bool {
	for _, t := range stack {
		if _, ok := p.Meets(t, m); ok {
			return true
		}
	}
	return false
}

// firstClear seeks the first clear place along a direction, up to a limit.
func (p *Piece) firstClear(stack []Turned, m Move, d Vec, limit float64) (float64, bool) {
	meets := func(s float64) bool {
		return p.anyMeets(stack, Move{m.From.Add(d.Times(s)), m.To.Add(d.Times(s))})
	}
	lo := 0.0
	for i := range 12 {
		hi := limit * float64(i+1) / 12
		if meets(hi) {
			lo = hi
			continue
		}
		for hi-lo > Grain/10 {
			if c := (lo + hi) / 2; meets(c) {
				lo = c
			} else {
				hi = c
			}
		}
		return hi + Grain, !meets(hi + Grain) // Meets takes the tool a Grain smaller
	}
	return 0, false
}
