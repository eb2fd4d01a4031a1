package eval

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
		return m.Cut.Hold.Root() == s.Hold
	case m.Measure != nil:
		return m.Measure.Hold.Root() == s.Hold
	case m.Deburr != nil:
		return m.Deburr.Hold.Root() == s.Hold
	}
	return false
}

// Behind is how far metal or vise stands behind the spindle, towards the column, when the
// spindle is at the foremost place of the cut; what is not known of the vise is left out.
func (k *Cut) Behind() float64 {
	back := k.Hold.Hi[1]
	if v := k.Hold.Choice.Vise; v != nil {
		back = max(back, v.JawThickness.Or(0))
	}
	most := 0.0
	for _, w := range k.Works {
		for _, m := range w.Moves {
			most = max(most, back-min(m.From[1], m.To[1]))
		}
	}
	return most
}
