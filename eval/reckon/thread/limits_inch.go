package thread

import (
	"fmt"
	"math"

	"fettle/schema/drawing"
)

// unified gives the limits of ASME B1.1, from memory: Td2 of class 2A is 0.0015 D^(1/3) + 0.0015
// L^(1/2) + 0.015 P^(2/3) inches, L the length of engagement, one diameter; 1A 1.5 and 3A 0.75 times it;
// nuts 1.3 times the screw of their class. Allowance of 1A and 2A 0.3 Td2(2A). Major of the
// screw 0.06 P^(2/3), 1A 0.09. Minor of the nut below 1/4 in 0.05 P^(2/3) + 0.03 P/D - 0.002, from 1/4 in on
// 0.25 P - 0.4 P^2.
func unified(t drawing.Thread, class string) (Limits, error) {
	const inch = 25.4
	d, p := t.Diameter/inch, t.Pitch/inch
	times, ok := map[string]float64{"1A": 1.5, "2A": 1, "3A": 0.75, "1B": 1.95, "2B": 1.3, "3B": 0.975}[class]
	if !ok {
		return Limits{}, fmt.Errorf("%q is no class of a Unified thread: 1A, 2A, 3A of the screw and 1B, 2B, 3B of the nut are", class)
	}
	effective, nut, _, _ := Diameters(t)
	td2 := 0.0015*math.Cbrt(d) + 0.0015*math.Sqrt(d) + 0.015*math.Pow(p, 2.0/3)
	l := Limits{Class: class, Inside: class[1] == 'B', Source: "from memory: ASME B1.1, formulas of tolerance"}
	if l.Inside {
		minor := 0.25*p - 0.4*p*p
		if d < 0.25-1e-9 {
			minor = 0.05*math.Pow(p, 2.0/3) + 0.03*p/d - 0.002
		}
		if class == "3B" {
			minor = math.Max(math.Min(0.05*math.Pow(p, 2.0/3)+0.03*p/d-0.002, 0.394*p), 0.23*p-1.5*p*p)
		}
		l.MajorLo, l.PitchLo, l.PitchHi = t.Diameter, effective, effective+times*td2*inch
		l.MinorLo, l.MinorHi = nut, nut+math.Max(minor, 0)*inch
		return l, nil
	}
	allow, major := 0.3*td2*inch, 0.06*math.Pow(p, 2.0/3)*inch
	switch class {
	case "3A":
		allow = 0
	case "1A":
		major *= 1.5
	}
	l.MajorHi, l.MajorLo = t.Diameter-allow, t.Diameter-allow-major
	l.PitchHi, l.PitchLo = effective-allow, effective-allow-times*td2*inch
	l.MinorHi = nut - allow
	return l, nil
}

// whitworthLimits gives the limits of BS 84, from memory: T = 0.002 D^(1/3) + 0.003 L^(1/2) + 0.005
// p^(1/2) inches, L one diameter. Bolts: effective T times 2/3, 1, 3/2; major as much and 0.01 p^(1/2).
// Nuts: effective T (normal 3/2 T); minor 0.2 p and 0.004, 0.005 or 0.007 in from 26, 22 and 20
// threads an inch on. No allowance is taken off for plating.
func whitworthLimits(t drawing.Thread, class string) (Limits, error) {
	const inch = 25.4
	d, p := t.Diameter/inch, t.Pitch/inch
	times, ok := map[string]float64{"close bolt": 2.0 / 3, "medium bolt": 1, "free bolt": 1.5, "medium nut": 1, "normal nut": 1.5}[class]
	if !ok {
		return Limits{}, fmt.Errorf("%q is no class of a Whitworth thread: close, medium and free bolt, medium and normal nut are", class)
	}
	effective, nut, _, _ := Diameters(t)
	w := times * (0.002*math.Cbrt(d) + 0.003*math.Sqrt(d) + 0.005*math.Sqrt(p)) * inch
	l := Limits{Class: class, Inside: class[len(class)-3:] == "nut", Source: "from memory: BS 84, formulas of tolerance"}
	if l.Inside {
		more := 0.004
		switch tpi := 1 / p; {
		case tpi < 21:
			more = 0.007
		case tpi < 25:
			more = 0.005
		}
		l.MajorLo, l.PitchLo, l.PitchHi, l.MinorLo, l.MinorHi = t.Diameter, effective, effective+w, nut, nut+(0.2*p+more)*inch
		return l, nil
	}
	l.MajorLo, l.MajorHi = t.Diameter-w-0.01*math.Sqrt(p)*inch, t.Diameter
	l.PitchLo, l.PitchHi, l.MinorHi = effective-w, effective, nut
	return l, nil
}

// baLimits gives the limits of BS 93 for 0 to 10 BA: nut effective + (0.12 p + 0.03), minor +
// 0.375 p; bolt allowance 0.025, major - 0.20 p, effective - (0.10 p + 0.025), mm.
// The depth 0.6 p is taken to 0.005 mm, as the printed table has it.
// Source: Machinery's Handbook 31, p2115.
func baLimits(t drawing.Thread, class string) (Limits, error) {
	p := t.Pitch
	depth := math.Round(0.6*p/0.005) * 0.005
	effective, nut := t.Diameter-depth, t.Diameter-2*depth
	l := Limits{Class: class, Source: "BS 93:1951, as printed in Machinery's Handbook, 31st edition, p2115"}
	switch class {
	case "normal nut":
		l.Inside = true
		l.MajorLo, l.PitchLo, l.PitchHi, l.MinorLo, l.MinorHi = t.Diameter, effective, effective+0.12*p+0.03, nut, nut+0.375*p
	case "normal bolt":
		const allow = 0.025
		l.MajorHi, l.MajorLo = t.Diameter-allow, t.Diameter-allow-0.2*p
		l.PitchHi, l.PitchLo = effective-allow, effective-allow-0.1*p-0.025
		l.MinorHi = nut - allow
	default:
		return Limits{}, fmt.Errorf("%q is no class of a BA thread that is known here: normal bolt and normal nut are", class)
	}
	return l, nil
}
