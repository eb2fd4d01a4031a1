package taper

import (
	"fmt"
	"math"
	"slices"
)

// # Fewest slip gauges
//
// Taking away the last figure first, as is taught, can use a block too many or get stuck (43.507 from a
// set of 88 takes it four blocks, and three do). So stacks are searched for, in whole grains, in which
// every size of every set is exact.
//
// Sums of two blocks are put in a list by their height; stacks of one block, two, three and so on are then
// tried with the last two looked up there. If a few blocks do not make it, the set is added up block by block:
// for each height the fewest blocks that reach it with the blocks seen so far. That takes longer, and is exact
// too: it also tells which heights no stack reaches.

// Grain is how many grains one unit of a set has, a mm or an inch.
const Grain = 100000

// The ranges taken.
const (
	MostBlocks = 200
	MostStack  = 1000 * Grain // grains
	mostSteps  = 2000000      // heights that are told apart
)

// Blocks is a set of slip gauges: their sizes in grains, each there once unless it stands twice.
type Blocks []int64

// Stack is what is wrung together.
type Stack struct {
	Blocks []int64 // grains, largest first, wear blocks not among them
	Wear   [2]int64
	Height int64 // of all, grains
	Off    int64 // Height less what was wanted, grains, of the nearest height that can be made
}

// Build gives the stack of fewest blocks for a height in grains, and for the nearest height that a
// stack reaches where none reaches that; of two as near the lower. Of stacks with as few it takes
// the one with the largest blocks. Wear blocks, hard ones to go at the two ends, are given in
// grains, 0 for none; they count in the height and not in the number. An error for a set of no
// blocks or more than MostBlocks, for blocks, wear blocks and heights outside their ranges, and
// for a set so fine that more than two million heights must be told apart.
func (b Blocks) Build(want int64, wear [2]int64) (Stack, error) {
	if len(b) < 1 || len(b) > MostBlocks {
		return Stack{}, fmt.Errorf("%d blocks are not from 1 to %d", len(b), MostBlocks)
	}
	set := Blocks(slices.Sorted(slices.Values(b)))
	if set[0] < 1 || set[len(set)-1] > MostStack || wear[0] < 0 || wear[1] < 0 || max(wear[0], wear[1]) > MostStack {
		return Stack{}, fmt.Errorf("blocks from %v to %v are not above 0 and up to %v", units(set[0]), units(set[len(set)-1]), units(MostStack))
	}
	if want < 1 || want > MostStack {
		return Stack{}, fmt.Errorf("a height of %v is not above 0 and up to %v", units(want), units(MostStack))
	}
	slices.Reverse(set)
	rest := want - wear[0] - wear[1]
	if rest < 1 {
		return Stack{}, fmt.Errorf("the wear blocks alone make %v, and %v is wanted", units(wear[0]+wear[1]), units(want))
	}
	blocks, ok, err := set.fewest(rest)
	if err != nil {
		return Stack{}, err
	}
	if !ok {
		return Stack{}, fmt.Errorf("no stack of these blocks comes near %v", units(want))
	}
	s := Stack{Blocks: blocks, Wear: wear, Height: wear[0] + wear[1]}
	for _, x := range blocks {
		s.Height += x
	}
	s.Off = s.Height - want
	return s, nil
}

// units says grains in mm or inches.
func units(grains int64) float64 { return float64(grains) / Grain }

// fewest gives the stack of the set, largest first, that comes nearest to a height.
func (b Blocks) fewest(want int64) (Blocks, bool, error) {
	step := b[0]
	for _, x := range b {
		step = gcd(step, x)
	}
	near := want / step * step
	if 2*(want-near) > step {
		near += step
	}
	if near > 0 && near/step <= mostSteps {
		if blocks, ok := b.quick(near, step); ok {
			return blocks, true, nil
		}
	}
	return b.added(want, step)
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// quick looks for stacks of one block, of two and so on, as long as that is not dear.
func (b Blocks) quick(want, step int64) (Blocks, bool) {
	p := b.pairs(want, step)
	tries := 1
	for size := 1; size <= len(b) && tries < dear; size++ {
		if size > 2 {
			tries = tries * (len(b) - size + 3) / (size - 2)
		}
		if out, ok := p.find(want, size, -1); ok {
			slices.Reverse(out)
			return out, true
		}
	}
	return nil, false
}

// dear is how many looks at the list of pairs take about as long as adding a set up.
const dear = 1000000

// pairing is the pairs of a set by their sum: first gives the number of the first pair of a sum, plus
// one, and next that of the next with the same. The first has the largest of blocks.
type pairing struct {
	set   Blocks
	step  int64
	first []int32
	pair  [][2]int
	next  []int32
}

func (b Blocks) pairs(want, step int64) pairing {
	p := pairing{set: b, step: step, first: make([]int32, want/step+1)}
	for i := len(b) - 2; i >= 0; i-- {
		for j := len(b) - 1; j > i; j-- {
			if sum := (b[i] + b[j]) / step; sum*step <= want {
				p.pair, p.next = append(p.pair, [2]int{i, j}), append(p.next, p.first[sum])
				p.first[sum] = int32(len(p.pair))
			}
		}
	}
	return p
}

// find gives so many blocks with a sum that come behind one of the set, the smallest first; of all such
// the one with the largest blocks.
func (p pairing) find(sum int64, size, after int) (Blocks, bool) {
	switch {
	case sum <= 0:
		return nil, false
	case size == 1:
		return Blocks{sum}, slices.Contains(p.set[after+1:], sum)
	case size == 2:
		for n := p.first[sum/p.step]; n > 0; n = p.next[n-1] {
			if a := p.pair[n-1]; a[0] > after {
				return Blocks{p.set[a[1]], p.set[a[0]]}, true
			}
		}
		return nil, false
	}
	for i := after + 1; i+size <= len(p.set); i++ {
		x := p.set[i]
		if x*int64(size) < sum {
			return nil, false // those that follow are smaller yet
		}
		if out, ok := p.find(sum-x, size-1, i); ok {
			return append(out, x), true
		}
	}
	return nil, false
}

// added adds the set up block by block, and gives the fewest for the height nearest to the one wanted.
func (b Blocks) added(want, step int64) (Blocks, bool, error) {
	high := int64(0) // smallest first until the height is reached: the nearest is no higher
	for n := len(b) - 1; n >= 0 && high < want; n-- {
		high += b[n]
	}
	most := high / step
	if most > mostSteps {
		return nil, false, fmt.Errorf("blocks that differ by %v and a height of %v make more than %d heights", units(step), units(want), mostSteps)
	}
	const never = math.MaxUint8
	count := make([]uint8, most+1)
	for n := range count {
		count[n] = never
	}
	count[0] = 0
	taken := make([][]uint64, len(b)) // taken[n] has the heights at which block n is the last of the fewest
	for n := len(b) - 1; n >= 0; n-- {
		taken[n] = make([]uint64, most/64+1)
		x := b[n] / step
		for h := most; h >= x; h-- {
			if c := count[h-x]; c != never && c+1 < never && c+1 <= count[h] {
				count[h] = c + 1
				taken[n][h/64] |= 1 << (h % 64)
			}
		}
	}
	h, ok := nearest(count, want, step, never)
	if !ok {
		return nil, false, nil
	}
	var out Blocks
	for n := range b {
		if h > 0 && taken[n][h/64]>>(h%64)&1 == 1 {
			out, h = append(out, b[n]), h-b[n]/step
		}
	}
	return out, true, nil
}

// nearest gives the height above nought, in steps, that can be made and lies nearest to one, the lower of
// two as near.
func nearest(count []uint8, want, step int64, never uint8) (int64, bool) {
	best, found := int64(0), false
	for h := int64(1); h < int64(len(count)); h++ {
		if count[h] == never {
			continue
		}
		if d, e := abs(h*step-want), abs(best*step-want); !found || d < e {
			best, found = h, true
		}
	}
	return best, found
}

func abs(x int64) int64 { return max(x, -x) }
