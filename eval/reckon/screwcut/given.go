package screwcut

import (
	"fmt"
	"math"
	"math/big"
)

// Given works out the train that is put up with these wheels, driver first: A B, A B C D or A B C D E F, or
// three of which the middle one is an idler; and how far it is off the lead that is wanted, ppm. Whether
// the lathe has the wheels, and whether they mesh, is not asked. Wheels have LeastTeeth to MostTeeth teeth;
// an error names the wheel or the count, and what of lathe and lead is not given.
func Given(l Lathe, wheels []int, lead Pitch) (Train, error) {
	s, err := begin(Lathe{Screw: l.Screw, Head: l.Head, Wheels: []int{LeastTeeth, LeastTeeth + 1}, Mesh: l.Mesh}, Wanted{Lead: lead, Pairs: 1})
	if err != nil {
		return Train{}, err
	}
	for _, w := range wheels {
		if w < LeastTeeth || w > MostTeeth {
			return Train{}, fmt.Errorf("a wheel of %d teeth is not one of %d to %d", w, LeastTeeth, MostTeeth)
		}
	}
	t := Train{}
	if len(wheels) == 3 {
		t.Idler, wheels = wheels[1], []int{wheels[0], wheels[2]}
	}
	if len(wheels) == 0 || len(wheels)%2 == 1 || len(wheels) > 2*MostPairs {
		return Train{}, fmt.Errorf("%d wheels make no train: it has 2, 4 or 6, or 3 with an idler", len(wheels))
	}
	t.Pairs = len(wheels) / 2
	for n := range t.Pairs {
		t.Driver[n], t.Driven[n] = wheels[2*n], wheels[2*n+1]
	}
	t.cuts(s.head, s.screw)
	want := lead.rat()
	cut := new(big.Rat).Mul(big.NewRat(t.Turn.Num, t.Turn.Den), l.Screw.rat())
	t.Exact = cut.Cmp(want) == 0
	off, _ := new(big.Rat).Quo(cut.Sub(cut, want), want).Float64()
	if t.PPM = off * 1e6; math.IsInf(t.PPM, 0) {
		return Train{}, fmt.Errorf("the lead %s is too far off what the wheels cut", lead)
	}
	return t, nil
}
