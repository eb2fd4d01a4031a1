package eval

import (
	"math"

	"fettle/schema/model"
)

// carried is how far along the work a carrier reaches from the driven end, mm: within it the work is
// to be of one thickness, or the thickest counts. Common practice, of small carriers.
const carried = 10.0

// Driven is the diameter at the end of work between centres that a carrier goes on; over the corners
// of bar that is not round.
func (h *Chucking) Driven() (float64, bool) {
	d := 2 * h.Within(h.Before.Profile, 0, carried).Most()
	return d, d > 0
}

// Carrier is what drives work between centres: as written, else the first that is here and goes on the
// driven end, else the only one that is here.
func (h *Chucking) Carrier() (*model.Carrier, bool) {
	shop := &h.Part.Build.Shop
	if r := h.Work.SetUp.Driver; r.Is() {
		return model.Find(shop.Carriers, r.V.Item)
	}
	d, _ := h.Driven()
	var only *model.Carrier
	for _, c := range shop.Carriers {
		if !c.Here() {
			continue
		}
		only = c
		if b := c.Bars.V; len(b) == 2 && d >= b[0]-model.Grain && d <= b[1]+model.Grain {
			return c, true
		}
	}
	return only, only != nil
}

// WrapLength is how long along the axis a bush or nut between jaws and work is, and which; without
// end where there is none, or it does not say.
func (h *Chucking) WrapLength() (float64, *model.Item) {
	c := &h.Choice
	switch {
	case c.Bush != nil && c.Bush.Length.Is():
		return c.Bush.Length.V, c.Bush.Item
	case c.Nut != nil && c.Nut.Length.Is():
		return c.Nut.Length.V, c.Nut.Item
	}
	return math.Inf(1), nil
}
