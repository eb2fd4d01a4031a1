package solid

import "math"

// Squeeze is what stands between two opposite jaws.
type Squeeze struct {
	Touches bool    // whether any straight line goes from the one jaw to the other through metal at both
	Patch   float64 // mm² that both jaws touch, opposite each other
	Solid   float64 // least metal, all spans together, on any line across the patch, in mm
	SolidAt Vec     // where that line enters, on the jaw at the greater co-ordinate
	Gap     float64 // widest single open gap crossed, in mm; 0 where there is none
	GapAt   Vec     // the middle of that gap
	GapBy   string  // what opened it
	Share   float64 // share of the patch, 0 to 1, whose lines are metal throughout
}

// Squeeze gives what stands between two jaws that close along an axis on a piece whose
// outermost metal they touch: each jaw a rectangle, the first at the greater co-ordinate, or
// one for both. Every cell that the outlines of the removals make on the patch is looked at,
// so that no slit is missed however thin; figures are exact for planes and cylinders along
// axes, and good to a few hundredths across cones and leaning holes.
func (p *Piece) Squeeze(axis int, jaws ...Rect) Squeeze {
	f := facing(axis, 1)
	q := p.Placed(f)
	common := flat{ok: true, lo: pt{-far, -far}, hi: pt{far, far}}
	for _, r := range jaws {
		common.lo = pt{max(common.lo.x, r.Lo[0]), max(common.lo.y, r.Lo[1])}
		common.hi = pt{min(common.hi.x, r.Hi[0]), min(common.hi.y, r.Hi[1])}
	}
	jaw := rectangle(common.lo, common.hi)
	top, bottom := p.Extent(axis, 1), p.Extent(axis, -1)
	if !jaw.ok || math.IsNaN(top) {
		return Squeeze{}
	}
	w := Squeeze{Solid: math.Inf(1)}
	through := 0.0
	for _, a := range q.Lumps() {
		for _, b := range q.Lumps() {
			through += w.between(q, a, b, jaw, [2]float64{top, bottom}, f.Inverse())
		}
	}
	w.Touches = w.Patch > Grain*Grain
	if !w.Touches {
		return Squeeze{}
	}
	w.Share = through / w.Patch
	return w
}

// between adds what stands between a jaw on lump a and a jaw on lump b of q; it gives the area of
// the lines that are metal throughout.
func (w *Squeeze) between(q, a, b *Piece, jaw flat, at [2]float64, back Pose) (through float64) {
	top, bottom := at[0], at[1]
	if a.blank.kind == empty || b.blank.kind == empty {
		return 0
	}
	lo, hi := Vec{jaw.lo.x, jaw.lo.y, math.Inf(-1)}, Vec{jaw.hi.x, jaw.hi.y, math.Inf(1)}
	s := &scene{}
	s.near(a, lo, hi)
	m := cells{piece: q, jaw: jaw}
	m.plane.section(s, top-Grain, jaw)
	s.near(b, lo, hi)
	m.plane.bottom(s, bottom+Grain)
	q.shapes(m.add)
	m.walk(func(x, y, area float64) {
		spans := q.line(Vec{x, y, top + 1}, Vec{0, 0, -1}, &m.scan)
		if n := len(spans); n == 0 || spans[0].A > 1+2*Grain || spans[n-1].B < 1+top-bottom-2*Grain {
			return
		}
		w.Patch += area
		if w.across(spans, back, Vec{x, y, top}, q) {
			through += area
		}
	})
	return through
}

// across adds one line's metal and gaps; it says whether the line is metal throughout.
func (w *Squeeze) across(spans []Span, back Pose, at Vec, q *Piece) bool {
	sum := 0.0
	for i, s := range spans {
		sum += s.Len()
		if i == 0 {
			continue
		}
		if g := s.A - spans[i-1].B; g > w.Gap {
			w.Gap, w.GapBy = g, q.name(s.EnterBy)
			w.GapAt = back.Point(Vec{at[0], at[1], at[2] + 1 - (s.A+spans[i-1].B)/2})
		}
	}
	if sum < w.Solid {
		w.Solid, w.SolidAt = sum, back.Point(at)
	}
	return len(spans) == 1
}

// bottom adds the outlines at another height, so that only what is metal at both counts.
func (p *plane) bottom(s *scene, z float64) {
	var other plane
	other.section(s, z)
	p.region = append(p.region, other.region...)
	p.open = append(p.open, other.open...)
}
