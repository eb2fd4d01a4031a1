package bar

import "slices"

// quick tries some simple ways and gives the best plan they find, nil where none does.
func (r *rack) quick() (best []filling) {
	n := len(r.bars)
	up, down := make([]int, n), make([]int, n) // offcuts first, shortest or longest first
	offcuts := 0
	for i, b := range r.bars {
		up[i], down[i] = i, i
		if !b.fresh {
			offcuts++
		}
	}
	slices.Reverse(down[:offcuts])
	slices.Reverse(down[offcuts:])
	mixed := slices.Concat(up[:offcuts], down[offcuts:])
	other := slices.Concat(down[:offcuts], up[offcuts:])
	for _, order := range [][]int{up, down, mixed, other} {
		best = r.better(best, r.byLength(order))
		best = r.better(best, r.fullest(order, true))
		best = r.better(best, r.fullest(order, false))
	}
	return r.better(best, r.tightest())
}

// byLength puts the longest piece that fits into a bar, again and again, bar by bar.
func (r *rack) byLength(order []int) (out []filling) {
	left := slices.Clone(r.wanted)
	for _, b := range order {
		for range r.bars[b].count {
			take, room := make([]int, len(left)), r.bars[b].room
			for i, size := range r.sizes {
				take[i] = int(min(int64(left[i]), room/size))
				room -= int64(take[i]) * size
				left[i] -= take[i]
			}
			out = r.filled(out, b, take)
		}
	}
	return r.all(out, left)
}

// fullest fills each bar as full as it goes, with the longest piece left in it if asked.
func (r *rack) fullest(order []int, longest bool) (out []filling) {
	left := slices.Clone(r.wanted)
	for _, b := range order {
		for range r.bars[b].count {
			i := slices.IndexFunc(left, func(n int) bool { return n > 0 })
			if i < 0 {
				return out
			}
			take := r.fill(left, r.bars[b].room, i, longest)
			for k, n := range take {
				left[k] -= n
			}
			out = r.filled(out, b, take)
		}
	}
	return r.all(out, left)
}

// tightest takes, of all bars left, the one that can be filled with the least over; offcuts
// before new ones.
func (r *rack) tightest() (out []filling) {
	left, count := slices.Clone(r.wanted), make([]int, len(r.bars))
	for i, b := range r.bars {
		count[i] = b.count
	}
	for slices.ContainsFunc(left, func(n int) bool { return n > 0 }) {
		pick, over := -1, int64(0)
		var take []int
		for b, s := range r.bars {
			if count[b] == 0 || pick >= 0 && s.fresh && !r.bars[pick].fresh {
				continue
			}
			t := r.fill(left, s.room, 0, false)
			used := r.used(t)
			if o := s.room - used; used > 0 && (pick < 0 || o < over) {
				pick, over, take = b, o, t
			}
		}
		if pick < 0 {
			return nil
		}
		count[pick]--
		for k, n := range take {
			left[k] -= n
		}
		out = r.filled(out, pick, take)
	}
	return out
}

func (r *rack) filled(out []filling, bar int, take []int) []filling {
	if slices.ContainsFunc(take, func(n int) bool { return n > 0 }) {
		out = append(out, filling{bar, take})
	}
	return out
}

func (r *rack) all(out []filling, left []int) []filling {
	if slices.ContainsFunc(left, func(n int) bool { return n > 0 }) {
		return nil
	}
	return out
}

// fill gives the fullest filling of a room from what is left, longer pieces preferred, with
// one of kind must in it if asked and if it fits. It looks at a limited number of fillings.
func (r *rack) fill(left []int, room int64, must int, asked bool) []int {
	take, best := make([]int, len(left)), make([]int, len(left))
	left = slices.Clone(left)
	if asked && r.sizes[must] <= room {
		take[must]++
		best[must]++
		left[must]--
		room -= r.sizes[must]
	}
	over, steps := room+1, 0
	var try func(i int, room int64)
	try = func(i int, room int64) {
		if room < over {
			over = room
			copy(best, take)
		}
		for ; i < len(left) && over > 0; i++ {
			if steps++; steps > 2000 {
				return
			}
			if n := int(min(int64(left[i]), room/r.sizes[i])); n > 0 {
				for k := n; k > 0 && over > 0; k-- {
					take[i] += k
					try(i+1, room-int64(k)*r.sizes[i])
					take[i] -= k
				}
			}
		}
	}
	try(0, room)
	return best
}
