package eval

import (
	"math"

	"fettle/eval/reckon/taper"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// overRollers works the width of a dovetail at its narrow place out from the size over its rollers, or
// between them, that is written instead. Both differ by what hangs on rollers, angle and depth alone, so
// that the limits of the one are those of the other. It says why where such rollers measure nothing.
func (p *Part) overRollers(f *Form) (why string) {
	m := *f.Feature
	o := m.OverRollers
	size, ok := o.Size.Get()
	roller, ok2 := o.Rollers.Get()
	if m.Width.Is() || !ok || !ok2 || !m.Angle.Is() || !f.Depth.Is() {
		return ""
	}
	ref := size.Nominal // any width will do: rollers stand out by as much on all of them
	over, err := taper.Dovetail{Angle: m.Angle.V, Height: f.Depth.V}.OverMale(ref, roller)
	narrow := size.Nominal - (over - ref)
	if m.Sort.V != "tongue" {
		narrow = size.Nominal + (over - ref) - 2*f.Depth.V/math.Tan(m.Angle.V*math.Pi/180)
	}
	switch {
	case err != nil:
		return err.Error()
	case narrow <= 0:
		return "nothing is left of its width between the sharp corners at " + model.Figure(size.Nominal) + " mm over rollers of " + model.Figure(roller)
	}
	w := drawing.Size{Nominal: round3(narrow), Unit: size.Unit, Decimals: -1, Tol: size.Tol}
	if l, ok := LimitsOf(size, model.General{}, m.Item, "over_rollers.size").Get(); ok && size.Tol.Kind == drawing.Class {
		w.Tol = drawing.Tolerance{Kind: drawing.Deviations, Lo: l.Lo - size.Nominal, Hi: l.Hi - size.Nominal}
	}
	m.Width = model.Known[drawing.Size]{V: w, From: model.WorkedOut, At: o.Size.At, Of: m.Item, Attr: "width"}
	f.Feature = &m
	return ""
}
