package dividing

import (
	"fmt"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// Law: the differential leaves no train out: trying all wheels in all places against all ways
// of the crank up to Within finds nothing that the settings lack. No wheel is used more often
// than it is there, idlers counted; wheels that drive stand larger first, and so do those that
// are driven.
func TestNoTrainLeftOut(t *testing.T) {
	found := 0
	rapid.Check(t, func(t *rapid.T) {
		wheels := rapid.SliceOfN(rapid.SampledFrom([]int{20, 24, 28, 32, 40, 48, 56, 64, 72, 100}), 2, 6).Draw(t, "wheels")
		h := Head{Ratio: Of(40, 1), Plates: []Plate{{Faces: [][]int{{rapid.IntRange(15, 30).Draw(t, "circle")}}}},
			Gear: Gearing{Wheels: wheels, Axis: Level, Idlers: rapid.SampledFrom([]Idlers{Classic, Reversed}).Draw(t, "idlers")}}
		j, err := Divisions(rapid.IntRange(30, 200).Draw(t, "divisions"))
		must(t, err)
		g, err := Gears(h, j)
		must(t, err)
		has := map[string]bool{}
		for _, s := range g.Settings {
			has[fmt.Sprint(s.Crank, s.Train)] = true
			used := s.Train.Pairs*2 + s.Train.Idlers
			for _, w := range []int{s.Train.Spindle, s.Train.Plate, s.Train.StudIn, s.Train.StudOut} {
				if w > 0 && count([]int{s.Train.Spindle, s.Train.Plate, s.Train.StudIn, s.Train.StudOut}, w) > count(wheels, w) {
					t.Fatalf("%+v uses %d more often than it is there", s.Train, w)
				}
			}
			if used > len(wheels) || s.Train.Spindle < s.Train.StudOut || s.Train.Plate < s.Train.StudIn {
				t.Fatalf("%+v", s.Train)
			}
		}
		c := h.Plates[0].Faces[0][0]
		for holes := 1; holes < 3*c; holes++ {
			e := new(big.Rat).Sub(big.NewRat(40, 1), big.NewRat(int64(holes*j.Places), int64(c)))
			if x, _ := e.Float64(); e.Sign() == 0 || max(x, -x) > g.Within {
				continue
			}
			for _, tr := range every(wheels, h.Gear.Idlers, e) {
				found++
				s := fmt.Sprint(Count{int64(holes / c), holes % c, c}, tr)
				if !has[s] {
					t.Fatalf("%s is not given", s)
				}
			}
		}
	})
	if found == 0 {
		t.Error("no train came up")
	}
}

func count(all []int, one int) (n int) {
	for _, x := range all {
		if x == one {
			n++
		}
	}
	return n
}

// every tries every choice of two and of four different wheels of the list.
func every(wheels []int, rule Idlers, e *big.Rat) (out []Train) {
	size, against := new(big.Rat).Abs(e), e.Sign() < 0
	idlers := [2]int{rule.SimpleWith, rule.CompoundWith}
	if against {
		idlers = [2]int{rule.SimpleAgainst, rule.CompoundAgainst}
	}
	for a := range wheels {
		for b := range wheels {
			if a != b && big.NewRat(int64(wheels[a]), int64(wheels[b])).Cmp(size) == 0 && len(wheels) >= 2+idlers[0] {
				out = append(out, Train{Pairs: 1, Spindle: wheels[a], Plate: wheels[b], Idlers: idlers[0], Against: against})
			}
			for c := range wheels {
				for d := range wheels {
					if a == b || a == c || a == d || b == c || b == d || c == d || wheels[a] < wheels[b] || wheels[c] < wheels[d] {
						continue
					}
					if big.NewRat(int64(wheels[a]*wheels[b]), int64(wheels[c]*wheels[d])).Cmp(size) == 0 && len(wheels) >= 4+idlers[1] {
						out = append(out, Train{Pairs: 2, Spindle: wheels[a], StudOut: wheels[b], Plate: wheels[c], StudIn: wheels[d], Idlers: idlers[1], Against: against})
					}
				}
			}
		}
	}
	return out
}
