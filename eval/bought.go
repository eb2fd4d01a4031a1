package eval

import (
	"slices"

	"fettle/eval/solid"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// A part that is bought is made by nobody here, and still stands in an assembly: as it is drawn, where
// its sizes are said. Forms that are not made on paper (a thread, teeth) are left out, so that there is
// rather more of it than less.

// asBought is a bought part as it comes, and the state that it is in; why says why its shape is not known.
func asBought(b *model.Build, m *model.Part) (p *Part, s *State, why string) {
	return asItComes(b, m, nil)
}

// asItComes is a part as it is drawn, but for the features that are still to be made.
func asItComes(b *model.Build, m *model.Part, still []model.Ref) (p *Part, s *State, why string) {
	bore, bored := boreBought(b, m)
	own := *asBoughtSize(b, m)
	own.Bought, own.Work, own.Blank = model.Bought{}, nil, nil
	p = Ready(b, &own)
	if p.Unplayed != "" {
		return nil, nil, p.Unplayed
	}
	p.Blank = Blank{Lo: p.Low, Hi: p.High(), Lies: [3]int{0, 1, 2}}
	p.Blank.Shape = p.envelope()
	if r := p.Radius(); p.Round {
		p.Blank.Profile = Profile{{X0: p.Low[0], X1: p.High()[0], Out0: r, Out1: r, Flats: p.flats()}}
	}
	s = p.start()
	s.Parted, s.Last = true, finding.Spot{Part: p.Label}
	for _, f := range model.Faces {
		s.Faces[f] = FaceState{At: p.FaceAt(f), Done: true}
	}
	for i, f := range p.Forms {
		if f.Wrong != "" || len(f.Lacks) > 0 || slices.ContainsFunc(still, func(r model.Ref) bool { return r.Item == f.Feature.Item }) {
			continue
		}
		took := f.drawn(p)
		if len(took) == 0 {
			continue
		}
		s.Piece = s.Piece.Cut(took...)
		s.Features[i] = &FeatureState{Begun: true, Finished: true, Diameter: f.Diameter.V, Depth: f.Depth.V, Through: f.Through}
		if l := f.Lathe; l != nil && p.Own(f.About) {
			if l.Inside {
				s.Profile = s.Profile.bored(l.X0, l.X1, l.R0, l.R1)
			} else {
				s.Profile = s.Profile.turned(l.X0, l.X1, l.R0, l.R1, Zone{Form: f})
			}
		} else if h, ok := p.holeLine(f); ok && p.Round && near(h.at[1], 0) && near(h.at[2], 0) && f.Into.Face.Axis() == 0 {
			x0, x1 := h.at[0], h.at.Add(h.dir.Times(h.long))[0]
			s.Profile = s.Profile.bored(min(x0, x1), max(x0, x1), h.d/2, h.d/2)
		}
	}
	if x0, x1 := p.Low[0], p.High()[0]; bored && p.Round {
		s.Piece = s.Piece.Cut(solid.Removal{Take: solid.Cylinder(solid.Vec{x0 - beyond, 0, 0}, solid.Vec{x1 + beyond, 0, 0}, bore/2), By: "bore"})
		s.Profile = s.Profile.bored(x0, x1, bore/2, bore/2)
	}
	return p, s, ""
}

// envelope is a part with none of its features.
func (p *Part) envelope() solid.Shape {
	if p.Round {
		return barShape(p.Low[0], p.High()[0], p.Radius(), p.flats())
	}
	return solid.Box(p.Low, p.High())
}

// asDrawn is the metal of a finished part; nil where a feature that is not made on paper may take some of
// it away. What only breaks an edge or marks a surface counts as nothing.
func (p *Part) asDrawn() *solid.Piece {
	if p.Unplayed != "" || p.Flat != nil {
		return nil
	}
	piece := solid.Raw(p.envelope())
	for _, f := range p.Forms {
		took := f.drawn(p)
		switch f.Feature.Kind {
		case "thread", "knurl", "graduations", "chamfer", "centre_hole":
		default:
			if f.Wrong != "" || len(f.Lacks) > 0 || len(took) == 0 {
				return nil
			}
		}
		piece = piece.Cut(took...)
	}
	return piece
}

// drawn is the metal that the drawing takes away for a plain form; nothing for others.
func (f *Form) drawn(p *Part) (out []solid.Removal) {
	name := f.Name()
	switch l := f.Lathe; {
	case l != nil && (f.Feature.Kind == "outside" || f.Feature.Kind == "taper" || f.Feature.Kind == "groove") && !l.Inside && l.End == model.NoFace && p.Own(f.About):
		a, b := solid.Vec{l.X0, 0, 0}, solid.Vec{l.X1, 0, 0}
		return []solid.Removal{{Take: solid.Cylinder(a, b, 2*p.Radius()+1), Less: []solid.Shape{solid.Cone(a, b, l.R0, l.R1)}, By: name}}
	case l != nil && l.Inside && f.Feature.Kind == "bore" && p.Own(f.About):
		x0, x1 := l.X0, l.X1
		if near(x0, p.Low[0]) {
			x0 -= beyond
		}
		if near(x1, p.High()[0]) {
			x1 += beyond
		}
		return []solid.Removal{{Take: solid.Cylinder(solid.Vec{x0, 0, 0}, solid.Vec{x1, 0, 0}, l.R0), By: name}}
	case l == nil && len(f.Mouths) > 0 && f.Diameter.Is() && f.Depth.Is():
		for i, m := range f.Mouths {
			in := f.dir(i)
			foot := m.Add(in.Times(f.Depth.V))
			if f.Through {
				foot = foot.Add(in.Times(beyond))
			}
			out = append(out, solid.Removal{Take: solid.Cylinder(m.Sub(in.Times(beyond)), foot, f.Diameter.V/2), By: name})
		}
		return out
	case l == nil && len(f.Spins) == 0 && len(f.Copies) == 0 && f.Skew == nil:
		switch f.Feature.Kind {
		case "slot", "pocket", "step":
			return f.removal(p.outward(), f.Feature.Corner.Or(0))
		}
	}
	return nil
}
