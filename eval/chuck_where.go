package eval

import (
	"math"

	"fettle/schema/model"
)

// Front is how far the jaw face lies in front of the spindle nose: the chuck's body and its
// jaws, which are taken to stand out by their whole gripping length; or a faceplate with what lies
// between it and the work.
func (h *Chucking) Front() model.Known[float64] {
	if f := h.Choice.Faceplate; f != nil {
		return model.Map(f.Length, func(l float64) float64 { return l + h.Under() })
	}
	c := h.Choice.Chuck
	if c == nil {
		return model.Known[float64]{Of: h.Choice.Holder(), Attr: "length"}
	}
	return model.Both(c.Length, c.JawLength, func(l, j float64) float64 { return l + j })
}

// Datum names what lengths along the axis are measured from at the lathe, and says where that lies on
// the lathe's axis: no jaws stand between centres, at a faceplate or on a mandrel, so there it is an
// end of the work.
func (h *Chucking) Datum() (words string, at float64) {
	c := &h.Choice
	switch {
	case c.Centres:
		return "its end at the headstock", -h.Held
	case c.Faceplate != nil:
		return "its side at the plate", -h.Held
	case c.Mandrel != nil:
		return "its end at the headstock", -h.Held
	case c.Collets != nil:
		return "the face of the collet", 0
	}
	return "the jaw face", 0
}

// FromNose is where a place along the lathe's axis lies in front of the spindle nose.
func (h *Chucking) FromNose(u float64) model.Known[float64] {
	return model.Map(h.Front(), func(f float64) float64 { return f + u })
}

// LargerThan is the place, along the lathe's axis, up to which metal in front of the jaws has
// more than a diameter; 0 where none has.
func (h *Chucking) LargerThan(d float64) float64 {
	far := 0.0
	for _, z := range h.Outside(h.Before.Profile) {
		if 2*z.Most() > d+model.Grain {
			far = math.Max(far, math.Max(h.At(z.X0), h.At(z.X1)))
		}
	}
	return far
}

// Sweeps is the circle that the jaws sweep as they grip now: at the widest grip it is known,
// and each jaw comes in with the work. Not known where jaws or grip are not.
func (h *Chucking) Sweeps() model.Known[float64] {
	c := h.Choice.Chuck
	if c == nil {
		return model.Known[float64]{}
	}
	if h.Inside {
		return model.Lacking[float64]([]model.Lack{{Fact: "how far the jaws of " + c.Path() + " stand out when they open in a bore", At: c.At}})
	}
	out, grips := c.JawOut, c.Grips
	if h.Choice.Reversed {
		out, grips = c.Reversed.JawOut, c.Reversed.Grips
	}
	return model.Both(out, grips, func(o float64, g []float64) float64 {
		if len(g) != 2 {
			return o
		}
		return o - math.Max(0, g[1]-h.Gripped)
	})
}

// Behind is how far the metal stands out of the rear end of the spindle; not above 0 where it
// ends within.
func (h *Chucking) Behind() model.Known[float64] {
	m := h.Choice.Machine
	if m == nil {
		return model.Known[float64]{}
	}
	return model.Both(h.Front(), m.Headstock, func(front, head float64) float64 { return h.Held - front - head })
}

// Supported says whether the free end or the middle of the work is held as well.
func (h *Chucking) Supported() bool { return h.Choice.Support != nil || h.Choice.Centres }

// Seated says whether an end has a seat for a centre: a centre hole, or the mouth of a bore.
func (h *Chucking) Seated(f model.Face) bool {
	if h.Before.Centred[endIndex(f)] {
		return true
	}
	lo, hi, ok := h.Before.Profile.Ends()
	if !ok {
		return false
	}
	x := hi - 2*model.Grain
	if f.Sign() < 0 {
		x = lo + 2*model.Grain
	}
	z := h.Before.Profile.At(x)
	return z != nil && z.inAt(x) > 0
}
