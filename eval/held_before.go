package eval

import "fettle/schema/model"

// On is the choice of a holding; of none an empty one.
func (h *Holding) On() *HoldChoice {
	if h == nil {
		return &HoldChoice{}
	}
	return &h.Choice
}

// Item is the block of the machine; nil where there is none.
func (h *HoldChoice) Item() *model.Item { return itemOf(h.Machine) }

// Thing is what stands on the table and holds the piece: a vise, clamps, a head or a rotary table.
func (h *HoldChoice) Thing() *model.Item {
	switch {
	case h.Divided != nil:
		return h.Divided.Item()
	case h.Vise != nil:
		return h.Vise.Item
	}
	return itemOf(h.Clamps)
}

// HeldBefore is the holding that comes before another in the making of a part; nil where none does. One on
// a lathe comes as a holding of that machine.
func (t *PartTrace) HeldBefore(h *Holding) *Holding {
	var last *Holding
	for _, m := range t.Moments {
		switch {
		case m.Hold == h:
			return last
		case m.Hold != nil && m.Hold.Shifted == nil:
			last = m.Hold
		case m.Chuck != nil && m.Chuck.Shifted == nil:
			last = m.Chuck.asHold()
		}
	}
	return nil
}
