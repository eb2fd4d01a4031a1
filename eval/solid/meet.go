package solid

import (
	"math"
	"slices"
	"sync"
)

// Meeting is a place where a tool and metal want to be at once.
type Meeting struct {
	At    Vec
	By    string // the removal whose wall stands nearest to the place; "" for the blank's own surface
	Name  string // the piece of the stack that meets it
	Bound bool   // found with an outline that is a little too large: a cone on a slanting way
}

// Whether a tool meets the piece, in space.
//
// Between two neighbouring heights at which any shape begins, ends or turns, the outlines of
// boxes, upright prisms and upright cylinders stay the same, and one covering test in the
// plane decides the whole band. Cones, lying cylinders and slanting faces change with height;
// over a band they are bounded from within and from without. If even the larger tool in the
// larger blank is covered by the smaller openings, the band is clear for certain; if at the
// band's middle height the smaller tool in the smaller blank is not covered by the larger
// openings, it meets for certain; else the band is halved, down to a Grain, where what is left
// is a touch. The tool is taken a Grain smaller all round, so that it is clear in its own slot.

// scene is what one question needs: shapes near the sweep, and memory.
type scene struct {
	cover
	blank  *Shape
	cuts   []*Removal
	number []int // of each cut in the piece
	body   *swept
	outl   [2]flat
	opens  []opening
	left   []Shape // of removals that leave many forms, those near
	levels []float64
	parts  []swept
}

var scenes = sync.Pool{New: func() any { return new(scene) }}

// Meets says whether a piece of a tool stack, on a straight way, meets metal, and where. The
// answer is exact to a Grain for level and upright ways, and for cylinders on slanting ways;
// a cone on a slanting way is taken a little too large. Touching is not meeting.
func (p *Piece) Meets(t Turned, m Move) (Meeting, bool) { return p.meets(t, m, -Grain) }

// meets asks with the tool grown by g.
func (p *Piece) meets(t Turned, m Move, g float64) (Meeting, bool) {
	for _, l := range p.lumps {
		if hit, ok := l.piece.meets(t, m, g); ok {
			return hit, true
		}
	}
	if p.lumps != nil {
		return Meeting{}, false
	}
	if !finite(m.From) || !finite(m.To) || p.blank.kind == empty {
		return Meeting{}, false
	}
	var two [2]Turned
	s := scenes.Get().(*scene)
	defer scenes.Put(s)
	s.parts = s.parts[:0]
	for _, grown := range t.sized(g, two[:0]) {
		s.parts = sweep(grown, m, s.parts)
	}
	for i := range s.parts {
		s.body = &s.parts[i]
		if at, ok := s.find(p); ok {
			return Meeting{At: at, By: p.name(s.nearest(at)), Name: t.Name,
				Bound: s.body.slant && t.R0 != t.R1}, true
		}
	}
	return Meeting{}, false
}

// finite says whether all three are numbers of a size that can be reckoned with.
func finite(v Vec) bool {
	return math.Abs(v[0]) < 1e9 && math.Abs(v[1]) < 1e9 && math.Abs(v[2]) < 1e9
}

// find looks for a meeting of one part of a sweep.
func (s *scene) find(p *Piece) (Vec, bool) {
	lo, hi := s.body.bounds()
	if !overlap(lo, hi, p.blank.lo, p.blank.hi) {
		return Vec{}, false
	}
	s.near(p, lo, hi)
	s.levels = s.body.levels(s.levels[:0])
	s.addLevels(max(lo[2], p.blank.lo[2]), min(hi[2], p.blank.hi[2]))
	if at, ok := s.plain(); ok {
		return at, true
	}
	for i := 0; i+1 < len(s.levels); i++ {
		if q, z, ok := s.look(band{s.levels[i], s.levels[i+1]}, 0); ok {
			return Vec{q.x, q.y, z}, true
		}
	}
	return Vec{}, false
}

// plain looks at the middle of every band whose outlines change with height: metal that is
// plainly met there need not be sought by halving at the borders of the bands before it.
func (s *scene) plain() (Vec, bool) {
	for i := 0; i+1 < len(s.levels); i++ {
		b := band{s.levels[i], s.levels[i+1]}
		if b.height() <= Grain || s.constant(b) {
			continue
		}
		z := b.mid()
		s.outlines(band{z, z}, coarse, false)
		if q, ok := s.uncovered(s.region(), s.opens); ok {
			return Vec{q.x, q.y, z}, true
		}
	}
	return Vec{}, false
}

// near keeps the removals whose bounds overlap a box.
func (s *scene) near(p *Piece, lo, hi Vec) {
	s.blank, s.cuts, s.number, s.left = &p.blank, s.cuts[:0], s.number[:0], s.left[:0]
	for i, r := range p.cuts {
		if overlap(lo, hi, r.Take.lo, r.Take.hi) {
			s.cuts, s.number = append(s.cuts, s.within(r, lo, hi)), append(s.number, i)
		}
	}
}

// within leaves out of a removal that leaves many forms standing, as a turned profile does, those
// that lie beyond a box.
func (s *scene) within(r *Removal, lo, hi Vec) *Removal {
	if len(r.Less) < 4 {
		return r
	}
	n := len(s.left)
	for i := range r.Less {
		if l := &r.Less[i]; overlap(lo, hi, l.lo, l.hi) {
			s.left = append(s.left, *l)
		}
	}
	if len(s.left)-n == len(r.Less) {
		return r
	}
	return &Removal{Take: r.Take, Less: s.left[n:len(s.left):len(s.left)], By: r.By}
}

// addLevels adds the heights of all shapes, and leaves them sorted, from lo to hi, no two
// nearer than a hair.
func (s *scene) addLevels(lo, hi float64) {
	s.levels = s.blank.levels(s.levels)
	for _, r := range s.cuts {
		s.levels = r.Take.levels(s.levels)
		for i := range r.Less {
			s.levels = r.Less[i].levels(s.levels)
		}
	}
	s.levels = append(s.levels, lo, hi)
	slices.Sort(s.levels)
	keep := s.levels[:0]
	for _, z := range s.levels {
		if z >= lo && z <= hi && (len(keep) == 0 || z-keep[len(keep)-1] > hair) {
			keep = append(keep, z)
		}
	}
	s.levels = keep
}

// look decides one band.
func (s *scene) look(b band, deep int) (pt, float64, bool) {
	if s.constant(b) {
		s.outlines(b, coarse, true)
		q, ok := s.uncovered(s.region(), s.opens)
		return q, b.mid(), ok
	}
	n := coarse << min(deep, 5)
	if s.inOne(b) {
		return pt{}, 0, false
	}
	s.outlines(b, n, true)
	if _, ok := s.uncovered(s.region(), s.opens); !ok {
		return pt{}, 0, false
	}
	s.outlines(band{b.mid(), b.mid()}, n, false)
	if q, ok := s.uncovered(s.region(), s.opens); ok {
		return q, b.mid(), true
	}
	if b.height() <= Grain {
		return pt{}, 0, false
	}
	if q, z, ok := s.look(band{b.lo, b.mid()}, deep+1); ok {
		return q, z, true
	}
	return s.look(band{b.mid(), b.hi}, deep+1)
}

// constant says whether no outline changes within a band.
func (s *scene) constant(b band) bool {
	if s.body != nil && !s.body.constant() || !s.blank.constant() {
		return false
	}
	for _, r := range s.cuts {
		if b.mid() < r.Take.lo[2] || b.mid() > r.Take.hi[2] {
			continue
		}
		if !r.Take.constant() {
			return false
		}
		for i := range r.Less {
			if !r.Less[i].constant() {
				return false
			}
		}
	}
	return true
}

// outlines works out the plane question over a band: with the larger tool, blank and
// standing metal and the smaller openings where wide; the other way round where not.
func (s *scene) outlines(b band, n int, wide bool) {
	bound := func(x *Shape, wide bool) flat {
		if s.body != nil && x.kind == round && !x.upright() && !x.lying() {
			y := *x // a leaning round is cut out of a rectangle: the sweep's own is smaller
			lo, hi := s.body.bounds()
			y.lo = Vec{max(y.lo[0], lo[0]-1), max(y.lo[1], lo[1]-1), y.lo[2]}
			y.hi = Vec{min(y.hi[0], hi[0]+1), min(y.hi[1], hi[1]+1), y.hi[2]}
			if !(y.lo[0] < y.hi[0] && y.lo[1] < y.hi[1]) {
				return flat{}
			}
			x = &y
		}
		if wide {
			return x.outer(b, n)
		}
		return x.inner(b, n)
	}
	if s.body != nil {
		s.outl[0] = s.body.inner(b)
		if wide {
			s.outl[0] = s.body.outer(b)
		}
	}
	s.outl[1] = bound(s.blank, wide)
	s.opens = s.opens[:0]
	if s.body != nil && s.body.bow != nil && s.outl[0].ok {
		s.opens = s.body.bow.unswept(s.outl[0].r-s.body.bow.r, s.opens)
	}
	for i, r := range s.cuts {
		o := opening{take: bound(&r.Take, !wide), by: s.number[i]}
		if !o.take.ok {
			continue
		}
		for j := range r.Less {
			if l := bound(&r.Less[j], wide); l.ok {
				o.less = append(o.less, l)
			}
		}
		s.opens = append(s.opens, o)
	}
}

func (s *scene) region() []flat {
	if s.body == nil {
		return s.outl[1:]
	}
	return s.outl[:]
}

// inOne says whether the part of the sweep in a band is plainly made of room: the tool at the
// start of its way lies in a single removal, at its end too, and what is between as well. Of
// each it is enough that the discs or the corners at its ends do, since a removal without a
// Less is convex. So a countersink in its own seat, or a tool of any slope in its own groove,
// is found clear at once.
func (s *scene) inOne(b band) bool {
	if s.body == nil || s.body.slant || s.body.bow != nil {
		return false
	}
	w := s.body
	lo, hi := w.radiusAt(b.lo), w.radiusAt(b.hi)
	for _, c := range [2]pt{w.a, w.b} {
		if !s.some(func(x *Shape) bool { return x.holdsDisc(c, b.lo, lo) && x.holdsDisc(c, b.hi, hi) }) {
			return false
		}
	}
	d := w.b.sub(w.a)
	l := d.len()
	if l == 0 {
		return true
	}
	n := pt{-d.y, d.x}.times(1 / l)
	return s.some(func(x *Shape) bool {
		for _, c := range [2]pt{w.a, w.b} {
			for _, r := range [2]float64{1, -1} {
				p, q := c.add(n.times(r*lo)), c.add(n.times(r*hi))
				if x.depth(Vec{p.x, p.y, b.lo}) < -hair || x.depth(Vec{q.x, q.y, b.hi}) < -hair {
					return false
				}
			}
		}
		return true
	})
}

// some says whether any removal without a Less answers yes.
func (s *scene) some(f func(*Shape) bool) bool {
	for _, r := range s.cuts {
		if len(r.Less) == 0 && f(&r.Take) {
			return true
		}
	}
	return false
}

// holdsDisc says whether a level disc lies in the shape, within a hair; of leaning rounds it
// says no.
func (s *Shape) holdsDisc(c pt, z, r float64) bool {
	if z < s.lo[2]-hair || z > s.hi[2]+hair {
		return false
	}
	switch s.kind {
	case box:
		return c.x-r >= s.lo[0]-hair && c.x+r <= s.hi[0]+hair && c.y-r >= s.lo[1]-hair && c.y+r <= s.hi[1]+hair
	case prism:
		for _, f := range s.faces {
			if f.N[0]*c.x+f.N[1]*c.y+f.N[2]*z+r*math.Hypot(f.N[0], f.N[1]) > f.C+hair {
				return false
			}
		}
		return true
	case round:
		if s.upright() {
			return c.sub(pt{s.from[0], s.from[1]}).len()+r <= s.radiusAt(z)+hair
		}
		if s.lying() && s.r0 == s.r1 {
			strip := s.strip(s.halfWidth(z))
			return strip.depth(c) >= r-hair
		}
	case ball:
		return s.whole() && c.sub(pt{s.from[0], s.from[1]}).len()+r <= s.rimOf(z-s.from[2])+hair
	}
	return false
}

// nearest gives the number of the removal whose surface is nearest to a place in metal, -1
// where the blank's own surface is nearer.
func (s *scene) nearest(v Vec) int {
	best, by := s.blank.depth(v), -1
	for i, r := range s.cuts {
		if d := -r.Take.depth(v); d >= 0 && d < best {
			best, by = d, s.number[i]
		}
		for j := range r.Less {
			if d := r.Less[j].depth(v); d >= 0 && d < best {
				best, by = d, s.number[i]
			}
		}
	}
	return by
}
