package eval

import (
	"fettle/eval/reckon/fit"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// What is bought comes in the sizes and limits of its maker: a ball bearing by its number (ISO 15, ISO 492), a pin by
// its kind (ISO 2338, 8734, 2339, 8739 to 8745, 8752). Such a size is named through the thing of the shop
// (bearings.small.outside, pins.dowels[4]) or through a part that is bought as it (part.race.diameter), where what the
// part says itself counts.

// thing is the thing of the shop that a size belongs to, and the size of it that is meant; false of sizes
// of parts that are made, and of parts that are bought without being named.
func (d *Dimension) thing() (r model.Ref, attr string, ok bool) {
	switch {
	case d.Part != nil && d.Form == nil && d.Of == d.Part.Part.Item:
		as := d.Part.Part.Bought.As
		if !as.Is() || as.V.Item == nil {
			return r, "", false
		}
		attr, ok = partSizeOf[as.V.Item.Kind][d.Attr]
		return as.V, attr, ok
	case d.Part == nil && d.Of != nil && partSizeOf[d.Of.Kind] != nil:
		return d.picked, d.Attr, true
	}
	return r, "", false
}

// partSizeOf is what a size of a bought part is called on the thing that it is.
var partSizeOf = map[string]map[string]string{
	"bearings": {"diameter": "outside", "length": "width", "bore": "bore"},
	"pins":     {"diameter": "diameter"},
}

// boughtSize settles a size that is not written with the part itself.
func (t *Trace) boughtSize(d *Dimension) {
	r, attr, ok := d.thing()
	if !ok {
		return
	}
	if b, found := model.Find(t.Build.Shop.Bearings, r.Item); found {
		if k := bearingSize(b, attr); k.Is() {
			d.Size = model.Known[drawing.Size]{V: drawing.PlainSize(k.V, "", t.Build.Recipe.Unit), From: k.From, At: k.At}
		} else {
			d.Size = model.Known[drawing.Size]{Attr: r.Item.Path() + "." + attr, At: r.Item.At}
		}
		return
	}
	if p, found := model.Find(t.Build.Shop.Pins, r.Item); found && attr == "diameter" {
		if x, one := pinDiameter(p, r); one {
			d.Size = model.Known[drawing.Size]{V: drawing.PlainSize(x, "", t.Build.Recipe.Unit), From: model.Written, At: p.Diameter.At}
		}
	}
}

func bearingSize(b *model.Bearings, attr string) model.Known[float64] {
	switch attr {
	case "bore":
		return b.Bore
	case "outside":
		return b.Outside
	case "width":
		return b.Width
	}
	return model.Known[float64]{}
}

// pinDiameter is the nominal diameter of the pin that is meant: the one picked, or the only one there is.
func pinDiameter(p *model.Pins, r model.Ref) (float64, bool) {
	lo, hi, ok := p.Diameter.V.Range()
	switch {
	case r.Has:
		return r.Size, true
	case ok && near(lo, hi):
		return lo, true
	}
	return 0, false
}

// boughtLimits settles limits that are not written with the size: those of the standard of what is bought. What
// no standard fixes stays not known.
func (t *Trace) boughtLimits(d *Dimension) (lim Limits, ok bool) {
	r, attr, ok := d.thing()
	if !ok || d.Size.V.Tol.Own() {
		return Limits{}, false
	}
	n := d.Size.V.Nominal
	if b, found := model.Find(t.Build.Shop.Bearings, r.Item); found {
		std, known := handbook.BearingOf(b.Code.V)
		if k := bearingSize(b, attr); !known || !std.Plain || !k.Is() || !near(k.V, n) {
			return Limits{}, false
		}
		by := n // limits go by the outside for that, else by the bore
		if attr == "width" {
			by = b.Bore.V
		}
		below, has := handbook.BearingBelow(attr, by)
		return Limits{n - below, n}, has
	}
	if p, found := model.Find(t.Build.Shop.Pins, r.Item); found {
		return pinLimits(p, n)
	}
	return Limits{}, false
}

// pinLimits are those between which the diameter of a pin lies as it comes: as the shop says, else by its kind.
func pinLimits(p *model.Pins, d float64) (Limits, bool) {
	if p.Limits.Is() || p.Item.Attr("limits") != nil {
		return classLimits(p.Limits.V, d)
	}
	pin, _ := handbook.PinOf(p.Sort.V, d)
	if pin.Most > 0 {
		return Limits{pin.Least, pin.Most}, true
	}
	return classLimits(pin.Limits, d)
}

// classLimits are the limits of a size of a class of ISO 286; false where it is none.
func classLimits(class string, d float64) (Limits, bool) {
	lo, hi, err := fit.Limits(handbook.ISO286(), d, class)
	return Limits{d + lo, d + hi}, err == nil
}

// asBoughtSize gives a part that is bought as a bearing or a pin the outer sizes that it does not say itself.
func asBoughtSize(b *model.Build, m *model.Part) *model.Part {
	as, ok := m.Bought.As.Get()
	if !ok || as.Item == nil || m.Hexagon.Is() || m.Square.Is() || m.Height.Is() || m.Thickness.Is() {
		return m
	}
	own := *m
	size := func(k *model.Known[drawing.Size], x model.Known[float64]) {
		if blank(*k) && x.Is() {
			k.V, k.From = drawing.PlainSize(x.V, "", b.Recipe.Unit), model.Handbook
		}
	}
	if x, found := model.Find(b.Shop.Bearings, as.Item); found {
		size(&own.Diameter, x.Outside)
		size(&own.Length, x.Width)
	}
	if x, found := model.Find(b.Shop.Pins, as.Item); found {
		if d, one := pinDiameter(x, as); one {
			size(&own.Diameter, model.Sure(d))
		}
	}
	return &own
}

// boreBought is the bore of the bearing that a part is bought as, mm.
func boreBought(b *model.Build, m *model.Part) (float64, bool) {
	as, ok := m.Bought.As.Get()
	if !ok {
		return 0, false
	}
	if x, found := model.Find(b.Shop.Bearings, as.Item); found && x.Bore.Is() {
		return x.Bore.V, true
	}
	return 0, false
}

// ofBearing takes bearings that are named without a size as the hole, or the shaft, of a fit.
func ofBearing(r model.Ref, size string) model.Ref {
	if r.Item != nil && r.Item.Kind == "bearings" && r.Sub == "" {
		r.Sub = size
	}
	return r
}
