package rigid

import (
	"fmt"
	"math"

	"fettle/schema/handbook"
)

// FluteCore is the diameter of a plain bar that bends like the fluted part of an end mill of
// two or four teeth, as a part of the cutter's (seen: L. Kops, D. T. Vo, CIRP Annals 39 (1990),
// abstract: about 0.8).
const FluteCore = 0.8

// EndMill gives an end mill as a bar clamped in its holder: shank first, then flutes. Reach is
// what stands out of the holder; where the flutes are as long, there is no shank. Lengths are
// 0.001 to 100,000 mm, the stiffness 1 to 2,000,000 MPa; an error names the one that is not, or
// says that a part has no section worth the name. The core of the flutes is FluteCore of the
// cutter.
func EndMill(cutter, flutes, shank, reach float64, young handbook.Band) (Bar, error) {
	for _, c := range []struct {
		what string
		x    float64
	}{{"diameter of the cutter", cutter}, {"length of the flutes", flutes}, {"diameter of the shank", shank}, {"reach out of the holder", reach}} {
		if !(c.x >= least && c.x <= longest) {
			return Bar{}, fmt.Errorf("the %s must lie from %v to %v mm, not %v", c.what, least, float64(longest), c.x)
		}
	}
	b := Bar{Hold: Chuck, Young: young}
	if reach > flutes {
		b.Parts = append(b.Parts, Round(reach-flutes, shank, 0))
	}
	b.Parts = append(b.Parts, Round(math.Min(flutes, reach), FluteCore*cutter, 0))
	if err := b.check(); err != nil {
		return Bar{}, err
	}
	return b, nil
}

// finest is the least tolerance that is asked for, mm.
const finest = 1e-6

// Share gives what part of a tolerance, 1e-6 to 100,000 mm, a way, mm, takes; doubled where the
// tolerance is on diameter, as in turning and boring. A band below nought is told by its size. An
// error names the figure out of range.
func Share(way handbook.Band, onDiameter bool, tolerance float64) (handbook.Band, error) {
	if !(tolerance >= finest && tolerance <= longest) {
		return handbook.Band{}, fmt.Errorf("the tolerance must lie from %v to %v mm, not %v", finest, float64(longest), tolerance)
	}
	if !(way.Lo >= -longest && way.Lo <= way.Hi && way.Hi <= longest) {
		return handbook.Band{}, fmt.Errorf("the way must lie within %v mm, not from %v to %v", float64(longest), way.Lo, way.Hi)
	}
	if onDiameter {
		way = way.Times(2)
	}
	if way.Hi < 0 {
		way = way.Times(-1)
	}
	return way.Times(1 / tolerance), nil
}

// Verdict is a ratio against the usual limits of the trade.
type Verdict uint8

const (
	Usual  Verdict = iota + 1 // at the limit or under
	Beyond                    // over the limit
	Never                     // over what anybody goes, where the table has that
)

// Slender compares how far a thing reaches, mm, with what is usual for what it is divided by, mm
// (handbook.Slender). On a limit is still in. An error for lengths outside 0.001 to 100,000 mm,
// and for a row whose limits are none.
func Slender(r handbook.SlenderRow, length, by float64) (ratio float64, v Verdict, err error) {
	if !(length >= least && length <= longest && by >= least && by <= longest) {
		return 0, 0, fmt.Errorf("%s and %s must lie from %v to %v mm, not %v and %v", r.Length, r.By, least, float64(longest), length, by)
	}
	if !(r.Limit > 0 && r.Limit <= 1e6 && r.Most >= 0 && r.Most <= 1e6) {
		return 0, 0, fmt.Errorf("the usual limits of %s by %s must lie from 0 to a million, not %v and %v", r.Length, r.By, r.Limit, r.Most)
	}
	ratio = length / by
	const dust = 1e-9
	switch {
	case ratio <= r.Limit*(1+dust):
		v = Usual
	case r.Most > 0 && ratio > r.Most*(1+dust):
		v = Never
	default:
		v = Beyond
	}
	return ratio, v, nil
}

// UsualWhirl is the part of the first whirling speed that is worth a word, and LongTail the
// length of an unsupported tail from which a support is always asked for, mm. Common practice
// without a source.
const (
	UsualWhirl = 0.4
	LongTail   = 300
)

// Whirl gives the first whirling speed of a bar that sticks out of its last support, rev/min:
// where a bar as long as that, held like in a vise, swings by itself:
//
//	w = q^2 sqrt(E I/(A density L^4)),  q = 1.8751 the first root of cos q cosh q = -1
//
// (theory of beams; for steel and aluminium 4.2e7 d/L^2, for brass 2.9e7 d/L^2). A tail that has
// play in its last support whirls at less, and so does a bent one. Lengths are mm, to 100,000, the
// stiffness 1 to 2,000,000 MPa, the density 100 to 25,000 kg/m3; an error names the figure out of
// range.
func Whirl(length, outside, inside float64, young handbook.Band, density float64) (handbook.Band, error) {
	switch {
	case !(length >= least && length <= longest):
		return handbook.Band{}, fmt.Errorf("the tail must lie from %v to %v mm, not %v", least, float64(longest), length)
	case !(outside > 0 && outside <= longest && inside >= 0 && inside < outside):
		return handbook.Band{}, fmt.Errorf("the bar must be over 0 up to %v mm thick and wider than its bore, not %v with %v", float64(longest), outside, inside)
	case !(young.Lo >= 1 && young.Lo <= young.Hi && young.Hi <= 2e6):
		return handbook.Band{}, fmt.Errorf("the stiffness must lie from 1 to 2,000,000 MPa, not %v to %v", young.Lo, young.Hi)
	case !(density >= 100 && density <= 25000):
		return handbook.Band{}, fmt.Errorf("the density must lie from 100 to 25,000 kg/m3, not %v", density)
	}
	spread := math.Hypot(outside, inside) / 4 // sqrt(I/A)
	at := func(e float64) float64 {
		return firstRoot * firstRoot * spread / (length * length) * math.Sqrt(e/(density*1e-12)) * 30 / math.Pi
	}
	return handbook.Band{Lo: at(young.Lo), Hi: at(young.Hi)}, nil
}

const firstRoot = 1.8751040687119611 // cos q cosh q = -1; the test holds it against that
