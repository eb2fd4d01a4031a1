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
	lo, hi := p.runsOut(f, g, on, th.Pitch)
	if x0, x1, ok := p.stretch(f, lo, hi); ok {
		f.Lathe = &Lathe{X0: x0, X1: x1, R0: on.R0, R1: on.R1, Inside: on.Inside, On: g}
		f.Stops = near(x0, lo) && lo > on.X0+model.Grain || near(x1, hi) && hi < on.X1-model.Grain
	}
	f.Diameter = model.Sure(th.Diameter)
}

// threadRunOut is how far from a shoulder a thread on the outside ends that does not say where, in pitches: the usual run-out
// of DIN 76-1, from memory.
const threadRunOut = 2.5

// runsOut is the stretch of a surface that a thread covers where it does not say from where to where: all of it, less the
// run-out before a shoulder, unless a groove lies on that surface for the tool to run out into.
func (p *Part) runsOut(f, g *Form, on Lathe, pitch float64) (lo, hi float64) {
	lo, hi = on.X0, on.X1
	if on.Inside || g == nil || f.Feature.Undercut.Is() || !p.Own(f.About) {
		return lo, hi
	}
	for _, o := range p.Forms {
		if m := o.Feature; m.Kind == "groove" && (len(m.On.V) == 0 || m.On.V[0].Item == g.Feature.Item) {
			return lo, hi
		}
	}
	room := threadRunOut * pitch
	if p.drawnRadius(lo-2*model.Grain) > on.R0+model.Grain {
		lo += room
	}
	if p.drawnRadius(hi+2*model.Grain) > on.R1+model.Grain {
		hi -= room
	}
	if hi-lo < pitch {
		return on.X0, on.X1
	}
	return lo, hi
}

// drawnRadius is the radius of the finished outside at a place along the part's own axis; 0 beyond its ends.
func (p *Part) drawnRadius(x float64) float64 {
	if x < p.Low[0] || x > p.High()[0] {
		return 0
	}
	for _, o := range p.Forms {
		if l := o.Outer(); l != nil && p.Own(o.About) && x >= l.X0 && x <= l.X1 {
			return math.Max(l.R0, l.R1)
		}
	}
	return p.Radius()
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
