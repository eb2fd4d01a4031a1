package eval

import "math"

// CentreLeft is a centre hole as it lies against the finished end of its part.
type CentreLeft struct {
	Turn *Turn // that drilled it
	Form *Form
	Deep float64 // its depth from the end that it was drilled in, pilot and cone, mm
	Cone float64 // depth of the cone alone
	Over float64 // that end beyond the finished one; what is cut off before the end, mm
}

// CentresLeft lists the centre holes that were drilled on a lathe, with the metal that lay over each.
func (t *PartTrace) CentresLeft() (out []CentreLeft) {
	for _, m := range t.Moments {
		if m.Turn == nil {
			continue
		}
		for _, w := range m.Turn.Works {
			f := w.Target.Form
			if f == nil || f.Feature.Kind != "centre_hole" || w.Wrong != "" {
				continue
			}
			sign, end := f.Into.Face.Sign(), w.X0
			if sign > 0 {
				end = w.X1
			}
			out = append(out, CentreLeft{Turn: m.Turn, Form: f, Deep: f.Depth.V, Cone: w.X1 - w.X0, Over: math.Max(0, (end-f.Into.At)*sign)})
		}
	}
	return out
}
