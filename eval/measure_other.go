package eval

import (
	"math"
	"strings"

	"fettle/schema/drawing"
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
	default:
		m.Wrong = "a " + sub + " is not measured on paper yet"
		return
	}
	m.known(is)
	m.sized(size, of.Item, sub)
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
	m.Name = from.Path() + " to " + to.Path()
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
