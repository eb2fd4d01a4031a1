package screwcut

import (
	"fmt"
	"math/big"
	"slices"
)

// Mate gives how many teeth the driven wheel of a single pair wants beside a driver: driver over
// Ratio, exactly, to be cut as a wheel only where its denominator is 1. An error where lead screw
// or lead is missing or the driver has not LeastTeeth to MostTeeth teeth.
func Mate(l Lathe, lead Pitch, driver int) (*big.Rat, error) {
	r := Ratio(l, lead)
	if r.Sign() <= 0 || driver < LeastTeeth || driver > MostTeeth {
		return nil, fmt.Errorf("a lead screw, a lead, and a driver from %d to %d teeth are wanted", LeastTeeth, MostTeeth)
	}
	return new(big.Rat).Quo(big.NewRat(int64(driver), 1), r), nil
}

// MostWheelToGet is the largest wheel that WheelsToGet tries.
const MostWheelToGet = 127

// WheelsToGet lists the wheels of at most MostWheelToGet teeth, smallest first, of which one alone
// put to those that are there makes an exact train: what to cut or borrow. At least 15 teeth are
// tried; below that a wheel of the usual form is undercut badly (common practice). None where pi
// is in the ratio, or the rack is full. The error allowed plays no part. Errors as of Trains.
func WheelsToGet(l Lathe, w Wanted) ([]int, error) {
	w.Within = 0
	s, err := begin(l, w)
	if err != nil {
		return nil, err
	}
	var out []int
	if s.den == 0 || len(l.Wheels) >= MostWheels {
		return nil, nil
	}
	for z := 15; z <= MostWheelToGet; z++ {
		more := l
		more.Wheels = append(slices.Clone(l.Wheels), z)
		a, err := Trains(more, w)
		if err != nil {
			return nil, err
		}
		if a.Found > 0 {
			out = append(out, z)
		}
	}
	return out, nil
}
