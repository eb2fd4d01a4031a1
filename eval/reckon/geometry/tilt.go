package geometry

import "math"

// A compound angle is a plane that slopes along x and along y. Seen from the front it shows the slope A,
// from the side the slope B; both are what a drawing gives in its views. Its rise on a run of one is tan A
// along x and tan B along y, so that
//
//   - tilted once, about the one line that lies level in it, it has the slope atan(sqrt(tan² A + tan² B)),
//     and rises straightest in the direction atan2(tan B, tan A) from x;
//   - tilted twice, a lower plate about y first and an upper plate on it about its own x, the lower is set to
//     A and the upper to atan(tan B cos A), not to B.
//
// The laws in the test hold both against the normal of the plane.

// Compound is a plane by its slopes in two views, degrees, each within 89 either way.
type Compound struct{ A, B float64 }

func (c Compound) check() error {
	return first(in("slope from the front", c.A, -89, 89, " degrees"), in("slope from the side", c.B, -89, 89, " degrees"))
}

// Once gives the one tilt that makes the plane level, degrees, and the direction from x towards y
// in which it rises straightest, -180 to 180. A level plane has none: 0. With the error for slopes
// out of range the two mean nothing.
func (c Compound) Once() (tilt, towards float64, err error) {
	x, y := math.Tan(rad(c.A)), math.Tan(rad(c.B))
	return deg(math.Atan(math.Hypot(x, y))), deg(math.Atan2(y, x)), c.check()
}

// Twice gives the two tilts that make the plane level, degrees: the lower plate about y, then the
// upper one about its own x. With the error for slopes out of range the two mean nothing.
func (c Compound) Twice() (lower, upper float64, err error) {
	return c.A, deg(math.Atan(math.Tan(rad(c.B)) * math.Cos(rad(c.A)))), c.check()
}

// OfTilt is the plane that one tilt, 0 to 89 degrees, in a direction, within 360 degrees, makes:
// what its two views show. An error names the figure out of range.
func OfTilt(tilt, towards float64) (Compound, error) {
	if err := first(in("tilt", tilt, 0, 89, " degrees"), in("direction", towards, -360, 360, " degrees")); err != nil {
		return Compound{}, err
	}
	t := math.Tan(rad(tilt))
	return Compound{deg(math.Atan(t * cos(towards))), deg(math.Atan(t * sin(towards)))}, nil
}

// OfTilts is the plane that two tilts, each within 89 degrees, make, the upper on the lower. An
// error names the figure out of range.
func OfTilts(lower, upper float64) (Compound, error) {
	if err := first(in("lower tilt", lower, -89, 89, " degrees"), in("upper tilt", upper, -89, 89, " degrees")); err != nil {
		return Compound{}, err
	}
	return Compound{lower, deg(math.Atan(math.Tan(rad(upper)) / math.Cos(rad(lower))))}, nil
}
