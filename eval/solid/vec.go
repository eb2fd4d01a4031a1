// Package solid holds the piece on the machine and answers the questions asked of it: where
// there is metal, what a jaw touches, how thick a wall is, whether a tool meets it.
//
// A piece is its blank less what each operation took, as a short list of removals; each is
// convex, or convex less convex. A straight line meets such a piece in exact intervals, and
// whether a tool meets it is a covering test decided at finitely many places (see cover.go),
// so that a web of a few hundredths is found as surely as a block.
//
// Lengths are millimetres, angles radians. Frames are right-handed.
package solid

import "math"

// Grain is how far apart two places must be to be two places, in mm.
const Grain = 0.001

// hair is a length that only rounding makes, in mm: far above the error of sums of float64
// figures of a workshop's size (1e-12), far below Grain.
const hair = 1e-6

// Vec is a place or a direction.
type Vec [3]float64

// Add gives a + b.
func (a Vec) Add(b Vec) Vec { return Vec{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }

// Sub gives a - b.
func (a Vec) Sub(b Vec) Vec { return Vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

// Times gives a, f times as long.
func (a Vec) Times(f float64) Vec { return Vec{a[0] * f, a[1] * f, a[2] * f} }

// Dot gives the scalar product.
func (a Vec) Dot(b Vec) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

// Cross gives the vector product.
func (a Vec) Cross(b Vec) Vec {
	return Vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

// Len gives the length.
func (a Vec) Len() float64 { return math.Sqrt(a.Dot(a)) }

// Unit gives the direction of a with length 1; of the null vector the null vector. A
// direction along an axis comes out exact.
func (a Vec) Unit() Vec {
	if l := a.Len(); l > 0 {
		return a.Times(1 / l)
	}
	return a
}

// along gives the unit vector of an axis, 0 to 2.
func along(axis int) (v Vec) {
	v[axis] = 1
	return v
}

// square gives some direction square to a.
func square(a Vec) Vec {
	least := 0
	for i := range a {
		if math.Abs(a[i]) < math.Abs(a[least]) {
			least = i
		}
	}
	return a.Cross(along(least)).Unit()
}

// least and most give the smaller and the larger in each co-ordinate.
func least(a, b Vec) Vec { return Vec{min(a[0], b[0]), min(a[1], b[1]), min(a[2], b[2])} }
func most(a, b Vec) Vec  { return Vec{max(a[0], b[0]), max(a[1], b[1]), max(a[2], b[2])} }

// Pose says how a part stands on a machine: it turns the part's co-ordinates and shifts
// them. The zero Pose is none; start from Attitude or Still.
type Pose struct {
	row   [3]Vec // the machine's X, Y, Z, each seen in the part
	shift Vec
}

// Still is the pose of a part whose axes are the machine's.
func Still() Pose { return Pose{row: [3]Vec{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}} }

// Attitude gives the pose in which the part's direction up looks along the machine's +Z and
// back along its +Y; X is Y×Z. It is exact where both lie along axes. Where back is not
// square to up, its part square to up counts; where it is parallel to it, any will do.
func Attitude(up, back Vec) Pose {
	z := up.Unit()
	if z == (Vec{}) {
		z = along(2)
	}
	y := back.Sub(z.Times(z.Dot(back)))
	if y.Len() <= 1e-12*back.Len() || y == (Vec{}) {
		y = square(z)
	}
	y = y.Unit()
	return Pose{row: [3]Vec{y.Cross(z), y, z}}
}

// Point gives the machine's co-ordinates of a place in the part.
func (p Pose) Point(v Vec) Vec { return p.Dir(v).Add(p.shift) }

// Dir gives the machine's direction of a direction in the part.
func (p Pose) Dir(v Vec) Vec { return Vec{p.row[0].Dot(v), p.row[1].Dot(v), p.row[2].Dot(v)} }

// Inverse gives the pose that leads back from the machine to the part.
func (p Pose) Inverse() Pose {
	var q Pose
	for i := range q.row {
		q.row[i] = Vec{p.row[0][i], p.row[1][i], p.row[2][i]}
	}
	q.shift = q.Dir(p.shift).Times(-1)
	return q
}

// Shifted gives the pose moved by d in the machine.
func (p Pose) Shifted(d Vec) Pose {
	p.shift = p.shift.Add(d)
	return p
}

// squared says whether every axis of the part lies along an axis of the machine.
func (p Pose) squared() bool {
	for _, r := range p.row {
		for _, x := range r {
			if x != 0 && x != 1 && x != -1 {
				return false
			}
		}
	}
	return true
}

// facing gives the (possibly mirroring) pose that turns an axis with a sign into +Z and the
// other two axes, in their order, into X and Y. A mirrored piece measures the same.
func facing(axis int, sign float64) Pose {
	u, v := others(axis)
	if sign < 0 {
		sign = -1
	} else {
		sign = 1
	}
	return Pose{row: [3]Vec{along(u), along(v), along(axis).Times(sign)}}
}

// others gives the two axes square to one, in order.
func others(axis int) (int, int) {
	switch axis {
	case 0:
		return 1, 2
	case 1:
		return 0, 2
	}
	return 0, 1
}
