package eval

import (
	"math"

	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Soaking is how long a piece is kept at heat, minutes.
type Soaking struct {
	Said        model.Known[float64] // as written
	Least, Most float64              // as is usual for its thickness
	Thick       float64              // the least of its three sizes as it is, mm
	Colour      bool                 // it is let down to a colour, which takes no time
}

// Soak is how long the piece is kept at heat; false of an assembly, and of heat that does not soak.
func (h *Heating) Soak() (Soaking, bool) {
	s := Soaking{Said: h.SetUp.Soak, Colour: h.Does == "temper" && h.SetUp.Colour.Is(), Thick: math.Inf(1)}
	if h.Part == nil || h.Before == nil || len(h.SetUp.Zone.V) > 0 {
		return s, false
	}
	for i := range 3 {
		s.Thick = min(s.Thick, h.Before.Piece.Extent(i, 1)-h.Before.Piece.Extent(i, -1))
	}
	var ok bool
	s.Least, s.Most, _, ok = handbook.Soak(h.Does, s.Thick)
	return s, ok
}
