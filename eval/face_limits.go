package eval

import (
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Limits that stand with a face, or with the whole edge of an outline, and not with a size.

// bounded gives a part whose outer sizes have the limits that its faces are written with: a size that says
// none itself takes those of a face that it ends at; of two faces the closer ones.
func bounded(m *model.Part) *model.Part {
	c := *m
	taken := map[*model.Known[drawing.Size]]bool{} // from a face before
	for _, r := range m.Faces {
		limits, ok := r.Limits.Get()
		if !ok {
			continue
		}
		f, plane := model.ParseFace(r.Label)
		var sizes []*model.Known[drawing.Size]
		switch {
		case r.Label == "outside":
			sizes = append(sizes, &c.Diameter, &c.Hexagon, &c.Square)
		case !plane:
		case f.Axis() == 0:
			sizes = append(sizes, &c.Length)
		case f.Axis() == 1:
			sizes = append(sizes, &c.Width)
		default:
			sizes = append(sizes, &c.Height, &c.Thickness)
		}
		for _, s := range sizes {
			if t, ok := WithLimits(s.V, limits); ok && s.Is() && (unlimited(s.V) || taken[s] && width(t) < width(s.V)) {
				s.V, taken[s] = t, true
			}
		}
	}
	return &c
}

func unlimited(s drawing.Size) bool {
	return s.Tol.Kind != drawing.Deviations && s.Tol.Kind != drawing.Class
}

// width is the room between the limits of a size, mm.
func width(s drawing.Size) float64 {
	l, _ := LimitsOf(s, model.General{}, nil, "").Get()
	return l.Width()
}

// WithLimits gives a size the limits that are written in words of their own: "±0.1", "0/-0.05", "h9". False
// where they are none, or the size is none.
func WithLimits(s drawing.Size, limits string) (drawing.Size, bool) {
	bare := s.Nominal
	if s.Unit == drawing.Inch {
		bare /= 25.4
	}
	t, err := drawing.ParseSize(model.Figure(bare)+" "+limits, s.Unit)
	if err != nil || !(s.Nominal > 0) || unlimited(t) {
		return s, false
	}
	s.Tol = t.Tol
	if s.Written != "" {
		s.Written += " " + limits
	}
	return s, true
}
