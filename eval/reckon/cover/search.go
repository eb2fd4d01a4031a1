package cover

import (
	"cmp"
	"math/bits"
	"slices"
)

// How the least set is found.
//
// First the question is made small, without changing its answer: needs that are met already
// go; of two ways of a need, one inside the other, the larger goes; and a need that is met
// whenever another one is goes too. Then comes a search that always branches on the unmet
// need with the fewest ways, and gives a branch up when what it has spent and a lower bound
// on the rest reach the best answer so far. The bound adds up the cheapest ways of needs
// that share no thing: whatever meets one of them does nothing for the others.
//
// A cost inside is the price times scale, plus one for the thing itself, so that of equally
// dear sets the one with fewer things wins.
const scale = 1 << 20

type set []uint64

func newSet(n int) set       { return make(set, (n+63)/64) }
func (s set) has(i int) bool { return s[i/64]&(1<<(i%64)) != 0 }
func (s set) add(i int)      { s[i/64] |= 1 << (i % 64) }
func (s set) clone() set     { return slices.Clone(s) }
func (s set) within(o set) bool {
	return !slices.ContainsFunc(s.less(o), func(w uint64) bool { return w != 0 })
}
func (s set) meets(o set) bool {
	for i := range s {
		if s[i]&o[i] != 0 {
			return true
		}
	}
	return false
}

func (s set) less(o set) set {
	out := s.clone()
	for i := range out {
		out[i] &^= o[i]
	}
	return out
}

func (s set) with(o set) set {
	out := s.clone()
	for i := range out {
		out[i] |= o[i]
	}
	return out
}

func (s set) members(yield func(int) bool) {
	for i, w := range s {
		for ; w != 0; w &= w - 1 {
			if !yield(i*64 + bits.TrailingZeros64(w)) {
				return
			}
		}
	}
}

func (s set) size() (n int) {
	for _, w := range s {
		n += bits.OnesCount64(w)
	}
	return n
}

func (s set) key() string {
	b := make([]byte, 0, 8*len(s))
	for _, w := range s {
		for k := 0; k < 64; k += 8 {
			b = append(b, byte(w>>k))
		}
	}
	return string(b)
}

// hungry is the question made small: things not there, in order of name, and for each unmet
// need the sets of things any of which meets it.
type hungry struct {
	things []string
	cost   []int64
	needs  [][]set
}

// hunger makes the question small. Needs with no way are named and left out.
func hunger(needs []Need, have []string, price map[string]int64) (h hungry, never []string) {
	there, index := map[string]bool{}, map[string]int{}
	for _, t := range have {
		there[t] = true
	}
	for _, n := range needs {
		for _, w := range n.Ways {
			for _, t := range w {
				if !there[t] {
					index[t] = 0
				}
			}
		}
	}
	for t := range index {
		h.things = append(h.things, t)
	}
	slices.Sort(h.things)
	for i, t := range h.things {
		index[t] = i
		p, ok := price[t]
		if !ok {
			p = 1
		}
		h.cost = append(h.cost, p*scale+1)
	}
	for _, n := range needs {
		if len(n.Ways) == 0 {
			never = append(never, n.Name)
			continue
		}
		var ways []set
		for _, w := range n.Ways {
			s := newSet(len(h.things))
			for _, t := range w {
				if !there[t] {
					s.add(index[t])
				}
			}
			ways = append(ways, s)
		}
		if ways = smallest(ways); !slices.ContainsFunc(ways, func(s set) bool { return s.within(newSet(len(h.things))) }) {
			h.needs = append(h.needs, ways)
		}
	}
	h.thin()
	return h, never
}

// smallest drops ways that hold another way, and sorts the rest.
func smallest(ways []set) []set {
	var out []set
	for i, w := range ways {
		if !slices.ContainsFunc(ways[:i], func(o set) bool { return o.within(w) }) &&
			!slices.ContainsFunc(ways[i+1:], func(o set) bool { return o.within(w) && !w.within(o) }) {
			out = append(out, w)
		}
	}
	slices.SortFunc(out, func(a, b set) int { return slices.Compare(a, b) })
	return out
}

// thin drops a need that is met whenever another is: every way of the other holds one of
// its ways. The order left does not depend on the order given.
func (h *hungry) thin() {
	slices.SortFunc(h.needs, func(a, b []set) int {
		return cmp.Or(cmp.Compare(len(a), len(b)), slices.CompareFunc(a, b, func(x, y set) int { return slices.Compare(x, y) }))
	})
	var out [][]set
	for i, n := range h.needs {
		implied := false
		for j, o := range h.needs {
			if i != j && follows(n, o) && (j < i || !follows(o, n)) {
				implied = true
				break
			}
		}
		if !implied {
			out = append(out, n)
		}
	}
	h.needs = out
}

func follows(need, other []set) bool {
	for _, w := range other {
		if !slices.ContainsFunc(need, func(v set) bool { return v.within(w) }) {
			return false
		}
	}
	return true
}

type search struct {
	hungry
	best  set
	spent int64
	steps int
	seen  map[string]bool
}

func (s *search) price(of set) (sum int64) {
	for i := range of.members {
		sum += s.cost[i]
	}
	return sum
}

// greedy gives a first answer: for the need with the fewest ways, the way that costs least
// for the needs it meets, and so on.
func (s *search) greedy() {
	got := newSet(len(s.things))
	none := newSet(len(s.things))
	for need := s.next(got, none); need != nil; need = s.next(got, none) {
		var pick set
		var pickCost, pickMet int64
		for _, w := range need {
			after, m := got.with(w), int64(0)
			for _, o := range s.needs {
				if !met(o, got) && met(o, after) {
					m++
				}
			}
			if c := s.price(w.less(got)); pick == nil || float64(c)*float64(pickMet) < float64(pickCost)*float64(m) {
				pick, pickCost, pickMet = after, c, m
			}
		}
		got = pick
	}
	s.best, s.spent = got, s.price(got)
}

// next is the unmet need with the fewest ways that are open, nil where all are met.
func (s *search) next(got, out set) []set {
	var need []set
	fewest := 0
	for _, n := range s.needs {
		if met(n, got) {
			continue
		}
		if ways := open(n, out); need == nil || ways < fewest {
			need, fewest = n, ways
		}
	}
	return need
}

// open counts the ways of a need that use nothing ruled out.
func open(ways []set, out set) (n int) {
	for _, w := range ways {
		if !w.meets(out) {
			n++
		}
	}
	return n
}

func met(ways []set, got set) bool {
	return slices.ContainsFunc(ways, func(w set) bool { return w.within(got) })
}

// bound is a least cost of what a set still lacks, given what is ruled out; -1 where a need
// has no way left.
func (s *search) bound(got, out set) (sum int64) {
	used := newSet(len(s.things))
	for _, n := range s.needs {
		if met(n, got) {
			continue
		}
		all, least := newSet(len(s.things)), int64(-1)
		for _, w := range n {
			if w.meets(out) {
				continue
			}
			lack := w.less(got)
			all = all.with(lack)
			if c := s.price(lack); least < 0 || c < least {
				least = c
			}
		}
		if least < 0 {
			return -1
		}
		if !all.meets(used) {
			used, sum = used.with(all), sum+least
		}
	}
	return sum
}

// branch tries to better the best answer with what it has got and without what is ruled
// out. Once all answers with a thing have been looked at, it is ruled out for the rest.
func (s *search) branch(got, out set, spent int64) {
	if s.steps += 1 + len(s.needs); s.steps >= Effort || spent >= s.spent {
		return
	}
	need := s.next(got, out)
	if need == nil {
		s.best, s.spent = got, spent
		return
	}
	k := got.key() + out.key()
	if rest := s.bound(got, out); s.seen[k] || rest < 0 || spent+rest >= s.spent {
		return
	}
	s.seen[k] = true
	out = out.clone()
	for _, w := range need {
		lack := w.less(got)
		if w.meets(out) {
			continue
		}
		s.branch(got.with(w), out, spent+s.price(lack))
		if lack.size() == 1 {
			out = out.with(lack)
		}
	}
}
