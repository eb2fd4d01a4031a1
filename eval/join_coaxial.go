package eval

import (
	"math"

	"fettle/eval/reckon/fit"
	"fettle/eval/reckon/press"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Passage is the largest diameter of the shaft's part on either side of its seat, which the hole
// must pass on its way there. False where it is not known: a shaft that is not turned, a hole
// that something else opens.
func (f *FitJoint) Passage() (left, right float64, ok bool) {
	p, seat := f.Shaft.Part, f.Shaft.Form
	if p == nil || seat == nil || seat.Lathe == nil || seat.Lathe.Inside || !p.Own(seat.About) || f.Hole.Part == nil || f.Hole.Form == nil || f.Hole.Part == p {
		return 0, 0, false
	}
	if !f.Hole.Part.closed(f.Hole.Form) {
		return 0, 0, false
	}
	cuts := []float64{p.Low[0], p.High()[0]}
	for _, g := range p.Forms {
		switch g.Feature.Kind {
		case "split", "flat", "flats":
			return 0, 0, false
		}
		if g.Lathe == nil || g.Lathe.Inside {
			if g.Wrong != "" && !onSurfaceOnly(g.Feature.Kind) {
				return 0, 0, false
			}
			continue
		}
		if !p.Own(g.About) {
			return 0, 0, false
		}
		cuts = append(cuts, g.Lathe.X0, g.Lathe.X1)
	}
	for _, x := range cuts {
		for _, side := range [2]float64{-2 * model.Grain, 2 * model.Grain} {
			switch r, in := p.radiusAt(x + side); {
			case !in:
			case x+side < seat.Lathe.X0:
				left = math.Max(left, 2*r)
			case x+side > seat.Lathe.X1:
				right = math.Max(right, 2*r)
			}
		}
	}
	return left, right, true
}

// radiusAt is the finished radius of a turned part at a place along its axis: the least of its
// own and of what is turned there. False beyond its ends.
func (p *Part) radiusAt(x float64) (float64, bool) {
	if x < p.Low[0] || x > p.High()[0] {
		return 0, false
	}
	r := p.Radius()
	for _, g := range p.Forms {
		if l := g.Lathe; l != nil && !l.Inside && l.End == model.NoFace && x >= l.X0 && x <= l.X1 && g.Wrong == "" {
			switch g.Feature.Kind {
			case "outside", "groove", "taper":
				r = min(r, line(l.X0, l.X1, l.R0, l.R1, x))
			}
		}
	}
	return r, true
}

// closed says whether a hole is round all the way: nothing breaks into it from the side.
func (p *Part) closed(f *Form) bool {
	for _, g := range p.Forms {
		switch g.Feature.Kind {
		case "split", "slit":
			return false
		}
		if g.Later && !onSurfaceOnly(g.Feature.Kind) {
			return false
		}
	}
	if p.Round {
		return true
	}
	for _, b := range p.Beside(f) {
		if b.Wall < model.Grain {
			return false
		}
	}
	return p.SideWall(f).Wall > 0
}

// Pressed says whether the shaft is pressed or shrunk in: as written, else by its limits.
func (f *FitJoint) Pressed() model.Known[bool] {
	if j := f.Model.Joined; j.Is() {
		return model.Sure(j.V == "pressed" || j.V == "shrunk")
	}
	return model.Map(f.Play, func(l Limits) bool { return fit.KindOf(l.Lo, l.Hi) == fit.Interference })
}

// Bush is a shaft that is pressed in and has a bore of its own within the length that is pressed.
type Bush struct {
	Bore   Dimension
	Maker  *model.SetUp        // what brings the bore to its size; nil where it is bought so
	Early  bool                // it does so before the bush is joined to the other part
	Closes model.Known[Limits] // how much the bore closes at the most interference, mm: bracketed
}

// Where a metal is not known the bore is taken to close by a share of the interference: thick
// rings give 0.55 (a thick bush in a soft or thin housing) to 0.86 (a thin bush in a stiff one)
// in six worked cases, and 0.7 to 1 is the guess of the trade.
const leastCloses, mostCloses = 0.55, 1.0

// Bushed finds the bore of a bush that is pressed in; false where the shaft is no bush.
func (f *FitJoint) Bushed(t *Trace) (Bush, bool) {
	p := f.Shaft.Part
	if p == nil || !p.Round || f.Hole.Part == p || f.Hole.Part == nil {
		return Bush{}, false
	}
	x0, x1 := f.stretch()
	for _, g := range p.Forms {
		if !g.boresAlong(p) || g.Feature.Thread.Said || !g.Feature.Diameter.Is() || !g.overlaps(x0, x1) {
			continue
		}
		b := Bush{Bore: t.dimension(model.Ref{Item: g.Feature.Item, Sub: "diameter", At: g.Feature.Item.At})}
		b.Maker = t.MakerOf(g.Feature.Item)
		b.Early = b.Maker != nil && b.Maker.Item.Up("assembly") == nil || b.Maker == nil && p.Bought()
		if b.Maker == nil && !b.Early {
			return Bush{}, false
		}
		b.Closes = model.Map(f.Play, func(l Limits) Limits { return f.closes(max(0, -l.Lo), g.Diameter.V) })
		return b, true
	}
	return Bush{}, false
}

// stretch is where along its axis a shaft may lie in its hole: the outside that is named, else all of it.
func (f *FitJoint) stretch() (x0, x1 float64) {
	if s := f.Shaft.Form; s != nil && s.Lathe != nil {
		return s.Lathe.X0, s.Lathe.X1
	}
	return f.Shaft.Part.Low[0], f.Shaft.Part.High()[0]
}

// boresAlong says whether a form is a bore or a hole along the axis of a turned part.
func (f *Form) boresAlong(p *Part) bool {
	switch {
	case f.Wrong != "" || !p.Round:
		return false
	case f.Feature.Kind == "hole" && len(f.Mouths) == 1 && f.Into.Face.Axis() == 0:
		return math.Hypot(f.Mouths[0][1], f.Mouths[0][2]) < model.Grain
	}
	return f.Lathe != nil && f.Lathe.Inside && f.Feature.Kind == "bore" && p.Own(f.About)
}

// closes brackets how much the bore of a bush closes at an interference, both on diameter, mm: by
// thick rings, the housing as thin as the metal round the hole and as thick as can be, each metal
// over the spread of its stiffness. Roughness that is pressed flat is not counted.
func (f *FitJoint) closes(interference, bore float64) Limits {
	rough := Limits{leastCloses * interference, mostCloses * interference}
	hub, ok := handbook.ElasticOf(f.Hole.Part.Material.V.Written)
	bush, ok2 := handbook.ElasticOf(f.Shaft.Part.Material.V.Written)
	if !ok || !ok2 || !f.Hole.Size.Is() {
		return rough
	}
	d := f.Hole.Size.V.Nominal
	thin, thick := f.Hole.Part.round(f.Hole.Form, d)
	fit := press.Fit{Diameter: d, Outside: thin, Bore: bore, Interference: handbook.One(interference), Hub: hub, Shaft: bush}
	least, err := press.Work(fit)
	fit.Outside = thick
	most, err2 := press.Work(fit)
	if err != nil || err2 != nil {
		return rough
	}
	return Limits{least.Closes.Lo, most.Closes.Hi}
}

// round brackets the outside of the ring of metal round a hole of a diameter: the least is the
// circle that lies within the part, the most is all that there could be of it.
func (p *Part) round(f *Form, d float64) (thin, thick float64) {
	thin, thick = 1.01*d, 20*d
	switch {
	case p.Round:
		thick = max(thin, 2*p.Radius())
		least := p.Radius()
		for _, g := range p.Forms {
			if l := g.Lathe; l != nil && !l.Inside {
				least = min(least, l.R0-g.About.Aside(), l.R1-g.About.Aside())
			}
		}
		thin = max(thin, 2*least)
	case f != nil && len(f.Mouths) > 0:
		wall := p.SideWall(f).Wall
		for _, b := range p.Beside(f) {
			wall = min(wall, b.Wall)
		}
		thin = max(thin, d+2*wall)
	}
	return thin, thick
}

// overlaps says whether a hole along the axis runs within a stretch of it.
func (f *Form) overlaps(x0, x1 float64) bool {
	a, b := f.along(x0, x1)
	return min(b, x1)-max(a, x0) > model.Grain
}

// along is where a hole along the axis runs; all of a stretch where it does not say.
func (f *Form) along(x0, x1 float64) (a, b float64) {
	a, b = x0, x1
	switch {
	case f.Lathe != nil:
		a, b = f.Lathe.X0, f.Lathe.X1
	case f.Depth.Is():
		a = f.Into.At
		b = f.Into.At - f.Into.Face.Sign()*f.Depth.V
		if b < a {
			a, b = b, a
		}
	}
	return a, b
}

// AirShut says whether a shaft shuts air up in a blind hole: the hole has a bottom and nothing
// else opens it, and the shaft's part has nothing that lets the air by.
func (f *FitJoint) AirShut() bool {
	h, p := f.Hole.Form, f.Shaft.Part
	if h == nil || f.Hole.Part == nil || h.Feature.Thread.Said || h.Through || !h.Depth.Is() || len(h.Mouths) == 0 || h.Wrong != "" || !f.Hole.Part.closed(h) {
		return false
	}
	if p == nil || !p.Round {
		return false
	}
	for _, g := range f.Hole.Part.Forms {
		if g.Feature.Kind == "hole" && g != h && Meets(g, h) || g.Feature.Kind == "bore" && g != h {
			return false
		}
	}
	for _, g := range p.Forms {
		switch g.Feature.Kind {
		case "outside", "chamfer", "radius", "taper", "centre_hole", "teeth":
		default:
			return false // a flat, a hole, a groove, a slot, a thread, a knurl
		}
	}
	return true
}
