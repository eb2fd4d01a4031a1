package solid

import "math"

// Visible or hidden. Along a curve that can change only where the drawing of another curve
// that hides what is behind it crosses, and where one of the curve's own surfaces turns away
// from the viewer. Between such splits a ray towards the viewer from one place decides. It
// starts half a Grain beside the metal, in each of the empty parts of the ring: a stretch is
// visible if it is seen from one of them. So what lies exactly behind another edge counts as
// visible and is drawn over it.

// aside is how far beside the metal a ray starts, in mm.
const aside = Grain / 2

// least projected length of what is drawn or split, in mm
const dot = 0.01

// rounds says whether the metal's surface runs smoothly through the place with that normal,
// and whose work it is.
func (r *ring) rounds(normal Vec) (by [2]int, ok bool) {
	if !r.smooth() {
		return by, false
	}
	d := r.dir(r.borders[0].angle)
	if math.Abs(d.Dot(normal)) > 2*tangent {
		return by, false // another surface
	}
	by = [2]int{r.borders[0].by, r.borders[1].by}
	if by[0] > by[1] {
		by[0], by[1] = by[1], by[0]
	}
	return by, true
}

// contours adds the contours of cylinders, cones and balls for a direction of view.
func (w *wire) contours(towards Vec, out []run) []run {
	for n := range w.bodies {
		b := &w.bodies[n]
		for i := range b.skins {
			s := &b.skins[i]
			lo, hi := most(s.lo, w.lo), least(s.hi, w.hi)
			if s.kind == plain || !touch(lo, hi, lo, hi) {
				continue
			}
			for _, c := range s.contour(towards) {
				out = w.trace(&c, lo, hi, out)
			}
		}
	}
	return out
}

// contour gives the curves of a skin on which its normal is square to the view.
func (s *surface) contour(towards Vec) []curve {
	if s.kind == globe {
		cs := circleAt(s.from, towards, s.r0*s.r0)
		for i := range cs {
			cs[i].a = s
		}
		return cs
	}
	var out []curve
	for _, u := range s.turning(towards) {
		o := s.from.Add(u.Times(s.r0))
		out = append(out, curve{o: o, u: s.axis.Add(u.Times(s.k)).Unit(), hi: s.h * math.Sqrt(1+s.k*s.k), a: s})
	}
	return out
}

// turning gives the directions square to the axis of a turned skin at which its normal is
// square to the view: u·w = k·(axis·w).
func (s *surface) turning(towards Vec) []Vec {
	az := s.axis.Dot(towards)
	side := towards.Sub(s.axis.Times(az))
	sn := side.Len()
	if sn < 1e-9 {
		return nil
	}
	cos := s.k * az / sn
	if math.Abs(cos) >= 1 {
		return nil
	}
	m := s.axis.Cross(side).Times(math.Sqrt(1-cos*cos) / sn)
	u := side.Times(cos / sn)
	return []Vec{u.Add(m), u.Sub(m)}
}

// turns adds where a surface of a curve turns away from the viewer: on planes through the
// axis and a contour, or through the middle of a ball.
func (c *curve) turns(s *surface, towards Vec, out []float64) []float64 {
	var planes []surface
	switch s.kind {
	case globe:
		planes = append(planes, surface{n: towards, c: towards.Dot(s.from)})
	case turned:
		for _, u := range s.turning(towards) {
			n := s.axis.Cross(u).Unit()
			planes = append(planes, surface{n: n, c: n.Dot(s.from)})
		}
	}
	for i := range planes {
		out = c.crossings(&planes[i], out)
	}
	return out
}

// image is a stretch as the viewer sees it.
type image struct {
	r      *run
	ps     []pt
	ts     []float64
	lo, hi pt
	hides  bool
	splits []float64
}

// screen gives the two directions square to the view.
func screen(towards Vec) (right, up Vec) {
	right = square(towards)
	return right, towards.Cross(right)
}

func (w *wire) image(r *run, towards, right, up Vec) image {
	vs, ts := r.c.points(r.t0, r.t1)
	im := image{r: r, ts: ts, ps: make([]pt, len(vs))}
	for i, v := range vs {
		q := pt{v.Dot(right), v.Dot(up)}
		im.ps[i] = q
		if i == 0 {
			im.lo, im.hi = q, q
		}
		im.lo, im.hi = pt{min(im.lo.x, q.x), min(im.lo.y, q.y)}, pt{max(im.hi.x, q.x), max(im.hi.y, q.y)}
	}
	im.splits = w.turnsOf(r, towards)
	for i := 0; i+1 < len(im.splits) && !im.hides; i++ {
		ring := w.ringOf(r, (im.splits[i]+im.splits[i+1])/2)
		im.hides = ring.hides(towards)
	}
	return im
}

// turnsOf gives, in order, the ends of a stretch and where one of the surfaces at it turns
// away from the viewer.
func (w *wire) turnsOf(r *run, towards Vec) []float64 {
	out := []float64{r.t0, r.t1}
	if r.c.kind == straight {
		return out
	}
	w.stand(r.c.at(r.middle()), r.near)
	for i := range w.pass {
		out = r.c.turns(w.pass[i].s, towards, out)
	}
	return tidy(out, r.t0, r.t1, 0)
}

func (w *wire) ringOf(r *run, t float64) ring {
	w.stand(r.c.at(t), r.near)
	return w.ring(r.c.along(t))
}

// see splits stretches where they may change between visible and hidden, and decides each.
func (w *wire) see(runs []run, towards Vec) []run {
	right, up := screen(towards)
	var images []image
	for i := range runs {
		if im := w.image(&runs[i], towards, right, up); im.hi.sub(im.lo).len() > dot {
			images = append(images, im)
		}
	}
	for i := range images {
		for j := range images {
			if i != j && images[j].hides {
				images[i].crossed(&images[j])
			}
		}
	}
	var out []run
	for i := range images {
		out = w.decide(&images[i], towards, out)
	}
	return out
}

// decide adds the parts of a stretch, each visible or hidden. A part too short to see goes
// with the one before it.
func (w *wire) decide(im *image, towards Vec, out []run) []run {
	ts := tidy(im.splits, im.r.t0, im.r.t1, 0)
	first := len(out)
	for i := 0; i+1 < len(ts); i++ {
		r := *im.r
		r.t0, r.t1 = ts[i], ts[i+1]
		n := len(out)
		if r.short(dot) && !(n == first && i+2 == len(ts)) {
			if n > first {
				out[n-1].t1 = r.t1
			} else {
				ts[i+1] = r.t0
			}
			continue
		}
		r.visible = w.visible(&r, r.middle(), towards)
		if n > first && out[n-1].visible == r.visible {
			out[n-1].t1 = r.t1
			continue
		}
		out = append(out, r)
	}
	return out
}

// visible says whether a place of a stretch is seen from a direction.
func (w *wire) visible(r *run, t float64, towards Vec) bool {
	ring := w.ringOf(r, t)
	v := r.c.at(t)
	for _, d := range ring.free() {
		if !w.blocked(v.Add(d.Times(aside)), towards) {
			return true
		}
	}
	return false
}

func (w *wire) blocked(v, towards Vec) bool {
	for _, s := range w.p.line(v, towards, &w.ray) {
		if s.B > Grain {
			return true
		}
	}
	return false
}

// crossed adds to the splits of an image where another one crosses it, touches it or, lying
// along it, ends.
func (im *image) crossed(o *image) {
	g := Grain
	if im.r.c.kind != straight || o.r.c.kind != straight {
		g += 2 * sag
	}
	if im.lo.x > o.hi.x+g || o.lo.x > im.hi.x+g || im.lo.y > o.hi.y+g || o.lo.y > im.hi.y+g {
		return
	}
	for i := 0; i+1 < len(im.ps); i++ {
		a, b := im.ps[i], im.ps[i+1]
		lo, hi := pt{min(a.x, b.x) - g, min(a.y, b.y) - g}, pt{max(a.x, b.x) + g, max(a.y, b.y) + g}
		if lo.x > o.hi.x || o.lo.x > hi.x || lo.y > o.hi.y || o.lo.y > hi.y {
			continue
		}
		for j := 0; j+1 < len(o.ps); j++ {
			c, d := o.ps[j], o.ps[j+1]
			if min(c.x, d.x) > hi.x || max(c.x, d.x) < lo.x || min(c.y, d.y) > hi.y || max(c.y, d.y) < lo.y {
				continue
			}
			if f, ok := crossing(a, b, c, d); ok {
				im.splitAt(i, f)
			}
		}
		for _, e := range [2]pt{o.ps[0], o.ps[len(o.ps)-1]} {
			if d := b.sub(a); d.len() > 0 && fromStretch(e, a, b) < g {
				im.splitAt(i, between(e.sub(a).dot(d)/d.dot(d), 0, 1))
			}
		}
	}
}

// splitAt adds a split a part of the way along the chord from place i.
func (im *image) splitAt(i int, f float64) {
	im.splits = append(im.splits, im.ts[i]+f*(im.ts[i+1]-im.ts[i]))
}

// crossing gives how far along a–b (0 to 1) the stretch c–d crosses it, to a Grain over the
// ends of both; false where they do not cross or run side by side.
func crossing(a, b, c, d pt) (float64, bool) {
	u, v := b.sub(a), d.sub(c)
	lu, lv := u.len(), v.len()
	x := u.cross(v)
	if math.Abs(x) <= 1e-6*lu*lv {
		return 0, false
	}
	f, g := c.sub(a).cross(v)/x, c.sub(a).cross(u)/x
	if f < -Grain/lu || f > 1+Grain/lu || g < -Grain/lv || g > 1+Grain/lv {
		return 0, false
	}
	return between(f, 0, 1), true
}
