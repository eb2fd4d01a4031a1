package solid

import (
	"math"
	"slices"
)

// Whether a tool meets metal, in one plane.
//
// Metal over a region R (what the tool sweeps, within the blank) is R less the union of the
// openings, each convex or convex less convex. The closure of the uncovered part, if there is
// any, has a corner or a whole closed border, and each of those is found among finitely many
// critical points: the crossings of all borders, and some points of every border. At such a
// point the borders through it make sectors; within a small enough step from the point a
// sector is uncovered throughout or covered throughout. So one look into each sector beside
// each critical point decides. Nothing is sampled: a web is found however thin, down to a
// fraction of a Grain, below which two places are one.

// opening is one removal in a plane: take without any of less.
type opening struct {
	take flat
	less []flat
	by   int
}

const (
	step   = Grain / 4 // how far beside a critical point to look, mm
	curved = 20        // a polygon of more corners than this stands for a curve
	onLine = 1e-7      // a border nearer to a critical point than this passes through it, mm
)

// cover holds the memory of one covering test.
type cover struct {
	region []flat
	open   []opening
	shapes []*flat
	arcs   []arc
	lines  []stretch
	ends   []int // arcs and lines of shape i end at ends[2i], ends[2i+1]
	cand   []pt
	turn   []float64
	last   int  // the opening that took the place before: it often takes the next as well
	rows   bool // for rows, where the corners of a polygon that stands for a curve do not matter
}

// uncovered gives a place inside every outline of the region and outside all openings.
func (c *cover) uncovered(region []flat, open []opening) (pt, bool) {
	if !c.gather(region, open) {
		return pt{}, false
	}
	c.list()
	for _, p := range c.cand {
		if !c.near(p) {
			continue
		}
		if q, ok := c.beside(p); ok {
			return q, true
		}
	}
	return pt{}, false
}

// gather keeps the openings that lie near the region; false where one of them covers all of
// it or the region is empty.
func (c *cover) gather(region []flat, open []opening) bool {
	c.region, c.open, c.shapes = region, c.open[:0], c.shapes[:0]
	for i := range region {
		if !region[i].ok {
			return false
		}
		c.shapes = append(c.shapes, &region[i])
	}
	for i := range open {
		o := &open[i]
		skip := false
		for j := range region {
			skip = skip || apart(&o.take, &region[j])
		}
		if skip {
			continue
		}
		if len(o.less) == 0 && region[0].poly == nil && o.take.holds(&region[0]) {
			return false
		}
		c.open = append(c.open, *o)
	}
	for i := range c.open {
		o := &c.open[i]
		c.shapes = append(c.shapes, &o.take)
		for j := range o.less {
			if o.less[j].ok && !apart(&o.less[j], &region[0]) {
				c.shapes = append(c.shapes, &o.less[j])
			}
		}
	}
	return true
}

// list works out the critical points.
func (c *cover) list() {
	c.arcs, c.lines, c.ends, c.cand = c.arcs[:0], c.lines[:0], c.ends[:0], c.cand[:0]
	lo, hi := c.room()
	for _, s := range c.shapes {
		na, nl := len(c.arcs), len(c.lines)
		c.arcs, c.lines = s.border(c.arcs, c.lines)
		if len(c.lines)-nl > 4 {
			c.lines = append(c.lines[:nl], inRoom(c.lines[nl:], lo, hi)...)
		}
		c.ends = append(c.ends, len(c.arcs), len(c.lines))
		for _, a := range c.arcs[na:] {
			c.cand = append(c.cand, pt{a.c.x + a.r, a.c.y}, pt{a.c.x - a.r, a.c.y},
				pt{a.c.x, a.c.y + a.r}, pt{a.c.x, a.c.y - a.r})
		}
		if c.rows && len(s.poly) > curved {
			c.cand = s.tips(c.cand)
			continue
		}
		for _, l := range c.lines[nl:] {
			c.cand = append(c.cand, l.a)
			if s.poly == nil {
				c.cand = append(c.cand, l.b)
			}
		}
	}
	for i := range c.shapes {
		if s := c.shapes[i]; s.r > 0 && s.poly != nil {
			c.cross(i, i) // a disc and the straight lines that cut it
		}
		for j := i + 1; j < len(c.shapes); j++ {
			if !apart(c.shapes[i], c.shapes[j]) {
				c.cross(i, j)
			}
		}
	}
}

// room gives a box that holds the region and a little round it; no critical point elsewhere counts.
func (c *cover) room() (lo, hi pt) {
	lo, hi = pt{math.Inf(-1), math.Inf(-1)}, pt{math.Inf(1), math.Inf(1)}
	for i := range c.region {
		r := &c.region[i]
		lo, hi = pt{max(lo.x, r.lo.x), max(lo.y, r.lo.y)}, pt{min(hi.x, r.hi.x), min(hi.y, r.hi.y)}
	}
	return pt{lo.x - Grain, lo.y - Grain}, pt{hi.x + Grain, hi.y + Grain}
}

// inRoom keeps, in place, the stretches that may reach into a box.
func inRoom(ss []stretch, lo, hi pt) []stretch {
	keep := ss[:0]
	for _, s := range ss {
		if max(s.a.x, s.b.x) >= lo.x && min(s.a.x, s.b.x) <= hi.x && max(s.a.y, s.b.y) >= lo.y && min(s.a.y, s.b.y) <= hi.y {
			keep = append(keep, s)
		}
	}
	return keep
}

func (c *cover) parts(i int) ([]arc, []stretch) {
	a, l := 0, 0
	if i > 0 {
		a, l = c.ends[2*i-2], c.ends[2*i-1]
	}
	return c.arcs[a:c.ends[2*i]], c.lines[l:c.ends[2*i+1]]
}

// cross adds the crossings of two outlines' borders.
func (c *cover) cross(i, j int) {
	aa, al := c.parts(i)
	ba, bl := c.parts(j)
	for x := range aa {
		for y := range ba {
			c.cand = arcArc(&aa[x], &ba[y], c.cand)
		}
		for y := range bl {
			c.cand = arcLine(&aa[x], &bl[y], c.cand)
		}
	}
	for x := range al {
		for y := range ba {
			c.cand = arcLine(&ba[y], &al[x], c.cand)
		}
		for y := range bl {
			c.cand = lineLine(&al[x], &bl[y], c.cand)
		}
	}
}

func arcArc(a, b *arc, out []pt) []pt {
	d := b.c.sub(a.c)
	l2 := d.dot(d)
	if l2 == 0 || l2 > (a.r+b.r)*(a.r+b.r) || l2 < (a.r-b.r)*(a.r-b.r) {
		return out
	}
	l := math.Sqrt(l2)
	t := (l2 + a.r*a.r - b.r*b.r) / (2 * l)
	h := math.Sqrt(max(0, a.r*a.r-t*t))
	return append(out, pt{a.c.x + (d.x*t-d.y*h)/l, a.c.y + (d.y*t+d.x*h)/l},
		pt{a.c.x + (d.x*t+d.y*h)/l, a.c.y + (d.y*t-d.x*h)/l})
}

// arcLine works from the foot of the square from the centre, so that a short stretch far
// from the centre loses no digits.
func arcLine(a *arc, s *stretch, out []pt) []pt {
	d := s.b.sub(s.a)
	l := d.len()
	if l == 0 {
		return out
	}
	u := d.times(1 / l)
	w := a.c.sub(s.a)
	off, foot := u.cross(w), u.dot(w)
	h2 := a.r*a.r - off*off
	if h2 < 0 {
		return out
	}
	h := math.Sqrt(h2)
	for _, t := range [2]float64{foot - h, foot + h} {
		if t >= -onLine && t <= l+onLine {
			out = append(out, s.a.add(u.times(t)))
		}
	}
	return out
}

func lineLine(a, b *stretch, out []pt) []pt {
	if max(a.a.x, a.b.x) < min(b.a.x, b.b.x)-onLine || max(b.a.x, b.b.x) < min(a.a.x, a.b.x)-onLine ||
		max(a.a.y, a.b.y) < min(b.a.y, b.b.y)-onLine || max(b.a.y, b.b.y) < min(a.a.y, a.b.y)-onLine {
		return out
	}
	u, v, w := a.b.sub(a.a), b.b.sub(b.a), b.a.sub(a.a)
	d := u.cross(v)
	lu, lv := u.len(), v.len()
	if math.Abs(d) <= 1e-12*lu*lv {
		return out
	}
	t, s := w.cross(v)/d, w.cross(u)/d
	if t*lu >= -onLine && (t-1)*lu <= onLine && s*lv >= -onLine && (s-1)*lv <= onLine {
		out = append(out, a.a.add(u.times(t)))
	}
	return out
}

// near leaves out the points that cannot have uncovered metal within a step of them.
func (c *cover) near(p pt) bool {
	for i := range c.region {
		if c.region[i].depth(p) < -step {
			return false
		}
	}
	if c.last < len(c.open) && c.open[c.last].clearly(p) {
		return false
	}
	for i := range c.open {
		if i != c.last && c.open[i].clearly(p) {
			c.last = i
			return false
		}
	}
	return true
}

// clearly says whether the opening takes everything within a step of p: a depth, inside or
// outside of an outline, is never more than the distance from its border.
func (o *opening) clearly(p pt) bool {
	if !(o.take.depth(p) > step) {
		return false
	}
	for i := range o.less {
		if o.less[i].depth(p) >= -step {
			return false
		}
	}
	return true
}

// beside looks into the middle of each sector that the borders through p make.
func (c *cover) beside(p pt) (pt, bool) {
	c.turn = c.turn[:0]
	for i := range c.arcs {
		a := &c.arcs[i]
		w := p.sub(a.c)
		if math.Abs(w.len()-a.r) < onLine && a.on(p) {
			c.both(math.Atan2(w.x, -w.y))
		}
	}
	for i := range c.lines {
		l := &c.lines[i]
		if p.x < min(l.a.x, l.b.x)-onLine || p.x > max(l.a.x, l.b.x)+onLine || p.y < min(l.a.y, l.b.y)-onLine || p.y > max(l.a.y, l.b.y)+onLine {
			continue
		}
		if fromStretch(p, l.a, l.b) < onLine {
			d := l.b.sub(l.a)
			c.both(math.Atan2(d.y, d.x))
		}
	}
	slices.Sort(c.turn)
	for k, t := range c.turn {
		to := c.turn[0] + 2*math.Pi
		if k+1 < len(c.turn) {
			to = c.turn[k+1]
		}
		if to-t < 1e-6 {
			continue
		}
		sin, cos := math.Sincos((t + to) / 2)
		if q := (pt{p.x + step*cos, p.y + step*sin}); c.free(q) {
			return q, true
		}
	}
	return pt{}, false
}

// both adds a direction and its opposite, each from 0 to 2π.
func (c *cover) both(t float64) {
	t = math.Mod(t+4*math.Pi, 2*math.Pi)
	c.turn = append(c.turn, t, math.Mod(t+math.Pi, 2*math.Pi))
}

// free says whether there is metal at q, by more than rounding.
func (c *cover) free(q pt) bool {
	for i := range c.region {
		if !(c.region[i].depth(q) > hair) {
			return false
		}
	}
	for i := range c.open {
		if c.open[i].covers(q) {
			return false
		}
	}
	return true
}

// covers says whether the opening takes q or has it on its border within a hair.
func (o *opening) covers(q pt) bool {
	if !(o.take.depth(q) > -hair) {
		return false
	}
	for i := range o.less {
		if o.less[i].depth(q) > hair {
			return false
		}
	}
	return true
}
