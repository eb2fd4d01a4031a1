package eval

import (
	"math"

	"fettle/schema/model"
)

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

// Outer is the stretch of an outside that work may be gripped on; nil of a bore, a hole, or where nothing is said.
func (f *Form) Outer() *Lathe {
	if f == nil || f.Lathe == nil || f.Lathe.Inside || f.Feature.Kind != "outside" {
		return nil
	}
	return f.Lathe
}

// NearerEnd is the end of an outside that lies away from the held end, in the part's frame.
func (f *Form) NearerEnd(held model.Face) (x float64, ok bool) {
	l := f.Outer()
	if l == nil || held == model.NoFace {
		return 0, false
	}
	if held.Sign() > 0 {
		return l.X0, true
	}
	return l.X1, true
}

// Misses says whether the jaws touch nothing of the outside that the set-up says they grip.
func (h *Chucking) Misses() bool {
	l := h.Choice.On.Outer()
	if l == nil || h.Choice.Chuck == nil && h.Choice.Collets == nil || len(h.Touches) == 0 || !h.Part.Own(h.About) || !h.Choice.On.About.Same(h.About) {
		return false
	}
	for _, z := range h.Touches {
		if math.Min(z.X1, l.X1)-math.Max(z.X0, l.X0) > model.Grain {
			return false
		}
	}
	return true
}

// gripInside finds what the jaws touch as they open, or a mandrel does: the smallest bore among what they lie in.
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
