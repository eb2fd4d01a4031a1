package eval

import (
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Square is the driving square of a tap or hand reamer, from a least to a most across the flats, mm: by its
// shank where that is known, else by its thread; a hand reamer's shank is as thick as it cuts.
func Square(t Pick) (least, most float64, ok bool) {
	c := t.Cutter
	if d := ShankDiameter(t); d.Is() {
		least, most = handbook.ShankSquare(d.V)
		return least, most, true
	}
	if c.Kind == "reamer" {
		least, most = handbook.ShankSquare(t.Size)
		return least, most, t.Size > 0
	}
	if t.Thread.Series != "M" {
		return 0, 0, false
	}
	return handbook.TapSquare(t.Thread.Diameter)
}

// Wrench is the tap wrench that takes the square of a tap or hand reamer: the first here that certainly does,
// else the first here; nil where none is.
func Wrench(shop *model.Shop, t Pick) *model.Holder {
	least, most, ok := Square(t)
	var first *model.Holder
	for _, h := range shop.Holders {
		if h.Kind != "tap_wrench" || !h.Here() {
			continue
		}
		if r := h.Squares.V; ok && len(r) == 2 && least >= r[0]-model.Grain && most <= r[1]+model.Grain {
			return h
		}
		if first == nil {
			first = h
		}
	}
	return first
}
