package eval

import (
	"math"

	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Twin is the tool of the same kind, in the other system of units, that is taken for this one by mistake:
// the nearest in size among those that are here, no farther off than the shop's limit; one of the very same
// size is none. False where there is no such tool.
func (t Pick) Twin(b *model.Build) (Pick, bool) {
	c := t.Cutter
	if c == nil || t.Thread.Series != "" || !(t.Size > 0) {
		return Pick{}, false
	}
	most := b.Thumbs["twin_size"].V
	var best Pick
	for _, o := range b.Shop.Cutters {
		if o.Kind != c.Kind || !o.Here() || (o.Unit == drawing.Inch) == (c.Unit == drawing.Inch) {
			continue
		}
		n, ok := o.Diameter.V.Nearest(t.Size)
		off := math.Abs(n - t.Size)
		if !ok || off < model.Grain || off > most+model.Same || best.Cutter != nil && off >= math.Abs(best.Size-t.Size)-model.Same {
			continue
		}
		best = Pick{Cutter: o, Size: n}
		if name := o.Diameter.V.Name(n); name != model.Figure(n) {
			best.Name = name
		}
	}
	return best, best.Cutter != nil
}

// InFigures says that the name of a tool does not tell its size in millimetres: a letter, a number or a
// size in inches.
func (t Pick) InFigures() bool {
	return t.Cutter != nil && t.Thread.Series == "" && t.Size > 0 && (t.Name != "" || t.Cutter.Unit == drawing.Inch)
}
