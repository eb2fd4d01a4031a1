package eval

import (
	"strings"

	"fettle/schema/drawing"
	"fettle/schema/model"
)

// ColletSeat says whether collets that hold work go in the spindle of its lathe: straight into its
// taper, or in a collet chuck that does. chuck is the one that was looked at last, nil where the
// shop has none of their system.
func (h *Chucking) ColletSeat() (fits model.Known[bool], chuck *model.Holder) {
	co, m := h.Choice.Collets, h.Choice.Machine
	if co == nil || m == nil {
		return model.Known[bool]{}, nil
	}
	if !m.Taper.Is() {
		return model.Lacking[bool](m.Taper.Missing()), nil
	}
	if strings.EqualFold(m.Taper.V.Series+m.Taper.V.Number, strings.ReplaceAll(co.System.V, " ", "")) {
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
		case c.Shank.V.Taper.Same(m.Taper.V), h.sleeved(c.Shank.V.Taper):
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

// sleeved says whether a sleeve that is here brings a taper up to that of the spindle.
func (h *Chucking) sleeved(t drawing.Taper) bool {
	for _, s := range h.Part.Build.Shop.Sleeves {
		if s.Here() && s.Inside.Is() && s.Outside.Is() && s.Inside.V.Same(t) && s.Outside.V.Same(h.Choice.Machine.Taper.V) {
			return true
		}
	}
	return false
}
