package eval

import (
	"slices"
	"strings"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// A mirrored part is the other hand of a part: every feature lies as far from the right end
// as it lies from the left there, and faces left and right change places. Threads do not
// turn over, and nothing of the work is taken over. What the mirrored part does not say of
// its size, metal and edges is as there.

// other finds the part that a part is the other hand of; nil where it names none that can be
// mirrored here.
func other(b *model.Build, m *model.Part) (o *model.Part, why string) {
	for _, p := range b.Parts {
		if p.Item == m.MirrorOf.V.Item {
			o = p
		}
	}
	switch {
	case o == nil:
		return nil, "the part that it is the mirror of is not known"
	case o == m || o.MirrorOf.Is():
		return nil, "it is the mirror of a mirrored part"
	case len(m.Features) > 0:
		return nil, "it is the mirror of a part and has features of its own"
	}
	return o, ""
}

// handed is the mirrored part with what it takes over, its features still as they lie there.
func handed(m, o *model.Part) *model.Part {
	c := *m
	c.Features = o.Features
	if !c.Length.Is() {
		c.Length = o.Length
	}
	if !c.Width.Is() {
		c.Width = o.Width
	}
	if !c.Diameter.Is() && !c.Hexagon.Is() && !c.Square.Is() {
		c.Diameter, c.Hexagon, c.Square = o.Diameter, o.Hexagon, o.Square
	}
	if !c.Height.Is() && !c.Thickness.Is() {
		c.Height, c.Thickness = o.Height, o.Thickness
	}
	if !c.Material.Is() {
		c.Material = o.Material
	}
	if !c.Edges.Is() {
		c.Edges = o.Edges
	}
	return &c
}

// asDrawnThere is the same part as the blocks of its features say it, before it is turned over.
func asDrawnThere(m *model.Part) *model.Part {
	c := *m
	c.MirrorOf, c.Work = model.Known[model.Ref]{}, nil
	return &c
}

// PlaceOf resolves a place of one datum that a feature of the part says to an axis and where it lies
// along it.
func (p *Part) PlaceOf(pos model.Position) (axis int, at float64, ok bool) {
	if len(pos.Coords) != 1 {
		return 0, 0, false
	}
	if p.Drawn != nil {
		axis, at, ok = p.Drawn.PlaceOf(pos)
		if axis == 0 {
			at = p.Low[0] + p.High()[0] - at
		}
		return axis, at, ok
	}
	return p.coordinate(pos.Coords[0], -1)
}

// laidTurned are the distances of a mirrored part's drawing: those of the other one, turned over.
func (p *Part) laidTurned() []Laid {
	sum := p.Low[0] + p.High()[0]
	out := p.Drawn.Laid()
	for i := range out {
		l := &out[i]
		if l.Form != nil {
			if n := p.Drawn.numberOf(l.Form); n >= 0 {
				l.Form = p.Forms[n]
			}
			l.At[0] = sum - l.At[0]
		}
		if l.Axis == 0 {
			l.From, l.To = sum-l.From, sum-l.To
		}
	}
	return out
}

// mirror turns every form over, left to right.
func (p *Part) mirror() {
	sum := p.Low[0] + p.High()[0]
	for _, f := range p.Forms {
		f.mirror(sum)
		if f.Way != nil && f.Wrong == "" {
			w := *f.Way
			w.Corners = append([]solid.Vec(nil), w.Corners...)
			for i := range w.Corners {
				w.Corners[i][0] = sum - w.Corners[i][0]
			}
			f.Way = &w
			p.drawOutline(f)
		}
	}
}

// turned is a face as it lies in the mirror.
func turned(f model.Face) model.Face {
	if f != model.NoFace && f.Axis() == 0 {
		return f.Opposite()
	}
	return f
}

// mirror turns a form over: a place at x goes to sum - x.
func (f *Form) mirror(sum float64) {
	plane := func(pl Plane) Plane {
		if pl.Face == model.NoFace || pl.Face.Axis() != 0 {
			return pl
		}
		name := pl.Name
		was, is := pl.Face.String(), pl.Face.Opposite().String()
		switch {
		case name == was:
			name = is
		case strings.HasSuffix(name, ".left"): // the end of a feature
			name = strings.TrimSuffix(name, ".left") + ".right"
		case strings.HasSuffix(name, ".right"):
			name = strings.TrimSuffix(name, ".right") + ".left"
		}
		return Plane{pl.Face.Opposite(), sum - pl.At, name}
	}
	f.Mirrored = true
	f.Into = plane(f.Into)
	f.Dir[0] = -f.Dir[0]
	f.Dirs = slices.Clone(f.Dirs)
	for i := range f.Dirs {
		f.Dirs[i][0] = -f.Dirs[i][0]
	}
	for i := range f.Mouths {
		f.Mouths[i][0] = sum - f.Mouths[i][0]
	}
	f.Lo[0], f.Hi[0] = sum-f.Hi[0], sum-f.Lo[0]
	left, right := model.FaceOn(0, -1), model.FaceOn(0, 1)
	f.Open[left], f.Open[right] = f.Open[right], f.Open[left]
	f.Side = turned(f.Side)
	if f.Skew != nil {
		s := *f.Skew
		s.A[0], s.B[0] = sum-s.A[0], sum-s.B[0]
		f.Skew = &s
	}
	if len(f.Copies) > 0 {
		f.Centre[0] = sum - f.Centre[0]
		if f.Into.Face.Axis() != 0 {
			f.Copies = append([]float64(nil), f.Copies...)
			for i := range f.Copies {
				f.Copies[i] = -f.Copies[i]
			}
		}
	}
	f.mirrorRound(sum)
	f.Edge = [2]Plane{plane(f.Edge[0]), plane(f.Edge[1])}
	for i := range f.Rims {
		f.Rims[i].Face = plane(f.Rims[i].Face)
	}
	if f.Under != nil && f.Across == 0 {
		f.Under.Middle = sum - f.Under.Middle
	}
}

// mirrorRound turns over what a lathe makes, and what lies on it. Angles from top towards back are
// as they were: the axis itself is turned end for end.
func (f *Form) mirrorRound(sum float64) {
	if f.About.Along != 0 {
		f.About.At[0] = sum - f.About.At[0]
	} else if f.Lathe != nil {
		l := *f.Lathe
		l.X0, l.X1, l.R0, l.R1, l.End = sum-l.X1, sum-l.X0, l.R1, l.R0, turned(l.End)
		f.Lathe = &l
	}
	if f.KeyBore != nil {
		b := *f.KeyBore
		if f.About.Along == 0 {
			b.X0, b.X1 = sum-b.X1, sum-b.X0
		}
		f.KeyBore = &b
	}
	if f.Seat != nil {
		s := *f.Seat
		s.At = sum - s.At
		f.Seat = &s
	}
	if r := f.Rack; r != nil && r.Run == 0 {
		m := *r
		m.First, m.Section = sum-r.At(r.Count-1), r.Section.turnedOver()
		m.Walls = [2]float64{sum - r.Walls[1], sum - r.Walls[0]}
		f.Rack = &m
	}
	if f.Tooth != nil {
		t := *f.Tooth
		t.Lean = -t.Lean
		if f.About.Along == 0 {
			t.X0, t.X1 = sum-t.X1, sum-t.X0
		}
		f.Tooth = &t
	}
	if f.Scale != nil && f.Scale.Ruled != nil {
		s, u := *f.Scale, *f.Scale.Ruled
		if u.Runs == 0 {
			u.First, u.Way = sum-u.First, -u.Way
		}
		if u.Lines == 0 {
			s.Edge, s.Inward = sum-s.Edge, -s.Inward
		}
		s.Ruled = &u
		f.Scale = &s
	} else if f.Scale != nil && !f.Scale.End {
		s := *f.Scale
		s.Edge, s.Inward = sum-s.Edge, -s.Inward
		f.Scale = &s
	}
}
