package bar

import (
	"math"
	"slices"
)

// The search through all plans.
//
// The longest piece left must come from some bar, so each step chooses that bar and all else
// that is sawn from it; no two branches then hold the same plan with bars in another order.
// A filling that leaves scrap into which a piece still fits is passed over: moved here, that
// piece makes the scrap here shorter by its length, and the bar it leaves gets longer by
// as much, which is at worst the same scrap, and if it becomes worth keeping, less.
// A state, which is what is left of pieces and bars, that was reached before for no more is
// given up, and so is one that cannot better the best plan: the new bars by the length that
// is still wanted, the other aims by what they have come to.

// How much is looked at: fillings in all, and states that are remembered.
const (
	mostFillings = 1_500_000 // one of many kinds of pieces counts for more
	mostSeen     = 150_000
	mostHere     = 20_000 // of those from one bar at one step
)

type searching struct {
	*rack
	left  []int
	count []int
	best  score
	any   bool
	found []filling
	path  []filling
	least int
	bare  bool // only new bars count
	looks int
	until int  // no more looks than this at the present bar
	cut   bool // there were more fillings than were looked at
	seen  map[string]score
}

// search looks for a plan that betters the best so far; whole says that it saw all that
// could. In a bare search only the number of new bars counts.
func (r *rack) search(best []filling, least int, bare bool) (found []filling, whole bool) {
	s := searching{rack: r, left: slices.Clone(r.wanted), least: least, bare: bare, seen: map[string]score{}}
	for _, b := range r.bars {
		s.count = append(s.count, b.count)
	}
	if best != nil {
		s.best, s.any = s.told(r.score(best)), true
	}
	s.step(score{}, r.used(r.wanted))
	return s.found, s.looks < mostFillings && !s.cut
}

// told is what a score counts for in this search.
func (s *searching) told(x score) score {
	if s.bare {
		return score{fresh: x.fresh}
	}
	return x
}

// step goes on from a state; need is the length still wanted.
func (s *searching) step(have score, need int64) {
	if s.looks >= mostFillings || s.hopeless(have, need) {
		return
	}
	i := slices.IndexFunc(s.left, func(n int) bool { return n > 0 })
	if i < 0 {
		s.best, s.any, s.found = have, true, slices.Clone(s.path)
		return
	}
	key := s.key()
	if before, been := s.seen[key]; been && before.compare(have) <= 0 {
		return
	}
	if len(s.seen) < mostSeen {
		s.seen[key] = have
	}
	for _, c := range s.choices(i) {
		if s.any && s.best.fresh == s.least && s.bare {
			return
		}
		s.take(c.filling, 1)
		s.path = append(s.path, c.filling)
		s.step(have.plus(c.worth), need-c.used)
		s.path = s.path[:len(s.path)-1]
		s.take(c.filling, -1)
	}
}

func (s *searching) take(f filling, n int) {
	s.count[f.bar] -= n
	for k, m := range f.take {
		s.left[k] -= n * m
	}
}

func (s *searching) key() string {
	b := make([]byte, 0, 2*(len(s.left)+len(s.count)))
	for _, n := range s.left {
		b = append(b, byte(n), byte(n>>8))
	}
	for _, n := range s.count {
		b = append(b, byte(n), byte(n>>8))
	}
	return string(b)
}

// plenty is more than any pieces want; sums of bars stop there, within 64 bits.
const plenty = math.MaxInt64 / 4

// hopeless says that a state cannot lead to a better plan, or to none at all.
func (s *searching) hopeless(have score, need int64) bool {
	var offcuts, fresh, longest, longestNew int64
	for b, n := range s.count {
		room := s.bars[b].room
		if n == 0 {
			continue
		}
		longest = max(longest, room)
		if s.bars[b].fresh {
			fresh = min(fresh+int64(n)*room, plenty)
			longestNew = max(longestNew, room)
		} else {
			offcuts = min(offcuts+int64(n)*room, plenty)
		}
	}
	if need > offcuts+fresh {
		return true
	}
	if !s.any {
		return false
	}
	floor := have
	if more := need - offcuts; more > 0 {
		floor.fresh += int((more + longestNew - 1) / longestNew)
	}
	floor.fresh = max(floor.fresh, s.least)
	if need > 0 && !s.bare {
		floor.touched += int((need + longest - 1) / longest)
	}
	return floor.compare(s.best) >= 0
}

// choice is a filling with what it is worth.
type choice struct {
	filling
	used  int64
	worth score
}

// choices gives the fillings with a piece of kind i, the best ones first.
func (s *searching) choices(i int) (out []choice) {
	for b := range s.bars {
		if s.count[b] == 0 || s.sizes[i] > s.bars[b].room {
			continue
		}
		take := make([]int, len(s.left))
		take[i] = 1
		s.until = s.looks + mostHere
		s.left[i]--
		s.fillings(b, i, s.bars[b].room-s.sizes[i], take, &out)
		s.left[i]++
	}
	slices.SortFunc(out, func(a, b choice) int {
		if c := a.worth.compare(b.worth); c != 0 {
			return c
		}
		if a.used != b.used {
			return int(max(-1, min(1, b.used-a.used)))
		}
		if c := slices.Compare(a.take, b.take); c != 0 {
			return -c
		}
		return a.bar - b.bar
	})
	return out
}

// fillings adds every filling of a bar that is worth a look, from kind i on.
func (s *searching) fillings(b, i int, room int64, take []int, out *[]choice) {
	if s.looks >= min(mostFillings, s.until) {
		s.cut = true
		return
	}
	if i == len(s.left) {
		s.looks += 1 + len(s.left)/16
		used := s.bars[b].room - room
		worth := s.worth(b, used)
		if (s.bare || worth.kept == 0) && s.fits(s.spare(b, room), take) {
			return
		}
		*out = append(*out, choice{filling{b, slices.Clone(take)}, used, s.told(worth)})
		return
	}
	most := int(min(int64(s.left[i]), room/s.sizes[i]))
	for n := most; n >= 0; n-- {
		take[i] += n
		s.fillings(b, i+1, room-int64(n)*s.sizes[i], take, out)
		take[i] -= n
	}
}

// spare is the room in which a piece left out makes a filling not worth a look. Where the
// end of the bar may be a face, a piece that goes to the very end saves a cut here and may
// cost one where it came from, so that the argument holds only up to the bar's own length.
func (s *searching) spare(b int, room int64) int64 {
	if s.bare {
		return room
	}
	return min(room, room+s.bars[b].length-s.bars[b].room)
}

// fits says that one more of what is left would go into a room. The piece that had to be
// taken is out of left already.
func (s *searching) fits(room int64, take []int) bool {
	first := slices.IndexFunc(take, func(n int) bool { return n > 0 })
	for k := range s.left {
		have := take[k]
		if k == first {
			have--
		}
		if s.left[k] > have && s.sizes[k] <= room {
			return true
		}
	}
	return false
}
