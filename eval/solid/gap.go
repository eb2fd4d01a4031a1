package solid

import "math"

// Near is how near a tool's sweep comes to something, in mm.
type Near struct {
	Meets    bool
	Gap      float64 // least distance; where it meets, less the least of Up and Aside (0 or below)
	At       Vec     // a place of the other thing where it is nearest, or where it meets
	Up       float64 // where it meets: the least move up that clears
	Aside    float64 // where it meets: the least level move that clears; 0 where not worked out
	Towards  Vec     // the direction of that level move, a unit vector
	Bound    bool    // Gap is a lower bound of the distance, Up an upper bound of the least move
	AtLeast  bool    // the gap is Gap or more: it was not looked at farther out
	By, Name string  // the removal whose wall stands there; the piece of the stack
}

// Gap gives the least distance between what a piece of a tool stack sweeps on a straight way
// and an obstacle, to a Grain; touching is not meeting. Aside is exact for cylinders against
// boxes and upright cylinders, and otherwise the best of all directions to 0.01 mm.
func Gap(t Turned, m Move, obstacle Shape) Near {
	var room [2]Turned
	if len(t.sized(0, room[:0])) == 0 || obstacle.kind == empty || !finite(m.From) || !finite(m.To) {
		return Near{Gap: math.Inf(1), Name: t.Name}
	}
	w := &way{t, m}
	n, ok := straightGap(w, &obstacle)
	if !ok {
		n = looseGap(w, &obstacle)
	}
	n.Name = t.Name
	return n
}

// straightGap is for outlines that do not change with height: the plane distance and the
// distance in height are apart from each other.
func straightGap(w *way, o *Shape) (Near, bool) {
	if w.t.R0 != w.t.R1 || !(level(w.m) || upright(w.m)) || !o.constant() || o.kind == prism {
		return Near{}, false
	}
	lo, hi := w.bounds()
	a, b := pt{w.m.From[0], w.m.From[1]}, pt{w.m.To[0], w.m.To[1]}
	d, to, q := planeGap(a, b, w.t.R0, o)
	below, above := o.lo[2]-hi[2], lo[2]-o.hi[2]
	high := max(below, above)
	n := Near{At: Vec{q.x, q.y, between((max(lo[2], o.lo[2])+min(hi[2], o.hi[2]))/2, o.lo[2], o.hi[2])}}
	switch {
	case d > 0 && high > 0:
		n.Gap = math.Hypot(d, high)
	case d >= 0 || high >= 0:
		n.Gap = max(d, high)
	default:
		n.Meets, n.Up, n.Aside, n.Towards = true, -above, -d, Vec{to.x, to.y, 0}
		n.Gap = -min(n.Up, n.Aside)
	}
	return n, true
}

// planeGap gives the signed distance in the plane between a stadium and the outline of a box
// or an upright cylinder, the direction in which the stadium clears it soonest, and the
// obstacle's place nearest to the stadium.
func planeGap(a, b pt, r float64, o *Shape) (float64, pt, pt) {
	if o.kind == round {
		c := pt{o.from[0], o.from[1]}
		foot := onStretch(c, a, b)
		to := foot.sub(c)
		if l := to.len(); l > 1e-12 {
			to = to.times(1 / l)
		} else if l := b.sub(a).len(); l > 0 {
			to = pt{a.y - b.y, b.x - a.x}.times(1 / l)
		} else {
			to = pt{1, 0}
		}
		return foot.sub(c).len() - r - o.r0, to, c.add(to.times(min(o.r0, foot.sub(c).len())))
	}
	// The stadium's stretch is taken off the box: what is left to measure is the distance of
	// the origin from a convex outline.
	ps := make([]pt, 0, 8)
	for _, x := range [2]float64{o.lo[0], o.hi[0]} {
		for _, y := range [2]float64{o.lo[1], o.hi[1]} {
			ps = append(ps, pt{x, y}.sub(a), pt{x, y}.sub(b))
		}
	}
	f := polygon(around(ps))
	d, to := f.fromOrigin()
	near := onStretch(pt{between(a.x, o.lo[0], o.hi[0]), between(a.y, o.lo[1], o.hi[1])}, a, b)
	for range 60 { // the box's place nearest to the stretch, by turns, until it stays
		was := near
		if near = onStretch(pt{between(near.x, o.lo[0], o.hi[0]), between(near.y, o.lo[1], o.hi[1])}, a, b); near == was {
			break
		}
	}
	return d - r, to, pt{between(near.x, o.lo[0], o.hi[0]), between(near.y, o.lo[1], o.hi[1])}
}

// onStretch gives the place of a–b nearest to p.
func onStretch(p, a, b pt) pt {
	d := b.sub(a)
	l := d.dot(d)
	if l == 0 {
		return a
	}
	return a.add(d.times(between(p.sub(a).dot(d)/l, 0, 1)))
}

// fromOrigin gives the signed distance of a polygon from the origin, and the unit direction
// of the least move of the origin that clears it.
func (f *flat) fromOrigin() (float64, pt) {
	inside, dist, to := true, math.Inf(1), pt{1, 0}
	for i, p := range f.poly {
		q := f.poly[next(i, len(f.poly))]
		e := q.sub(p)
		out := pt{e.y, -e.x}.times(1 / e.len())
		if p.dot(out) < 0 {
			inside = false
		}
	}
	for i, p := range f.poly {
		q := f.poly[next(i, len(f.poly))]
		foot := onStretch(pt{}, p, q)
		if d := foot.len(); d < dist {
			dist = d
			e := q.sub(p)
			to = pt{e.y, -e.x}.times(1 / e.len())
			if !inside && d > 0 {
				to = foot.times(-1 / d)
			}
		}
	}
	if inside {
		return -dist, to
	}
	return dist, to
}

// looseGap is for cones, slanting ways and obstacles that lie or lean.
func looseGap(w *way, o *Shape) Near {
	start := o.lo.Add(o.hi).Times(0.5).Sub(w.m.From)
	if a := distance(w, o, start); a.d > 0 {
		return Near{Gap: a.d, At: a.b}
	}
	// A depth below a Grain is a touch.
	small := w.t.sized(-Grain, nil)
	if len(small) == 0 || distance(&way{small[0], w.m}, o, start).d > 0 {
		lo, hi := w.bounds()
		return Near{At: most(o.lo, least(o.hi, lo.Add(hi).Times(0.5)))}
	}
	n := Near{Meets: true, At: common(w, o)}
	_, hi := o.lo, o.hi
	lo, _ := w.bounds()
	n.Up = exit(w, o, Vec{0, 0, 1}, hi[2]-lo[2])
	n.Aside, n.Towards = sideways(w, o)
	n.Gap = -min(n.Up, n.Aside)
	return n
}

// exit gives how far the way must go in a direction to clear the obstacle; to 1e-5 mm, never
// too little by more.
func exit(w *way, o *Shape, d Vec, limit float64) float64 {
	lo, hi := 0.0, max(limit, 0)+2*Grain
	for hi-lo > 1e-5 {
		if m := (lo + hi) / 2; disjoint(w.moved(d.Times(m)), o, d.Times(-1)) {
			hi = m
		} else {
			lo = m
		}
	}
	return hi
}

// sideways gives the least level move that clears, and its direction: the best of 24
// directions, then of ever nearer ones beside it.
func sideways(w *way, o *Shape) (float64, Vec) {
	lo, hi := w.bounds()
	limit := hi.Sub(lo).Len() + o.hi.Sub(o.lo).Len()
	dir := func(t float64) Vec { return Vec{math.Cos(t), math.Sin(t), 0} }
	best, at := math.Inf(1), 0.0
	try := func(t float64) {
		// Only a direction that beats the best is followed to the end.
		if !math.IsInf(best, 1) && !disjoint(w.moved(dir(t).Times(best)), o, dir(t).Times(-1)) {
			return
		}
		if e := exit(w, o, dir(t), min(limit, best)); e < best {
			best, at = e, t
		}
	}
	for i := range 24 {
		try(float64(i) * math.Pi / 12)
	}
	for h := math.Pi / 24; h > 1e-3; h /= 2 {
		c := at
		try(c - h)
		try(c + h)
	}
	return best, dir(at)
}

// common gives a place that a way and an obstacle share: the middle of the obstacle's stretch
// on the line between their middles, held within the obstacle.
func common(w *way, o *Shape) Vec {
	lo, hi := w.bounds()
	a, b := most(lo, o.lo), least(hi, o.hi)
	v := a.Add(b).Times(0.5)
	if o.depth(v) >= 0 {
		return v
	}
	c := o.lo.Add(o.hi).Times(0.5)
	if s, e, ok := o.hit(v, c.Sub(v)); ok {
		return v.Add(c.Sub(v).Times(between(0, s, e)))
	}
	return c
}

const (
	gapCap  = 5.0  // how far out a clear tool is looked round, mm
	gapStep = 0.01 // to what the gap to a piece is found, mm
)

// Gap gives how near a piece of a tool stack, on a straight way, comes to the piece's metal.
// Clear: a lower bound of the distance, within 0.01 mm of the least growth of the tool that
// meets, looked at up to 5 mm; by growing its ends and its side alike it is too small by at
// most 30 % where an edge is nearest to a corner. Meets: Up is a move up that clears, found by
// halving and looked at again, with metal just below it.
func (p *Piece) Gap(t Turned, m Move) Near {
	if hit, ok := p.Meets(t, m); ok {
		n := Near{Meets: true, At: hit.At, By: hit.By, Name: hit.Name, Bound: true}
		n.Up = p.lift(t, m)
		n.Gap = -n.Up
		return n
	}
	n := Near{Name: t.Name, Bound: true}
	far, ok := p.meets(t, m, gapCap)
	if !ok {
		n.Gap, n.AtLeast = gapCap, true
		return n
	}
	lo, hi := 0.0, gapCap
	for hi-lo > gapStep {
		g := (lo + hi) / 2
		if hit, ok := p.meets(t, m, g); ok {
			hi, far = g, hit
		} else {
			lo = g
		}
	}
	n.Gap, n.At, n.By = lo, far.At, far.By
	return n
}

// lift gives a move up that clears the piece: past its top for certain, else less. Meets
// takes the tool a Grain smaller, so a Grain is added.
func (p *Piece) lift(t Turned, m Move) float64 {
	foot := min(m.From[2], m.To[2]) + t.Z0
	lo, hi := 0.0, max(p.blank.hi[2]-foot, 0)+Grain
	for hi-lo > Grain/10 {
		h := (lo + hi) / 2
		if _, ok := p.Meets(t, m.raised(h)); ok {
			lo = h
		} else {
			hi = h
		}
	}
	return hi + Grain // every hi was looked at, or lies above the blank
}

// raised gives the way h higher.
func (m Move) raised(h float64) Move {
	d := Vec{0, 0, h}
	return Move{m.From.Add(d), m.To.Add(d)}
}
