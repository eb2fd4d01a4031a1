package eval

import (
	"strings"

	"fettle/schema/drawing"
	"fettle/schema/model"
)

// ColletSeat says whether collets that hold work go in the spindle of a lathe or dividing head:
// straight into its taper, or in a collet chuck that does. chuck is the one that was looked at last,
// nil where the shop has none of their system.
func (h *Chucking) ColletSeat(socket model.Known[drawing.Taper]) (fits model.Known[bool], chuck *model.Holder) {
	co := h.Choice.Collets
	if co == nil {
		return model.Known[bool]{}, nil
	}
	if !socket.Is() {
		return model.Lacking[bool](socket.Missing()), nil
	}
	if strings.EqualFold(socket.V.Series+socket.V.Number, strings.ReplaceAll(co.System.V, " ", "")) {
		return model.Sure(true), nil
	}
	var lacks []model.Lack
	for _, c := range h.Part.Build.Shop.Holders {
		if c.Kind != "collet_chuck" || !c.Here() || c.Block_.Is() || !c.System.Is() || !strings.EqualFold(c.System.V, co.System.V) {
			continue
		}
		chuck = c
		switch {
		case !c.Shank.Is():
			lacks = append(lacks, c.Shank.Missing()...)
		case c.Shank.V.Taper.Same(socket.V), Sleeved(&h.Part.Build.Shop, socket.V, c.Shank.V.Taper):
			return model.Sure(true), c
		}
	}
	if chuck == nil {
		lacks = append(lacks, model.Lack{Fact: "collet_chuck for " + co.System.V})
	}
	if len(lacks) > 0 {
		return model.Lacking[bool](lacks), chuck
	}
	return model.Sure(false), chuck
}

// Sleeved says whether a sleeve that is here goes into a socket and takes a shank.
func Sleeved(shop *model.Shop, socket, shank drawing.Taper) bool {
	for _, s := range shop.Sleeves {
		if s.Here() && s.Inside.Is() && s.Outside.Is() && s.Inside.V.Same(shank) && s.Outside.V.Same(socket) {
			return true
		}
	}
	return false
}
