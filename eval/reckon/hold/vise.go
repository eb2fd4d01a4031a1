package hold

import (
	"fmt"
	"math"
)

// Screw gives the force of a vise, N, from the torque on its handle: F = 2 pi T eta / p. torque 0
// to 1e7 N mm, lead 0.1 to 100 mm; eta is how much of the work comes through, 0.15 to 0.30 for a
// plain screw and thrust face (worked out from screw friction of 0.12 to 0.2 and a collar), taken
// from 0.01 to 1. With the error for a figure out of range the force means nothing.
func Screw(torque, lead, eta float64) (force float64, err error) {
	return 2 * math.Pi * torque * eta / lead, in(figure{"torque N mm", torque, 0, 1e7}, figure{"lead mm", lead, 0.1, 100}, figure{"share of the work", eta, 0.01, 1})
}

// Racked is a vise whose work sits off the axis of its screw, held by the guide of the movable jaw.
type Racked struct {
	Work  float64 // force on the work, N
	Guide float64 // what each end of the guide takes across, N
	Yaw   float64 // how far the jaw can turn in its guide, radians: it grips one edge of the work
}

// Rack gives what a vise does to work whose middle is off the screw: force of the screw 0 to 1e7
// N, offset within 10,000 and guide length 1 to 10,000 mm, friction in the guide 0 to 2, clearance
// in the guide 0 to 10 mm (0: not known). Fw = Fv / (1 + 2 mu e/Lg); N = Fw e/Lg; yaw =
// clearance/Lg. Worked out from the balance of the jaw; that equal packing cures it is printed for
// vises of woodworkers, with the same mechanics. With the error for a figure out of range the
// answer means nothing.
func Rack(screw, offset, guide, friction, clearance float64) (Racked, error) {
	e := math.Abs(offset)
	err := in(figure{"force N", screw, 0, mostForce}, figure{"offset mm", e, 0, 1e4}, figure{"guide length mm", guide, 1, 1e4}, figure{"friction", friction, 0, mostFriction}, figure{"clearance mm", clearance, 0, 10})
	w := screw / (1 + 2*friction*e/guide)
	return Racked{Work: w, Guide: w * e / guide, Yaw: clearance / guide}, err
}

// Packed gives the forces, N, on work and on packing at the other side of the screw, of a force of
// 0 to 1e7 N; offsets are both counted from the axis of the screw, 0 to 10,000 mm. With equal
// offsets each takes half, so the screw must press twice as hard as for work in the middle.
// Balance of moments about the screw. An error names the figure out of range, or says that both
// are on the axis.
func Packed(screw, work, packing float64) (onWork, onPacking float64, err error) {
	if err := in(figure{"force N", screw, 0, mostForce}, figure{"offset of the work mm", work, 0, 1e4}, figure{"offset of the packing mm", packing, 0, 1e4}); err != nil {
		return 0, 0, err
	}
	if work+packing < 1e-9 {
		return 0, 0, fmt.Errorf("work and packing are both on the axis of the screw: at least one offset above 0 is wanted")
	}
	onWork = screw * packing / (work + packing)
	return onWork, screw - onWork, nil
}

// Mismatch gives how far the jaw turns where work and packing differ in thickness, radians: the
// difference over the distance between them, by geometry. Thicknesses are 0 to 10,000 mm, work and
// packing together 0.1 to 20,000 mm apart; an error names the one that is not.
func Mismatch(thickWork, thickPacking, work, packing float64) (yaw float64, err error) {
	if err := in(figure{"thickness mm", thickWork, 0, 1e4}, figure{"thickness mm", thickPacking, 0, 1e4}, figure{"distance mm", work + packing, 0.1, 2e4}); err != nil {
		return 0, err
	}
	return (thickWork - thickPacking) / (work + packing), nil
}

// Jaws gives the force of a vise, N, that friction alone, 0.01 to 2, needs against a load, 0 to
// 1e7 N, along the jaws or out of them: F = S load / (2 mu), both jaws counted, S a factor of 1 to
// 20. It knows nothing of tipping, and may be much too small: Least counts moments too. With the
// error for a figure out of range the force means nothing.
func Jaws(load, friction, safety float64) (force float64, err error) {
	return safety * load / (2 * friction), in(figure{"load N", load, 0, mostForce}, figure{"friction", friction, 0.01, mostFriction}, figure{"factor", safety, 1, 20})
}

// Strap gives what a strap clamp passes to the work of its bolt's pull, 0 to 1e7 N: F b/(a+b), a
// from bolt to work, b from bolt to heel, 0 to 10,000 mm. A third of the way from the work 2/3, in
// the middle 1/2. The rest, F a/(a+b), bears on the heel. Source: balance of the lever; the table
// of a workholding maker prints the half. An error names the figure out of range, or says that
// bolt, work and heel are in one place.
func Strap(pull, toWork, toHeel float64) (work, heel float64, err error) {
	if err := in(figure{"pull N", pull, 0, mostForce}, figure{"bolt to work mm", toWork, 0, 1e4}, figure{"bolt to heel mm", toHeel, 0, 1e4}); err != nil {
		return 0, 0, err
	}
	if toWork+toHeel < 1e-9 {
		return 0, 0, fmt.Errorf("bolt, work and heel are in one place: a distance above 0 is wanted")
	}
	work = pull * toHeel / (toWork + toHeel)
	return work, pull - work, nil
}

// Resist gives what clamps, 1 to 100, hold by friction alone, 0 to 2, each with 0 to 1e7 N: mu F
// n, twice that where the table resists under each clamp as well as the strap above it. Source: a
// workholding maker's pages on clamping force. Fixture practice is to put the cut against a stop
// instead. With the error for a figure out of range the force means nothing.
func Resist(clamp, friction float64, clamps int, both bool) (force float64, err error) {
	err = in(figure{"force N", clamp, 0, mostForce}, figure{"friction", friction, 0, mostFriction}, figure{"clamps", float64(clamps), 1, 100})
	force = friction * clamp * float64(clamps)
	if both {
		force *= 2
	}
	return force, err
}

// figure is a figure that was given, with its bounds; both are in.
type figure struct {
	name      string
	x, lo, hi float64
}

func in(figures ...figure) error {
	for _, f := range figures {
		if !(f.x >= f.lo && f.x <= f.hi) {
			return fmt.Errorf("%s is %v: %g to %g is wanted", f.name, f.x, f.lo, f.hi)
		}
	}
	return nil
}
