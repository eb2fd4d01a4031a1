package eval

import (
	"math"
	"strings"

	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// other is a measurement of one of the sizes that only some features have. What it is taken with is
// held to its range and its step, as for any other.
func (m *Measurement) other(f *Form, sub string) {
	of := f.Feature
	var size drawing.Size
	is := false
	switch sub {
	case "across":
		size, is = of.Across.Get()
	case "to_axis": // the radius is taken over a round, less half of it
		size, is = of.ToAxis.Get()
	case "over":
		size, is = of.OverRound.Get()
	case "small":
		size, is = of.Small.Get()
		m.Inside = f.Lathe != nil && f.Lathe.Inside
	case "large":
		size, is = of.Large.Get()
		m.Inside = f.Lathe != nil && f.Lathe.Inside
	case "outer":
		size, is = of.Outer.Get()
		m.Inside = true
	case "foot_width":
		size, is = of.FootWidth.Get()
		m.Inside = true
	case "counterbore.diameter":
		size, is = of.Counterbore.Diameter.Get()
		m.Inside = true
	case "counterbore.depth":
		size, is = of.Counterbore.Depth.Get()
		m.Depth = true
	case "size":
		size, is = of.Size.Get()
	case "countersink.diameter":
		size, is = of.Countersink.Diameter.Get()
	case "from", "to":
		c, ok := placeOf(of.Item, sub)
		size, is, m.Depth = c.Size, ok, true
	case "angle":
		m.slope(of.Angle, m.shorterSide(f), of.Item, sub)
		return
	case "countersink.angle":
		m.slope(of.Countersink.Angle, 0, of.Item, sub)
		return
	case "tilted.by":
		m.slope(of.Tilted.By, f.Depth.Or(0), of.Item, sub)
		return
	default:
		m.Wrong = sub + " is not measured on paper yet"
		return
	}
	m.known(is)
	m.sized(size, of.Item, sub)
}

// slope is an angle in degrees. Its limits are those of the general tolerance, by the shorter of its sides, mm
// (ISO 2768-1, table 3); 0: that side is not known.
func (m *Measurement) slope(by model.Known[float64], side float64, of *model.Item, attr string) {
	m.Angle = true
	m.known(by.Is())
	m.Size = drawing.Size{Nominal: by.V, Written: model.Figure(by.V) + " degrees"}
	m.Limits = model.Known[Limits]{Of: of, Attr: attr + " (its limits)", At: of.At}
	if half, ok := handbook.GeneralAngle(m.Part.Build.Recipe.General.Class, side); ok && side > 0 {
		m.Limits = model.Sure(Limits{by.V - half, by.V + half})
	}
}

// shorterSide is the shorter side of the angle of a bevel or a flank, mm; 0 where the drawing does not say.
func (m *Measurement) shorterSide(f *Form) float64 {
	angle := f.Feature.Angle.V * math.Pi / 180
	switch f.Feature.Kind {
	case "chamfer":
		if len(f.Rims) == 0 && angle > 0 && angle < math.Pi/2 {
			return f.Feature.Size.V.Nominal / math.Cos(angle)
		}
	case "dovetail":
		if angle > 0 {
			return f.Depth.Or(0) / math.Sin(angle)
		}
	}
	return 0
}

// OddFlats is a row of flats of which none lies opposite another, measured across between two anvils.
// False where it is none.
func (m *Measurement) OddFlats() (*Form, bool) {
	f := m.Form
	if m.Wrong != "" || f == nil || f.Feature.Kind != "flats" || m.Name != f.Name()+".across" {
		return nil, false
	}
	n := f.Feature.Count.Or(2)
	return f, n > 1 && n%2 == 1
}

// spelled is a reference that was written as a text: "height", "hole.pillar.diameter".
func (m *Measurement) spelled(r model.Ref) model.Ref {
	if r.Item != nil || r.Text == "" {
		return r
	}
	words := strings.SplitN(r.Text, ".", 3)
	if len(words) == 1 {
		return model.Ref{At: r.At, Text: r.Text, Item: m.Part.Item, Sub: words[0]}
	}
	for _, f := range m.Part.Forms {
		if f.Feature.Kind == words[0] && f.Feature.Label == words[1] {
			out := model.Ref{At: r.At, Text: r.Text, Item: f.Feature.Item}
			if len(words) == 3 {
				out.Sub = words[2]
			}
			return out
		}
	}
	return r
}

// between measures from one face or feature to another: of a feature its middle counts.
func (m *Measurement) between(from, to model.Ref) {
	own := func(r model.Ref) string { return strings.TrimPrefix(r.Path(), m.Part.Path()+".") }
	m.Name = own(from) + " to " + own(to)
	a, okA := m.Part.PlaneOf(from)
	b, okB := m.Part.PlaneOf(to)
	unit := m.Part.Build.Recipe.Unit
	switch {
	case okA && okB && a.Face.Axis() == b.Face.Axis():
		m.Size = drawing.PlainSize(max(a.At-b.At, b.At-a.At), "", unit)
		if a.Face == b.Face.Opposite() && from.Face != model.NoFace && to.Face != model.NoFace {
			m.Faces = [2]model.Face{a.Face, b.Face}
			m.Size, _ = m.Part.FaceSize(a.Face)
		}
	case okA != okB:
		if okB {
			a, from, to = b, to, from
		}
		f := m.feature(to)
		if f == nil {
			return
		}
		for _, at := range f.Mouths {
			if !near(at[a.Face.Axis()], f.Mouths[0][a.Face.Axis()]) {
				m.Wrong = own(to) + " has places that lie at several distances from " + own(from)
				return
			}
		}
		d := f.middle()[a.Face.Axis()] - a.At
		m.Size = drawn(f, from, max(d, -d), unit)
	case !okA && !okB:
		f, g := m.feature(from), m.feature(to)
		if f == nil || g == nil {
			return
		}
		d := apart(f, g)
		m.Size = drawn(f, to, d, unit)
		if m.Size.Tol.Kind == drawing.General {
			m.Size = drawn(g, from, d, unit)
		}
	default:
		m.Wrong = "what it measures is not a size of this part"
		return
	}
	m.Limits = LimitsOf(m.Size, m.Part.Build.Recipe.General, m.Step.Step.Item, "size")
}

// feature is what a measurement from or to a feature is of; nil, and said, where it is none or lies
// nobody knows where.
func (m *Measurement) feature(r model.Ref) *Form {
	f := m.Part.FormOf(r.Item)
	switch {
	case f == nil:
		m.Wrong = "what it measures to is not a face or feature of this part"
		return nil
	case len(f.Lacks) > 0 || f.Wrong != "":
		m.Wrong = "where " + f.Name() + " lies is not known"
		return nil
	}
	return f
}

// apart is how far the middles of two features lie apart: across a straight one square to its walls,
// of two round ones from axis to axis.
func apart(f, g *Form) float64 {
	d := f.middle().Sub(g.middle())
	for _, s := range [2]*Form{f, g} {
		if len(s.Mouths) == 0 {
			return math.Abs(d[s.Across])
		}
	}
	d[f.Into.Face.Axis()] = 0
	return d.Len()
}

// drawn is a distance from a datum, mm, with the limits that the feature's own place gives for it.
func drawn(f *Form, datum model.Ref, apart float64, unit drawing.Unit) drawing.Size {
	for _, p := range f.Feature.At.V {
		for _, c := range p.Coords {
			same := c.Datum.Item == datum.Item && c.Datum.Face == datum.Face
			if same && len(f.Feature.At.V) == 1 && near(c.Size.Nominal, apart) {
				return c.Size
			}
		}
	}
	return drawing.PlainSize(apart, "", unit)
}
