package eval

import (
	"math"

	"fettle/schema/model"
)

// Work on a mandrel has it in its bore from the held end up to place 0. Where the mandrel has a shoulder,
// that stands against the held end; where it has a nut, that presses on the free end, if the work is bored
// right through.

// NutAtEnd says whether the nut of a mandrel presses on the free end of the work.
func (h *Chucking) NutAtEnd() bool {
	m := h.Choice.Mandrel
	if m == nil || !m.Nut.Is() || m.Sort.V == "glue" || len(h.Before.Profile) == 0 {
		return false
	}
	for _, z := range h.Before.Profile {
		if math.Min(z.In0, z.In1) <= model.Grain {
			return false
		}
	}
	return true
}

// MandrelMeets is what of a mandrel stands where a cut goes.
type MandrelMeets int

const (
	MandrelClear  MandrelMeets = iota // nothing of it
	MeetsNut                          // the nut, on the end that is cut
	MeetsBody                         // the mandrel itself, in the bore that is cut
	MeetsShoulder                     // the shoulder that the held end stands against
)

// MeetsMandrel says what of a mandrel stands in the way of making one thing. A cut that ends level with the
// held end runs on to the shoulder where that is the larger.
func (k *Turn) MeetsMandrel(w *Turning) MandrelMeets {
	h, f := k.Hold, w.Target.Form
	m := h.Choice.Mandrel
	if m == nil || h.Unplayed != "" || w.Wrong != "" || m.Sort.V == "glue" {
		return MandrelClear
	}
	end := f == nil && !w.Target.Outside && w.Target.Face == h.FreeEnd() && k.Choice.By != "parting"
	onAxis := f != nil && w.Inside && f.Into.Face == h.FreeEnd()
	switch {
	case h.NutAtEnd() && (end || onAxis):
		return MeetsNut
	case w.Inside && w.U0 < -model.Grain && w.U1 > -h.Held+model.Grain:
		return MeetsBody
	}
	if r := m.Shoulder.V / 2; m.Shoulder.Is() && k.OnSlides() && !w.Inside && !end && w.U0 <= -h.Held+model.Grain && k.radiusAtHeld(w) < r-model.Grain {
		return MeetsShoulder
	}
	return MandrelClear
}

// radiusAtHeld is the radius that a cut leaves at its end towards the headstock.
func (k *Turn) radiusAtHeld(w *Turning) float64 {
	if k.Hold.Sign > 0 {
		return w.R0
	}
	return w.R1
}
