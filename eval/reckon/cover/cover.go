// Package cover answers what is lacking: the least set of things that makes everything
// possible, the single thing that unlocks most, and which wishes cannot stand together.
//
// A need can be met in one or more ways, and a way takes all of its things: "a 6 mm reamer,
// or a boring head and its bar". With one thing a way this is the covering problem of the
// books; with more it is harder, and still small in a workshop. Answers are exact unless
// they say otherwise.
//
// Where a function gives an error, it names the figure, the name or the list that is out of range.
package cover

import (
	"cmp"
	"fmt"
	"slices"
)

// Need is something that must become possible. Any one way will do; a way with nothing in
// it is met by nobody's help.
type Need struct {
	Name string
	Ways [][]string
}

// Answer is what to get. All of it together meets every need but those of Never.
type Answer struct {
	Get    []string // by name
	Cost   int64    // of Get together
	Bound  int64    // no set costs less than this
	Proved bool     // Cost is the least there is
	Never  []string // needs with no way at all, in the order given
}

// Effort is how many times Least looks at a need before it gives the best it has with a
// bound.
const Effort = 4_000_000

// The sizes taken, so that no list can exhaust memory or patience.
const (
	MostNeeds  = 1000
	MostWays   = 10_000 // of all needs together
	MostThings = 50_000 // in all ways together
	MostPrice  = 1_000_000
)

// Least gives the cheapest set of things to add to what is there. A thing costs what the price
// list says, 1 where it says nothing; prices run from 0 to a million, in any unit. Of several sets
// that cost the same it gives one with the fewest things. The same question gets the same answer
// whatever the order of the needs. Proved says whether it came to an end within Effort. An error
// names the price out of range, or a list longer than MostNeeds, MostWays or MostThings.
func Least(needs []Need, have []string, price map[string]int64) (Answer, error) {
	if err := fit(needs); err != nil {
		return Answer{}, err
	}
	for thing, p := range price {
		if p < 0 || p > MostPrice {
			return Answer{}, fmt.Errorf("the price of %s is %d: prices run from 0 to %d", thing, p, MostPrice)
		}
	}
	h, never := hunger(needs, have, price)
	s := search{hungry: h, seen: map[string]bool{}}
	s.greedy()
	none := newSet(len(h.things))
	root := s.bound(none, none)
	s.branch(none, none, 0)
	a := Answer{Never: never, Proved: s.steps < Effort, Bound: root / scale}
	for i, name := range h.things {
		if s.best.has(i) {
			a.Get = append(a.Get, name)
			a.Cost += (h.cost[i] - 1) / scale
		}
	}
	if a.Proved || a.Bound >= a.Cost {
		a.Bound, a.Proved = a.Cost, true
	}
	return a, nil
}

func fit(needs []Need) error {
	ways, things := 0, 0
	for _, n := range needs {
		ways += len(n.Ways)
		for _, w := range n.Ways {
			things += len(w)
		}
	}
	if len(needs) > MostNeeds || ways > MostWays || things > MostThings {
		return fmt.Errorf("%d needs, %d ways, %d things: up to %d, %d and %d are looked at",
			len(needs), ways, things, MostNeeds, MostWays, MostThings)
	}
	return nil
}

// Unlock is what one more thing would do.
type Unlock struct {
	Thing string
	Needs []string // that become possible, in the order given
}

// Unlocks ranks the things that are not there by how many more needs each would make possible, on
// its own; most first, then by name. Things that alone change nothing are left out: where no
// single thing helps the list is empty though Least has an answer. Lists of any length are taken;
// the work grows with the number of things in all ways.
func Unlocks(needs []Need, have []string) []Unlock {
	there := map[string]bool{}
	for _, t := range have {
		there[t] = true
	}
	by := map[string][]string{}
	for _, n := range needs {
		for _, t := range keys(n, there) {
			by[t] = append(by[t], n.Name)
		}
	}
	var out []Unlock
	for t, names := range by {
		out = append(out, Unlock{t, names})
	}
	slices.SortFunc(out, func(a, b Unlock) int {
		return cmp.Or(cmp.Compare(len(b.Needs), len(a.Needs)), cmp.Compare(a.Thing, b.Thing))
	})
	return out
}

// keys lists the things each of which alone would meet an unmet need.
func keys(n Need, there map[string]bool) []string {
	var out []string
	for _, w := range n.Ways {
		lacking := map[string]bool{}
		for _, t := range w {
			if !there[t] {
				lacking[t] = true
			}
		}
		switch len(lacking) {
		case 0:
			return nil
		case 1:
			for t := range lacking {
				if !slices.Contains(out, t) {
					out = append(out, t)
				}
			}
		}
	}
	return out
}
