package gear

import (
	"fmt"
	"math"
)

// Cycloidal teeth of clockwork: the flank of the wheel's tooth is the curve that a point of a circle
// draws which rolls on the wheel's pitch circle, and that circle is half as large across as the
// pinion's. Both flanks of a tooth that is as thick as its gap meet in a point; what is made stays a
// little below it (by how much stands in the tables of cutters, and is not reckoned here).

// Pointed gives how far beyond the pitch circle both flanks of a cycloidal wheel's tooth meet, in
// modules: no tooth of such a pair is taller. The wheel has 3 to 10,000 teeth, its pinion 3 to
// 1000; an error names the one that has not. By geometry (an epicycloid), right to 1e-9.
//
// Law: the point lies on the flank: it is as far from the rolling circle's place of touch as the turn
// of that circle says.
func Pointed(wheel, pinion int) (float64, error) {
	switch {
	case wheel < 3 || wheel > 10000:
		return 0, fmt.Errorf("a cycloidal wheel of %d teeth: from 3 to 10000", wheel)
	case pinion < 3 || pinion > 1000:
		return 0, fmt.Errorf("a cycloidal pinion of %d leaves: from 3 to 1000", pinion)
	}
	r, roll := float64(wheel)/2, float64(pinion)/4
	half := math.Pi / (2 * float64(wheel)) // from the flank's foot to the middle of the tooth
	// The point's angle about the wheel grows with the turn t of the rolling circle, up to its top.
	angle := func(t float64) float64 {
		sin, cos := math.Sincos(t)
		return roll*t/r - math.Atan2(roll*sin, r+roll-roll*cos)
	}
	lo, hi := 0.0, math.Pi
	for range 100 {
		if mid := (lo + hi) / 2; angle(mid) < half {
			lo = mid
		} else {
			hi = mid
		}
	}
	t := (lo + hi) / 2
	// The same distance without a difference of large squares.
	s := math.Sin(t / 2)
	over := 4 * (r + roll) * roll * s * s
	return over / (math.Sqrt(r*r+over) + r), nil
}

// ServesCycloidal says whether a cutter cuts the cycloidal teeth of a wheel of a module, mm, with why
// in words, as Serves does of involute ones. Cutters for wheels are for any count unless a range is
// printed on them; those for pinions always have one.
func (c Cutter) ServesCycloidal(module float64, teeth int) (Fit, string) {
	if c.Form == "involute" {
		return No, "its teeth are involute"
	}
	if fit, why := c.pitch(module); fit != Yes {
		return fit, why
	}
	switch {
	case c.Teeth.Least > 0 && !c.Teeth.Has(teeth):
		return No, fmt.Sprintf("it is for %v teeth, not %d", c.Teeth, teeth)
	case c.Form == "":
		return NotKnown, "whether its teeth are cycloidal is not known"
	case c.Teeth.Least == 0:
		return NotKnown, "read the range of teeth printed on it, if there is one"
	}
	return Yes, fmt.Sprintf("it is for %v teeth", c.Teeth)
}

// pitch says whether a cutter is of a module, mm.
func (c Cutter) pitch(module float64) (Fit, string) {
	off := math.Abs(c.Module-module) / module
	switch {
	case !(c.Module > 0):
		return NotKnown, "its pitch is not known"
	case !(module > 0):
		return NotKnown, "the wheel's module is not known"
	case off > 1e-6 && off < nearTwin:
		return No, fmt.Sprintf("its module %.4g mm is a near twin of %.4g mm and not the same", c.Module, module)
	case off > 1e-6:
		return No, fmt.Sprintf("its module is %.4g mm, not %.4g mm", c.Module, module)
	}
	return Yes, ""
}
