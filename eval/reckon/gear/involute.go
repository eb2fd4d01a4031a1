package gear

import "math"

// Involute gives tan a - a, by definition, a in radians from 0 to below pi/2. Near nought the
// difference is taken from its series, so that its relative error stays below 1e-13 everywhere. A
// bare formula, which refuses nothing: below 0 it is odd, from pi/2 on without meaning.
func Involute(a float64) float64 {
	if math.Abs(a) > 0.1 {
		return math.Tan(a) - a
	}
	b := a * a
	return a * b * (1.0/3 + b*(2.0/15+b*(17.0/315+b*(62.0/2835+b*(1382.0/155925+b*21844.0/6081075)))))
}

// mostInvolute is the involute up to which an angle is found: 85.1 degrees, more than any tooth.
const mostInvolute = 10

// AngleOf gives the angle in radians whose involute is x, x from 0 to 10, with an error below
// 1e-12 rad; other x are refused.
//
// Law: Involute(AngleOf(x)) = x. The involute is convex, and both (3x)^(1/3) and atan(x + pi/2)
// lie above the answer (tan a - a >= a^3/3; tan a = x + a < x + pi/2), so Newton's steps from the
// smaller of them come down to it and never cross it.
func AngleOf(x float64) (float64, error) {
	if err := within("an involute of", x, 0, mostInvolute, ""); err != nil {
		return 0, err
	}
	if x == 0 {
		return 0, nil
	}
	a := math.Min(math.Cbrt(3*x), math.Atan(x+math.Pi/2))
	for range 60 {
		t := math.Tan(a)
		step := (Involute(a) - x) / (t * t)
		a -= step
		if math.Abs(step) <= 1e-15*a {
			break
		}
	}
	return a, nil
}
