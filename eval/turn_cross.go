package eval

import "math"

// CrossWay is how far out and how far in the edge of a tool on the cross slide goes for one thing that it
// makes, radii in mm: the metal that it meets, and what it leaves. A facing cut and a parting cut go in to
// the axis, or to the bore that is there; a cut in a bore goes out from the wall that is there. False for
// what the cross slide does not carry across: tapers, threads, what is cut along the axis alone; and for
// an end that a centre stands in, round which a ring is left.
func (k *Turn) CrossWay(w *Turning) (far, near float64, ok bool) {
	f := w.Target.Form
	switch {
	case w.Wrong != "" || !k.OnSlides(), k.Choice.Slide != 0, math.IsInf(w.Had, 0):
		return 0, 0, false
	case f != nil && (f.Feature.Kind == "taper" || f.Feature.Kind == "thread" || f.Feature.Kind == "worm" || f.EndRing != nil):
		return 0, 0, false
	}
	switch k.Choice.By {
	case "facing", "parting":
		if f != nil || w.Target.Outside || !(w.Had > 0) || k.centred() {
			return 0, 0, false
		}
		return w.Had, k.hollowAt(w), true
	case "turning", "grooving", "boring":
		least, most := math.Min(w.R0, w.R1), math.Max(w.R0, w.R1)
		if w.Inside {
			return most, math.Min(w.Had, most), true
		}
		return w.Had, math.Min(least, w.Had), w.Had > 0
	}
	return 0, 0, false
}

// hollowAt is the radius of the bore that a facing or parting cut ends in; 0 where there is none.
func (k *Turn) hollowAt(w *Turning) float64 {
	r := math.Inf(1)
	for _, z := range k.Before.Profile.Between(w.X0, w.X1) {
		r = math.Min(r, math.Min(z.In0, z.In1))
	}
	if math.IsInf(r, 1) {
		return 0
	}
	return r
}

// centred says whether a centre stands in an end of the work for this cut.
func (k *Turn) centred() bool {
	s := k.Hold.Choice.Support
	return k.Hold.Choice.Centres || s != nil && s.Centre != nil && !k.Choice.Withdrawn
}
