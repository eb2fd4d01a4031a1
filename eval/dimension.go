package eval

import (
	"strings"

	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
	"fettle/schema/text"
)

// Dimension is a size of a part, or of a thing that is bought, with its limits.
type Dimension struct {
	Path   string      // "part.clamp.hole.pillar.diameter"
	Of     *model.Item // the block that says it
	Attr   string      // "diameter"; of a member "counterbore.depth"
	Part   *Part       // nil of a thing of the shop
	Form   *Form       // nil of a size of the part itself
	At     text.Place
	Size   model.Known[drawing.Size]
	Drawn  model.Known[Limits] // by the drawing
	Limits model.Known[Limits] // as found where it was measured, else by the drawing
	Made   *model.Made         // the size found, where one was measured
	Known  bool                // the reference names a size, and it is known
	picked model.Ref           // of a thing of the shop: which of the set
}

// usualSize is the size that is meant where a reference stops at the block.
func usualSize(i *model.Item, r model.Ref) string {
	switch {
	case r.Sub != "":
		return r.Sub
	case i.Kind == "part":
		for _, a := range [...]string{"diameter", "hexagon", "square"} {
			if i.Attr(a) != nil {
				return a
			}
		}
		return ""
	case i.Kind == "slot", i.Kind == "slit", i.Kind == "pocket", i.Kind == "keyway":
		return "width"
	case i.Kind == "taper", i.Kind == "teeth", i.Kind == "worm", i.Kind == "thread":
		return ""
	}
	return "diameter"
}

// says finds what a block says of one of its sizes; a member of an object by its dotted name.
func says(i *model.Item, attr string) (model.Value, bool) {
	if a := i.Attr(attr); a != nil {
		return a.Value, true
	}
	head, member, dotted := strings.Cut(attr, ".")
	if a := i.Attr(head); dotted && a != nil {
		for _, m := range a.Value.Object {
			if m.Name == member || m.Name == attr {
				return m.Value, true
			}
		}
	}
	return model.Value{}, false
}

// dimension is a size as it counts for joints: as measured, else as drawn. Of several readings the
// latest day counts, of one day the last written; one of a piece among several counts for none.
func (t *Trace) dimension(r model.Ref) Dimension {
	d := t.drawn(r)
	for _, m := range t.Build.Made {
		if m.Of.V.Item != d.Of || d.Of == nil || m.Of.V.Part() != r.Part() || usualSize(d.Of, m.Of.V) != d.Attr || !m.Size.Is() {
			continue
		}
		if m.Item.Attr("piece") != nil && d.Part != nil && d.Part.Quantity.Or(1) > 1 || d.Made != nil && m.On.V < d.Made.On.V {
			continue
		}
		// What it was measured with may be off; where that is not known the reading counts.
		off := 0.0
		if a := m.Item.Attr("with"); a != nil && a.Value.Kind == model.RefTo {
			if i, ok := model.Find(t.Build.Shop.Instruments, a.Value.Ref.Item); ok {
				off = instrumentError(i)
			}
		}
		d.Made, d.Limits = m, model.Sure(Limits{m.Size.V - off, m.Size.V + off})
	}
	return d
}

func instrumentError(i *model.Instrument) float64 {
	if e, ok := i.Error.Get(); ok {
		return e
	}
	lo, hi := 0.0, 0.0
	if r := i.Range.V; len(r) == 2 {
		lo, hi = r[0], r[1]
	}
	e, _ := handbook.InstrumentError(i.Kind, lo, hi, i.ReadsTo.V)
	return e
}

// drawn is a size with the limits of the drawing. Sizes of things that are bought have only the
// limits written with them: the recipe's general tolerance does not bind their maker.
func (t *Trace) drawn(r model.Ref) Dimension {
	d := Dimension{Path: r.Path(), Of: r.Item, Attr: r.Sub, At: r.At, picked: r}
	if r.Item == nil {
		d.Limits = model.Known[Limits]{Attr: r.Path(), At: r.At}
		return d
	}
	if d.Attr = usualSize(r.Item, r); r.Sub == "" && d.Attr != "" {
		d.Path += "." + d.Attr
	}
	if up := r.Part(); up != nil {
		if d.Part = t.partOf(up); d.Part != nil {
			d.Form = d.Part.FormOf(r.Item)
		}
	}
	t.sized(&d)
	t.limited(&d)
	d.Limits, d.Known = d.Drawn, d.Size.Is()
	return d
}

// sized settles the size of a dimension as drawn.
func (t *Trace) sized(d *Dimension) {
	i := d.Of
	d.Size = model.Known[drawing.Size]{Of: i, Attr: d.Attr, At: i.At}
	v, ok := says(i, d.Attr)
	if m := d.Part; !ok && i.Kind == "part" && m != nil && m.Part.MirrorOf.Is() {
		v, ok = says(m.Part.MirrorOf.V.Item, d.Attr) // as large as its other hand
	}
	if ok && v.Kind == model.Object { // a depth from a face
		v, ok = says(i, d.Attr+".size")
	}
	if place, has := placeOf(i, d.Attr); has {
		d.Size.V, d.Size.From, d.Size.At = place.Size, model.Written, place.At
		return
	}
	switch {
	case ok && v.Kind == model.SizeOf:
		d.Size.V, d.Size.From, d.Size.At = v.Size, model.Written, v.At
	case ok && v.Kind == model.Number:
		d.Size.V, d.Size.From, d.Size.At = drawing.PlainSize(v.Num, "", t.Build.Recipe.Unit), model.Written, v.At
	case d.Form != nil && d.Attr == "depth" && d.Form.Through && d.Form.Into.Face != model.NoFace && near(d.Form.Into.At, d.Part.FaceAt(d.Form.Into.Face)):
		s, _ := d.Part.FaceSize(d.Form.Into.Face)
		d.Size.V, d.Size.From = s, model.WorkedOut
	case d.Form != nil && mouthSize(d.Form.Feature, d.Attr).Is():
		d.Size.V, d.Size.From = mouthSize(d.Form.Feature, d.Attr).V, model.Chosen
	default:
		t.boughtSize(d)
	}
}

// mouthSize is a size of a counterbore or countersink, as written or by its standard.
func mouthSize(m *model.Feature, attr string) (none model.Known[drawing.Size]) {
	switch attr {
	case "counterbore.diameter":
		return m.Counterbore.Diameter
	case "counterbore.depth":
		return m.Counterbore.Depth
	case "countersink.diameter":
		return m.Countersink.Diameter
	}
	return none
}

// placeOf is one distance of a place: the only one that is written, else the only one with limits of
// its own, or the one whose datum is named after it: "at.left", "at.hole.a". False where it is none of a
// place, or not plain which.
func placeOf(i *model.Item, attr string) (model.Coordinate, bool) {
	name, datum, _ := strings.Cut(attr, ".")
	a := i.Attr(name)
	if a == nil {
		return model.Coordinate{}, false
	}
	v := a.Value
	if v.Kind == model.List && len(v.List) == 1 {
		v = v.List[0]
	}
	if v.Kind != model.PositionOf {
		return model.Coordinate{}, false
	}
	at := v.Position
	all := append([]model.Coordinate{}, at.Coords...)
	for _, s := range at.Short {
		all = append(all, model.Coordinate{Size: s, At: at.At})
	}
	var found []model.Coordinate
	for _, c := range all {
		path := c.Datum.Path()
		if c.Datum.Face != model.NoFace {
			path = c.Datum.Face.String()
		}
		switch {
		case datum == "" && (len(all) == 1 || c.Size.Tol.Kind != drawing.General):
			found = append(found, c)
		case datum != "" && (path == datum || strings.HasSuffix(path, "."+datum)):
			found = append(found, c)
		}
	}
	if len(found) != 1 {
		return model.Coordinate{}, false
	}
	return found[0], true
}

// limited settles the limits of a dimension as drawn.
func (t *Trace) limited(d *Dimension) {
	if !d.Size.Is() {
		d.Drawn = model.Lacking[Limits](d.Size.Missing())
		return
	}
	i, general := d.Of, t.Build.Recipe.General
	if m, ok := model.Find(t.Build.Parts, i.Up("part")); !ok || m.Bought.Yes.V || m.Bought.As.Is() {
		general = model.General{}
	}
	s := d.Size.V
	if lim, ok := t.boughtLimits(d); ok {
		d.Drawn = model.Known[Limits]{V: lim, From: model.Handbook}
		return
	}
	for _, p := range t.Parts {
		if p.Part == d.Part && (d.Form != nil || i == p.Part.Part.Item) {
			if l, ok := p.AsStock(d.Form, d.Attr, s); ok {
				d.Drawn = l
				return
			}
		}
	}
	d.Drawn = LimitsOf(s, general, i, d.Attr)
}

// partOf finds the trace's part of a block; nil where there is none.
func (t *Trace) partOf(i *model.Item) *Part {
	for _, p := range t.Parts {
		if p.Part.Item == i {
			return p.Part
		}
	}
	return nil
}
