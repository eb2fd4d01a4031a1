package press

import "fettle/schema/handbook"

// hub is worked hardest at its bore: hoop pull, the pressure as push across it. Where the
// metal breaks without yielding the pull alone counts (cast iron bears push well).
func (f Fit) hub(p handbook.Band) Stress {
	_, hoop := Ring{f.Diameter, f.Outside}.Stress(f.Diameter, 1, 0)
	s := Stress{Hoop: p.Times(hoop)}
	return s.against(f.Hub, p.Times(hoop+1), p.Times(hoop))
}

// shaft is worked hardest at its bore, hoop push alone there; a solid one evenly throughout.
// What a metal that breaks without yielding bears in push is not known here and stays open.
func (f Fit) shaft(p handbook.Band) Stress {
	at := f.Bore
	_, hoop := Ring{f.Bore, f.Diameter}.Stress(at, 0, 1)
	s := Stress{Hoop: p.Times(hoop)}
	return s.against(f.Shaft, p.Times(-hoop), handbook.Band{})
}

// weakest is the strength below which none is known, MPa.
const weakest = 1e-3

// against compares with what the metal bears. On the border is still in.
func (s Stress) against(m handbook.Elastic, difference, pull handbook.Band) Stress {
	s.Worst = difference
	bears := m.Yield
	if !m.Yield.Known() && m.Breaks.Known() {
		s.Worst, bears = pull, m.Breaks
	}
	if !(bears.Lo >= weakest) || s.Worst == (handbook.Band{}) && difference.Known() {
		return s
	}
	s.Share = handbook.Band{Lo: s.Worst.Lo / bears.Hi, Hi: s.Worst.Hi / bears.Lo}
	switch {
	case s.Share.Hi <= 1:
		s.Holds = Yes
	case s.Share.Lo > 1:
		s.Holds = No
	}
	return s
}

// MostPressure gives the pressure at which the bore of a hub of a yield stress begins to yield,
// both MPa, diameters mm: yield (do^2 - d^2)/(2 do^2), by Tresca (derived: hoop plus pressure is
// the yield stress). A bare formula: 0 where d or the yield is not above 0, or the outside not
// above d.
func MostPressure(d, outside, yield float64) float64 {
	if !(d > 0 && outside > d && yield > 0) {
		return 0
	}
	return yield * (outside*outside - d*d) / (2 * outside * outside)
}

// MostInterference gives the diametral interference up to which neither part yields or breaks
// whatever bar of the bands is in the hand, smoothing apart, mm. The interference and smoothing of
// the fit play no part. False where what one of them bears is not known. Errors as of Work. It is
// Work turned about: stresses rise as the interference does.
func MostInterference(f Fit) (mm float64, ok bool, err error) {
	f.Interference, f.Smoothing = handbook.One(f.Diameter/1000), handbook.Band{}
	a, err := Work(f)
	if err != nil {
		return 0, false, err
	}
	if !a.Hub.Share.Known() || !a.Shaft.Share.Known() {
		return 0, false, nil
	}
	return f.Diameter / 1000 / max(a.Hub.Share.Hi, a.Shaft.Share.Hi), true, nil
}
