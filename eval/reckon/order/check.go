package order

import "slices"

// FaultKind is what is wrong with a step.
type FaultKind uint8

const (
	TooEarly     FaultKind = iota + 1 // Operation is done before Before, which it must come after
	WrongMachine                      // no way of Operation is on this machine
	WrongTool                         // no way of Operation is with this tool
	WrongSide                         // no way of Operation is from this side
	NotTogether                       // machine, tool and side each occur, but in no one way
	Missing                           // Operation is not done
	Twice                             // Operation is done more than once
	Unknown                           // there is no such operation
)

// Fault is one thing wrong with an order.
type Fault struct {
	Kind      FaultKind
	Operation string
	Before    string   // for TooEarly: what should have been done first, directly or not
	Allowed   []string // for the wrong machine, tool or side: what it could be
}

// Check says what is wrong with an order that someone wrote: steps in the order written first,
// then what is missing. Pairs in the wrong order are given in full, also where one follows from
// others. A second turn of an operation counts as Twice and for nothing else. The job itself must
// be sound; Explain says whether it is. An error names what is out of range in it.
func Check(j Job, steps []Step) ([]Fault, error) {
	index, err := names(j)
	if err != nil {
		return nil, err
	}
	before := closure(j, index)
	var out []Fault
	at := first(steps)
	for k, s := range steps {
		i, ok := index[s.Operation]
		switch {
		case !ok:
			out = append(out, Fault{Kind: Unknown, Operation: s.Operation})
			continue
		case at[s.Operation] != k:
			out = append(out, Fault{Kind: Twice, Operation: s.Operation})
			continue
		}
		out = append(out, wrongWay(j.Operations[i], s)...)
		for b := range before[i].members {
			name := j.Operations[b].Name
			if when, ok := at[name]; ok && when > k {
				out = append(out, Fault{Kind: TooEarly, Operation: s.Operation, Before: name})
			}
		}
	}
	for _, o := range j.Operations {
		if _, ok := at[o.Name]; !ok {
			out = append(out, Fault{Kind: Missing, Operation: o.Name})
		}
	}
	return out, nil
}

func first(steps []Step) map[string]int {
	at := map[string]int{}
	for k, s := range steps {
		if _, ok := at[s.Operation]; !ok {
			at[s.Operation] = k
		}
	}
	return at
}

func wrongWay(o Operation, s Step) (out []Fault) {
	together := false
	var allowed [3][]string
	for _, w := range o.Ways {
		together = together || w.Machine == s.Machine && w.Tool == s.Tool && w.Side == s.Side
		for n, name := range []string{w.Machine, w.Tool, w.Side} {
			if !slices.Contains(allowed[n], name) {
				allowed[n] = append(allowed[n], name)
			}
		}
	}
	for n, name := range []string{s.Machine, s.Tool, s.Side} {
		if !slices.Contains(allowed[n], name) {
			out = append(out, Fault{Kind: WrongMachine + FaultKind(n), Operation: o.Name, Allowed: allowed[n]})
		}
	}
	if len(out) == 0 && !together {
		out = append(out, Fault{Kind: NotTogether, Operation: o.Name})
	}
	return out
}

// closure gives everything that must come before each operation, directly or not.
func closure(j Job, index map[string]int) []set {
	out := make([]set, len(j.Operations))
	for i, o := range j.Operations {
		for _, a := range o.After {
			out[i].add(index[a])
		}
	}
	for k := range out {
		for i := range out {
			if out[i].has(k) {
				out[i] = out[i].with(out[k])
			}
		}
	}
	return out
}

// Moves gives a smallest number of operations that must be taken out of an order and put back
// elsewhere to make it a right one; the others keep their order. Nothing where it is right
// already. Ways play no part in it, nor do steps that are unknown or done again. An error of type
// *Impossible for a job that goes round in a ring, another for what is out of range in it.
//
// An operation that is too early and the one it must come after cannot both stay where they are.
// These pairs are again a "comes before" (earlier in the order as written and later in the order
// as required), so the most operations that can stay form an antichain, and by Dilworth's and
// König's theorems a matching finds them.
func Moves(j Job, steps []Step) ([]string, error) {
	index, err := names(j)
	if err != nil {
		return nil, err
	}
	if r := Explain(j, nil); len(r.Cycles) > 0 {
		return nil, &Impossible{r}
	}
	before, at := closure(j, index), first(steps)
	n := len(j.Operations)
	pairs := make([][]int, n) // for each operation, those that must come before it and stand after it
	for i, o := range j.Operations {
		when, ok := at[o.Name]
		for b := range before[i].members {
			if bw, there := at[j.Operations[b].Name]; ok && there && bw > when {
				pairs[i] = append(pairs[i], b)
			}
		}
	}
	m := match(pairs)
	var out []string
	for i, moved := range m.covered() {
		if moved {
			out = append(out, j.Operations[i].Name)
		}
	}
	slices.SortStableFunc(out, func(a, b string) int { return at[a] - at[b] })
	return out, nil
}

// matching pairs left copies of operations with right copies.
type matching struct {
	pairs       [][]int
	left, right []int // partner, or -1
}

func match(pairs [][]int) matching {
	m := matching{pairs: pairs}
	for range pairs {
		m.left, m.right = append(m.left, -1), append(m.right, -1)
	}
	for i := range pairs {
		m.augment(i, make([]bool, len(pairs)))
	}
	return m
}

func (m *matching) augment(i int, seen []bool) bool {
	for _, k := range m.pairs[i] {
		if seen[k] {
			continue
		}
		seen[k] = true
		if m.right[k] < 0 || m.augment(m.right[k], seen) {
			m.left[i], m.right[k] = k, i
			return true
		}
	}
	return false
}

// covered gives König's cover: operations either copy of which is in it. Since "comes
// before" is transitive it has as many as the matching.
func (m *matching) covered() []bool {
	n := len(m.pairs)
	left, right := make([]bool, n), make([]bool, n)
	var visit func(i int)
	visit = func(i int) {
		left[i] = true
		for _, k := range m.pairs[i] {
			if !right[k] {
				right[k] = true
				if o := m.right[k]; o >= 0 && !left[o] {
					visit(o)
				}
			}
		}
	}
	for i := range n {
		if m.left[i] < 0 {
			visit(i)
		}
	}
	out := make([]bool, n)
	for i := range n {
		out[i] = !left[i] || right[i]
	}
	return out
}
