package solid

import "math"

// Volumes and centres of mass. Whole shapes have closed forms; what a removal took is added up
// from level sections, in whichever of the three directions more of the shapes near it stand
// upright, and a piece is its blank less what was taken.

// moment is a volume in mm³ and its first moments in mm⁴; of a section an area and those.
type moment struct {
	V float64
	M Vec
}

// of gives the moment of a volume whose middle of mass lies at a place.
func of(v float64, at Vec) moment { return moment{v, at.Times(v)} }

// plus gives a + f·b.
func (a moment) plus(b moment, f float64) moment { return moment{a.V + b.V*f, a.M.Add(b.M.Times(f))} }

// placed gives the moment of the same metal in another pose.
func (a moment) placed(q Pose) moment { return moment{a.V, q.Dir(a.M).Add(q.shift.Times(a.V))} }

// Volume gives the metal in mm³, to 1e-4 of it for a piece of which a tenth or more is left.
// A piece remembers it, and works it out from that of the piece it was cut from.
func (p *Piece) Volume() float64 { return max(0, p.moment().V) }

// Centre gives the centre of mass, of metal as dense everywhere; to 1e-4 of the blank's size for
// a piece of which a tenth or more is left; false where no metal is left.
func (p *Piece) Centre() (Vec, bool) {
	m := p.moment()
	if !(m.V > Grain*Grain*Grain) {
		return Vec{}, false
	}
	return m.M.Times(1 / m.V), true
}

// Mass gives the mass in kg of a piece of a density in kg/m³ (7850 is common for steel: the
// figure belongs to the caller, with its source). What is no density gives NaN.
func (p *Piece) Mass(density float64) float64 {
	if !(density > 0) || math.IsInf(density, 0) {
		return math.NaN()
	}
	return p.Volume() * density * 1e-9
}

func (p *Piece) moment() moment {
	p.once.Do(func() { p.metal = p.measure() })
	return p.metal
}

func (p *Piece) measure() moment {
	switch {
	case p.same != nil:
		return p.same.moment().placed(p.pose)
	case p.lumps != nil:
		return p.measureJoined()
	case p.past == nil:
		return p.blank.moment()
	}
	m := p.past.moment()
	for i := len(p.past.cuts); i < len(p.cuts); i++ {
		m = m.plus(p.taken(i), -1)
	}
	return m
}

// moment gives that of a whole shape: closed forms, of a prism pyramids from one corner to its
// faces; the middle of a pyramid lies at three quarters of the way from its tip to that of its
// base.
func (s *Shape) moment() (sum moment) {
	switch s.kind {
	case box:
		d := s.hi.Sub(s.lo)
		return of(d[0]*d[1]*d[2], s.lo.Add(s.hi).Times(0.5))
	case round:
		// The middle of a frustum: h·(r0² + 2·r0·r1 + 3·r1²) / 4·(r0² + r0·r1 + r1²) from the
		// end of radius r0 (Bronshtein and Semendyayev, Handbook of Mathematics).
		q := s.r0*s.r0 + s.r0*s.r1 + s.r1*s.r1
		at := s.h * (s.r0*s.r0 + 2*s.r0*s.r1 + 3*s.r1*s.r1) / (4 * q)
		return of(math.Pi*s.h/3*q, s.from.Add(s.axis.Times(at)))
	case ball:
		return s.ballMoment()
	case prism:
		c := s.corners[0]
		for _, f := range s.faces {
			base := s.faceMoment(f)
			h := f.C - f.N.Dot(c)
			if base.V > 0 && h > hair {
				sum = sum.plus(of(base.V*h/3, base.M.Times(0.75/base.V).Add(c.Times(0.25))), 1)
			}
		}
	}
	return sum
}

// faceMoment gives the area of a face of a prism and its first moments: triangles round the
// middle of its corners.
func (s *Shape) faceMoment(f Half) (sum moment) {
	e1 := square(f.N)
	e2 := f.N.Cross(e1)
	var ps []pt
	for _, c := range s.corners {
		if math.Abs(f.N.Dot(c)-f.C) < hair {
			ps = append(ps, pt{c.Dot(e1), c.Dot(e2)})
		}
	}
	if len(ps) < 3 {
		return moment{}
	}
	ps = around(ps)
	at := func(p pt) Vec { return f.N.Times(f.C).Add(e1.Times(p.x)).Add(e2.Times(p.y)) }
	for i := 1; i+1 < len(ps); i++ {
		a := ps[i].sub(ps[0]).cross(ps[i+1].sub(ps[0])) / 2
		sum = sum.plus(of(a, at(ps[0].add(ps[i]).add(ps[i+1]).times(1.0/3))), 1)
	}
	return sum
}

// layers is what is cut into level sections to be measured.
type layers struct {
	scene
	region []Shape // all of them hold
	pl     plane
}

// taken gives the metal that a removal took from what the earlier ones had left: its sections
// added up between the heights at which any outline begins, ends or turns, halving where they
// change unevenly.
func (p *Piece) taken(i int) moment {
	r := p.cuts[i]
	before := &Piece{blank: p.blank, cuts: p.cuts[:i:i]}
	s := &layers{region: []Shape{r.Take, p.blank}}
	s.near(before, r.Take.lo, r.Take.hi)
	for j := range r.Less { // what it left standing is not taken
		s.cuts, s.number = append(s.cuts, &Removal{Take: r.Less[j]}), append(s.number, -1)
	}
	return s.measure()
}

// measure turns everything to where most of it stands upright, and adds up.
func (s *layers) measure() moment {
	up, best := Vec{0, 0, 1}, s.effort(Vec{0, 0, 1})
	for _, a := range s.ways() {
		if e := s.effort(a); e < best {
			up, best = a, e
		}
	}
	if up[2] == 1 {
		return s.sum()
	}
	q := Attitude(up, square(up))
	for i := range s.region {
		s.region[i] = s.region[i].Placed(q)
	}
	for i, c := range s.cuts {
		t := c.placed(q)
		s.cuts[i] = &t
	}
	return s.sum().placed(q.Inverse())
}

// ways gives the directions worth looking along: the axes, and up to six of the rounds' own.
func (s *layers) ways() []Vec {
	out := []Vec{{1, 0, 0}, {0, 1, 0}}
	see := func(x *Shape) {
		if x.kind != round || len(out) == 8 {
			return
		}
		for _, o := range out {
			if math.Abs(o.Dot(x.axis)) > 1-1e-12 {
				return
			}
		}
		out = append(out, x.axis)
	}
	for i := range s.region {
		see(&s.region[i])
	}
	for _, c := range s.cuts {
		see(&c.Take)
		for j := range c.Less {
			see(&c.Less[j])
		}
	}
	return out
}

// effort tells how badly shapes can be cut by planes square to a direction: those whose outline
// is not exact count most, those whose outline changes a little.
func (s *layers) effort(up Vec) (sum int) {
	add := func(x *Shape) {
		along := math.Abs(x.axis.Dot(up))
		switch {
		case x.kind == round && along > 1-1e-12:
			if x.r0 != x.r1 {
				sum++
			}
		case x.kind == round && along < 1e-9 && x.r0 == x.r1:
			sum++
		case x.kind == ball && (x.whole() || along > 1-1e-12):
			sum++
		case x.kind == round || x.kind == ball:
			sum += 100
		default:
			for _, f := range x.flats() {
				if n := math.Abs(f.N.Dot(up)); n > 1e-9 && n < 1-1e-9 {
					sum++
				}
			}
		}
	}
	for i := range s.region {
		add(&s.region[i])
	}
	for _, c := range s.cuts {
		add(&c.Take)
		for j := range c.Less {
			add(&c.Less[j])
		}
	}
	return sum
}

func (s *layers) sum() (sum moment) {
	lo, hi := math.Inf(-1), math.Inf(1)
	s.levels = s.levels[:0]
	for i := range s.region {
		lo, hi = max(lo, s.region[i].lo[2]), min(hi, s.region[i].hi[2])
		s.levels = s.region[i].levels(s.levels)
	}
	if !(lo < hi) {
		return sum
	}
	s.blank = &s.region[0]
	s.addLevels(lo, hi)
	rough := moment{}
	for i := 0; i+1 < len(s.levels); i++ {
		b := band{s.levels[i], s.levels[i+1]}
		rough = rough.plus(s.at(b.mid()), b.height())
	}
	for i := 0; i+1 < len(s.levels); i++ {
		b := band{s.levels[i], s.levels[i+1]}
		if s.even(b) {
			sum = sum.plus(s.at(b.mid()), b.height())
			continue
		}
		sum = sum.plus(s.halved(b, s.over(b), 1e-4*rough.V/(hi-lo), 10), 1)
	}
	return sum
}

// even says whether no outline changes within a band.
func (s *layers) even(b band) bool {
	for i := range s.region {
		if !s.region[i].constant() {
			return false
		}
	}
	return s.constant(b)
}

// at gives the moment of the section at a height.
func (s *layers) at(z float64) moment {
	p := &s.pl
	p.region = p.region[:0]
	for i := range s.region {
		f := s.region[i].section(z)
		if !f.ok {
			return moment{}
		}
		p.region = append(p.region, f)
	}
	p.openings(&s.scene, z)
	return p.moment(z)
}

func (s *layers) over(b band) (sum moment) {
	for _, r := range rowsBetween(b.lo, b.hi) {
		sum = sum.plus(s.at(r.y), r.w)
	}
	return sum
}

// halved compares a band with its halves until they agree to some mm² for each mm of height.
func (s *layers) halved(b band, whole moment, error float64, deep int) moment {
	low, high := band{b.lo, b.mid()}, band{b.mid(), b.hi}
	x, y := s.over(low), s.over(high)
	if math.Abs(x.V+y.V-whole.V) <= error*b.height() || deep == 0 {
		return x.plus(y, 1)
	}
	return s.halved(low, x, error, deep-1).plus(s.halved(high, y, error, deep-1), 1)
}
