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

// Wrench is the tap wrench for the square of a tap or hand reamer: of those here that certainly take it, else
// of all that are here, the one whose handle is shortest; one that nobody measured comes last. nil where
// none is here.
func Wrench(shop *model.Shop, t Pick) *model.Holder {
	least, most, known := Square(t)
	takes := func(h *model.Holder) bool {
		r := h.Squares.V
		return known && len(r) == 2 && least >= r[0]-model.Grain && most <= r[1]+model.Grain
	}
	var best *model.Holder
	for _, h := range shop.Holders {
		if h.Kind != "tap_wrench" || !h.Here() {
			continue
		}
		if best == nil || takes(h) && !takes(best) || takes(h) == takes(best) && shorter(h.Swing, best.Swing) {
			best = h
		}
	}
	return best
}

// shorter says whether a handle is known to be the shorter, or known where the other is not.
func shorter(swing, than model.Known[float64]) bool {
	return swing.Is() && (!than.Is() || swing.V < than.V)
}
