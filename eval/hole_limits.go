package eval

import (
	"math"

	"fettle/schema/model"
)

// HoleLimits are the sizes, both ends in, between which a hole may come out: the limits of the
// drawing, its own or general ones, and for a thread those of the nut's minor diameter. Not
// known where nothing sets any; then only the size that is written will do.
func (p *Part) HoleLimits(f *Form) (Limits, bool) {
	if t, ok := f.Feature.Thread.Size.Get(); ok {
		if l, ok := TapLimits(t, f.Feature.Thread.Class); ok {
			return l, true
		}
	}
	if !f.Feature.Diameter.Is() {
		return Limits{}, false
	}
	return LimitsOf(f.Feature.Diameter.V, p.Build.Recipe.General, f.Feature.Item, "diameter").Get()
}

// holeDone says whether a step that leaves a hole at a diameter has brought it to size: it is as
// large as the finished hole, or the step asked for no less than that and the size lies within
// the limits, as where a drill of the next size does.
func (p *Part) holeDone(f *Form, asked, diameter float64) bool {
	want, ok := f.Diameter.Get()
	if !ok {
		return false
	}
	if diameter >= want-model.Grain {
		return true
	}
	lim, ok := p.HoleLimits(f)
	return ok && asked >= want-model.Grain && diameter >= lim.Lo-model.Same
}

// roundHoleDone says the same of a hole on the axis, which may come out too large as well.
func (p *Part) roundHoleDone(f *Form, asked, diameter float64) bool {
	if near(diameter, f.Diameter.V) || f.Feature.Thread.Said && math.Abs(diameter-f.Diameter.V) < 0.5 {
		return true
	}
	lim, ok := p.HoleLimits(f)
	return ok && asked >= f.Diameter.V-model.Grain && diameter >= lim.Lo-model.Same && diameter <= lim.Hi+model.Same
}
