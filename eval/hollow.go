package eval

import "fettle/eval/solid"

// WallHeight is how high the wall is that a jaw presses on, in mm: as much of the hollow
// behind it as lies within the height that the jaw grips. Above the jaw a wall stands free,
// and below the hollow the metal is solid.
func (h *Holding) WallHeight(c *Contact) float64 {
	f, _ := h.Part.formNamed(c.ThinBy)
	if f == nil || len(f.Mouths) > 0 {
		return c.Grip
	}
	a, b := h.Height(f.Lo), h.Height(f.Hi)
	span := min(c.Hi[1], max(a, b)) - max(c.Lo[1], min(a, b))
	if span <= solid.Grain {
		return c.Grip
	}
	return span
}
