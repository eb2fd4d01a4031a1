package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Blank is the raw piece in the part's frame.
type Blank struct {
	Model   *model.Blank
	Stock   *model.Stock
	Lies    [3]int // which axis of the part runs along the bar, across its width, through its thickness
	Lo, Hi  solid.Vec
	Over    [7]model.Known[float64] // metal beyond each finished face
	Skin    [7]model.Known[string]
	Shape   solid.Shape
	Round   bool
	Bar     model.Face   // of a piece still one with the bar: the end that the bar goes on beyond; else NoFace
	BarOpen []model.Lack // why it is not known how far the bar goes on; nil where it is
	Profile Profile      // of turned parts
	Lacks   []model.Lack
	Chosen  []string // sentences about what was filled in
}

var sides = map[string]int{"length": 0, "width": 1, "height": 2, "thickness": 2}

// blank lays the finished part in its raw piece. What `over` leaves out comes from the
// section of the stock where one is named, shared equally on opposite faces, else from
// the least that usual practice allows for the skin.
func (p *Part) blank(stock *model.Stock) {
	b := &p.Blank
	b.Model, b.Stock = p.Part.Blank, stock
	p.lie()
	p.skins()
	for _, f := range model.Faces {
		if b.Model != nil {
			b.Over[f] = b.Model.Over.On(f)
		}
		if p.Round && (f.Axis() != 0 || b.Model != nil && b.Model.Bar.V && f == p.partedEnd()) {
			b.Over[f] = model.Known[float64]{V: 0, From: model.WorkedOut}
		}
		if p.rawFace(f) {
			b.Over[f] = model.Known[float64]{V: 0, From: model.WorkedOut}
		}
	}
	p.rawUnmade()
	p.shareOver()
	for _, f := range model.Faces {
		over, ok := b.Over[f].Get()
		if !ok {
			b.Lacks = append(b.Lacks, b.Over[f].Missing()...)
		}
		if f.Sign() > 0 {
			b.Hi[f.Axis()] = p.FaceAt(f) + over
		} else {
			b.Lo[f.Axis()] = p.FaceAt(f) - over
		}
	}
	if p.Round {
		p.turnedBlank()
		return
	}
	b.Shape = solid.Box(b.Lo, b.Hi)
	if stock != nil && stock.Round.Is() {
		p.roundBlank(stock.Round.V.Nominal)
	}
}

// rawUnmade leaves no metal over faces that no step makes: they are as the stock is. Where
// neither of two opposite faces is made, that holds only if the stock is no larger than the
// part; a larger one is told of by what is left over.
func (p *Part) rawUnmade() {
	b := &p.Blank
	if b.Stock != nil && b.Stock.Casting.Said {
		p.castOver()
		return
	}
	w, t, sized := Section(b.Stock)
	for i, axis := range b.Lies {
		lo, hi := model.FaceOn(axis, -1), model.FaceOn(axis, 1)
		larger := sized && !b.Stock.Round.Is() && (i == 1 && w.Nominal > p.Size[axis]+model.Grain || i == 2 && t.Nominal > p.Size[axis]+model.Grain)
		for _, f := range [2]model.Face{lo, hi} {
			if b.Over[f].Is() || p.Machined(f) || larger && !p.Machined(f.Opposite()) {
				continue
			}
			b.Over[f] = model.Known[float64]{V: 0, From: model.Standing}
		}
	}
}

// roundBlank makes the raw piece a length of round bar, the part in its middle.
func (p *Part) roundBlank(diameter float64) {
	b := &p.Blank
	b.Round = true
	axis := b.Lies[0]
	from, to := p.Size.Times(0.5), p.Size.Times(0.5)
	from[axis], to[axis] = b.Lo[axis], b.Hi[axis]
	b.Shape = solid.Cylinder(from, to, diameter/2)
	for i := range 3 {
		if i != axis {
			b.Lo[i], b.Hi[i] = p.Size[i]/2-diameter/2, p.Size[i]/2+diameter/2
		}
	}
}

// rawFace says that the drawing leaves a face as the stock is.
func (p *Part) rawFace(f model.Face) bool {
	for _, r := range p.Faces {
		if r.Label == f.String() && r.Raw.V {
			return true
		}
	}
	return false
}

func (p *Part) skins() {
	b := &p.Blank
	for _, f := range model.Faces {
		if b.Model != nil && b.Model.Skin.On(f).Is() {
			b.Skin[f] = b.Model.Skin.On(f)
			continue
		}
		switch {
		case b.Stock != nil && b.Stock.Casting.Said && !b.Stock.Skin.Is():
			b.Skin[f] = model.Known[string]{V: "cast", From: model.WorkedOut}
		case b.Stock != nil && b.Stock.Casting.Said:
			b.Skin[f] = b.Stock.Skin
		case f.Axis() == b.Lies[0]:
			b.Skin[f] = model.Known[string]{V: "sawn", From: model.Standing}
		case b.Stock != nil:
			b.Skin[f] = b.Stock.Skin
		case b.Model != nil:
			b.Skin[f] = b.Model.Skin.On(f)
		default:
			b.Skin[f] = model.Known[string]{At: p.Item.At, Of: p.Item, Attr: "blank.skin." + f.String()}
		}
	}
}

// Section gives the stock's size across the bar: width and thickness; of round, square and
// hexagon both the same.
func Section(s *model.Stock) (width, thickness drawing.Size, ok bool) {
	switch {
	case s == nil:
	case s.Flat.Said:
		return s.Flat.Width.V, s.Flat.Thickness.V, s.Flat.Width.Is() && s.Flat.Thickness.Is()
	case s.Round.Is():
		return s.Round.V, s.Round.V, true
	case s.Square.Is():
		return s.Square.V, s.Square.V, true
	case s.Hexagon.Is():
		return s.Hexagon.V, s.Hexagon.V, true
	}
	return drawing.Size{}, drawing.Size{}, false
}

func (p *Part) shareOver() {
	b := &p.Blank
	if b.Stock != nil && b.Stock.Casting.Said {
		p.castOver()
		return
	}
	w, t, sized := Section(b.Stock)
	for i, axis := range b.Lies {
		lo, hi := model.FaceOn(axis, -1), model.FaceOn(axis, 1)
		var spare float64
		known := false
		switch {
		case i == 0 && b.Model != nil && b.Model.Cut.Is():
			spare, known = b.Model.Cut.V.Nominal-p.Size[axis], true
		case i == 1 && sized && !b.Stock.Round.Is():
			spare, known = w.Nominal-p.Size[axis], true
		case i == 2 && sized && !b.Stock.Round.Is():
			spare, known = t.Nominal-p.Size[axis], true
		}
		p.share(lo, hi, spare, known)
	}
}

// castOver lays a part in its casting: over each face as the casting says, else what its size leaves.
func (p *Part) castOver() {
	b := &p.Blank
	c := &b.Stock.Casting
	for axis := range 3 {
		lo, hi := model.FaceOn(axis, -1), model.FaceOn(axis, 1)
		for _, f := range [2]model.Face{lo, hi} {
			if c.Over.Is() && !b.Over[f].Is() {
				b.Over[f] = c.Over
			}
		}
		spare := 0.0
		known := len(c.Size.V) == 3
		if known {
			spare = c.Size.V[axis] - p.Size[axis]
		}
		p.share(lo, hi, spare, known)
	}
}

// share gives two opposite faces what is left of the spare metal, or the usual allowance.
func (p *Part) share(lo, hi model.Face, spare float64, known bool) {
	b := &p.Blank
	for _, f := range [2]model.Face{lo, hi} {
		if b.Over[f].Is() {
			continue
		}
		other := b.Over[f.Opposite()]
		var over float64
		switch {
		case known && other.Is():
			over = math.Max(0, spare-other.V)
		case known:
			over = math.Max(0, spare/2)
		default:
			usual, ok := p.allowance(f)
			if !ok {
				continue
			}
			over = usual
		}
		b.Over[f].V, b.Over[f].From = over, model.Chosen
		b.Chosen = append(b.Chosen, model.Figure(over)+" mm over the "+f.String()+" face")
		if known && !other.Is() {
			b.Over[f.Opposite()].V, b.Over[f.Opposite()].From = over, model.Chosen
			b.Chosen = append(b.Chosen, model.Figure(over)+" mm over the "+f.Opposite().String()+" face")
		}
	}
}

// allowance is the metal usual for a skin to clean up, one of the limits of judgement; of
// a skin that is not known, that of drawn bar, the commonest in a small shop.
func (p *Part) allowance(f model.Face) (float64, bool) {
	skin := p.Blank.Skin[f].Or("drawn")
	k, ok := p.Build.Thumbs["clean_up_"+skin]
	if !ok {
		k, ok = p.Build.Thumbs["clean_up_drawn"]
	}
	return k.V, ok && k.Is()
}
