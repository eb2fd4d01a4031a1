package eval

import (
	"math"

	"fettle/schema/handbook"
	"fettle/schema/model"
)

func (p *Part) taperShape(f *Form) {
	m := f.Feature
	g, ok := p.surface(f, m.On.V, true)
	if !ok {
		if f.Wrong == "" {
			f.Wrong = "it does not lie on a turned surface of this part"
		}
		return
	}
	on := p.reach(g)
	f.About = g.about()
	x0, x1, ok := p.stretch(f, on.X0, on.X1)
	if !ok {
		return
	}
	per, ok := p.slope(f, x1-x0, on)
	if !ok {
		return
	}
	large := on.R0
	if m.Large.Is() {
		large = m.Large.V.Nominal / 2
	}
	small := large - per*(x1-x0)
	if m.Small.Is() && !m.Large.Is() {
		small = m.Small.V.Nominal / 2
	}
	if small < 0 {
		f.Wrong = "it would come to a point before its end"
		return
	}
	f.Lathe = &Lathe{X0: x0, X1: x1, R0: large, R1: small, Inside: on.Inside, On: g}
	if p.largeRight(f, on, x0, x1) {
		f.Lathe.R0, f.Lathe.R1 = small, large
	}
	f.Half = math.Atan(per)
}

// slope gives how much the radius of a taper changes for each mm of the axis.
func (p *Part) slope(f *Form, length float64, on Lathe) (float64, bool) {
	m := f.Feature
	switch {
	case m.Angle.Is():
		return math.Tan(m.Angle.V / 2 * math.Pi / 180), m.Angle.V > 0 && m.Angle.V < 180
	case m.TaperSize.Is():
		if r, ok := handbook.TaperRatio(m.TaperSize.V); ok {
			return r / 2, true
		}
		f.lack(model.Known[float64]{Of: m.Item, Attr: "angle", At: m.At.At}.Missing())
		return 0, false
	case m.Small.Is():
		large := 2 * on.R0
		if m.Large.Is() {
			large = m.Large.V.Nominal
		}
		return (large - m.Small.V.Nominal) / 2 / length, large > m.Small.V.Nominal
	}
	f.lack(m.Angle.Missing())
	return 0, false
}

// largeRight says on which side the large end lies: as written; of a bore at its mouth; else
// beside the larger neighbour, the left where they are alike.
func (p *Part) largeRight(f *Form, on Lathe, x0, x1 float64) bool {
	switch f.Feature.LargeEnd.V {
	case "right":
		return true
	case "left":
		return false
	}
	if on.Inside {
		return x1 > p.High()[f.About.Along]-model.Grain
	}
	return p.besideAt(f, x1+model.Grain) > p.besideAt(f, x0-model.Grain)
}

// besideAt is the finished radius of the outside beside a taper at a place along its line; 0 beyond
// the ends of the part.
func (p *Part) besideAt(f *Form, x float64) float64 {
	if x < p.Low[f.About.Along] || x > p.High()[f.About.Along] {
		return 0
	}
	r := math.Inf(1)
	if p.Own(f.About) {
		r = p.Radius()
	}
	for _, g := range p.Forms {
		if l := g.Lathe; g.Feature.Kind == "outside" && l != nil && g.About.Same(f.About) && x >= l.X0 && x <= l.X1 {
			r = math.Min(r, l.R0)
		}
	}
	return r
}
