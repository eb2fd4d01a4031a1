package eval

import (
	"math"
	"slices"

	"fettle/eval/solid"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// placedFace is the direction in which a face looks once its part is placed.
func placedFace(q solid.Pose, f model.Face) model.Face {
	if f == model.NoFace {
		return f
	}
	return mostly(q.Dir(Normal(f)))
}

// placedPlane is a flat face once its part is placed.
func placedPlane(q solid.Pose, pl Plane) Plane {
	if pl.Face == model.NoFace {
		return pl
	}
	var v solid.Vec
	v[pl.Face.Axis()] = pl.At
	f := placedFace(q, pl.Face)
	return Plane{f, q.Point(v)[f.Axis()], pl.Name}
}

// placed is the state of a face that looks as f, once its part is placed.
func (s FaceState) placed(q solid.Pose, f model.Face) FaceState {
	s.At = placedPlane(q, Plane{Face: f, At: s.At}).At
	return s
}

// placed is a burr of a part as that is placed. Where the part lies aslant the face that it stands out of is
// the one that looks most its way, and the part's own is kept, to be found again when it is placed back.
func (b *Burr) placed(q solid.Pose) *Burr {
	n := *b
	n.A, n.B = q.Point(b.A), q.Point(b.B)
	switch {
	case b.On == model.NoFace:
	case squareTo(q):
		n.On = placedFace(q, b.On)
	case b.Home != model.NoFace:
		n.On, n.Home = b.Home, model.NoFace
	default:
		n.On, n.Home = mostly(q.Dir(Normal(b.On))), b.On
	}
	return &n
}

// squareTo says whether a pose carries axes onto axes.
func squareTo(q solid.Pose) bool {
	for i := range 3 {
		var v solid.Vec
		v[i] = 1
		if d := q.Dir(v); faceAlong(d) == model.NoFace || d.Sub(Normal(faceAlong(d))).Len() > 1e-9 {
			return false
		}
	}
	return true
}

// unturnedBy says whether a pose shifts and does not turn.
func unturnedBy(q solid.Pose) bool {
	return q.Dir(solid.Vec{1, 0, 0})[0] > 1-1e-9 && q.Dir(solid.Vec{0, 1, 0})[1] > 1-1e-9
}

// onAxis says whether a pose keeps a turned part on the axis with its top to the top, and whether it is
// turned end for end on it: angles then grow the other way.
func onAxis(q solid.Pose) (yes, about bool) {
	at := q.Point(solid.Vec{})
	x := q.Dir(solid.Vec{1, 0, 0})
	return near(at[1], 0) && near(at[2], 0) && near(math.Abs(x[0]), 1) && near(q.Dir(solid.Vec{0, 0, 1})[2], 1), x[0] < 0
}

// forms are the forms of a member as they lie in the assembly.
func (m *Member) forms(first *Part) []*Form {
	at := m.Pose.Point(solid.Vec{})
	lathe := first.Round && near(math.Abs(m.Pose.Dir(solid.Vec{1, 0, 0})[0]), 1) && near(at[1], 0) && near(at[2], 0)
	now := map[*Form]*Form{}
	out := make([]*Form, len(m.Part.Forms))
	for i, f := range m.Part.Forms {
		g := *f
		g.beside = nil
		if g.Owner == nil {
			g.Owner, g.Own = m.Part, f
		}
		if h, ok := m.Part.holeLine(f); ok && !lathe && f.Lathe != nil && g.Own == f {
			g.Lathe, g.Mouths, g.Dir, g.Depth, g.Through = nil, []solid.Vec{h.at}, h.dir, model.Sure(h.long), h.through
			into := faceAlong(h.dir.Times(-1))
			g.Into = Plane{into, h.at[into.Axis()], into.String()}
		}
		out[i], now[f] = &g, &g
	}
	swap := func(f **Form) {
		if g, ok := now[*f]; ok {
			*f = g
		}
	}
	for _, g := range out {
		swap(&g.Of)
		swap(&g.On)
		g.Rims = slices.Clone(g.Rims)
		for i := range g.Rims {
			swap(&g.Rims[i].Hole)
		}
		if g.Lathe != nil {
			l := *g.Lathe
			swap(&l.On)
			g.Lathe = &l
		}
		g.placed(m.Pose, m.Part.Round)
	}
	return out
}

// aside says why a form cannot be laid in the frame of the whole, so that it is made in that of its own part.
func (f *Form) aside(says string) {
	f.later(says)
	f.Aside = true
}

// placed lays a form where its part sits.
func (f *Form) placed(q solid.Pose, round bool) {
	shifted := unturnedBy(q)
	coaxial, about := onAxis(q)
	switch {
	case f.Wrong != "" || len(f.Lacks) > 0:
		return
	case !squareTo(q):
		f.aside("it lies aslant to the first part of the assembly")
		return
	case round && !coaxial && (len(f.Spins) > 0 || f.Tooth != nil || f.Scale != nil || f.Seat != nil):
		f.aside("it goes round the axis of a part that is turned against the first one of the assembly")
		return
	case (f.EndRing != nil || f.Way != nil || f.KeyBore != nil || f.Rack != nil || f.Scale != nil && f.Scale.Ruled != nil) && !(shifted && q.Point(solid.Vec{}).Len() < model.Grain):
		f.aside("it is of a part that does not lie as the first one of the assembly does")
		return
	case about && (f.Tooth != nil || f.Scale != nil):
		f.aside("it goes round the axis of a part that is turned about against the first one of the assembly")
		return
	case !shifted && len(f.Copies) > 0:
		f.aside("its places go round a circle of a part that is turned against the first one of the assembly")
		return
	}
	f.Into = placedPlane(q, f.Into)
	f.Dir = q.Dir(f.Dir)
	f.Dirs = slices.Clone(f.Dirs)
	for i := range f.Dirs {
		f.Dirs[i] = q.Dir(f.Dirs[i])
	}
	f.Mouths = slices.Clone(f.Mouths)
	for i := range f.Mouths {
		f.Mouths[i] = q.Point(f.Mouths[i])
	}
	a, b := q.Point(f.Lo), q.Point(f.Hi)
	for i := range 3 {
		f.Lo[i], f.Hi[i] = min(a[i], b[i]), max(a[i], b[i])
	}
	open := f.Open
	for _, face := range model.Faces {
		f.Open[placedFace(q, face)] = open[face]
	}
	axis := func(i int) int { return placedFace(q, model.FaceOn(i, 1)).Axis() }
	f.Across, f.Along = axis(f.Across), axis(f.Along)
	f.Side = placedFace(q, f.Side)
	f.Edge = [2]Plane{placedPlane(q, f.Edge[0]), placedPlane(q, f.Edge[1])}
	for i := range f.Rims {
		f.Rims[i].Face = placedPlane(q, f.Rims[i].Face)
	}
	f.placedRound(q)
	f.placedMore(q)
}

// placedRound lays what a lathe makes.
func (f *Form) placedRound(q solid.Pose) {
	if f.Lathe == nil {
		return
	}
	l := f.Lathe
	along := placedFace(q, model.FaceOn(f.About.Along, 1))
	at := q.Point(f.About.At)
	shift := at[along.Axis()]
	l.X0, l.X1 = shift+along.Sign()*l.X0, shift+along.Sign()*l.X1
	if along.Sign() < 0 {
		l.X0, l.X1, l.R0, l.R1 = l.X1, l.X0, l.R1, l.R0
	}
	l.End = placedFace(q, l.End)
	f.About = AxisAt(along.Axis(), at)
}

// placedMore lays what only some forms have.
func (f *Form) placedMore(q solid.Pose) {
	if f.Seat != nil {
		s := *f.Seat
		s.At = q.Point(solid.Vec{s.At, 0, 0})[0]
		f.Seat = &s
	}
	if _, about := onAxis(q); about {
		f.Spins = slices.Clone(f.Spins)
		for i := range f.Spins {
			f.Spins[i] = math.Mod(360-f.Spins[i], 360)
		}
	}
	if f.Skew != nil {
		s := *f.Skew
		s.A, s.B = q.Point(s.A), q.Point(s.B)
		f.Skew = &s
	}
	if f.Under != nil {
		u := *f.Under
		was := (f.Lo[f.Across] + f.Hi[f.Across]) / 2
		u.Middle = was // its middle line lies in the middle of its room
		f.Under = &u
	}
	if len(f.Copies) > 0 {
		f.Centre = q.Point(f.Centre)
	}
	if len(f.Trim) > 0 {
		trim := make([]solid.Removal, len(f.Trim))
		for i, r := range f.Trim {
			trim[i] = turnedBack(r, q)
		}
		f.Trim = trim
	}
}

// Kind is what kind of feature it is. The bore of a turned part that is joined to one that does not
// turn about the same axis is a hole there as any other.
func (f *Form) Kind() string {
	if f.Feature.Kind == "bore" && f.Lathe == nil && len(f.Mouths) > 0 {
		return "hole"
	}
	return f.Feature.Kind
}

// exit is the plane by which a hole of a member leaves its own part.
func (f *Form) exit() Plane {
	face := f.Into.Face
	return Plane{face.Opposite(), f.Into.At - face.Sign()*f.Depth.V, face.Opposite().String() + " of " + f.Owner.Path()}
}

// behind is where the last metal of a hole's own part lies from a place inwards, in an assembly.
func (k *Cut) behind(f *Form, start, in solid.Vec) float64 {
	n := k.Part.memberOf(f.Owner)
	if n < 0 {
		return f.Depth.V
	}
	out := k.Part.outward()
	far := f.Depth.V
	for _, l := range k.Part.lumpsOf(k.Before, n) {
		if spans := l.Ray(start.Sub(in.Times(out)), in); len(spans) > 0 {
			far = max(far, spans[len(spans)-1].B-out)
		}
	}
	return far
}

// hideBurrs takes the burrs that stand in a joint, between two members, out of those that jaws and
// instruments meet; they are there again when the members are taken apart. Only those of one step, where one is named.
func (p *Part) hideBurrs(s *State, by *finding.Spot) {
	var left []*Burr
	for _, b := range s.Burrs {
		if by != nil && b.By != *by || !p.buried(s, b) {
			left = append(left, b)
			continue
		}
		s.Hidden = append(s.Hidden[:len(s.Hidden):len(s.Hidden)], b)
	}
	s.Burrs = left
}

// buried says whether another member's metal stands over a burr on all sides of it.
func (p *Part) buried(s *State, b *Burr) bool {
	own := p.memberOf(b.Of)
	if own < 0 || b.On == model.NoFace {
		return false
	}
	up := Normal(b.On).Times(0.02)
	var side, other solid.Vec
	side[(b.On.Axis()+1)%3], other[(b.On.Axis()+2)%3] = 1, 1
	places := []solid.Vec{b.A.Times(0.75).Add(b.B.Times(0.25)), b.A.Times(0.25).Add(b.B.Times(0.75))}
	if b.Round {
		r := b.R + 0.05
		places = []solid.Vec{b.A.Add(side.Times(r)), b.A.Sub(side.Times(r)), b.A.Add(other.Times(r)), b.A.Sub(other.Times(r))}
	}
	for _, v := range places {
		if !p.covered(s, own, v.Add(up)) {
			return false
		}
	}
	return true
}

// covered says whether a place lies in the metal of another member than one.
func (p *Part) covered(s *State, own int, v solid.Vec) bool {
	for n := range p.Members {
		if n != own && slices.ContainsFunc(p.lumpsOf(s, n), func(l *solid.Piece) bool { return l.Holds(v) }) {
			return true
		}
	}
	return false
}
