package heat

import (
	"cmp"
	"fmt"
	"math"

	"fettle/schema/handbook"
)

// A hub is to go over a shaft that is larger than its bore by an interference. Heating opens
// the bore as if it were full of the hub's own metal, cooling shrinks the shaft. With d the
// bore at 20 degrees, i the interference, h and s what hub and shaft have gained of their
// sizes, the gap on diameter is
//
//	gap = d (1+h) - (d+i) (1+s) = d h - d s - i s - i
//
// i s is a thousandth of i and is kept. All below are this one line solved for one letter.

// Joint is a hub over a shaft. The interference is within a twentieth of the diameter either way.
type Joint struct {
	Diameter     float64       // of the bore at 20 degrees, mm; not the outside of the hub
	Interference handbook.Band // shaft less bore on diameter at 20 degrees, mm; below 0 it is play
	Hub, Shaft   Body
}

func (j Joint) check() error {
	var bad error
	if i := j.Interference; !(i.Lo <= i.Hi && math.Abs(i.Lo) <= j.Diameter/20 && math.Abs(i.Hi) <= j.Diameter/20) {
		bad = fmt.Errorf("the interference must lie within a twentieth of the diameter, not %v to %v mm", i.Lo, i.Hi)
	}
	return cmp.Or(checkLength("diameter", j.Diameter), bad, j.Hub.check("hub"), j.Shaft.check("shaft"))
}

// Interference gives the interference on diameter with hub and shaft at their temperatures, mm;
// below nought it is play. An error names the figure of the joint that is out of range.
func Interference(j Joint) (handbook.Band, error) {
	if err := j.check(); err != nil {
		return handbook.Band{}, err
	}
	h, s := j.Hub.strain(), j.Shaft.strain()
	at := func(i, h, s float64) float64 { return i + i*s + j.Diameter*(s-h) }
	return handbook.Band{Lo: at(j.Interference.Lo, h.Hi, s.Lo), Hi: at(j.Interference.Hi, h.Lo, s.Hi)}, nil
}

// HubAt gives the temperature the hub must have so that a gap on diameter is left all round with
// the shaft at its own temperature, degrees: the low figure for the least interference and the hub
// that grows most, the high one, which always serves, for the contrary. Where it lies over 1600
// degrees no heat of a workshop does it, and the error says so.
//
// dT = (interference + gap)/(a d), the interface and not the outside of the hub being d (seen: the
// formula as S. S. Bhavikatti, Strength of Materials, 8.8.17, has it; its figure there divides by
// another diameter and is wrong). The gap is mm on diameter, 0 to a twentieth of it. Other errors
// name the figure out of range.
func HubAt(j Joint, gap float64) (handbook.Band, error) {
	if err := cmp.Or(j.check(), checkGap(gap, j.Diameter)); err != nil {
		return handbook.Band{}, err
	}
	s, e, d := j.Shaft.strain(), j.Hub.Expansion, j.Diameter
	need := handbook.Band{
		Lo: (j.Interference.Lo*(1+s.Lo) + gap + d*s.Lo) / d,
		Hi: (j.Interference.Hi*(1+s.Hi) + gap + d*s.Hi) / d,
	}
	out := handbook.Band{Lo: Reference + quotient(need.Lo, e.Hi, e.Lo), Hi: Reference + quotient(need.Hi, e.Lo, e.Hi)}
	return out, reachable("hub", out)
}

// ShaftAt gives the temperature, degrees, the shaft must have for the same gap with the hub at its
// own: the high figure for the least interference, the low one, which always serves, for the
// contrary. An error names the figure out of range, or says that the temperature would lie outside
// -200 to 1600 degrees.
func ShaftAt(j Joint, gap float64) (handbook.Band, error) {
	if err := cmp.Or(j.check(), checkGap(gap, j.Diameter)); err != nil {
		return handbook.Band{}, err
	}
	h, e, d := j.Hub.strain(), j.Shaft.Expansion, j.Diameter
	room := func(h, i float64) float64 { return (d*h - i - gap) / (d + i) }
	lo, hi := room(h.Lo, j.Interference.Hi), room(h.Hi, j.Interference.Lo)
	out := handbook.Band{Lo: Reference + quotient(lo, e.Hi, e.Lo), Hi: Reference + quotient(hi, e.Lo, e.Hi)}
	return out, reachable("shaft", out)
}

// quotient divides by up where x is above nought and by down where it is below, so that a
// bound stays the bound on its side.
func quotient(x, up, down float64) float64 {
	if x < 0 {
		return x / down
	}
	return x / up
}

func checkGap(gap, d float64) error {
	if !(gap >= 0 && gap <= d/20) {
		return fmt.Errorf("the gap for putting together must lie from 0 to a twentieth of the diameter, not %v mm", gap)
	}
	return nil
}

func reachable(of string, t handbook.Band) error {
	if t.Lo < coldest || t.Hi > hottest || math.IsNaN(t.Lo+t.Hi) {
		return fmt.Errorf("the %s would have to be at %.0f to %.0f degrees, outside %d to %d: heat alone does not do it", of, t.Lo, t.Hi, coldest, hottest)
	}
	return nil
}

// LooseAt gives the temperature of both parts, degrees, at which an interference is gone: above 20
// degrees where the hub grows more than the shaft, below where less. False where it is never gone
// between -200 and 1600 degrees for any metal of the bands, or where the bands of the two metals
// overlap, so that nobody knows the sign. An error names the figure out of range, or says that
// there is no interference to lose.
func LooseAt(j Joint) (handbook.Band, bool, error) {
	if err := j.check(); err != nil {
		return handbook.Band{}, false, err
	}
	i, d := j.Interference, j.Diameter
	if !(i.Lo > 0) {
		return handbook.Band{}, false, fmt.Errorf("there is no interference to lose: %v to %v mm", i.Lo, i.Hi)
	}
	h, s := j.Hub.Expansion, j.Shaft.Expansion
	at := func(i, h, s float64) float64 { return Reference + i/(d*h-(d+i)*s) }
	var out handbook.Band
	switch {
	case h.Lo*d > s.Hi*(d+i.Hi):
		out = handbook.Band{Lo: at(i.Lo, h.Hi, s.Lo), Hi: at(i.Hi, h.Lo, s.Hi)}
	case h.Hi < s.Lo:
		out = handbook.Band{Lo: at(i.Hi, h.Hi, s.Lo), Hi: at(i.Lo, h.Lo, s.Hi)}
	default:
		return handbook.Band{}, false, nil
	}
	if out.Hi < coldest || out.Lo > hottest {
		return handbook.Band{}, false, nil
	}
	return out, true, nil
}
