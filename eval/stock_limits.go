package eval

import (
	"math"

	"fettle/eval/reckon/fit"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// AsStock says what limits a size has that is left as the stock is: those of the stock piece, not the general tolerance. Of a
// part's own size along an axis both faces must be as the stock is; of a diameter the bar's own surface must still be there when
// the part is done. False where the size is made, has limits of its own, or the piece of stock is not settled.
func (t *PartTrace) AsStock(f *Form, attr string, s drawing.Size) (l model.Known[Limits], ok bool) {
	stock := t.Part.Blank.Stock
	if stock == nil || !unlimited(s) || t.Start == nil || t.Part.Joined() {
		return l, false
	}
	switch {
	case attr == "diameter":
		ok = stock.Round.Is() && t.barsOwn(f, s.Nominal/2)
	case f == nil:
		ok = t.Part.acrossStock(attr, s.Nominal)
	}
	if !ok {
		return l, false
	}
	return sectionLimits(stock, s.Nominal), true
}

// barsOwn says whether the bar's own surface is left on all of a diameter.
func (t *PartTrace) barsOwn(f *Form, r float64) bool {
	p := t.Part
	if !p.Round || p.flats() > 0 || t.End == nil || !near(2*r, p.Blank.Stock.Round.V.Nominal) {
		return false
	}
	from, to := p.Low[0], p.High()[0]
	if f != nil {
		if f.Feature.Kind != "outside" || f.Lathe == nil || !p.Own(f.About) {
			return false
		}
		from, to = f.Lathe.X0, f.Lathe.X1
	}
	left := false
	for _, z := range t.End.Profile.Between(from, to) {
		whole := near(z.Out0, r) && near(z.Out1, r)
		if whole && z.Skin == "" || f != nil && !whole {
			return false
		}
		left = left || whole
	}
	return left
}

// acrossStock says whether a size of a part that is not turned lies across the stock between two faces that no step makes.
// What is cut out of sheet has only its thickness.
func (p *Part) acrossStock(attr string, nominal float64) bool {
	axis, known := sides[attr]
	b := &p.Blank
	if !known || p.Round || b.Round || axis == b.Lies[0] {
		return false
	}
	w, thick, sized := Section(b.Stock)
	if b.Stock.Sheet.Said {
		w, thick, sized = drawing.Size{}, b.Stock.Sheet.Thickness.V, true
	}
	if side := map[int]float64{b.Lies[1]: w.Nominal, b.Lies[2]: thick.Nominal}[axis]; !sized || !near(side, nominal) {
		return false
	}
	for _, f := range [2]model.Face{model.FaceOn(axis, -1), model.FaceOn(axis, 1)} {
		if over, ok := p.Blank.Over[f].Get(); !ok || over > model.Grain || p.Machined(f) {
			return false
		}
	}
	return true
}

// sectionLimits is between what sizes one side of a piece of stock lies, nominal mm: as it was measured, else by its class, else
// as its own size is written.
func sectionLimits(s *model.Stock, nominal float64) model.Known[Limits] {
	if s.Round.Is() {
		return BarLimits(s)
	}
	if m, ok := s.Limits.Sizes.Get(); ok && len(m) == 2 && nominal >= m[0]-1 && nominal <= m[1]+1 {
		return model.Sure(Limits{m[0], m[1]})
	}
	if c, ok := s.Limits.Class.Get(); ok && !s.Sheet.Said {
		if lo, hi, err := fit.Limits(handbook.ISO286(), nominal, c); err == nil {
			return model.Sure(Limits{nominal + lo, nominal + hi})
		}
	}
	for _, d := range [...]model.Known[drawing.Size]{s.Square, s.Hexagon, s.Flat.Width, s.Flat.Thickness, s.Sheet.Thickness} {
		if d.Is() && math.Abs(d.V.Nominal-nominal) < model.Grain && !unlimited(d.V) {
			return LimitsOf(d.V, model.General{}, s.Item, "limits")
		}
	}
	return model.Known[Limits]{Of: s.Item, Attr: "limits", At: s.Item.At}
}
