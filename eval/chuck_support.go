package eval

import (
	"math"

	"fettle/schema/model"
)

// Track is the zone of the work on which the fingers of a steady on the bed run; nil where none
// stands there, or where there is no metal.
func (h *Chucking) Track() *Zone {
	s := h.Choice.Support
	if s == nil || s.Steady == nil || !s.Middle {
		return nil
	}
	return h.Before.Profile.At(s.At)
}

// CentreStands says whether a centre of the tailstock is in the free end.
func (h *Chucking) CentreStands() bool {
	s := h.Choice.Support
	return h.Choice.Centres || s != nil && s.Centre != nil && !s.Middle
}

// FreeEnd is the end that looks to the tailstock.
func (h *Chucking) FreeEnd() model.Face {
	return model.FaceOn(h.About.Along, h.Sign)
}

// BetweenJaws is what of a piece the jaws cover.
func (h *Chucking) BetweenJaws(p Profile) Profile {
	return h.Within(p, -h.JawLength.Or(h.Held), 0)
}

// RingWall is the thinnest wall of a bored piece between the jaws and the outside there, mm; false
// where it is not bored through all that the jaws cover.
func (h *Chucking) RingWall(p Profile) (wall, outside float64, ring bool) {
	wall = math.Inf(1)
	for _, z := range h.BetweenJaws(p) {
		bore := math.Max(z.In0, z.In1)
		if bore <= 0 {
			return 0, 0, false
		}
		if w := z.Least() - bore; w < wall {
			wall, outside, ring = w, 2*z.Most(), true
		}
	}
	return wall, outside, ring
}

// Length is the length of the metal along the axis.
func (h *Chucking) Length() float64 { return h.Held + h.Free }

// SlitGripped is the length of a straight feature that the jaws grip over, mm, and whether the
// feature goes in to the axis, or to the bore there, so that no metal stands behind it.
func (h *Chucking) SlitGripped(f *Form) (over float64, through bool) {
	along := h.About.Along
	touched := h.Touches.Between(f.Lo[along], f.Hi[along])
	near := 0.0
	for j := range 3 {
		if j == along {
			continue
		}
		if a, b := f.Lo[j]-h.About.At[j], f.Hi[j]-h.About.At[j]; a > 0 || b < 0 {
			n := math.Min(math.Abs(a), math.Abs(b))
			near += n * n
		}
	}
	return lengthOf(touched), math.Sqrt(near) <= touched.Hollow()+model.Grain
}
