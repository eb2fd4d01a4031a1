package order

import (
	"cmp"
	"math"
	"slices"
)

// How the best order is found.
//
// What matters for the rest of the work is only which operations are done and the stance
// (machine, tool, side) in which the last one left things. So the search goes forward over
// such states, from few operations done to many, and keeps for each state the cheapest way
// to it (M. Held, R. M. Karp, "A dynamic programming approach to sequencing problems",
// J. SIAM 10, 1962, with sets that are closed under "must come before"). Three laws keep
// the states few:
//
//   - An operation that is free (all that must come before it is done, and the stance as it
//     stands is one of its cheapest ways) is done at once. In any order that does it later
//     it can be moved here: nothing is added here, and what it leaves behind costs no more,
//     because changes obey the triangle law.
//   - Of two states with the same operations done, one that could change into the stance of
//     the other for no more than the other has cost makes the other superfluous.
//   - A state whose cost and a lower bound for the rest reach the best order known cannot
//     better it. The bound adds the cheapest way of each operation left and, for each kind of
//     change, one change for each of a number of operations that can neither be done as
//     things stand nor share a machine (or machine and tool, or machine and side) with each
//     other.
//
// A narrow search comes first to have an order to beat. If the wide one has to drop states
// because there are too many, the least that a dropped state could have led to is the bound
// that is given with the answer.

// How many states are kept with equal numbers of operations done, and how many steps are
// tried before the wide search becomes a narrow one. With many operations a step takes
// longer and there are more of them, so both come down: about a second is the aim.
const wide = 20_000

func narrow(operations int) int { return min(100, 4000/operations) }
func effort(operations int) int { return min(1_000_000, 25_000_000/operations) }

type node struct {
	done   set
	last   stance
	cost   int64
	about  int64 // cost and the bound for the rest
	parent int32 // in compiled order of making; -1 for none
	op     int32 // done first on coming here; free ones follow
}

type search struct {
	*compiled
	width   int
	limit   int64 // orders that cost this or more are of no use
	tried   int
	dropped int64 // least that a dropped state promised
	nodes   []node
}

// solve gives the steps of the best order, a lower bound, and whether they agree.
func (c *compiled) solve() (steps []Step, bound int64, proved bool) {
	if len(c.ways) == 0 {
		return nil, 0, true
	}
	first := search{compiled: c, width: narrow(len(c.ways)), limit: math.MaxInt64, dropped: math.MaxInt64}
	end := first.run()
	steps, best := first.steps(end), first.nodes[end].cost
	if first.dropped >= best {
		return steps, best, true
	}
	second := search{compiled: c, width: wide, limit: best, dropped: math.MaxInt64}
	if end := second.run(); end >= 0 {
		steps, best = second.steps(end), second.nodes[end].cost
	}
	bound = min(best, max(first.dropped, second.dropped))
	return steps, bound, bound == best
}

// run gives the last state of the best order below the limit, -1 where there is none.
func (s *search) run() (end int32) {
	n := len(s.ways)
	layers := make([]layer, n+1)
	for i := range n {
		if s.before[i] == (set{}) {
			s.step(layers, -1, i)
		}
	}
	for size := 1; size < n; size++ {
		for _, id := range s.keep(&layers[size]) {
			done := s.nodes[id].done
			for i := range s.all.less(done).members {
				if s.before[i].within(done) {
					s.step(layers, id, i)
				}
			}
		}
		layers[size] = layer{}
	}
	end = -1
	for _, id := range s.keep(&layers[n]) {
		if end < 0 || s.nodes[id].cost < s.nodes[end].cost {
			end = id
		}
	}
	return end
}

// layer holds the states with equal numbers of operations done.
type layer struct {
	slot  map[set]int
	nodes [][]int32 // for each set of operations, the states that no other makes superfluous
}

// step does an operation, in each of its ways, and whatever is free then.
func (s *search) step(layers []layer, from int32, op int) {
	for _, w := range s.ways[op] {
		next := node{parent: from, op: int32(op), last: w.stance, cost: w.cost}
		if from >= 0 {
			p := &s.nodes[from]
			next.done = p.done
			next.cost += p.cost + s.change(p.last, w.stance)
		}
		next.done.add(op)
		at := s.can[w.stance]
		for i := range s.free(next.done, at) {
			next.done.add(i)
			next.cost += s.least[i]
		}
		s.tried++
		if next.about = next.cost + s.rest(next.done, at); next.about < s.limit {
			s.enter(&layers[next.done.size()], next)
		}
	}
}

// enter adds a state unless another makes it superfluous.
func (s *search) enter(l *layer, next node) {
	if l.slot == nil {
		l.slot = map[set]int{}
	}
	at, ok := l.slot[next.done]
	if !ok {
		at = len(l.nodes)
		l.slot[next.done] = at
		l.nodes = append(l.nodes, nil)
	}
	for _, id := range l.nodes[at] {
		if o := &s.nodes[id]; o.cost+s.change(o.last, next.last) <= next.cost {
			return
		}
	}
	l.nodes[at] = slices.DeleteFunc(l.nodes[at], func(id int32) bool {
		o := &s.nodes[id]
		return next.cost+s.change(next.last, o.last) <= o.cost
	})
	l.nodes[at] = append(l.nodes[at], int32(len(s.nodes)))
	s.nodes = append(s.nodes, next)
}

// keep gives the states of a layer to go on from, most promising first.
func (s *search) keep(l *layer) []int32 {
	var ids []int32
	for _, slot := range l.nodes {
		ids = append(ids, slot...)
	}
	slices.SortFunc(ids, func(a, b int32) int {
		return cmp.Or(cmp.Compare(s.nodes[a].about, s.nodes[b].about), cmp.Compare(a, b))
	})
	width := s.width
	if n := len(s.ways); s.tried > effort(n) {
		width = min(width, narrow(n))
	}
	if len(ids) > width {
		s.dropped = min(s.dropped, s.nodes[ids[width]].about)
		ids = ids[:width]
	}
	return ids
}

// free gives, in the order in which they can be done, the operations that cost nothing but
// their cheapest way in a stance.
func (c *compiled) free(done set, at *reach) func(yield func(int) bool) {
	return func(yield func(int) bool) {
		for more := true; more; {
			more = false
			for i := range at.free.less(done).members {
				if !c.before[i].within(done) {
					continue
				}
				done.add(i)
				more = true
				if !yield(i) {
					return
				}
			}
		}
	}
}

// rest is a lower bound for what is not done yet.
func (s *search) rest(done set, at *reach) (sum int64) {
	left := s.all.less(done)
	for i := range left.members {
		sum += s.least[i]
	}
	return sum +
		s.charge.Machine*apart(s.rank[0], s.onMachine, left.less(at.machine)) +
		s.charge.Tool*apart(s.rank[1], s.withTool, left.less(at.tool)) +
		s.charge.Setup*apart(s.rank[2], s.inSetup, left.less(at.side))
}

// apart counts operations no two of which can go together, picked in the given order.
func apart(rank []int, with []set, of set) (n int64) {
	for _, i := range rank {
		if of == (set{}) {
			break
		}
		if of.has(i) {
			n++
			of = of.less(with[i])
		}
	}
	return n
}

// steps goes back from a last state and writes the order down.
func (s *search) steps(end int32) []Step {
	var path []int32
	for id := end; id >= 0; id = s.nodes[id].parent {
		path = append(path, id)
	}
	slices.Reverse(path)
	var out []Step
	var done set
	for _, id := range path {
		n := s.nodes[id]
		out = append(out, s.written(int(n.op), n.last))
		done.add(int(n.op))
		for i := range s.free(done, s.can[n.last]) {
			out = append(out, s.written(i, n.last))
			done.add(i)
		}
	}
	return out
}

// written finds the names of an operation and a stance again.
func (s *search) written(op int, at stance) Step {
	o := s.job.Operations[op]
	return Step{o.Name, s.names[op][slices.IndexFunc(s.ways[op], func(w way) bool { return w.stance == at })]}
}
