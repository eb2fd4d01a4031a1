package eval

import (
	"math"

	"fettle/eval/reckon/balance"
	"fettle/eval/solid"
	"fettle/schema/model"
)

// Unbalanced is the pull of work that turns off its middle.
type Unbalanced struct {
	Kilograms float64 // of the piece, and of the angle plate that it lies on: clamps, packing and set-over jaws are not counted
	Middle    float64 // their centre of mass from the axis, mm
	Moment    balance.Moment
	Most      balance.Moment // the most that it can be, where the shape of an angle plate is not known
	Open      model.Lack     // what would settle it, where Most is more
}

// Unbalanced is how far off its middle the piece turns in an operation, before its cut. False where
// it turns about its middle: a turned part about its own axis from which nothing is gone on one
// side.
func (k *Turn) Unbalanced() (u model.Known[Unbalanced], off bool) {
	if k.Hold.Unplayed != "" || k.Choice.ByHand || k.evenAbout() {
		return u, false
	}
	c, ok := k.Before.Piece.Centre()
	if !ok {
		return u, false
	}
	c[0] = 0
	at := c.Len()
	on := k.Hold.Choice.AnglePlate
	if at < offMiddle && on == nil {
		return u, false
	}
	kg := k.Part.weighs(k.Before.Piece)
	if !kg.Is() {
		return model.Lacking[Unbalanced](kg.Missing()), true
	}
	piece := balance.Mass{Kilograms: kg.V, Radius: at, Angle: math.Atan2(c[1], c[2]) * 180 / math.Pi}
	m, err := balance.Sum(piece)
	if err != nil {
		return u, false
	}
	o := Unbalanced{Kilograms: kg.V, Middle: at, Moment: m, Most: m}
	if on != nil {
		s, ok := k.Hold.Shelf()
		if !ok {
			return model.Lacking[Unbalanced]([]model.Lack{{Fact: k.Hold.Work.SetUp.Path() + ".beside"}}), true
		}
		if lacks := o.withShelf(&s, piece); len(lacks) > 0 {
			return model.Lacking[Unbalanced](lacks), true
		}
	}
	return model.Sure(o), true
}

// weighs is the mass of a piece of the part, kg.
func (p *Part) weighs(piece *solid.Piece) model.Known[float64] {
	mat := p.Material
	if s := p.Blank.Stock; !mat.Is() && s != nil {
		mat = s.Material
	}
	switch {
	case !mat.Is():
		return model.Lacking[float64](mat.Missing())
	case mat.V.Density <= 0:
		return model.Lacking[float64]([]model.Lack{{Fact: "the density of " + mat.V.Written}})
	}
	return model.Sure(piece.Volume() * mat.V.Density * 1e-9)
}

// offMiddle is how far off the axis the middle of a piece may lie and still counts as turning about
// its middle, mm: within what a piece is set true to.
const offMiddle = 0.02

// evenAbout says whether a turned part turns about its own axis and all that has been made goes
// round it.
func (k *Turn) evenAbout() bool {
	p := k.Part
	if !p.Own(k.Hold.About) {
		return false
	}
	for i, f := range p.Forms {
		if !k.Before.Features[i].Begun {
			continue
		}
		if about, ok := p.axisOf(Target{Form: f}); !ok || !p.Own(about) || f.KeyBore != nil {
			return false
		}
	}
	return true
}

// Broken says what breaks the round of the metal that an operation cuts: "" where the tool is in
// the cut all the way round.
func (k *Turn) Broken(w *Turning) string {
	if w.Wrong != "" {
		return ""
	}
	if !w.Inside {
		for _, z := range k.Before.Profile.Between(w.X0, w.X1) {
			least := math.Min(w.R0, w.R1)
			if (z.Uneven || z.Flats > 0) && z.Whole() < z.Most()-model.Grain && z.Most() > least+model.Grain {
				switch {
				case z.Flats > 0:
					return "the corners of the bar"
				case k.Part.Round:
					return "the bar set over"
				}
				return "the corners of the block"
			}
		}
	}
	for i, f := range k.Part.Forms {
		if !k.Before.Features[i].Begun || f.Lathe != nil || f == w.Target.Form {
			continue
		}
		if about, ok := k.Part.axisOf(Target{Form: f}); ok && about.Same(k.Hold.About) && f.KeyBore == nil {
			continue
		}
		if k.crosses(w, f) {
			return f.Name()
		}
	}
	return ""
}

// crosses says whether a feature that was milled or drilled opens the surface that is cut.
func (k *Turn) crosses(w *Turning, f *Form) bool {
	lo, hi := f.Lo, f.Hi
	if len(f.Mouths) > 0 {
		r := f.Diameter.Or(0) / 2
		for i, m := range f.Mouths {
			end := m.Add(f.dir(i).Times(f.Depth.Or(0)))
			for j := range 3 {
				a, b := math.Min(m[j], end[j])-r*sideways(f.dir(i), j), math.Max(m[j], end[j])+r*sideways(f.dir(i), j)
				if i == 0 {
					lo[j], hi[j] = a, b
				}
				lo[j], hi[j] = math.Min(lo[j], a), math.Max(hi[j], b)
			}
		}
	}
	along := k.Hold.About.Along
	if hi[along] < w.X0+model.Grain || lo[along] > w.X1-model.Grain || hi[along]-lo[along] < model.Grain {
		return false
	}
	// The ring between what is there and what is left, against the box of the feature.
	near, far := 0.0, 0.0
	for j := range 3 {
		if j == along {
			continue
		}
		a, b := lo[j]-k.Hold.About.At[j], hi[j]-k.Hold.About.At[j]
		m := math.Max(math.Abs(a), math.Abs(b))
		far += m * m
		if a > 0 || b < 0 {
			n := math.Min(math.Abs(a), math.Abs(b))
			near += n * n
		}
	}
	least, most := math.Min(w.R0, w.R1), w.Had
	if w.Inside {
		least, most = w.Had, math.Max(w.R0, w.R1)
	}
	return math.Sqrt(near) < most-model.Grain && math.Sqrt(far) > least+model.Grain
}

// sideways is how much of a radius square to a direction shows along an axis.
func sideways(d solid.Vec, j int) float64 { return math.Sqrt(math.Max(0, 1-d[j]*d[j])) }
