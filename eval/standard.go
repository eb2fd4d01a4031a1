package eval

import (
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// What a drawing leaves to a standard: keyways of parallel keys by the diameter of their shaft or bore
// (DIN 6885-1), seats of circlips (DIN 471, 472). It is filled in before a form is shaped, on a copy of the
// feature: the recipe's own stays as it is written.

// byStandard fills in the sizes of a form that a standard has.
func (p *Part) byStandard(f *Form) {
	m := *f.Feature
	switch {
	case m.Kind == "keyway" && m.Sort.V != "woodruff":
		p.standardKey(&m)
	case m.Kind == "groove" && m.Form.V == "circlip":
		p.standardCirclip(&m)
	default:
		return
	}
	f.Feature = &m
}

// blank says whether a size is left out, and not only written wrongly.
func blank[T any](k model.Known[T]) bool { return !k.Is() && !k.Said() }

func (p *Part) standardKey(m *model.Feature) {
	d, inside, ok := p.seatOf(m.Into.V)
	if !ok {
		return
	}
	key, ok := handbook.KeyFor(d)
	if m.Width.Is() {
		key, ok = handbook.KeyOfWidth(m.Width.V.Nominal)
	}
	if !ok {
		return
	}
	deep := key.Shaft
	if inside {
		deep = key.Bore
	}
	if blank(m.Width) {
		m.Width = chosenSize(key.Width)
	}
	if blank(m.Depth) {
		m.Depth = model.Known[model.Depth]{V: model.Depth{Size: chosenSize(deep).V}, From: model.Chosen}
	}
}

func (p *Part) standardCirclip(m *model.Feature) {
	if c, _, ok := p.CirclipOf(m); ok {
		if blank(m.Width) && blank(m.To) {
			m.Width = chosenSize(c.Width)
		}
		if blank(m.Diameter) && blank(m.Depth) {
			m.Diameter = chosenSize(c.Floor)
		}
	}
}

// CirclipOf is the ring of the standard for a groove, with the diameter of the shaft or bore; false where
// the groove is for none, or the standard has none of that size.
func (p *Part) CirclipOf(m *model.Feature) (c handbook.Circlip, on float64, ok bool) {
	if m.Kind != "groove" || m.Form.V != "circlip" {
		return c, 0, false
	}
	on, inside, ok := p.grooved(m)
	if !ok {
		return c, 0, false
	}
	c, ok = handbook.CirclipFor(on, inside)
	return c, on, ok
}

// grooved is the diameter of the surface that a groove lies in, and whether that is a bore.
func (p *Part) grooved(m *model.Feature) (d float64, inside, ok bool) {
	if len(m.On.V) == 0 {
		return 2 * p.Radius(), false, p.Round && p.flats() == 0
	}
	return p.seatOf(m.On.V[0])
}

// seatOf is the diameter of a turned surface, bore or hole as it is drawn.
func (p *Part) seatOf(r model.Ref) (d float64, inside, ok bool) {
	if isOutside(r) {
		return 2 * p.Radius(), false, p.Round && p.flats() == 0
	}
	f := p.FormOf(r.Item)
	if f == nil || !f.Feature.Diameter.Is() {
		return 0, false, false
	}
	k := f.Feature.Kind
	return f.Feature.Diameter.V.Nominal, k == "bore" || k == "hole", k == "outside" || k == "bore" || k == "hole"
}

func chosenSize(x float64) model.Known[drawing.Size] {
	return model.Known[drawing.Size]{V: drawing.Size{Nominal: x}, From: model.Chosen}
}
