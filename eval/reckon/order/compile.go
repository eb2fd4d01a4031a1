package order

import (
	"cmp"
	"fmt"
	"math/bits"
	"slices"
)

// set is a set of operations by number.
type set [2]uint64

func (s set) has(i int) bool    { return s[i/64]&(1<<(i%64)) != 0 }
func (s *set) add(i int)        { s[i/64] |= 1 << (i % 64) }
func (s set) with(o set) set    { return set{s[0] | o[0], s[1] | o[1]} }
func (s set) less(o set) set    { return set{s[0] &^ o[0], s[1] &^ o[1]} }
func (s set) within(o set) bool { return s.less(o) == set{} }
func (s set) size() int         { return bits.OnesCount64(s[0]) + bits.OnesCount64(s[1]) }
func (s set) members(yield func(int) bool) {
	for i, w := range s {
		for ; w != 0; w &= w - 1 {
			if !yield(i*64 + bits.TrailingZeros64(w)) {
				return
			}
		}
	}
}

// stance is a machine with a tool in it and the work in one position, as numbers.
type stance struct{ machine, tool, side int32 }

type way struct {
	stance
	cost int64
}

// compiled is a job in numbers.
type compiled struct {
	job    Job
	charge Charge
	ways   [][]way
	names  [][]Way // of each way of ways
	least  []int64 // cheapest way of each operation
	before []set   // what must be done before each operation, directly
	all    set

	// For each operation, the operations that can share a machine, a machine and tool, a
	// machine and side with it; and the order in which the bound looks at them.
	onMachine, withTool, inSetup []set
	rank                         [3][]int

	can map[stance]*reach
}

// reach is what can be done from a stance without a change of one kind.
type reach struct {
	machine, tool, side set
	free                set // with no change at all, and in one of its cheapest ways
}

// compile checks a job and turns it into numbers.
func compile(j Job) (*compiled, error) {
	index, err := names(j)
	if err != nil {
		return nil, err
	}
	for i, c := range []int64{j.Charge.Machine, j.Charge.Tool, j.Charge.Setup} {
		if c < 0 || c > MostCost {
			return nil, fmt.Errorf("the charge for a change of %s is %d: charges run from 0 to %d",
				[]string{"machine", "tool", "set-up"}[i], c, MostCost)
		}
	}
	if r := Explain(j, nil); !r.Possible() {
		return nil, &Impossible{r}
	}
	c := &compiled{job: j, charge: j.Charge}
	machine, tool, side := numbers{}, numbers{}, numbers{}
	for i, o := range j.Operations {
		c.all.add(i)
		var given []way
		for _, w := range o.Ways {
			given = append(given, way{stance{machine.of(w.Machine), tool.of(w.Tool), side.of(w.Side)}, w.Cost})
		}
		ways, named := cheapest(given, o.Ways)
		c.ways, c.names = append(c.ways, ways), append(c.names, named)
		c.least = append(c.least, slices.MinFunc(ways, func(a, b way) int { return cmp.Compare(a.cost, b.cost) }).cost)
		var before set
		for _, a := range o.After {
			before.add(index[a])
		}
		c.before = append(c.before, before)
	}
	c.share()
	c.stances()
	return c, nil
}

func names(j Job) (map[string]int, error) {
	if n := len(j.Operations); n > MostOperations {
		return nil, fmt.Errorf("%d operations: up to %d can be put in order", n, MostOperations)
	}
	index := map[string]int{}
	for i, o := range j.Operations {
		if _, twice := index[o.Name]; twice {
			return nil, fmt.Errorf("there are two operations called %q", o.Name)
		}
		index[o.Name] = i
		if len(o.Ways) > MostWays {
			return nil, fmt.Errorf("%s has %d ways: up to %d are looked at", o.Name, len(o.Ways), MostWays)
		}
		for _, w := range o.Ways {
			if w.Cost < 0 || w.Cost > MostCost {
				return nil, fmt.Errorf("%s costs %d: costs run from 0 to %d", o.Name, w.Cost, MostCost)
			}
		}
	}
	for _, o := range j.Operations {
		for _, a := range o.After {
			if _, ok := index[a]; !ok {
				return nil, fmt.Errorf("%s must come after %q, which is no operation of this job", o.Name, a)
			}
		}
	}
	return index, nil
}

// numbers gives each name the next number.
type numbers map[string]int32

func (n numbers) of(name string) int32 {
	if _, ok := n[name]; !ok {
		n[name] = int32(len(n))
	}
	return n[name]
}

// cheapest keeps the cheapest of ways that are alike, in the order given, with their names.
func cheapest(ways []way, names []Way) (out []way, named []Way) {
	for k, w := range ways {
		i := slices.IndexFunc(out, func(o way) bool { return o.stance == w.stance })
		switch {
		case i < 0:
			out, named = append(out, w), append(named, names[k])
		case w.cost < out[i].cost:
			out[i], named[i] = w, names[k]
		}
	}
	return out, named
}

// share works out which operations can go together.
func (c *compiled) share() {
	n := len(c.ways)
	c.onMachine, c.withTool, c.inSetup = make([]set, n), make([]set, n), make([]set, n)
	for i := range n {
		for k := range n {
			for _, a := range c.ways[i] {
				for _, b := range c.ways[k] {
					if a.machine != b.machine {
						continue
					}
					c.onMachine[i].add(k)
					if a.tool == b.tool {
						c.withTool[i].add(k)
					}
					if a.side == b.side {
						c.inSetup[i].add(k)
					}
				}
			}
		}
	}
	for r, with := range [3][]set{c.onMachine, c.withTool, c.inSetup} {
		for i := range n {
			c.rank[r] = append(c.rank[r], i)
		}
		slices.SortStableFunc(c.rank[r], func(a, b int) int { return with[a].size() - with[b].size() })
	}
}

// stances works out what can be done from each stance.
func (c *compiled) stances() {
	c.can = map[stance]*reach{}
	for _, ways := range c.ways {
		for _, w := range ways {
			c.can[w.stance] = &reach{}
		}
	}
	for at, r := range c.can {
		for i, ways := range c.ways {
			for _, w := range ways {
				if w.machine != at.machine {
					continue
				}
				r.machine.add(i)
				if w.tool == at.tool {
					r.tool.add(i)
				}
				if w.side == at.side {
					r.side.add(i)
				}
				if w.stance == at && w.cost == c.least[i] {
					r.free.add(i)
				}
			}
		}
	}
}

// change is what going from one stance to another costs. It is a sum of three charges that
// are each 0 between equals and otherwise fixed, so that a way round by a third stance is
// never cheaper.
func (c *compiled) change(a, b stance) (cost int64) {
	if a.machine != b.machine {
		return c.charge.Machine + c.charge.Tool + c.charge.Setup
	}
	if a.tool != b.tool {
		cost += c.charge.Tool
	}
	if a.side != b.side {
		cost += c.charge.Setup
	}
	return cost
}
