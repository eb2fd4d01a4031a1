package eval

import (
	"math"

	"fettle/eval/reckon/screwcut"
	"fettle/eval/reckon/thread"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// A lead that is a little off makes the flanks of screw and nut meet at one end of what is engaged:
// over a length E an error of the lead takes E times the error along the axis, which a thread of 60
// degrees feels as that times cot 30 = 1.732 on its pitch diameter (geometry; ISO 965-1 counts it into
// the virtual pitch diameter). Half of the tolerance on pitch diameter may go to it: our own share.

// LeadRoom is how far the lead of a thread may be off, parts in a million, and over what engaged
// length; false where its limits are not known.
func (p *Part) LeadRoom(f *Form) (ppm, engaged float64, ok bool) {
	t, ok := f.Feature.ThreadSize.Get()
	if !ok || f.Lathe == nil {
		return 0, 0, false
	}
	if full, ok := handbook.FillThread(t); ok {
		t = full
	}
	class := f.Feature.Class.V
	if !f.Feature.Class.Is() {
		screw, nut := thread.UsualClasses(t)
		if class = screw; f.Lathe.Inside {
			class = nut
		}
	}
	lim, err := thread.LimitsOf(t, class)
	if err != nil || !(lim.PitchHi > lim.PitchLo) {
		return 0, 0, false
	}
	// A nut is about a diameter high; half as much again is taken: common practice.
	engaged = math.Min(f.Lathe.X1-f.Lathe.X0, 1.5*t.Diameter)
	half := 30.0
	switch t.Series {
	case "Tr":
		half = 15
	case "BSW", "BSF", "BSP":
		half = 27.5
	case "BA":
		half = 23.75
	}
	return (lim.PitchHi - lim.PitchLo) / 2 * math.Tan(half*math.Pi/180) / engaged * 1e6, engaged, engaged > 0
}

// LeadOf is the lead that a thread is cut with: its pitch times its starts.
func LeadOf(f *Form, pitch float64) (screwcut.Pitch, error) {
	p, err := screwcut.Millimetres(pitch)
	if err != nil {
		return p, err
	}
	return p.Times(max(1, f.Feature.Starts.Or(1)))
}

// NearLead is how far the lead of what an operation threads may be off, parts in a million: what its
// limits bear, at most a fiftieth; else what serves short threads, by common practice.
func (k *Turn) NearLead(f *Form) float64 {
	if ppm, _, ok := k.Part.LeadRoom(f); ok {
		return math.Min(ppm, NearWorm)
	}
	return NearThread
}

// Between is the length of the work between its centres.
func (h *Chucking) Between() float64 {
	lo, hi, _ := h.Before.Profile.Ends()
	return hi - lo
}

// TaperOf is the taper of a feature on diameter; false where it is none.
func TaperOf(f *Form) (ratio float64, ok bool) {
	if f == nil || f.Feature.Kind != "taper" || f.Lathe == nil || !(f.Lathe.X1 > f.Lathe.X0+model.Grain) {
		return 0, false
	}
	return 2 * math.Abs(f.Lathe.R1-f.Lathe.R0) / (f.Lathe.X1 - f.Lathe.X0), true
}
