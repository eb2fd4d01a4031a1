package eval

import (
	"fettle/eval/reckon/fit"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// AsDrawn is a diameter of a turned part that no step makes: it is as the bar is.
type AsDrawn struct {
	Name string
	Size model.Known[drawing.Size]
	Of   *model.Item
	Form *Form // nil the part's own outside
}

// AsDrawn lists the diameters with limits of their own that the bar itself must have: those that are still as
// the bar is when the part is done. The general tolerance of a recipe says nothing of them here: bar
// of any usual make lies within it.
func (t *PartTrace) AsDrawn() (out []AsDrawn) {
	p := t.Part
	if !p.Round || p.flats() > 0 || t.End == nil || p.Blank.Stock == nil {
		return nil
	}
	own := func(s model.Known[drawing.Size]) bool {
		return s.Is() && (s.V.Tol.Kind == drawing.Class || s.V.Tol.Kind == drawing.Deviations)
	}
	still := func(x0, x1, r float64) bool {
		z := t.End.Profile.Between(x0, x1)
		if len(z) == 0 {
			return false
		}
		for i := range z {
			if z[i].Skin == "" || !near(z[i].Out0, r) || !near(z[i].Out1, r) {
				return false
			}
		}
		return true
	}
	if d := p.Part.Diameter; own(d) && len(t.End.Profile) > 0 {
		for _, z := range t.End.Profile {
			if z.Skin != "" && z.Spoilt == "" && near(z.Out0, p.Radius()) && near(z.Out1, p.Radius()) {
				out = append(out, AsDrawn{"the outside of " + p.Label, d, p.Item, nil})
				break
			}
		}
	}
	for _, f := range p.Forms {
		if l := f.Lathe; f.Feature.Kind == "outside" && l != nil && own(f.Feature.Diameter) && p.Own(f.About) && still(l.X0, l.X1, l.R0) {
			out = append(out, AsDrawn{f.Name(), f.Feature.Diameter, f.Feature.Item, f})
		}
	}
	return out
}

// BarLimits is between what sizes a round bar lies: as it was measured, else by its class.
func BarLimits(s *model.Stock) model.Known[Limits] {
	if m, ok := s.Limits.Sizes.Get(); ok && len(m) == 2 {
		return model.Sure(Limits{m[0], m[1]})
	}
	if c, ok := s.Limits.Class.Get(); ok && s.Round.Is() {
		if lo, hi, err := fit.Limits(handbook.ISO286(), s.Round.V.Nominal, c); err == nil {
			return model.Sure(Limits{s.Round.V.Nominal + lo, s.Round.V.Nominal + hi})
		}
	}
	if s.Round.Is() && (s.Round.V.Tol.Kind == drawing.Class || s.Round.V.Tol.Kind == drawing.Deviations) {
		return LimitsOf(s.Round.V, model.General{}, s.Item, "round")
	}
	return model.Known[Limits]{Of: s.Item, Attr: "limits", At: s.Item.At}
}
