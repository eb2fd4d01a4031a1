package solid

import (
	"cmp"
	"math"
	"slices"
)

// pt is a place in a plane.
type pt struct{ x, y float64 }

func (a pt) add(b pt) pt                { return pt{a.x + b.x, a.y + b.y} }
func (a pt) sub(b pt) pt                { return pt{a.x - b.x, a.y - b.y} }
func (a pt) times(f float64) pt         { return pt{a.x * f, a.y * f} }
func (a pt) dot(b pt) float64           { return a.x*b.x + a.y*b.y }
func (a pt) cross(b pt) float64         { return a.x*b.y - a.y*b.x }
func (a pt) len() float64               { return math.Sqrt(a.x*a.x + a.y*a.y) }
func between(x, lo, hi float64) float64 { return min(max(x, lo), hi) }

// flat is a convex outline in a plane: every place within r of the stretch a–b (a disc where
// a is b), or a polygon, its corners in anticlockwise order, or, where both r and poly are set,
// what a disc and a polygon have in common. The zero flat is empty.
type flat struct {
	ok     bool
	a, b   pt
	r      float64
	poly   []pt // a polygon where not nil
	lo, hi pt
}

func stadium(a, b pt, r float64) flat {
	if !(r > 0) {
		return flat{}
	}
	return flat{ok: true, a: a, b: b, r: r,
		lo: pt{min(a.x, b.x) - r, min(a.y, b.y) - r}, hi: pt{max(a.x, b.x) + r, max(a.y, b.y) + r}}
}

func disc(c pt, r float64) flat { return stadium(c, c, r) }

// within gives what of a disc lies in a polygon; empty where either is, and where neither has a
// place in the other's bounds.
func (f flat) within(p flat) flat {
	if apart(&f, &p) {
		return flat{}
	}
	f.poly = p.poly
	f.lo, f.hi = pt{max(f.lo.x, p.lo.x), max(f.lo.y, p.lo.y)}, pt{min(f.hi.x, p.hi.x), min(f.hi.y, p.hi.y)}
	return f
}

func polygon(ps []pt) flat {
	if len(ps) < 3 {
		return flat{}
	}
	f := flat{ok: true, poly: ps, lo: ps[0], hi: ps[0]}
	for _, p := range ps {
		f.lo = pt{min(f.lo.x, p.x), min(f.lo.y, p.y)}
		f.hi = pt{max(f.hi.x, p.x), max(f.hi.y, p.y)}
	}
	return f
}

func rectangle(lo, hi pt) flat {
	if !(lo.x < hi.x && lo.y < hi.y) {
		return flat{}
	}
	return flat{ok: true, lo: lo, hi: hi, poly: []pt{lo, {hi.x, lo.y}, hi, {lo.x, hi.y}}}
}

// apart says whether two outlines' bounds have no more than a touch in common.
func apart(a, b *flat) bool {
	return !a.ok || !b.ok || a.lo.x >= b.hi.x || b.lo.x >= a.hi.x || a.lo.y >= b.hi.y || b.lo.y >= a.hi.y
}

// fromStretch gives the distance of p from the stretch a–b.
func fromStretch(p, a, b pt) float64 {
	d := b.sub(a)
	t := 0.0
	if l := d.dot(d); l > 0 {
		t = between(p.sub(a).dot(d)/l, 0, 1)
	}
	return p.sub(a.add(d.times(t))).len()
}

// depth gives how far p lies inside, negative outside; exact in sign, and at most the true
// distance from the border.
func (f *flat) depth(p pt) float64 {
	if !f.ok {
		return math.Inf(-1)
	}
	if out := min(p.x-f.lo.x, f.hi.x-p.x, p.y-f.lo.y, f.hi.y-p.y); out < -Grain {
		return out
	}
	d := math.Inf(1)
	if f.r > 0 {
		d = f.r - fromStretch(p, f.a, f.b)
	}
	for i, q := range f.poly {
		e := f.poly[next(i, len(f.poly))].sub(q)
		if l := e.len(); l > 0 {
			d = min(d, e.cross(p.sub(q))/l)
		}
	}
	return d
}

func next(i, n int) int {
	if i++; i == n {
		return 0
	}
	return i
}

// holds says whether f contains the whole of a stadium g, within a hair.
func (f *flat) holds(g *flat) bool {
	return f.depth(g.a) >= g.r-hair && f.depth(g.b) >= g.r-hair
}

// arc is a full circle or, where half is not null, the half of it on that side.
type arc struct {
	c    pt
	r    float64
	half pt
}

type stretch struct{ a, b pt }

// border adds the outline's arcs and straight stretches to the two lists.
func (f *flat) border(as []arc, ss []stretch) ([]arc, []stretch) {
	if !f.ok {
		return as, ss
	}
	if f.poly != nil {
		for i, p := range f.poly {
			ss = append(ss, stretch{p, f.poly[next(i, len(f.poly))]})
		}
		if f.r > 0 {
			as = append(as, arc{c: f.a, r: f.r})
		}
		return as, ss
	}
	d := f.b.sub(f.a)
	l := d.len()
	if l == 0 {
		return append(as, arc{c: f.a, r: f.r}), ss
	}
	n := pt{-d.y, d.x}.times(f.r / l)
	as = append(as, arc{f.a, f.r, d.times(-1 / l)}, arc{f.b, f.r, d.times(1 / l)})
	return as, append(ss, stretch{f.a.add(n), f.b.add(n)}, stretch{f.a.sub(n), f.b.sub(n)})
}

// on says whether a place on the full circle is on the arc, a hair over its ends included.
func (a *arc) on(p pt) bool { return p.sub(a.c).dot(a.half) >= -hair }

// row gives the stretch of the level line at y inside the outline; false where there is none.
func (f *flat) row(y float64) (x0, x1 float64, ok bool) {
	if !f.ok || y <= f.lo.y || y >= f.hi.y {
		return 0, 0, false
	}
	x0, x1 = math.Inf(-1), math.Inf(1)
	if f.r > 0 {
		x0, x1 = f.rowRound(y)
	}
	if f.poly != nil {
		a, b := math.Inf(1), math.Inf(-1)
		for i, p := range f.poly {
			q := f.poly[next(i, len(f.poly))]
			if (p.y <= y) != (q.y <= y) {
				x := p.x + (q.x-p.x)*(y-p.y)/(q.y-p.y)
				a, b = min(a, x), max(b, x)
			}
		}
		x0, x1 = max(x0, a), min(x1, b)
	}
	return x0, x1, x0 < x1
}

// rowRound is row of a stadium; x0 above x1 where there is none.
func (f *flat) rowRound(y float64) (x0, x1 float64) {
	x0, x1 = math.Inf(1), math.Inf(-1)
	see := func(x float64) { x0, x1 = min(x0, x), max(x1, x) }
	for _, c := range [2]pt{f.a, f.b} {
		if h := f.r*f.r - (y-c.y)*(y-c.y); h > 0 {
			w := math.Sqrt(h)
			see(c.x - w)
			see(c.x + w)
		}
	}
	d := f.b.sub(f.a)
	if l := d.len(); l > 0 && d.y != 0 {
		n := pt{-d.y, d.x}.times(f.r / l)
		for _, p := range [2]pt{f.a.add(n), f.a.sub(n)} {
			if t := (y - p.y) / d.y; t >= 0 && t <= 1 {
				see(p.x + t*d.x)
			}
		}
	}
	return x0, x1
}

// tips adds the corners of a polygon that lie farthest along x and y.
func (f *flat) tips(out []pt) []pt {
	for _, p := range f.poly {
		if p.x == f.lo.x || p.x == f.hi.x || p.y == f.lo.y || p.y == f.hi.y {
			out = append(out, p)
		}
	}
	return out
}

// clipped gives what of a polygon lies where n·p ≤ c, written into buf.
func clipped(ps []pt, n pt, c float64, buf []pt) []pt {
	out := buf[:0]
	for i, p := range ps {
		q := ps[next(i, len(ps))]
		dp, dq := n.dot(p)-c, n.dot(q)-c
		if dp <= 0 {
			out = append(out, p)
		}
		if (dp < 0 && dq > 0) || (dp > 0 && dq < 0) {
			out = append(out, p.add(q.sub(p).times(dp/(dp-dq))))
		}
	}
	return out
}

// around gives the convex outline round some places, anticlockwise (Andrew's monotone chain).
func around(ps []pt) []pt {
	slices.SortFunc(ps, func(a, b pt) int {
		if c := cmp.Compare(a.x, b.x); c != 0 {
			return c
		}
		return cmp.Compare(a.y, b.y)
	})
	var out []pt
	for range 2 {
		n := len(out)
		for _, p := range ps {
			for len(out) >= n+2 && out[len(out)-1].sub(out[len(out)-2]).cross(p.sub(out[len(out)-1])) <= 1e-12 {
				out = out[:len(out)-1]
			}
			out = append(out, p)
		}
		out = out[:len(out)-1]
		slices.Reverse(ps)
	}
	return out
}
