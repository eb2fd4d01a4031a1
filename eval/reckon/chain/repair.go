package chain

import (
	"cmp"
	"fmt"
	"math/big"
	"slices"
)

// What must change where a chart does not hold: one size moved, or tolerances made smaller.
// Both leave the order of the cuts and the surfaces they are measured from as they are; to
// measure from another surface is often the better cure and is not tried here.

// Room is how far the tolerances of the cuts in a result could be stretched, all by one
// factor, the blank's left as they are. Below 1 the result does not hold.
type Room struct {
	Name   string
	Stock  bool
	Factor float64
}

// Rooms gives the factor, without unit, of each result that cuts have a part in, the tightest
// first: the first factor is the one for the whole chart. A result whose middle is off, or that
// the blank alone uses up, has 0. Faults are passed over as in Read; an error names a figure out
// of range.
func Rooms(c Chart) ([]Room, error) {
	p, err := follow(c)
	if err != nil {
		return nil, err
	}
	var out []Room
	for i, r := range p.reading.Results {
		raw, cut := new(big.Rat), new(big.Rat)
		for k, t := range r.Terms {
			if t.Raw {
				raw.Add(raw, p.exact[i].parts[k])
			} else {
				cut.Add(cut, p.exact[i].parts[k])
			}
		}
		if cut.Sign() == 0 {
			continue
		}
		left := raw.Sub(r.room(p.exact[i].mean), raw)
		out = append(out, Room{r.Name, r.Stock, max(0, float(left.Quo(left, cut)))})
	}
	slices.SortStableFunc(out, func(a, b Room) int { return cmp.Compare(a.Factor, b.Factor) })
	return out, nil
}

// room is the half tolerance that a result can bear with its middle where it is.
func (r Result) room(mean *big.Rat) *big.Rat {
	lo := new(big.Rat).Sub(mean, exact(r.Least))
	if r.Stock {
		return lo
	}
	hi := new(big.Rat).Sub(exact(r.Most), mean)
	if hi.Cmp(lo) < 0 {
		return hi
	}
	return lo
}

// Shift is a cut whose size alone could be changed so that everything holds.
type Shift struct {
	Cut         string
	Least, Most float64 // sizes that do, mm, in the chart's sense; the bounds are in
	BoundBelow  bool    // whether there is a Least; 0 otherwise
	BoundAbove  bool
	By          float64 // the smallest change of size that gets there, mm, signed
	Touches     int     // how many other results move with it
}

// Shifts gives the cuts that cure a chart by a change of one size, mm, tolerances kept: the
// smallest change first, and of equal ones the one that moves the fewest other results. Nothing
// where the chart holds, where no single size cures it, or where it has faults. An error names a
// figure out of range.
func Shifts(c Chart) ([]Shift, error) {
	p, err := follow(c)
	if err != nil || len(p.reading.Faults) > 0 || p.reading.Holds() {
		return nil, err
	}
	var out []Shift
	for _, cut := range c.Cuts {
		if s, ok := p.shift(cut); ok {
			out = append(out, s)
		}
	}
	slices.SortStableFunc(out, func(a, b Shift) int {
		return cmp.Or(cmp.Compare(max(a.By, -a.By), max(b.By, -b.By)), cmp.Compare(a.Touches, b.Touches))
	})
	return out, nil
}

// shift narrows the changes of one size to those with which every result holds.
func (p plan) shift(cut Cut) (s Shift, ok bool) {
	var lo, hi *big.Rat // of the change
	for i, r := range p.reading.Results {
		k := slices.IndexFunc(r.Terms, func(t Term) bool { return !t.Raw && t.Name == cut.Name })
		if k < 0 {
			if !r.Holds {
				return s, false
			}
			continue
		}
		if r.Holds {
			s.Touches++
		}
		e := p.exact[i]
		down := new(big.Rat).Sub(exact(r.Least), e.least()) // the result must move up by this at least
		up := new(big.Rat).Sub(exact(r.Most), e.most())     // and by this at most
		if r.Stock {
			up = nil
		}
		if r.Terms[k].Sign < 0 {
			down, up = negative(up), negative(down)
		}
		if down != nil && (lo == nil || down.Cmp(lo) > 0) {
			lo = down
		}
		if up != nil && (hi == nil || up.Cmp(hi) < 0) {
			hi = up
		}
	}
	if lo != nil && hi != nil && lo.Cmp(hi) > 0 {
		return s, false
	}
	s.Cut = cut.Name
	size := exact(cut.Size)
	if s.BoundBelow = lo != nil; s.BoundBelow {
		s.Least = float(new(big.Rat).Add(size, lo))
		s.By = max(0, float(lo))
	}
	if s.BoundAbove = hi != nil; s.BoundAbove {
		s.Most = float(new(big.Rat).Add(size, hi))
		s.By = min(s.By, float(hi))
	}
	return s, true
}

func negative(r *big.Rat) *big.Rat {
	if r == nil {
		return nil
	}
	return new(big.Rat).Neg(r)
}

// Tight is a cut whose tolerance must shrink.
type Tight struct {
	Cut      string
	From, To float64 // half of the tolerance now and then, mm, about the same middle
}

// Tighten gives the smallest tightening that makes a chart hold: as few cuts as possible; of
// equally many, those that keep the largest part of their tolerance; and of that part each as much
// as it can. Finest is the smallest half tolerance to which each cut can be held, mm; 0 or nothing
// means that any above nought will do. Nothing where the chart holds already. An error says why no
// tightening does it: a fault of the chart, a middle that is off, cuts that would have to be finer
// than their finest, or more than 5000 groups of cuts to try; or it names a figure out of range.
func Tighten(c Chart, finest map[string]float64) ([]Tight, error) {
	p, err := follow(c)
	if err != nil {
		return nil, err
	}
	if len(p.reading.Faults) > 0 {
		f := p.reading.Faults[0]
		return nil, fmt.Errorf("%s: the chart has to be put right first", f.Name)
	}
	t, err := p.tightener(c, finest)
	if err != nil || len(t.wants) == 0 {
		return nil, err
	}
	var best []int
	var keep []*big.Rat
	tried := 0
	for size := 1; size <= len(t.cuts) && best == nil; size++ {
		for subset := range subsets(len(t.cuts), size) {
			if tried++; tried > mostTried {
				return nil, fmt.Errorf("%d cuts have a part in what does not hold: too many to try which of them to tighten", len(t.cuts))
			}
			if k, ok := t.fill(subset); ok && (best == nil || slices.MinFunc(k, (*big.Rat).Cmp).Cmp(slices.MinFunc(keep, (*big.Rat).Cmp)) > 0) {
				best, keep = slices.Clone(subset), k
			}
		}
	}
	if best == nil {
		return nil, fmt.Errorf("%s does not hold even with every cut as fine as it can be", t.worst)
	}
	var out []Tight
	for n, i := range best {
		out = append(out, Tight{t.cuts[i], float(t.half[i]), float(t.between(i, keep[n]))})
	}
	return out, nil
}

// mostTried is how many groups of cuts are tried.
const mostTried = 5000

// tightener holds what does not hold, as sums of half tolerances that must come down.
type tightener struct {
	cuts         []string
	half, finest []*big.Rat
	wants        []want
	worst        string
}

type want struct {
	room *big.Rat // what the cuts may have together
	cuts []int
}

func (p plan) tightener(c Chart, finest map[string]float64) (t tightener, err error) {
	for i, r := range p.reading.Results {
		if r.Holds {
			continue
		}
		w := want{room: r.room(p.exact[i].mean)}
		if t.worst == "" {
			t.worst = r.Name
		}
		for k, term := range r.Terms {
			if term.Raw {
				w.room.Sub(w.room, p.exact[i].parts[k])
				continue
			}
			n := slices.Index(t.cuts, term.Name)
			if n < 0 {
				n = len(t.cuts)
				fine := finest[term.Name]
				if !(fine >= 0 && fine <= MostLength) {
					return t, fmt.Errorf("%s: the finest tolerance is %v mm: it runs from 0 to %v mm", term.Name, fine, MostLength)
				}
				h := new(big.Rat).Set(p.exact[i].parts[k])
				f := exact(fine)
				if f.Cmp(h) > 0 {
					f.Set(h)
				}
				t.cuts, t.half, t.finest = append(t.cuts, term.Name), append(t.half, h), append(t.finest, f)
			}
			w.cuts = append(w.cuts, n)
		}
		if w.room.Sign() <= 0 {
			return t, fmt.Errorf("%s does not hold however fine the cuts are: the middle of what they make is off, or the blank varies too much", r.Name)
		}
		t.wants = append(t.wants, w)
	}
	return t, nil
}

// between is a half tolerance from the finest, at 0, to the present one, at 1.
func (t tightener) between(i int, k *big.Rat) *big.Rat {
	x := new(big.Rat).Sub(t.half[i], t.finest[i])
	return x.Add(x.Mul(x, k), t.finest[i])
}

// fill finds how much each cut of a group may keep when only the group is tightened. All
// are let out together from their finest until something that must hold is full; the cuts
// in it stay there, and the others go on.
func (t tightener) fill(group []int) (keep []*big.Rat, ok bool) {
	keep = make([]*big.Rat, len(group))
	for range group {
		var least *big.Rat
		for _, w := range t.wants {
			k, free, fits := t.most(w, group, keep)
			if !fits {
				return nil, false
			}
			if free && (least == nil || k.Cmp(least) < 0) {
				least = k
			}
		}
		if least == nil || least.Cmp(one) > 0 {
			least = one
		}
		fixed := slices.Clone(keep)
		for n, i := range group {
			full := least == one || slices.ContainsFunc(t.wants, func(w want) bool {
				k, free, _ := t.most(w, group, keep)
				return slices.Contains(w.cuts, i) && free && k.Cmp(least) == 0
			})
			if keep[n] == nil && full {
				fixed[n] = least
			}
		}
		if keep = fixed; !slices.Contains(keep, nil) {
			break
		}
	}
	for n, i := range group {
		if t.finest[i].Sign() == 0 && keep[n].Sign() == 0 {
			return nil, false
		}
	}
	return keep, true
}

var one = big.NewRat(1, 1)

// most is how far the cuts of a group that are not fixed yet can be let out before something
// that must hold is full; free says whether there are any; fits, whether it holds at all.
func (t tightener) most(w want, group []int, keep []*big.Rat) (k *big.Rat, free, fits bool) {
	left, slope := new(big.Rat).Set(w.room), new(big.Rat)
	for _, i := range w.cuts {
		n := slices.Index(group, i)
		switch {
		case n < 0:
			left.Sub(left, t.half[i])
		case keep[n] != nil:
			left.Sub(left, t.between(i, keep[n]))
		default:
			left.Sub(left, t.finest[i])
			slope.Add(slope, new(big.Rat).Sub(t.half[i], t.finest[i]))
		}
	}
	if left.Sign() < 0 {
		return nil, false, false
	}
	if slope.Sign() == 0 {
		return nil, false, true
	}
	return left.Quo(left, slope), true, true
}

// subsets gives the groups of a size out of n, in order.
func subsets(n, size int) func(yield func([]int) bool) {
	return func(yield func([]int) bool) {
		s := make([]int, size)
		for i := range s {
			s[i] = i
		}
		for yield(s) {
			i := size - 1
			for i >= 0 && s[i] == n-size+i {
				i--
			}
			if i < 0 {
				return
			}
			s[i]++
			for k := i + 1; k < size; k++ {
				s[k] = s[k-1] + 1
			}
		}
	}
}
