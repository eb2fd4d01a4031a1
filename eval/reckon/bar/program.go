package bar

import (
	"math"
	"math/bits"
	"slices"
)

// The linear program: how many bars (fractions of bars allowed) to fill in which way, so
// that every piece is there and as few new bars as possible are opened. Ways of filling are
// found when they are needed, as the answer to "which filling is worth most at the present
// prices of the pieces". The prices give the lower bound.
//
// The program is solved in float64, but its bound does not rest on that: prices are cut to
// whole numbers, the most that a filling of each bar can be worth at them is worked out in
// whole numbers, and for any prices at all the value of all pieces, less for each offcut the
// most it can hold, is at most the number of new bars times what one of those can hold. Where lengths
// have too little in common for a table, they are all rounded down to a coarser count,
// which can only lower the bound; the ways of filling are checked against the true lengths.

const (
	mostTable  = 6_000       // entries in a table over lengths
	mostRounds = 400         // ways of filling added to one program
	mostWork   = 300_000_000 // entries looked at in all
	priceUnit  = 1 << 20
	missing    = 50.0 // cost of a piece not sawn, in new bars
)

// program gives a lower bound for the new bars and a plan by rounding, nil where none comes
// out.
func (r *rack) program() (bound int, plan []filling) {
	left, count := slices.Clone(r.wanted), make([]int, len(r.bars))
	for b, s := range r.bars {
		count[b] = s.count
	}
	work := mostWork
	for first := true; slices.ContainsFunc(left, func(n int) bool { return n > 0 }); first = false {
		l := newLinear(r, left, count)
		l.solve(&work)
		if first {
			bound = l.bound()
		}
		taken := l.rounded()
		if len(taken) == 0 {
			return bound, nil
		}
		for _, f := range taken {
			count[f.bar]--
			for k, n := range f.take {
				left[k] -= n
			}
		}
		plan = append(plan, taken...)
	}
	return bound, plan
}

// linear is the program for what is left. Rows are the kinds of pieces that are wanted and
// then the kinds of bars; the basis is kept as the inverse of its matrix.
type linear struct {
	*rack
	kinds   []int // of pieces, by row
	want    []int
	count   []int
	grain   int64 // length of one entry of the table
	columns []column
	basis   []int // column of each row
	inverse [][]float64
	value   []float64 // of each basic column
}

// column is a way of filling, or a piece not sawn, a piece too many, a bar not touched.
type column struct {
	cost float64
	at   []float64
	bar  int // -1 unless a way of filling
	take []int
}

func newLinear(r *rack, left, count []int) *linear {
	l := &linear{rack: r, count: count}
	for k, n := range left {
		if n > 0 {
			l.kinds, l.want = append(l.kinds, k), append(l.want, n)
		}
	}
	longest := int64(0)
	for _, b := range r.bars {
		longest = max(longest, b.room)
	}
	l.grain = longest/mostTable + 1
	if longest <= mostTable {
		l.grain = 1
	}
	rows := len(l.kinds) + len(r.bars)
	for i := range rows {
		c := column{at: make([]float64, rows), bar: -1}
		c.at[i] = 1
		rhs := 0.0
		if i < len(l.kinds) {
			c.cost, rhs = missing, float64(l.want[i])
		} else {
			rhs = float64(count[i-len(l.kinds)])
		}
		l.columns = append(l.columns, c)
		l.basis, l.value = append(l.basis, i), append(l.value, rhs)
		l.inverse = append(l.inverse, make([]float64, rows))
		l.inverse[i][i] = 1
	}
	for i := range l.kinds {
		c := column{at: make([]float64, rows), bar: -1}
		c.at[i] = -1
		l.columns = append(l.columns, c)
	}
	return l
}

// prices are what one more of each row is worth.
func (l *linear) prices() []float64 {
	y := make([]float64, len(l.basis))
	for i, c := range l.basis {
		if cost := l.columns[c].cost; cost != 0 {
			for k := range y {
				y[k] += cost * l.inverse[i][k]
			}
		}
	}
	return y
}

// solve brings in what is worth more than it costs until nothing is, or the work is used up.
func (l *linear) solve(work *int) {
	for range mostRounds {
		if *work -= l.effort(); *work < 0 {
			return
		}
		y := l.prices()
		c := l.entering(y)
		if c < 0 || !l.pivot(c) {
			return
		}
	}
}

// entering gives a column that would make the answer cheaper, -1 where there is none.
func (l *linear) entering(y []float64) int {
	const enough = 1e-7
	best, gain := -1, enough
	for c, col := range l.columns {
		g := -col.cost
		for i, a := range col.at {
			g += y[i] * a
		}
		if g > gain {
			best, gain = c, g
		}
	}
	if best >= 0 {
		return best
	}
	values := make([]float64, len(l.kinds))
	for i := range values {
		values[i] = max(0, y[i])
	}
	table := fillTable(l.grained(), l.want, values, l.entries())
	for b, s := range l.bars {
		if l.count[b] == 0 {
			continue
		}
		worth, take := table.at(s.room / l.grain)
		cost := 0.0
		if s.fresh {
			cost = 1
		}
		g := worth + y[len(l.kinds)+b] - cost
		if g <= gain || !l.true(take, s.room) {
			continue
		}
		col := column{cost: cost, at: make([]float64, len(l.basis)), bar: b, take: take}
		for i, n := range take {
			col.at[i] = float64(n)
		}
		col.at[len(l.kinds)+b] = 1
		l.columns = append(l.columns, col)
		best, gain = len(l.columns)-1, g
	}
	return best
}

// effort is about what one round takes.
func (l *linear) effort() int {
	parts := 0
	for _, n := range l.want {
		parts += bits.Len(uint(n))
	}
	return parts*int(l.entries()) + len(l.basis)*(len(l.basis)+len(l.columns))
}

// true says that a filling fits at its true lengths.
func (l *linear) true(take []int, room int64) bool {
	for i, n := range take {
		room -= int64(n) * l.sizes[l.kinds[i]]
	}
	return room >= 0
}

func (l *linear) grained() (out []int64) {
	for _, k := range l.kinds {
		out = append(out, l.sizes[k]/l.grain)
	}
	return out
}

func (l *linear) entries() int64 {
	longest := int64(0)
	for _, b := range l.bars {
		longest = max(longest, b.room)
	}
	return longest / l.grain
}

// pivot brings a column into the basis.
func (l *linear) pivot(c int) bool {
	rows := len(l.basis)
	d := make([]float64, rows)
	for i := range rows {
		for k, a := range l.columns[c].at {
			if a != 0 {
				d[i] += l.inverse[i][k] * a
			}
		}
	}
	out, step := -1, math.Inf(1)
	for i := range rows {
		if d[i] > 1e-9 {
			if s := l.value[i] / d[i]; s < step-1e-12 || s < step+1e-12 && (out < 0 || l.basis[i] < l.basis[out]) {
				out, step = i, s
			}
		}
	}
	if out < 0 {
		return false
	}
	p := d[out]
	for k := range rows {
		l.inverse[out][k] /= p
	}
	l.value[out] = max(0, l.value[out]/p)
	for i := range rows {
		if i == out || d[i] == 0 {
			continue
		}
		for k := range rows {
			l.inverse[i][k] -= d[i] * l.inverse[out][k]
		}
		l.value[i] = max(0, l.value[i]-d[i]*l.value[out])
	}
	l.basis[out] = c
	return true
}

// bound is a lower bound for the new bars, from the present prices.
func (l *linear) bound() int {
	y := l.prices()
	price := make([]int64, len(l.kinds))
	for i := range price {
		price[i] = int64(max(0, min(y[i], missing)) * priceUnit)
	}
	table := fillTable(l.grained(), l.want, price, l.entries())
	var fresh int64
	for _, b := range l.bars {
		if b.fresh {
			worth, _ := table.at(b.room / l.grain)
			fresh = max(fresh, worth)
		}
	}
	if fresh == 0 {
		return 0
	}
	var worth int64
	for i, p := range price {
		worth += p * int64(l.want[i])
	}
	for b, s := range l.bars {
		if !s.fresh {
			most, _ := table.at(s.room / l.grain)
			worth -= most * int64(l.count[b])
		}
	}
	if worth <= 0 {
		return 0
	}
	return int((worth + fresh - 1) / fresh)
}

// rounded takes the whole parts of the answer; where there are none, one filling of which
// the answer has most.
func (l *linear) rounded() (out []filling) {
	left, count := slices.Clone(l.want), slices.Clone(l.count)
	order := make([]int, 0, len(l.basis))
	for i, c := range l.basis {
		if l.columns[c].bar >= 0 {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case l.value[a] > l.value[b]:
			return -1
		case l.value[a] < l.value[b]:
			return 1
		}
		return 0
	})
	for n, i := range order {
		col := l.columns[l.basis[i]]
		whole := int(l.value[i] + 1e-6)
		if n == 0 && whole == 0 && l.value[i] > 1e-6 {
			whole = 1
		}
		for ; whole > 0 && count[col.bar] > 0; whole-- {
			take, any := make([]int, len(l.sizes)), false
			for k, m := range col.take {
				m = min(m, left[k])
				take[l.kinds[k]], left[k], any = m, left[k]-m, any || m > 0
			}
			if !any {
				break
			}
			count[col.bar]--
			out = append(out, filling{col.bar, take})
		}
	}
	return out
}

// number is what values are counted in: prices in float64, or whole numbers for a bound.
type number interface{ int64 | float64 }

// table holds, for every room, the most that a filling of it is worth.
type table[N number] struct {
	sizes  []int64
	values []N
	parts  []part
	best   []N
	chosen [][]bool // for each part, whether the best filling of a room uses it
}

// part is a number of pieces of one kind that are taken together: 1, 2, 4 ... up to the
// number wanted, so that few parts make any number.
type part struct {
	kind, n int
}

// fillTable works the table out for rooms from 0 up to most.
func fillTable[N number](sizes []int64, want []int, values []N, most int64) table[N] {
	t := table[N]{sizes: sizes, values: values, best: make([]N, most+1)}
	for k, size := range sizes {
		if values[k] <= 0 {
			continue
		}
		// a piece rounded down to nothing still counts, as often as it is wanted
		left := want[k]
		if size > 0 {
			left = int(min(int64(left), most/size))
		}
		for n := 1; left > 0; n *= 2 {
			n = min(n, left)
			left -= n
			t.add(part{k, n})
		}
	}
	return t
}

func (t *table[N]) add(p part) {
	size, value := int64(p.n)*t.sizes[p.kind], N(p.n)*t.values[p.kind]
	chosen := make([]bool, len(t.best))
	for room := int64(len(t.best)) - 1; room >= size; room-- {
		if v := t.best[room-size] + value; v > t.best[room] {
			t.best[room], chosen[room] = v, true
		}
	}
	t.parts, t.chosen = append(t.parts, p), append(t.chosen, chosen)
}

// at gives the most that a filling of a room is worth, and that filling.
func (t *table[N]) at(room int64) (worth N, take []int) {
	take = make([]int, len(t.sizes))
	worth = t.best[room]
	for i := len(t.parts) - 1; i >= 0; i-- {
		if t.chosen[i][room] {
			p := t.parts[i]
			take[p.kind] += p.n
			room -= int64(p.n) * t.sizes[p.kind]
		}
	}
	return worth, take
}
