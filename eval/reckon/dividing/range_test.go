package dividing

import (
	"fmt"
	"math/big"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestRefused(t *testing.T) {
	h := Head{Ratio: Of(40, 1)}
	sized := func(n int) []int { return make([]int, n) }
	for _, c := range []struct {
		err  error
		says string
	}{
		{second(Divisions(0)), "0 divisions: they run from 1 to 1000000"},
		{second(Divisions(1_000_001)), "1000001 divisions: they run from 1 to 1000000"},
		{second(Block(12, 3)), "3 spaces at once of 12: both can be divided by 3, so only 4 of the 12 places would be reached"},
		{second(Block(12, 0)), "0 spaces at once of 12: they run from 1 to 11"},
		{second(Angle(Of(0, 1), 1)), "an angle of 0 deg: angles run from above 0 to 360 deg"},
		{second(Angle(Of(361, 1), 1)), "an angle of 361 deg: angles run from above 0 to 360 deg"},
		{second(Angle(Fraction{}, 1)), "an angle of no number deg: angles run from above 0 to 360 deg"},
		{second(Angle(Of(1, 1_000_003), 1)), "an angle of 1/1000003 deg: it is finer than 1/40000000 of the circle"},
		{second(Settings(Head{Ratio: Of(1, 2)}, Job{Of(1, 7), 7, 1, true})), "a ratio of 1/2: ratios run from 1 to 1000 turns of the crank for one of the work, in parts of 1/100 at the finest"},
		{second(Settings(Head{}, Job{Of(1, 7), 7, 1, true})), "a ratio of no number: ratios run from 1 to 1000 turns of the crank for one of the work, in parts of 1/100 at the finest"},
		{second(Settings(h, Job{})), "a move of no number of the circle, 0 places, 0 spaces at once: no such job"},
		{second(Settings(Head{Ratio: Of(40, 1), Plates: []Plate{{Faces: [][]int{{401}}}}}, Job{Of(1, 7), 7, 1, true})), "a circle of 401 holes: they run from 2 to 400"},
		{second(Settings(Head{Ratio: Of(40, 1), Direct: []int{1}}, Job{Of(1, 7), 7, 1, true})), "a direct plate of 1 holes: they run from 2 to 400"},
		{second(Gears(Head{Ratio: Of(40, 1), Gear: Gearing{Wheels: sized(25)}}, Job{Of(1, 7), 7, 1, true})), "25 change wheels: at most 24 are taken"},
		{second(Gears(Head{Ratio: Of(40, 1), Gear: Gearing{Wheels: []int{9}}}, Job{Of(1, 7), 7, 1, true})), "a change wheel of 9 teeth: they run from 10 to 300"},
		{second(Serve(h, Job{Of(1, 7), 7, 1, true}, 1)), "a bound of 1 holes: they run from 2 to 400"},
		{second(Lined(Of(40, 1), Of(7, 60))), "a line of 7/60 deg on the dial of a table of 40 to 1: a turn of the handle is 9 deg, which must be 1 to 100000 whole lines"},
		{second(Lined(Of(40, 1), Of(0, 1))), "a line of 0 deg on the dial of a table of 40 to 1: a turn of the handle is 9 deg, which must be 1 to 100000 whole lines"},
		{second(Rotary{}.Step(Job{Of(1, 7), 7, 1, true})), "a ratio of no number: ratios run from 1 to 1000 turns of the crank for one of the work, in parts of 1/100 at the finest"},
	} {
		if c.err == nil || c.err.Error() != c.says {
			t.Errorf("%v, not %q", c.err, c.says)
		}
	}
}

func second[T any](_ T, err error) error { return err }

// Law: fractions reckon as big.Rat does, or come to no number; never to a wrong one.
func TestFractions(t *testing.T) {
	number := rapid.OneOf(rapid.Int64(), rapid.Int64Range(-1000, 1000), rapid.Int64Range(-1<<31, 1<<31))
	rapid.Check(t, func(t *rapid.T) {
		a, b := Of(number.Draw(t, "a"), number.Draw(t, "b")), Of(number.Draw(t, "c"), number.Draw(t, "d"))
		if !a.Valid() || !b.Valid() {
			return
		}
		x, y := rat(a), rat(b)
		check := func(name string, got Fraction, want *big.Rat) {
			fits := want != nil && want.Num().IsInt64() && want.Denom().IsInt64()
			if got.Valid() && (want == nil || rat(got).Cmp(want) != 0) || !got.Valid() && fits && name != "plus" && name != "minus" && want.Num().Int64() != -1<<63 {
				t.Fatalf("%s %s %s: %s, not %s", a, name, b, got, want)
			}
		}
		check("plus", a.Plus(b), new(big.Rat).Add(x, y))
		check("minus", a.Minus(b), new(big.Rat).Sub(x, y))
		check("times", a.Times(b), new(big.Rat).Mul(x, y))
		if b.Num != 0 {
			check("over", a.Over(b), new(big.Rat).Quo(x, y))
		} else {
			check("over", a.Over(b), nil)
		}
		if a.Cmp(b) != x.Cmp(y) || a.Sign() != x.Sign() {
			t.Fatalf("%s against %s: %d", a, b, a.Cmp(b))
		}
		w, rest := a.Whole()
		if sum := new(big.Rat).Add(big.NewRat(w, 1), rat(rest)); sum.Cmp(x) != 0 || rest.Num < 0 || rest.Cmp(Of(1, 1)) >= 0 {
			t.Fatalf("%s is %d and %s", a, w, rest)
		}
	})
}

// Law: where the differential stops for having enough, it has all up to Within: each circle
// alone gives no train as slow that all circles together lack.
func TestEnough(t *testing.T) {
	h := Head{Ratio: Of(40, 1), Plates: slices.Concat(three, sided), Gear: Gearing{Wheels: usual, Axis: Level}}
	for _, n := range []int{2, 3, 7, 12} {
		j, err := Divisions(n)
		must(t, err)
		g, err := Gears(h, j)
		must(t, err)
		has := map[string]bool{}
		for _, s := range g.Settings {
			has[fmt.Sprint(s)] = true
			if s.Train.Ratio().Abs().Float() > g.Within+1e-6 {
				t.Errorf("%d: %v is faster than %v", n, s.Train, g.Within)
			}
		}
		if len(g.Settings) < enough {
			t.Errorf("%d: %d settings up to %v are no test of this", n, len(g.Settings), g.Within)
		}
		for _, p := range h.Plates {
			for i, face := range p.Faces {
				for _, c := range face {
					alone := h
					alone.Plates = []Plate{{Name: p.Name, Faces: make([][]int, i+1)}}
					alone.Plates[0].Faces[i] = []int{c}
					one, err := Gears(alone, j)
					must(t, err)
					for _, s := range one.Settings {
						if fast := s.Train.Ratio().Abs().Float(); fast <= min(g.Within, one.Within) && !has[fmt.Sprint(s)] {
							t.Errorf("%d: %+v is not given", n, s)
						}
					}
				}
			}
		}
	}
}
