package eval

import (
	"math"

	"fettle/schema/model"
)

// Stretch is one holding with what was cut and measured in it, in order.
type Stretch struct {
	Hold    *Holding
	Moments []Moment
}

// Stretches groups the moments of a part by their holdings; bench work stands apart.
func (t *PartTrace) Stretches() []Stretch {
	var out []Stretch
	for _, m := range t.Moments {
		if m.Hold != nil && m.Hold.Shifted == nil {
			out = append(out, Stretch{Hold: m.Hold})
			continue
		}
		if n := len(out); n > 0 && out[n-1].owns(m) {
			out[n-1].Moments = append(out[n-1].Moments, m)
		}
	}
	return out
}

func (s *Stretch) owns(m Moment) bool {
	switch {
	case m.Cut != nil:
		return m.Cut.Held().Root() == s.Hold
	case m.Measure != nil:
		return m.Measure.Hold.Root() == s.Hold
	case m.Deburr != nil:
		return m.Deburr.Hold.Root() == s.Hold
	}
	return false
}

// Behind is how far metal or vise stands behind the spindle, towards the column, when the
// spindle is at the foremost place of the cut; what is not known of the vise is left out. A vise that
// is turned on the table has an end of its jaws there, or its screw with the handle.
func (k *Cut) Behind() float64 {
	axis, sign := 1, 1.0
	switch k.Hold.Turned {
	case 90:
		axis = 0
	case 180:
		sign = -1
	case 270:
		axis, sign = 0, -1
	}
	back := math.Max(sign*k.Hold.Lo[axis], sign*k.Hold.Hi[axis])
	if v := k.Hold.Choice.Vise; v != nil {
		back = math.Max(back, viseReaches(v, axis, sign))
	}
	if p := k.Hold.Choice.Plate; p != nil && axis == 1 && sign > 0 {
		back = math.Max(back, k.Hold.plateSize(1, 0))
	}
	most := 0.0
	for _, w := range k.Works {
		for _, m := range w.Moves {
			most = max(most, back-min(sign*m.From[axis], sign*m.To[axis]))
		}
	}
	return most
}

// viseReaches is how far a vise stands out along one of its own axes, to one side, from the middle of
// its frame: its jaws begin at X = 0, its fixed jaw at Y = 0, and its screw goes to the front.
func viseReaches(v *model.Vise, axis int, sign float64) float64 {
	body := v.Body.V
	switch {
	case axis == 1 && sign > 0:
		return v.JawThickness.Or(0)
	case len(body) != 2 || axis == 0 && !v.JawWidth.Is():
		return math.Inf(-1)
	case axis == 1:
		return body[1] + v.Handle.Or(0)
	}
	return sign*v.JawWidth.V/2 + body[0]/2
}
