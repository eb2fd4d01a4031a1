package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

func nominal(s drawing.Size) float64 { return s.Nominal }

// fill sets the room of a straight feature along the axis it goes into: from the plane
// inwards to the floor.
func (f *Form) fill() {
	axis, sign := f.Into.Face.Axis(), f.Into.Face.Sign()
	floor := f.Into.At - sign*f.Depth.V
	f.Lo[axis], f.Hi[axis] = math.Min(f.Into.At, floor), math.Max(f.Into.At, floor)
	f.Open[f.Into.Face] = true
	if f.Through {
		f.Open[f.Into.Face.Opposite()] = true
	}
}

// reaches notes where the feature runs out of the envelope.
func (p *Part) reaches(f *Form) {
	for _, face := range model.Faces {
		at := f.Lo[face.Axis()]
		if face.Sign() > 0 {
			at = f.Hi[face.Axis()]
		}
		if (at-p.FaceAt(face))*face.Sign() > -model.Grain {
			f.Open[face] = true
		}
	}
	if !overlaps(f.Lo, f.Hi, p.Low, p.High()) {
		f.Wrong = "it lies outside the finished part"
	}
}

func overlaps(alo, ahi, blo, bhi solid.Vec) bool {
	for i := range 3 {
		if ahi[i] < blo[i]-model.Grain || bhi[i] < alo[i]-model.Grain {
			return false
		}
	}
	return true
}

// channel shapes a slot or slit: `at` fixes its middle line, and it runs along the face's
// other axis; a slot may instead run from one whole place to another.
func (p *Part) channel(f *Form) {
	m := f.Feature
	f.fill()
	f.Width = m.Width.V.Nominal
	if !m.Width.Is() {
		f.lack(m.Width.Missing())
		return
	}
	a, b := across(f.Into.Face)
	if !m.At.Is() {
		p.fromTo(f, a, b)
		return
	}
	if len(m.At.V) == 0 {
		f.lack(m.At.Missing())
		return
	}
	v, known := p.locate(f.Into.Face, m.At.V[0])
	if len(m.At.V[0].Short) == 1 {
		f.Wrong = "one figure does not say from which face its middle line is measured"
		return
	}
	switch {
	case known[a] && known[b], !known[a] && !known[b]:
		f.Wrong = "one datum across it is wanted: the distance of its middle line from one face"
		return
	case known[a]:
		f.Across, f.Along = a, b
	default:
		f.Across, f.Along = b, a
	}
	f.Lo[f.Across], f.Hi[f.Across] = v[f.Across]-f.Width/2, v[f.Across]+f.Width/2
	f.Lo[f.Along], f.Hi[f.Along] = p.Low[f.Along], p.High()[f.Along]
	p.end(f, m.From, true)
	p.end(f, m.To, false)
	p.reaches(f)
}

// end sets one end of a channel that does not run the whole length.
func (p *Part) end(f *Form, at model.Known[model.Position], first bool) {
	if !at.Is() {
		return
	}
	v, known := p.locate(f.Into.Face, at.V)
	x := v[f.Along]
	if !known[f.Along] {
		if len(at.V.Short) != 1 {
			f.Wrong = "the place of its end does not lie along it"
			return
		}
		x = at.V.Short[0].Nominal
	}
	if first {
		f.Lo[f.Along] = x
	} else {
		f.Hi[f.Along] = x
	}
	if f.Lo[f.Along] > f.Hi[f.Along] {
		f.Lo[f.Along], f.Hi[f.Along] = f.Hi[f.Along], f.Lo[f.Along]
	}
}

// fromTo shapes a slot that runs from one whole place to another along one of the axes.
func (p *Part) fromTo(f *Form, a, b int) {
	m := f.Feature
	if !m.From.Is() || !m.To.Is() {
		f.lack(m.At.Missing())
		return
	}
	v, kv := p.locate(f.Into.Face, m.From.V)
	w, kw := p.locate(f.Into.Face, m.To.V)
	if !kv[a] || !kv[b] || !kw[a] || !kw[b] {
		f.Wrong = "its ends are not whole places on that face"
		return
	}
	switch {
	case near(v[a], w[a]):
		f.Across, f.Along = a, b
	case near(v[b], w[b]):
		f.Across, f.Along = b, a
	default:
		p.aslantSlot(f, v, w)
		return
	}
	f.Lo[f.Across], f.Hi[f.Across] = v[f.Across]-f.Width/2, v[f.Across]+f.Width/2
	f.Lo[f.Along] = math.Min(v[f.Along], w[f.Along])
	f.Hi[f.Along] = math.Max(v[f.Along], w[f.Along])
	p.reaches(f)
}

func (p *Part) pocket(f *Form) {
	m := f.Feature
	f.fill()
	a, b := across(f.Into.Face)
	if !m.From.Is() || !m.To.Is() {
		f.lack(m.From.Missing())
		f.lack(m.To.Missing())
		return
	}
	v, kv := p.locate(f.Into.Face, m.From.V)
	w, kw := p.locate(f.Into.Face, m.To.V)
	if !kv[a] || !kv[b] || !kw[a] || !kw[b] {
		f.Wrong = "its corners are not whole places on that face"
		return
	}
	for _, i := range [2]int{a, b} {
		f.Lo[i], f.Hi[i] = math.Min(v[i], w[i]), math.Max(v[i], w[i])
	}
	f.Across, f.Along = a, b
	if f.Hi[a]-f.Lo[a] > f.Hi[b]-f.Lo[b] {
		f.Across, f.Along = b, a
	}
	f.Width = f.Hi[f.Across] - f.Lo[f.Across]
	p.reaches(f)
}

// step shapes a shoulder along an edge: its width counts from the other open face.
func (p *Part) step(f *Form) {
	m := f.Feature
	if !m.Side.Is() || !m.Width.Is() {
		f.lack(m.Side.Missing())
		f.lack(m.Width.Missing())
		return
	}
	side, ok := p.PlaneOf(m.Side.V)
	if !ok || side.Face.Axis() == f.Into.Face.Axis() {
		f.Wrong = "its side is not a flat face beside the one it goes into"
		return
	}
	f.fill()
	f.Side = side.Face
	f.Across = side.Face.Axis()
	f.Along = 3 - f.Across - f.Into.Face.Axis()
	f.Width = m.Width.V.Nominal
	wall := side.At - side.Face.Sign()*f.Width
	f.Lo[f.Across], f.Hi[f.Across] = math.Min(side.At, wall), math.Max(side.At, wall)
	f.Lo[f.Along], f.Hi[f.Along] = p.Low[f.Along], p.High()[f.Along]
	f.Open[side.Face] = true
	p.end(f, m.From, true)
	p.end(f, m.To, false)
	p.reaches(f)
}

// split shapes the saw cut that makes two pieces of one. On the drawing the joint is
// closed: `at` is its middle, and the kerf is what the saw takes there.
func (p *Part) split(f *Form) {
	m := f.Feature
	if !m.At.Is() || len(m.At.V) == 0 || len(m.At.V[0].Coords) != 1 {
		f.Wrong = "one datum to its joint is wanted"
		return
	}
	axis, at, ok := p.coordinate(m.At.V[0].Coords[0], -1)
	if !ok {
		f.Wrong = "its datum is not a flat face of this part"
		return
	}
	f.Across = axis
	kerf := p.kerfOf(f)
	if !kerf.Is() {
		f.lack(kerf.Missing())
		return
	}
	f.Width = kerf.V
	f.Lo, f.Hi = p.Low, p.High()
	f.Lo[axis], f.Hi[axis] = at-f.Width/2, at+f.Width/2
	for _, face := range model.Faces {
		f.Open[face] = face.Axis() != axis
	}
	// The saw may come from either side that the joint opens to; the longer way round is
	// the depth it must reach.
	f.Into = Plane{Face: model.NoFace}
	f.Through = true
}

// edge shapes a chamfer or radius: between two flat faces that meet, or on rims of holes.
func (p *Part) edge(f *Form) {
	m := f.Feature
	if !m.Size.Is() || !m.On.Is() {
		f.lack(m.Size.Missing())
		f.lack(m.On.Missing())
		return
	}
	f.Size = m.Size.V.Nominal
	var planes []Plane
	var holes []*Form
	for _, r := range m.On.V {
		if pl, ok := p.PlaneOf(r); ok {
			planes = append(planes, pl)
		} else if g := p.FormOf(r.Item); g != nil && len(g.Mouths) > 0 {
			holes = append(holes, g)
		} else {
			f.Wrong = "it lies on something that has no edge here"
			return
		}
	}
	switch {
	case len(holes) == 1 && len(planes) == 1:
		f.Rims = []Rim{{holes[0], planes[0]}}
	case len(holes) == 1 && len(planes) == 0:
		f.Rims = []Rim{{holes[0], holes[0].Into}}
		if holes[0].Through {
			far := holes[0].Into.Face.Opposite()
			f.Rims = append(f.Rims, Rim{holes[0], Plane{far, p.FaceAt(far), far.String()}})
		}
	case len(planes) == 2 && planes[0].Face.Axis() != planes[1].Face.Axis():
		f.Edge = [2]Plane{planes[0], planes[1]}
		f.Along = 3 - planes[0].Face.Axis() - planes[1].Face.Axis()
	default:
		f.Wrong = "two faces that meet at an edge, or the rim of a hole, are wanted"
	}
}

// removal gives what is missing in the finished part for the feature, reaching outwards
// past open faces by beyond, so that raw metal there goes too. corner is the radius that
// the cutter leaves in upright corners; 0 for square ones.
func (f *Form) removal(beyond, corner float64) []solid.Removal {
	if f.Skew != nil {
		return f.skewed(beyond)
	}
	lo, hi := f.Lo, f.Hi
	for _, face := range model.Faces {
		if !f.Open[face] {
			continue
		}
		if face.Sign() > 0 {
			hi[face.Axis()] += beyond
		} else {
			lo[face.Axis()] -= beyond
		}
	}
	if corner <= 0 || f.Into.Face == model.NoFace {
		return []solid.Removal{{Take: solid.Box(lo, hi), By: f.Name()}}
	}
	return f.rounded(lo, hi, corner)
}

// rounded is a box whose closed upright corners have a radius: two boxes and a cylinder in
// each corner. A corner at an open side is square, since the cutter runs out there.
func (f *Form) rounded(lo, hi solid.Vec, r float64) []solid.Removal {
	a, b := across(f.Into.Face)
	r = min(r, (hi[a]-lo[a])/2, (hi[b]-lo[b])/2)
	shrink := func(axis int) (l, h solid.Vec) {
		l, h = lo, hi
		if !f.Open[model.FaceOn(axis, -1)] {
			l[axis] += r
		}
		if !f.Open[model.FaceOn(axis, 1)] {
			h[axis] -= r
		}
		return l, h
	}
	la, ha := shrink(a)
	lb, hb := shrink(b)
	out := []solid.Removal{
		{Take: solid.Box(la, ha), By: f.Name()},
		{Take: solid.Box(lb, hb), By: f.Name()},
	}
	n := f.Into.Face.Axis()
	for _, x := range [2]float64{la[a], ha[a]} {
		for _, y := range [2]float64{lb[b], hb[b]} {
			if (x == lo[a] || x == hi[a]) || (y == lo[b] || y == hi[b]) {
				continue
			}
			var from, to solid.Vec
			from[a], from[b], from[n] = x, y, lo[n]
			to[a], to[b], to[n] = x, y, hi[n]
			out = append(out, solid.Removal{Take: solid.Cylinder(from, to, r), By: f.Name()})
		}
	}
	return out
}
