package cover

import (
	"errors"
	"fmt"
	"math/bits"
	"slices"
)

// Which wishes cannot stand together.
//
// Wishes are numbered from 0 in order of preference. Whether a set of them fails is asked of
// a function, which must be monotone: a set that holds a failing set fails too. A conflict
// is a failing set that stops failing whichever wish is taken out of it; a correction is a
// set of wishes whose going cures all, and no smaller part of it does.
//
// Every correction meets every conflict, and the least sets that do are exactly the
// corrections, and the other way about (R. Reiter, "A theory of diagnosis from first
// principles", Artificial Intelligence 32, 1987). So the two lists are grown together: the
// least sets that meet all conflicts known so far are tried; one that does not cure leaves
// a failing rest, in which there is a new conflict; when all of them cure, both lists are
// complete.

// Wishes is the largest number of wishes that are taken.
const Wishes = 64

// Clash is the full account of wishes that cannot stand together, as numbers of wishes.
type Clash struct {
	Conflicts   [][]int
	Corrections [][]int
	Complete    bool // false where there are more than were looked for
}

// Clashes gives all conflicts and all corrections of n wishes, 0 to Wishes, the smaller ones first
// (Reiter, see the essay). It gives up, and says so, past a thousand of either. Where even no wish
// at all fails nothing can be blamed on a wish: that is an error, as are other numbers of wishes
// and a question that is nil.
func Clashes(n int, fails func(wishes []int) bool) (Clash, error) {
	if n < 0 || n > Wishes {
		return Clash{}, fmt.Errorf("%d wishes: 0 to %d can be compared", n, Wishes)
	}
	if fails == nil {
		return Clash{}, errors.New("nothing says which wishes fail")
	}
	all := uint64(1)<<n - 1
	if fails(nil) {
		return Clash{}, fmt.Errorf("this fails without any of the %d wishes", n)
	}
	var conflicts []uint64
	corrections, fresh := []uint64{0}, true
	const limit = 1000
	for fresh && len(conflicts) < limit && len(corrections) < limit {
		fresh = false
		for _, c := range corrections {
			rest := all &^ c
			if slices.ContainsFunc(conflicts, func(k uint64) bool { return k&^rest == 0 }) || !fails(numbers(rest)) {
				continue
			}
			conflicts, fresh = append(conflicts, shrink(rest, fails)), true
		}
		corrections = meeting(conflicts, limit)
	}
	return Clash{Conflicts: listed(conflicts), Corrections: listed(corrections), Complete: !fresh}, nil
}

// Preferred gives the wishes that can stand together when earlier ones are preferred: each is kept
// if it goes with those kept before it. Wishes beyond the number Wishes are not looked at; a
// question that is nil keeps none.
func Preferred(n int, fails func(wishes []int) bool) []int {
	var kept []int
	if fails == nil {
		return nil
	}
	for i := range min(max(n, 0), Wishes) {
		if !fails(append(slices.Clone(kept), i)) {
			kept = append(kept, i)
		}
	}
	return kept
}

// shrink takes wishes out of a failing set, the least preferred last, until every one
// matters.
func shrink(s uint64, fails func([]int) bool) uint64 {
	for _, i := range numbers(s) {
		if t := s &^ (1 << i); fails(numbers(t)) {
			s = t
		}
	}
	return s
}

// meeting gives the least sets that meet every one of some sets, by taking the sets one
// after another (C. Berge, Hypergraphs, 1989); it stops near the limit.
func meeting(sets []uint64, limit int) []uint64 {
	out := []uint64{0}
	for _, s := range sets {
		var next []uint64
		for _, h := range out {
			if h&s != 0 {
				next = append(next, h)
				continue
			}
			for _, i := range numbers(s) {
				next = append(next, h|1<<i)
			}
		}
		out = least(next)
		if len(out) > limit {
			break
		}
	}
	return out
}

// least keeps the sets that hold no other.
func least(sets []uint64) []uint64 {
	slices.SortFunc(sets, bySize)
	var out []uint64
	for _, s := range sets {
		if !slices.ContainsFunc(out, func(o uint64) bool { return o&^s == 0 }) {
			out = append(out, s)
		}
	}
	return out
}

// bySize puts smaller sets first, and then those with the earlier wishes.
func bySize(a, b uint64) int {
	if d := bits.OnesCount64(a) - bits.OnesCount64(b); d != 0 {
		return d
	}
	return slices.Compare(numbers(a), numbers(b))
}

func listed(sets []uint64) [][]int {
	slices.SortFunc(sets, bySize)
	var out [][]int
	for _, s := range sets {
		if s != 0 {
			out = append(out, numbers(s))
		}
	}
	return out
}

func numbers(s uint64) []int {
	var out []int
	for ; s != 0; s &= s - 1 {
		out = append(out, bits.TrailingZeros64(s))
	}
	return out
}
