package eval

import (
	"math"
	"strings"

	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// What a drawing leaves to a standard: keyways of parallel keys by the diameter of their shaft or bore
// (DIN 6885-1), seats of circlips (DIN 471, 472), undercuts of metric threads (DIN 76-1), mouths of holes by the heads of their screws (DIN 974-1, ISO 10642,
// ISO 2009); and the width of a
// vee, which follows from its angle and how deep it is. It is filled in before a form is shaped, on a copy of the
// feature: the recipe's own stays as it is written.

// byStandard fills in the sizes of a form that a standard has.
func (p *Part) byStandard(f *Form) {
	m := *f.Feature
	switch {
	case m.Kind == "hole":
		p.standardMouth(&m)
	case m.Kind == "keyway" && m.Sort.V != "woodruff":
		p.standardKey(&m)
	case m.Kind == "groove" && m.Form.V == "circlip":
		p.standardCirclip(&m)
	case m.Kind == "groove" && m.Form.V == "thread undercut":
		p.standardUndercut(&m)
	case m.Kind == "groove" && m.Form.V == "vee":
		p.veeWidth(&m)
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
	deep, wide := key.Shaft, handbook.KeyInShaft
	if inside {
		deep, wide = key.Bore, handbook.KeyInBore
	}
	if blank(m.Width) {
		m.Width = chosenSize(key.Width, wide)
	}
	if blank(m.Depth) {
		m.Depth = model.Known[model.Depth]{V: model.Depth{Size: chosenSize(deep, "+"+model.Figure(key.Deeper)+"/0").V}, From: model.Chosen}
	}
}

func (p *Part) standardCirclip(m *model.Feature) {
	if c, _, ok := p.CirclipOf(m); ok {
		if blank(m.Width) && blank(m.To) {
			m.Width = chosenSize(c.Width, handbook.CirclipWidth)
		}
		if blank(m.Diameter) && blank(m.Depth) {
			m.Diameter = chosenSize(c.Floor, c.Limits)
		}
	}
}

// standardUndercut fills in the groove that a metric thread runs out into; of its width the standard gives the least and
// the most, and the middle is taken.
func (p *Part) standardUndercut(m *model.Feature) {
	on, inside, ok := p.grooved(m)
	th, known := p.runsInto(m)
	if !ok || !known || th.Series != "M" {
		return
	}
	u, ok := handbook.UndercutFor(th.Pitch, inside)
	if !ok {
		return
	}
	if blank(m.Width) && blank(m.To) {
		m.Width = chosenSize(u.Least, ".."+model.Figure(u.Most))
	}
	if !blank(m.Diameter) || !blank(m.Depth) {
		return
	}
	if inside {
		m.Diameter = chosenSize(th.Diameter+u.Beyond, handbook.UndercutBore)
		return
	}
	m.Diameter = chosenSize(math.Min(on, th.Diameter)-u.Beyond, handbook.UndercutShaft)
}

// runsInto is the thread that runs out into a groove: the one that names it, else the only one on the same surface.
func (p *Part) runsInto(m *model.Feature) (drawing.Thread, bool) {
	var found []drawing.Thread
	for _, g := range p.Forms {
		t := g.Feature
		switch {
		case t.Kind != "thread" || !t.ThreadSize.Is():
		case t.Undercut.Is() && t.Undercut.V.Item == m.Item:
			return t.ThreadSize.V, true
		case t.Undercut.Is():
		case len(t.On.V) == 0 && len(m.On.V) == 0, len(t.On.V) > 0 && len(m.On.V) > 0 && t.On.V[0].Item == m.On.V[0].Item && t.On.V[0].Face == m.On.V[0].Face:
			found = append(found, t.ThreadSize.V)
		}
	}
	if len(found) != 1 {
		return drawing.Thread{}, false
	}
	return found[0], true
}

// veeWidth is how wide a vee is at the surface: twice its depth by the tangent of half its angle.
func (p *Part) veeWidth(m *model.Feature) {
	on, _, ok := p.grooved(m)
	deep := m.Depth.V.Size.Nominal
	if m.Diameter.Is() {
		deep = math.Abs(on-m.Diameter.V.Nominal) / 2
	}
	if !ok || !m.Angle.Is() || !(m.Angle.V > 0 && m.Angle.V < 180) || !(deep > 0) || !blank(m.Width) || !blank(m.To) {
		return
	}
	m.Width = model.Known[drawing.Size]{V: drawing.Size{Nominal: math.Round(2e4*deep*math.Tan(m.Angle.V*math.Pi/360)) / 1e4}, From: model.Chosen}
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

// chosenSize is a size, mm, with the limits that its standard gives it.
func chosenSize(x float64, limits string) model.Known[drawing.Size] {
	if limits != "" && !strings.HasPrefix(limits, "..") {
		limits = " " + limits
	}
	s, err := drawing.ParseSize(model.Figure(x)+limits, drawing.Millimetre)
	if err != nil {
		s = drawing.Size{Nominal: x}
	}
	return model.Known[drawing.Size]{V: s, From: model.Chosen}
}
