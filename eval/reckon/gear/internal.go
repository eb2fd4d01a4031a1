package gear

import "math"

// Inside says how a pinion runs in an internal wheel.
type Inside struct {
	// Involute is how much farther than the pinion's base tangent the wheel's tips reach along the
	// line of action, mm; below 0 they dig where the pinion has no involute.
	Involute float64
	// Tips is the least gap between the corners of the pinion's and the wheel's teeth as they pass
	// outside the working contact, in degrees of turning of the wheel; below 0 they meet. Where
	// the tip circles do not cross there is nothing to meet, and Cross is false.
	Tips  float64
	Cross bool
}

// Interferes works out both for a pair at its centre distance with its tips, spur or helical in
// the plane of rotation. Formulas as in the gear handbooks (from memory); the test of the second
// turns a pinion in its wheel step by step. The mesh must be the one that Pair gives for these
// wheels. Of two outside wheels both gaps are infinite. An error for what Pair refuses, and for a
// mesh whose figures are out of all reason.
func Interferes(pinion, wheel Wheel, m Mesh) (Inside, error) {
	p, err := pairOf(pinion, wheel)
	if err != nil {
		return Inside{}, err
	}
	if !wheel.Internal {
		return Inside{Involute: math.Inf(1), Tips: math.Inf(1)}, nil
	}
	if err := first(within("a centre distance of", m.Centre, 1e-6, 1e7, " mm"), within("a working angle of", m.Pressure, 0, 89, " degrees"),
		within("a tip diameter of", m.Tip[0], 1e-6, 1e7, " mm"), within("a tip diameter of", m.Tip[1], 1e-6, 1e7, " mm")); err != nil {
		return Inside{}, err
	}
	var out Inside
	aw := rad(m.Pressure)
	r1, r2, a := m.Tip[0]/2, m.Tip[1]/2, m.Centre
	reach := math.Sqrt(math.Max(0, 4*r2*r2-p.g[1].db*p.g[1].db)) / 2
	out.Involute = reach - a*math.Sin(aw)
	out.Tips, out.Cross = p.corner(r1, r2, a, aw)
	return out, nil
}

// corner gives the gap in degrees of the wheel where the tip circles cross.
//
// With the teeth touching on the line of action, the corner of the pinion's flank lies at the angle
// inv a1 - inv aw from the line of centres and the wheel's at inv a2 - inv aw, each about its own
// axis. The pinion's corner comes to the crossing of the tip circles after turning by t1, the wheel
// by t1 z1/z2 in that time; the wheel's own corner must have gone by.
func (p pairing) corner(r1, r2, a, aw float64) (float64, bool) {
	c1 := (r2*r2 - r1*r1 - a*a) / (2 * a * r1)
	c2 := (a*a + r2*r2 - r1*r1) / (2 * a * r2)
	if math.Abs(c1) > 1 || math.Abs(c2) > 1 {
		return 0, false
	}
	inv := func(db, r float64) float64 { return Involute(math.Acos(math.Min(1, db/(2*r)))) }
	t1 := math.Acos(c1) + inv(p.g[0].db, r1) - Involute(aw)
	t2 := math.Acos(c2)
	return deg(t1*p.z[0]/p.z[1] + Involute(aw) - inv(p.g[1].db, r2) - t2), true
}
