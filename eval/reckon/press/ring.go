package press

// Ring is a thick tube in the theory of Lamé: round, of one elastic metal, long or short,
// free to change its length unless a pull along it is named. Diameters in mm; Inside may be
// 0, which is a solid bar.
//
// With a, b the radii and p, q the pressures inside and outside, the stresses at a radius r are
//
//	radial = A - B/r^2    hoop = A + B/r^2
//	A = (p a^2 - q b^2)/(b^2 - a^2)    B = (p - q) a^2 b^2/(b^2 - a^2)
//
// (seen: A. P. Boresi, R. J. Schmidt, Advanced Mechanics of Materials, 11; A. C. Ugural, S. K.
// Fenster, Advanced Strength and Applied Elasticity, 8). Pull is above nought, push below.
type Ring struct{ Inside, Outside float64 }

// Stress gives the radial and the hoop stress at a diameter, mm, in MPa, for pressures inside and
// outside, MPa. A bare formula: both are 0 at a diameter outside the metal, for a ring that is
// none and for diameters that are no number.
func (g Ring) Stress(at, inside, outside float64) (radial, hoop float64) {
	a, b, r := g.Inside/2, g.Outside/2, at/2
	if !(a >= 0 && b > a && r >= a && r <= b) {
		return 0, 0
	}
	w := b*b - a*a
	mean := (inside*a*a - outside*b*b) / w
	if a == 0 {
		return -outside, -outside
	}
	swing := (inside - outside) * a * a * b * b / (w * r * r)
	return mean - swing, mean + swing
}

// Growth gives by how much a diameter of the ring grows, mm, for pressures inside and outside and
// a pull along it, all MPa, with stiffness e in MPa and Poisson's ratio v: the diameter times
// (hoop - v (radial + axial))/e. A bare formula: 0 where e is not above 0.
func (g Ring) Growth(at, inside, outside, axial, e, v float64) float64 {
	if !(e > 0) {
		return 0
	}
	radial, hoop := g.Stress(at, inside, outside)
	return at * (hoop - v*(radial+axial)) / e
}

// EndPull gives the pull along a tube whose ends are closed, MPa, by the pressure inside, MPa: p
// a^2/(b^2 - a^2). A bare formula: 0 for a ring that is none.
func (g Ring) EndPull(inside float64) float64 {
	a, b := g.Inside/2, g.Outside/2
	if !(a >= 0 && b > a) {
		return 0
	}
	return inside * a * a / (b*b - a*a)
}

// Pressure gives the pressure, MPa, between a hub and a shaft of two metals for an interference on
// diameter d, all mm, stiffness MPa:
//
//	p = interference / (d ((co + vo)/eo + (ci - vi)/ei))
//	co = (do^2 + d^2)/(do^2 - d^2)    ci = (d^2 + di^2)/(d^2 - di^2)
//
// o the hub, i the shaft, di 0 for a solid one (seen: three tables of formulas for thick
// cylinders). A bare formula, whose ranges Work asks for: 0 where there is no interference, for
// sizes that are no hub over a shaft, and for figures that are no number.
func Pressure(bore, d, outside, interference, youngHub, poissonHub, youngShaft, poissonShaft float64) float64 {
	give := hubGive(d, outside, youngHub, poissonHub) + shaftGive(bore, d, youngShaft, poissonShaft)
	if !(bore >= 0 && d > bore && outside > d && interference > 0 && give > 0) {
		return 0
	}
	return interference / give
}

// hubGive is how much the bore of a hub opens for each MPa, on diameter.
func hubGive(d, outside, young, poisson float64) float64 {
	return d / young * ((outside*outside+d*d)/(outside*outside-d*d) + poisson)
}

// shaftGive is how much a shaft shrinks for each MPa, on diameter.
func shaftGive(bore, d, young, poisson float64) float64 {
	return d / young * ((d*d+bore*bore)/(d*d-bore*bore) - poisson)
}
