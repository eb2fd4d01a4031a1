package solid

import (
	"math"
	"slices"
)

// Jaws round an axis of turning: chuck, collet, mandrel, bored soft jaws, and centres.

// Jaws are count like jaws evenly round an axle, the middle of the first at an angle in radians
// from top towards back. They reach from station From to To along the axis.
type Jaws struct {
	Axle     Axle
	Count    int
	Start    float64
	Width    float64 // mm, square to the axis; of a collet or another sleeve 0: all round
	From, To float64

	// Bored jaws have the radius of the work (collets, soft jaws bored to size, mandrels); others
	// have flat faces, as a chuck's narrow jaws act, and touch round work in a line.
	Bored bool
	// Inside jaws press outwards in a bore. They count as bored.
	Inside bool
	// Independent jaws each close on what is under them; others stand at one distance.
	Independent bool
}

// Jaw is what one jaw touches. Its contact lies along the axis (Lo[0], Hi[0]) and across it
// (mm from the jaw's middle, round the surface where bored).
type Jaw struct {
	Contact
	Angle  float64 // of its middle
	Radius float64 // distance of the gripping face from the axis, mm
}

// Grip is what all jaws touch.
type Grip struct {
	Jaws     []Jaw
	Touching int     // how many of them touch
	Area     float64 // mm² altogether
	From, To float64 // stations between which any jaw touches
	Least    float64 // length along the axis that the jaw that touches least has, mm
	Behind   float64 // least metal behind any touched place, straight inwards, in mm
}

// Grip gives what jaws touch. Bored jaws close to the outermost metal between their stations, or
// open to the innermost where inside; their areas are found along straight lines of the surface,
// exact along the axis and to 1e-3 round it; beside the edge of a slit the metal straight behind is
// as thin as the slit's wall leaves it there. Flat jaws are as exact as Contact.
func (p *Piece) Grip(j Jaws) Grip {
	if j.Count < 1 || j.Count > most360 || !(j.From < j.To) || !(j.Width >= 0) || !finite(Vec{j.From, j.To, j.Width}) || !finite(Vec{j.Start, j.Axle.Y, j.Axle.Z}) {
		return Grip{}
	}
	var all []Jaw
	if j.Bored || j.Inside || j.Width == 0 {
		all = p.boredJaws(j)
	} else {
		all = p.flatJaws(j)
	}
	return summed(all)
}

func summed(all []Jaw) Grip {
	g := Grip{Jaws: all, From: math.Inf(1), To: math.Inf(-1), Least: math.Inf(1), Behind: math.Inf(1)}
	for _, w := range all {
		if !w.Touches {
			g.Least = 0
			continue
		}
		g.Touching++
		g.Area += w.Area
		g.From, g.To = min(g.From, w.Lo[0]), max(g.To, w.Hi[0])
		g.Least, g.Behind = min(g.Least, w.Hi[0]-w.Lo[0]), min(g.Behind, w.Behind)
	}
	if g.Touching == 0 {
		return Grip{Jaws: all}
	}
	return g
}

// flatJaws presses each jaw as a rectangle from its own side.
func (p *Piece) flatJaws(j Jaws) []Jaw {
	out := make([]Jaw, j.Count)
	views := make([]*Piece, j.Count)
	tops := make([]float64, j.Count)
	most := math.Inf(-1)
	r := Rect{[2]float64{j.From, -j.Width / 2}, [2]float64{j.To, j.Width / 2}}
	for i := range out {
		out[i].Angle = j.Start + 2*math.Pi*float64(i)/float64(j.Count)
		up := Out(out[i].Angle)
		q := Attitude(up, up.Cross(Vec{1, 0, 0})) // X is x
		views[i] = p.Placed(q.Shifted(q.Dir(j.Axle.At(0)).Times(-1)))
		if tops[i] = views[i].topUnder(r); tops[i] > 0 {
			most = max(most, tops[i])
		}
	}
	for i := range out {
		at := most
		if j.Independent {
			at = tops[i]
		}
		if out[i].Radius = at; !(at > 0) || math.IsInf(at, 0) {
			continue
		}
		out[i].Contact = views[i].Contact(2, 1, at, r)
		if out[i].Touches {
			back := Attitude(Out(out[i].Angle), Out(out[i].Angle).Cross(Vec{1, 0, 0})).Inverse()
			out[i].Thin = back.Point(out[i].Thin).Add(Vec{0, j.Axle.Y, j.Axle.Z})
		}
	}
	return out
}

// topUnder gives the height of the highest metal within a rectangle; minus infinity for none.
func (p *Piece) topUnder(r Rect) float64 {
	lo, hi := p.blank.lo, p.blank.hi
	lo, hi = lo.Sub(Vec{1, 1, 1}), hi.Add(Vec{1, 1, 1})
	only := p.Cut(
		Removal{Take: Box(lo, Vec{r.Lo[0], hi[1], hi[2]})}, Removal{Take: Box(Vec{r.Hi[0], lo[1], lo[2]}, hi)},
		Removal{Take: Box(lo, Vec{hi[0], r.Lo[1], hi[2]})}, Removal{Take: Box(Vec{lo[0], r.Hi[1], lo[2]}, hi)})
	if z, ok := only.top(); ok {
		return z
	}
	return math.Inf(-1)
}

// boredJaws presses each jaw as a part of a cylinder.
func (p *Piece) boredJaws(j Jaws) []Jaw {
	r, ok := p.outermost(j.Axle, j.From, j.To)
	if j.Inside {
		r, ok = p.innermost(j.Axle, j.From, j.To)
	}
	out := make([]Jaw, j.Count)
	half := math.Pi / float64(j.Count)
	if j.Width > 0 && ok && r > 0 {
		half = min(half, j.Width/(2*r))
	}
	for i := range out {
		a := j.Start + 2*math.Pi*float64(i)/float64(j.Count)
		if ok && r > 0 {
			s := sleeve{axle: j.Axle, x0: j.From, x1: j.To, r0: r, r1: r, inside: j.Inside}
			out[i] = p.patch(s, a-half, a+half)
			out[i].Radius = r
		}
		out[i].Angle = a
	}
	return out
}

// outermost gives the distance from an axle of the outermost metal between two stations.
func (p *Piece) outermost(a Axle, from, to float64) (float64, bool) {
	box := Box(p.blank.lo, p.blank.hi)
	all := a.clear(box)
	ends := []Removal{a.Facing(box, from, -1, ""), a.Facing(box, to, 1, "")}
	only := p.Cut(ends...).Placed(Attitude(Vec{1, 0, 0}, Vec{0, 1, 0}))
	beyond := func(r float64) bool {
		axis := Attitude(Vec{1, 0, 0}, Vec{0, 1, 0})
		_, ok := only.Cut(Removal{Take: Cylinder(axis.Point(a.At(from-1)), axis.Point(a.At(to+1)), r)}).top()
		return ok
	}
	lo, hi := 0.0, all
	if !beyond(Grain) {
		return 0, false
	}
	for hi-lo > Grain/10 {
		if m := (lo + hi) / 2; beyond(m) {
			lo = m
		} else {
			hi = m
		}
	}
	return lo, true
}

// innermost gives the radius of the widest cylinder about an axle that is clear between two
// stations.
func (p *Piece) innermost(a Axle, from, to float64) (float64, bool) {
	q := Attitude(Vec{1, 0, 0}, Vec{0, 1, 0})
	up := p.Placed(q)
	tip := q.Point(a.At(from))
	lo, hi := 0.0, a.clear(Box(p.blank.lo, p.blank.hi))
	meets := func(r float64) bool {
		_, ok := up.Meets(Turned{0, to - from, r, r, "jaws"}, Move{tip, tip})
		return ok
	}
	if !meets(hi) || meets(2*Grain) {
		return 0, false
	}
	for hi-lo > Grain/10 {
		if m := (lo + hi) / 2; meets(m) {
			hi = m
		} else {
			lo = m
		}
	}
	return lo - Grain, true // Meets takes the cylinder a Grain smaller
}

// sleeve is a cylinder or cone that touches metal from without or, inside, from within.
type sleeve struct {
	axle           Axle
	x0, x1, r0, r1 float64
	inside         bool
}

// skin is how far within the metal a touch is looked for: more than the errors of the radius.
const skin = 3 * Grain

// patch gives what a part of a sleeve between two angles touches. Along each of its straight
// lines the touched stretches are exact; round it they are added up between the angles at which
// an outline seen along the axis crosses the sleeve, and at most a twelfth of a turn apart.
func (p *Piece) patch(s sleeve, from, to float64) Jaw {
	g := patching{p: p, s: s, middle: (from + to) / 2, xs: p.along(s.x0, s.x1)}
	g.jaw.Angle = g.middle
	g.jaw.Behind = math.Inf(1)
	g.lo, g.hi = [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	ts := p.breaks(s, from, to)
	for i := 0; i+1 < len(ts); i++ {
		a, b := ts[i], ts[i+1]
		in := min(step/max(s.r0, s.r1), (b-a)/4)
		g.row(a+in, 0)
		g.row(b-in, 0)
		for _, r := range rowsBetween(a, b) {
			g.row(r.y, r.w)
		}
	}
	g.jaw.Touches = g.jaw.Area > Grain*Grain
	if !g.jaw.Touches {
		return Jaw{Angle: g.middle}
	}
	g.jaw.Lo, g.jaw.Hi = g.lo, g.hi
	slices.Sort(g.jaw.On)
	g.jaw.On = slices.Compact(g.jaw.On)
	return g.jaw
}

type patching struct {
	p      *Piece
	s      sleeve
	middle float64
	xs     []float64 // stations at which what is behind can change
	jaw    Jaw
	lo, hi [2]float64
	scan   scan
}

// row adds one straight line of the sleeve at an angle, with a share of the angle.
func (g *patching) row(t, w float64) {
	s := &g.s
	u := Out(t)
	a := s.axle.At(s.x0).Add(u.Times(s.r0))
	b := s.axle.At(s.x1).Add(u.Times(s.r1))
	d := b.Sub(a)
	l := d.Len()
	d = d.Unit()
	n := u.Sub(d.Times(d.Dot(u))).Unit() // out of the sleeve's own axis
	in := n.Times(-1)
	if s.inside {
		in = n
	}
	spans := slices.Clone(g.p.line(a.Add(in.Times(skin)), d, &g.scan))
	for _, x := range spans {
		x0, x1 := max(x.A, 0), min(x.B, l)
		if x1-x0 < Grain {
			continue
		}
		g.jaw.Area += w * (x1 - x0) * (s.r0 + (s.r1-s.r0)*(x0+x1)/2/l)
		wide := (t - g.middle) * max(s.r0, s.r1)
		sx := func(at float64) float64 { return s.x0 + d[0]*at }
		g.lo = [2]float64{min(g.lo[0], sx(x0), sx(x1)), min(g.lo[1], wide)}
		g.hi = [2]float64{max(g.hi[0], sx(x0), sx(x1)), max(g.hi[1], wide)}
		g.behind(a, d, in, x0, x1)
	}
}

// behind looks inwards from places of a touched stretch.
func (g *patching) behind(a, d, in Vec, x0, x1 float64) {
	e := min(step, (x1-x0)/4)
	look := []float64{x0 + e, (x0 + x1) / 2, x1 - e}
	for _, x := range g.xs {
		if math.Abs(d[0]) > 1e-9 {
			if at := (x - g.s.x0) / d[0]; at > x0+e && at < x1-e {
				look = append(look, at-e, at+e)
			}
		}
	}
	for i, at := range look {
		from := a.Add(d.Times(at)).Sub(in)
		for _, x := range g.p.line(from, in, &g.scan) {
			if x.B <= 1+skin {
				continue
			}
			if x.A < 1+2*skin {
				behind := x.B - max(x.A, 1)
				if i == 1 { // at the ends of a stretch another surface may be as near
					g.jaw.On = append(g.jaw.On, g.p.name(x.EnterBy))
				}
				if behind < g.jaw.Behind {
					g.jaw.Behind, g.jaw.Thin, g.jaw.ThinBy = behind, from.Add(in), g.p.name(x.LeaveBy)
				}
			}
			break
		}
	}
}

// along gives the stations between two at which a shape begins, ends or has its middle.
func (p *Piece) along(from, to float64) []float64 {
	var xs []float64
	p.shapes(func(s *Shape) {
		if s.kind != empty {
			xs = append(xs, s.lo[0], (s.lo[0]+s.hi[0])/2, s.hi[0])
		}
	})
	return tidy(xs, min(from, to), max(from, to), Grain)
}

// breaks gives the angles, from one to another, at which outlines seen along the axis cross the
// circles of a sleeve's ends.
func (p *Piece) breaks(s sleeve, from, to float64) []float64 {
	q := Attitude(Vec{1, 0, 0}, Vec{0, 1, 0}).Shifted(Vec{}) // Z is x
	c := q.Point(s.axle.At(0))
	var cand []pt
	circles := []arc{{c: pt{c[0], c[1]}, r: max(s.r0-skin, hair)}, {c: pt{c[0], c[1]}, r: max(s.r1-skin, hair)},
		{c: pt{c[0], c[1]}, r: s.r0 + skin}, {c: pt{c[0], c[1]}, r: s.r1 + skin}}
	p.shapes(func(x *Shape) {
		seen := x.Placed(q)
		for _, f := range seen.shadow() {
			if f.poly == nil && f.r < 2*hair {
				continue
			}
			as, ls := f.border(nil, nil)
			for i := range circles {
				for k := range as {
					cand = arcArc(&circles[i], &as[k], cand)
				}
				for k := range ls {
					cand = arcLine(&circles[i], &ls[k], cand)
				}
			}
		}
	})
	ts := []float64{from, to}
	back := q.Inverse()
	for _, v := range cand {
		w := back.Point(Vec{v.x, v.y, 0})
		t := math.Atan2(w[1]-s.axle.Y, w[2]-s.axle.Z)
		for t < from {
			t += 2 * math.Pi
		}
		if t < to {
			ts = append(ts, t)
		}
	}
	n := int(math.Ceil((to - from) / (math.Pi / 6)))
	for i := 1; i < n; i++ {
		ts = append(ts, from+(to-from)*float64(i)/float64(n))
	}
	return tidy(ts, from, to, 1e-7)
}
