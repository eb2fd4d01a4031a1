package eval

import (
	"math"

	"fettle/schema/model"
)

func (p *Part) threadShape(f *Form) {
	m := f.Feature
	th, ok := m.ThreadSize.Get()
	if !ok {
		f.lack(m.ThreadSize.Missing())
		return
	}
	refs := m.On.V
	g, ok := p.threaded(f, refs, th.Diameter)
	if !ok {
		if f.Wrong == "" {
			f.Wrong = "it does not lie on a turned surface of this part"
		}
		return
	}
	on := p.reach(g)
	f.About = g.about()
	if x0, x1, ok := p.stretch(f, on.X0, on.X1); ok {
		f.Lathe = &Lathe{X0: x0, X1: x1, R0: on.R0, R1: on.R1, Inside: on.Inside, On: g}
	}
	f.Diameter = model.Sure(th.Diameter)
}

// threaded finds the surface of a thread: as written, else the one outside or bore of its
// diameter.
func (p *Part) threaded(f *Form, refs []model.Ref, d float64) (*Form, bool) {
	if len(refs) > 0 {
		return p.surface(f, refs, true)
	}
	var found *Form
	n := 0
	for _, g := range p.Forms {
		if g.Lathe != nil && g.Feature.Kind == "outside" && math.Abs(2*g.Lathe.R0-d) < 0.2 {
			found, n = g, n+1
		}
	}
	if n == 0 && math.Abs(2*p.Radius()-d) < 0.2 {
		return nil, true
	}
	if n != 1 {
		f.Wrong = "it does not say which turned surface it lies on, and not just one has its diameter"
		return nil, false
	}
	return found, true
}
