package eval

import (
	"math"

	"fettle/schema/model"
)

// surface finds the turned surface that a feature lies on: as written; else the one that spans the
// place where it says that it lies; else, where there is only one, that one. A nil form with true is the
// part's own outside.
func (p *Part) surface(f *Form, refs []model.Ref, inside bool) (*Form, bool) {
	if len(refs) > 0 {
		if isOutside(refs[0]) {
			return nil, true
		}
		g := p.FormOf(refs[0].Item)
		if g == nil || g.Lathe != nil {
			return g, g != nil
		}
		_, hollow := g.walled()
		return g, inside && hollow
	}
	x0, x1, placed := p.saysWhere(f)
	var all, there []*Form
	clear := true // of all of them
	for _, g := range p.Forms {
		if g == f || g.Feature.Kind != "outside" && !(inside && g.Feature.Kind == "bore") {
			continue
		}
		all = append(all, g)
		if l := g.Lathe; l == nil || x0 < l.X1-model.Grain && x1 > l.X0+model.Grain {
			clear = false
			if l != nil && l.X0 < x0+model.Grain && l.X1 > x1-model.Grain {
				there = append(there, g)
			}
		}
	}
	switch {
	case placed && clear, len(all) == 0:
		return nil, true
	case placed && len(there) == 1:
		return there[0], true
	case len(all) == 1:
		return all[0], true
	}
	f.Wrong = "it does not say which turned surface it lies on, and there are several"
	return nil, false
}

// saysWhere is the stretch along the axis that a feature says it lies on, or a little of it beside the one
// end that it says; false where it says none.
func (p *Part) saysWhere(f *Form) (x0, x1 float64, ok bool) {
	const little = 0.01 // mm
	m := f.Feature
	from, okFrom := p.axial(m.From.V)
	to, okTo := p.axial(m.To.V)
	switch okFrom, okTo = okFrom && m.From.Is(), okTo && m.To.Is(); {
	case okFrom && okTo:
		return math.Min(from, to), math.Max(from, to), true
	case okFrom:
		return from, from + little, true
	case okTo:
		return to - little, to, true
	}
	return 0, 0, false
}
