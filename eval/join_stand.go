package eval

import (
	"math"

	"fettle/schema/model"
)

// standing says whether the parts of two bearings stand on one face of a third, as an assembly places them: how
// high each hole then lies is settled by its own drawing, and nothing lines the two up that way. Sideways
// they can still be moved.
func (t *Trace) standing(l *Lined) bool {
	for _, a := range t.Build.Assemblies {
		one, on, ok := t.standsOn(a, l.One.Part)
		two, on2, ok2 := t.standsOn(a, l.Two.Part)
		if !ok || !ok2 || on != on2 {
			continue
		}
		x, ok := l.One.above(one)
		y, ok2 := l.Two.above(two)
		if !ok || !ok2 {
			continue
		}
		l.OneGo = t.inOneGo(l.One.Form, l.Two.Form)
		l.On, l.PinPlay = on, model.Sure(0.0)
		l.Most = model.Both(x, y, func(u, v Limits) float64 { return max(math.Abs(u.Hi-v.Lo), math.Abs(v.Hi-u.Lo)) })
		return true
	}
	return false
}

// standsOn gives the face that a part stands on by, and the name of that face of another part, where an
// assembly says that the two touch with no gap.
func (t *Trace) standsOn(a *model.Assembly, p *Part) (own Plane, on string, ok bool) {
	for _, pl := range a.Places {
		refs := pl.Touches.V
		if pl.Gap.V.Nominal != 0 {
			continue
		}
		for i := 0; i+1 < len(refs); i += 2 {
			q, face, found := t.plane(refs[i])
			o, under, found2 := t.plane(refs[i+1])
			if found && found2 && q == p && o != p && !ok {
				own, on, ok = face, o.Path()+"."+under.Name, true
			}
		}
	}
	return own, on, ok
}

// above is how high the axis of a hole lies above a face of its part that is beside it, by the limits written
// with its place; false where it is not beside it.
func (b LineHole) above(own Plane) (model.Known[Limits], bool) {
	axis := own.Face.Axis()
	f, m := b.Form, b.Form.Feature
	if _, ok := f.holeAt(axis); !ok || !near(own.At, b.Part.FaceAt(own.Face)) {
		return model.Known[Limits]{}, false
	}
	lack := model.Known[Limits]{Of: m.Item, Attr: "at (its limits)", At: m.Item.At}
	pos := m.At.V[:min(1, len(m.At.V))]
	for _, ps := range pos {
		first, second := across(f.Into.Face)
		for i, ax := range [2]int{first, second} {
			if i < len(ps.Short) && ax == axis && own.Face.Sign() < 0 {
				return LimitsOf(ps.Short[i], model.General{}, m.Item, "at"), true
			}
		}
		for _, c := range ps.Coords {
			if c.Datum.Face == own.Face && c.Datum.Item == nil {
				return LimitsOf(c.Size, model.General{}, m.Item, "at"), true
			}
		}
	}
	return lack, true
}
