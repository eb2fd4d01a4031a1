package eval

// A chuck that is said to hold by a bore, or a hole on the axis, opens its jaws in it. Place 0 is then
// the end of the jaws within the work, and the outside is free right up to the held end.

// opensIn says whether the jaws of a chuck hold by a bore.
func (h *Chucking) opensIn() bool {
	on := h.Choice.On
	if h.Choice.Chuck == nil || on == nil {
		return false
	}
	return on.Lathe != nil && on.Lathe.Inside || on.Lathe == nil && len(on.Mouths) > 0
}

// gripInside finds what the jaws touch as they open: the smallest bore among what they lie in.
func (h *Chucking) gripInside(between Profile) {
	least := 0.0
	for _, z := range between {
		if in := min(z.In0, z.In1); in > 0 && (least == 0 || in < least) {
			least = in
		}
	}
	h.Gripped = 2 * least
	for _, z := range between {
		if near(min(z.In0, z.In1), least) && least > 0 {
			h.Contact += z.X1 - z.X0
		}
	}
}
