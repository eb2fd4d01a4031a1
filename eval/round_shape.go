package eval

import (
	"math"

	"fettle/schema/model"
)

// turnedShape shapes the features that a lathe makes; false where the kind is none of them.
func (p *Part) turnedShape(f *Form) bool {
	switch f.Feature.Kind {
	case "outside":
		p.outsideShape(f)
	case "bore":
		p.boreShape(f)
	case "groove":
		p.grooveShape(f)
	case "taper":
		p.taperShape(f)
	case "knurl":
		p.onSurface(f)
	case "thread":
		p.threadShape(f)
	case "worm":
		p.wormShape(f)
	case "centre_hole":
		p.centreShape(f)
	default:
		return false
	}
	f.notRepeated()
	p.roundRoom(f)
	return true
}

func (p *Part) outsideShape(f *Form) {
	m := f.Feature
	if !m.Diameter.Is() {
		f.lack(m.Diameter.Missing())
		return
	}
	if !p.setAside(f) && len(f.Lacks) > 0 {
		return
	}
	lo, hi := p.neighbours(f)
	if x0, x1, ok := p.stretch(f, lo, hi); ok {
		r := m.Diameter.V.Nominal / 2
		f.Lathe = &Lathe{X0: x0, X1: x1, R0: r, R1: r}
		if r > p.Radius()+model.Grain {
			f.Wrong = "it is larger than the part's own outside"
		}
		p.outsideBeside(f)
	}
	f.Diameter = model.Map(m.Diameter, nominal)
}

// neighbours are the shoulders between which an outside lies that does not say where it
// begins or ends: the nearest ends of other outsides that are written, else the part's ends.
func (p *Part) neighbours(f *Form) (lo, hi float64) {
	lo, hi = p.Low[0], p.High()[0]
	m := f.Feature
	from, okFrom := p.axial(m.From.V)
	to, okTo := p.axial(m.To.V)
	for _, g := range p.Forms {
		if g == f || g.Feature.Kind != "outside" {
			continue
		}
		if end, ok := p.axial(g.Feature.To.V); ok && g.Feature.To.Is() && okTo && m.To.Is() && end < to-model.Grain {
			lo = max(lo, end)
		}
		if start, ok := p.axial(g.Feature.From.V); ok && g.Feature.From.Is() && okFrom && m.From.Is() && start > from+model.Grain {
			hi = min(hi, start)
		}
	}
	return lo, hi
}

func (p *Part) boreShape(f *Form) {
	m := f.Feature
	switch {
	case !m.Diameter.Is() || !m.Into.Is():
		f.lack(m.Diameter.Missing())
		f.lack(m.Into.Missing())
		return
	}
	pl, ok := p.PlaneOf(m.Into.V)
	if !ok || pl.Face.Axis() != 0 {
		f.Wrong = "the face it starts from is not square to the axis"
		return
	}
	switch {
	case p.setAside(f):
	case len(f.Lacks) > 0:
		return
	case m.At.Is(), m.Around.Said:
		if !p.lineInto(f) {
			return
		}
	}
	f.Into, f.Dir = pl, Normal(pl.Face).Times(-1)
	p.boreBeside(f)
}

func (p *Part) grooveShape(f *Form) {
	m := f.Feature
	if m.Outer.Is() {
		p.endGrooveShape(f)
		return
	}
	g, ok := p.surface(f, m.On.V, true)
	if !ok {
		if f.Wrong == "" {
			f.Wrong = "it does not lie on a turned surface of this part"
		}
		return
	}
	on := p.reach(g)
	f.About = g.about()
	var x0, x1 float64
	switch {
	case m.At.Is() && len(m.At.V) > 0:
		x, ok := p.placeOn(m.At.V[0], f.About.Along)
		if !ok || !m.Width.Is() {
			f.lack(m.Width.Missing())
			return
		}
		x0, x1 = x-m.Width.V.Nominal/2, x+m.Width.V.Nominal/2
	case m.From.Is() && (m.To.Is() || m.Width.Is()):
		lo, _ := p.placeOn(m.From.V, f.About.Along)
		var ok bool
		if x0, x1, ok = p.stretch(f, lo, lo+m.Width.V.Nominal); !ok {
			return
		}
	default:
		f.lack(m.Width.Missing())
		return
	}
	var r float64
	switch {
	case m.Diameter.Is():
		r = m.Diameter.V.Nominal / 2
	case m.Depth.Is() && on.Inside:
		r = on.R0 + m.Depth.V.Size.Nominal
	case m.Depth.Is():
		r = on.R0 - m.Depth.V.Size.Nominal
	default:
		f.lack(m.Diameter.Missing())
		return
	}
	if r <= 0 {
		f.Wrong = "its floor would lie beyond the axis"
		return
	}
	f.Lathe = &Lathe{X0: x0, X1: x1, R0: r, R1: r, Inside: on.Inside, On: g}
	f.Width = x1 - x0
	f.Diameter = model.Sure(2 * r)
	f.grooveForm(math.Abs(on.R0 - r))
}

// onSurface shapes what lies on a turned surface without changing its size: a knurl.
func (p *Part) onSurface(f *Form) {
	g, ok := p.surface(f, f.Feature.On.V, false)
	if !ok {
		if f.Wrong == "" {
			f.Wrong = "it does not lie on a turned surface of this part"
		}
		return
	}
	on := p.reach(g)
	f.About = g.about()
	if x0, x1, ok := p.stretch(f, on.X0, on.X1); ok {
		f.Lathe = &Lathe{X0: x0, X1: x1, R0: on.R0, R1: on.R1, On: g}
	}
}
