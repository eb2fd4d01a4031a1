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
		if o.Kind != c.Kind || !o.Here() || o == c {
			continue
		}
		n, ok := o.Diameter.V.Nearest(t.Size)
		off := math.Abs(n - t.Size)
		if !ok || inInches(o, n) == inInches(c, t.Size) || off < model.Grain || off > most+model.Same || best.Cutter != nil && off >= math.Abs(best.Size-t.Size)-model.Same {
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
	return t.Cutter != nil && t.Thread.Series == "" && t.Size > 0 && inInches(t.Cutter, t.Size)
}

// inInches says whether a size of a tool is one of the inch systems: of a shop in inches, with a letter or
// number for its name, or a 64th of an inch that is no tenth of a millimetre.
func inInches(c *model.Cutter, size float64) bool {
	whole := func(x float64) bool { return math.Abs(x-math.Round(x)) < 1e-4 }
	return c.Unit == drawing.Inch || c.Diameter.V.Name(size) != model.Figure(size) || whole(size/25.4*64) && !whole(size*10)
}
