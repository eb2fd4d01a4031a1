package solid

import "math"

// Turned is one coaxial piece of a tool stack: a cylinder or the frustum of a cone about the
// tool's axis, which stands along Z. Z0 < Z1 are heights above the tip, R0 and R1 the radii
// there, all in mm.
type Turned struct {
	Z0, Z1, R0, R1 float64
	Name           string
}

// Move is a straight way of the tool's tip.
type Move struct{ From, To Vec }

// slope is how much the radius grows per mm of height.
func (t Turned) slope() float64 { return (t.R1 - t.R0) / (t.Z1 - t.Z0) }

// sized gives the piece with its surface moved out by g (in where negative): its ends by g,
// its side by g square to itself, but no wider than its widest end and g. The ball of radius
// g about every place of the piece lies in the result, and no place of the result is farther
// than √2·g from the piece. It comes as one or two pieces; none where nothing is left.
func (t Turned) sized(g float64, out []Turned) []Turned {
	if !finite(Vec{t.Z0, t.Z1, t.R0 + t.R1}) || !(t.Z1 > t.Z0) || t.Z1-t.Z0+2*g <= 0 || !(t.R0 >= 0) || !(t.R1 >= 0) {
		return out
	}
	k := t.slope()
	rim := g * math.Sqrt(1+k*k)
	widest := max(t.R0, t.R1) + g
	t.R0, t.R1 = t.R0-k*g+rim, t.R1+k*g+rim
	t.Z0, t.Z1 = t.Z0-g, t.Z1+g
	if widest <= 0 || t.R0 <= 0 && t.R1 <= 0 {
		return out
	}
	switch {
	case t.R0 < 0:
		t.Z0, t.R0 = t.Z0-t.R0/k, 0
	case t.R1 < 0:
		t.Z1, t.R1 = t.Z1-t.R1/k, 0
	}
	if t.R0 == t.R1 {
		return append(out, t)
	}
	end := t
	switch {
	case t.R1 > widest:
		t.Z1, t.R1 = t.Z1-(t.R1-widest)/k, widest
		end.Z0, end.R0, end.R1 = t.Z1, widest, widest
	case t.R0 > widest:
		t.Z0, t.R0 = t.Z0-(t.R0-widest)/k, widest
		end.Z1, end.R0, end.R1 = t.Z0, widest, widest
	default:
		return append(out, t)
	}
	return append(out, t, end)
}

// swept is what a piece of a stack sweeps, or a part of it: between two heights a stadium
// at every level, whose radius grows evenly with height.
type swept struct {
	z0, z1, r0, r1 float64
	a, b           pt
	// A slanting way: the stadium's ends move with height, and a frustum takes at each level
	// its largest radius there (the sweep is bounded from without by a little).
	slant bool
	tool  Turned
	move  Move
	bow   *bow // a turning way
}

func level(m Move) bool { return math.Abs(m.To[2]-m.From[2]) < hair }
func upright(m Move) bool {
	return math.Hypot(m.To[0]-m.From[0], m.To[1]-m.From[1]) < hair
}

// sweep gives what a piece sweeps on a way, as one or two parts.
func sweep(t Turned, m Move, out []swept) []swept {
	s := swept{r0: t.R0, r1: t.R1, a: pt{m.From[0], m.From[1]}, b: pt{m.To[0], m.To[1]}}
	low, high := min(m.From[2], m.To[2]), max(m.From[2], m.To[2])
	s.z0, s.z1 = t.Z0+low, t.Z1+low
	switch {
	case level(m):
		return append(out, s)
	case !upright(m):
		s.slant, s.tool, s.move, s.z1 = true, t, m, t.Z1+high
		return append(out, s)
	}
	s.b = s.a
	switch {
	case t.R0 == t.R1:
		s.z1 = t.Z1 + high
		return append(out, s)
	case t.R0 < t.R1: // the frustum at its lowest, and its widest end drawn up
		top := s
		top.r0, top.z0, top.z1 = t.R1, t.Z1+low, t.Z1+high
		return append(out, s, top)
	}
	foot := s
	foot.r1, foot.z1 = t.R0, t.Z0+high
	s.z0, s.z1 = t.Z0+high, t.Z1+high
	return append(out, foot, s)
}

// radiusAt gives the radius at a height, held within the ends.
func (s *swept) radiusAt(z float64) float64 {
	f := between((z-s.z0)/(s.z1-s.z0), 0, 1)
	return s.r0 + (s.r1-s.r0)*f
}

// constant says whether the outline is the same at every height.
func (s *swept) constant() bool { return !s.slant && s.r0 == s.r1 }

// inner gives what is swept at every level of a band, outer what is swept at some.
func (s *swept) inner(b band) flat {
	if s.slant {
		return s.slanting(b, false)
	}
	return s.level(min(s.radiusAt(b.lo), s.radiusAt(b.hi)))
}

func (s *swept) outer(b band) flat {
	if s.slant {
		return s.slanting(b, true)
	}
	return s.level(max(s.radiusAt(b.lo), s.radiusAt(b.hi)))
}

// level gives what a tool of radius r sweeps at a level; on a turning way the disc that holds it.
func (s *swept) level(r float64) flat {
	if s.bow != nil && r > 0 {
		return disc(s.bow.mid, s.bow.r+r)
	}
	return stadium(s.a, s.b, r)
}

// slanting gives the stadium over a band of a slanting way: the tool is at a level while its
// tip is between Z1 and Z0 below that level.
func (s *swept) slanting(b band, wide bool) flat {
	m, t := s.move, s.tool
	if m.To[2] < m.From[2] {
		m.From, m.To = m.To, m.From
	}
	rise := m.To[2] - m.From[2]
	lo, hi := b.hi, b.lo
	if wide {
		lo, hi = b.lo, b.hi
	}
	start := between((lo-t.Z1-m.From[2])/rise, 0, 1)
	stop := between((hi-t.Z0-m.From[2])/rise, 0, 1)
	if start > stop {
		return flat{}
	}
	at := func(f float64) pt {
		v := m.From.Add(m.To.Sub(m.From).Times(f))
		return pt{v[0], v[1]}
	}
	r0, r1 := s.widest(b.lo, m.From[2], rise), s.widest(b.hi, m.From[2], rise)
	if wide {
		return stadium(at(start), at(stop), max(r0, r1))
	}
	return stadium(at(start), at(stop), min(r0, r1))
}

// widest gives the largest radius that a rising tool shows at a level.
func (s *swept) widest(z, from, rise float64) float64 {
	t := s.tool
	high := between(z-from, t.Z0, t.Z1)
	low := between(z-from-rise, t.Z0, t.Z1)
	r := func(h float64) float64 { return t.R0 + t.slope()*(h-t.Z0) }
	return max(r(high), r(low))
}

// levels adds the heights at which the sweep begins, ends or changes its way of growing.
func (s *swept) levels(out []float64) []float64 {
	out = append(out, s.z0, s.z1)
	if s.slant {
		for _, z := range [2]float64{s.move.From[2], s.move.To[2]} {
			out = append(out, z+s.tool.Z0, z+s.tool.Z1)
		}
	}
	return out
}

// bounds gives a box round the sweep.
func (s *swept) bounds() (lo, hi Vec) {
	r := max(s.r0, s.r1)
	if s.bow != nil {
		m, far := s.bow.mid, s.bow.r+r
		return Vec{m.x - far, m.y - far, s.z0}, Vec{m.x + far, m.y + far, s.z1}
	}
	return Vec{min(s.a.x, s.b.x) - r, min(s.a.y, s.b.y) - r, s.z0},
		Vec{max(s.a.x, s.b.x) + r, max(s.a.y, s.b.y) + r, s.z1}
}
