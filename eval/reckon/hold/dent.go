package hold

import "math"

// Mark says what a tip does to a face.
type Mark uint8

const (
	NoDent   Mark = iota + 1 // nowhere beyond what the metal springs back from, by theory
	MayMark                  // beyond first yield below the face and short of a full dent
	FullDent                 // a dent of the size of a hardness test
)

// String writes a mark for a sentence; "unknown" for what is none.
func (m Mark) String() string {
	switch m {
	case NoDent:
		return "no dent by theory"
	case MayMark:
		return "may mark"
	case FullDent:
		return "dents"
	}
	return "unknown"
}

// Dent is what is left under a round tip.
type Dent struct {
	Across   float64 // mm
	Depth    float64 // mm
	Mark     Mark
	FirstAt  float64 // force of first yield below the face, N
	FullFrom float64 // force from which the dent is full, N
}

// A round tip pressed on a flat face works as a hardness test does.
//
// Brinell hardness is force over the area of the dent: HB = 0.102 2F/(pi D (D - sqrt(D^2 - d^2))),
// F in N, D the ball and d the dent across (ISO 6506-1). Turned about it gives d, and the depth
// h = 0.102 F/(pi D HB). That is the full dent: the metal flows all round.
//
// Before that the metal springs. By Hertz the greatest pressure under a ball of radius R is
// (6 F E*^2/(pi^3 R^2))^(1/3), with 1/E* = (1 - nu^2)/E of both; first yield comes below the
// face when it reaches 1.6 times the yield strength (K. L. Johnson, Contact Mechanics, from
// memory), that is about 0.58 of the hardness as a pressure; hardness is about 3 times the
// yield strength (Tabor, from memory). The dent is full when E* a/(Y R), a the radius of the
// touch, is past about 30 (Johnson, from memory). Between the two a mark may be left, smaller
// than the full dent.

// UnderBall gives the dent under a tip of a ball's shape, by the essay above: force 0 to 1e7 N,
// ball diameter 0.01 to 10,000 mm, Brinell hardness of the face 1 to 700, its E and that of the
// tip 1 to 1e7 MPa (Poisson's ratio 0.3 for both). An error names the figure out of range. A dent
// as deep as half the ball goes no deeper here.
func UnderBall(force, ball, hardness, eFace, eTip float64) (Dent, error) {
	if err := in(figure{"force N", force, 0, mostForce}, figure{"ball mm", ball, 0.01, 1e4}, figure{"Brinell hardness", hardness, 1, 700}, figure{"E of the face MPa", eFace, 1, 1e7}, figure{"E of the tip MPa", eTip, 1, 1e7}); err != nil {
		return Dent{}, err
	}
	depth := 0.102 * force / (math.Pi * ball * hardness)
	if depth > ball/2 {
		depth = ball / 2
	}
	d := Dent{Depth: depth, Across: 2 * math.Sqrt(depth*(ball-depth))}
	yield, r := hardness/0.102/3, ball/2
	stiff := 1 / ((1 - 0.3*0.3) * (1/eFace + 1/eTip))
	d.FirstAt = math.Pow(1.6*yield, 3) * math.Pow(math.Pi, 3) * r * r / (6 * stiff * stiff)
	// full dent: radius a of the touch 30 Y R/E*, under the full pressure 3 Y
	a := math.Min(30*yield*r/stiff, r)
	d.FullFrom = math.Max(3*yield*math.Pi*a*a, d.FirstAt)
	switch {
	case force <= d.FirstAt:
		d.Mark = NoDent
	case force < d.FullFrom:
		d.Mark = MayMark
	default:
		d.Mark = FullDent
	}
	return d, nil
}

// UnderFlat says what a flat foot does: pressure MPa of a force, 0 to 1e7 N, on an area, 0.001 to
// 1e6 mm2, against the hardness, Brinell 1 to 700, as a pressure. Up to a third of it, the yield
// strength (Tabor, from memory), nothing flows but at the edges, which bite first if they are
// sharp; from all of it on the foot sinks in. An error names the figure out of range.
func UnderFlat(force, area, hardness float64) (pressure float64, m Mark, err error) {
	if err := in(figure{"force N", force, 0, mostForce}, figure{"area mm2", area, 0.001, 1e6}, figure{"Brinell hardness", hardness, 1, 700}); err != nil {
		return 0, 0, err
	}
	pressure = force / area
	switch full := hardness / 0.102; {
	case pressure <= full/3:
		m = NoDent
	case pressure < full:
		m = MayMark
	default:
		m = FullDent
	}
	return pressure, m, nil
}
