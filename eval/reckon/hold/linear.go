package hold

import (
	"errors"
	"math"
	"slices"
)

// The linear program: minimise cost x where A x = b and no x is below nought.
//
// It is solved by the simplex method on a full table in float64, in two phases, the entering
// and the leaving column chosen by Bland's rule (the least index of those that serve), which
// never goes round in circles. Tables of this package are small: six rows a piece, some
// hundred columns.
//
// What comes out does not rest on the pivots. From the basis that they end at, the forces and
// the prices of the rows are worked out again from A and b, and both are looked at: forces that
// balance within narrow, prices at which no column is worth more than it costs. Forces
// bound the least from above, prices from below, and the two bounds must agree. Where the load
// cannot be balanced at all, the prices of the first phase are the proof: a way to move along
// which every contact can only push back or not at all while the load drives on. A program whose
// proof does not come out within narrow is an error and not an answer.
type program struct {
	a    [][]float64 // rows
	b    []float64
	cost []float64
}

const (
	tiny   = 1e-10 // of a table whose figures are about 1: nought
	narrow = 1e-7  // what a proof may be off, relative; a load less out of balance counts as balanced
	beyond = 1e4   // a proof that nothing holds is good for forces up to so many times the load
	pivots = 4000
)

var errLost = errors.New("the figures lie too far apart to tell whether this holds")

// answer of a program. prices belong to the rows: of the least cost where it holds, of the
// proof that it cannot where it does not.
type answer struct {
	holds  bool
	x      []float64
	cost   float64
	prices []float64
}

// table is the program under way: rows of A with an artificial column for each row and the
// right side at the end.
type table struct {
	p     *program
	sign  []float64 // each row of the program was turned by it so that b is not below nought
	rows  [][]float64
	basis []int
	real  int // columns of the program; artificial ones follow
}

func newTable(p *program) *table {
	t := &table{p: p, real: len(p.cost)}
	m := len(p.b)
	for i, row := range p.a {
		s := 1.0
		if p.b[i] < 0 {
			s = -1
		}
		full := make([]float64, t.real+m+1)
		for j, v := range row {
			full[j] = s * v
		}
		full[t.real+i], full[t.real+m] = 1, s*p.b[i]
		t.sign, t.rows, t.basis = append(t.sign, s), append(t.rows, full), append(t.basis, t.real+i)
	}
	return t
}

// solve gives the least cost, or the proof that there is no solution. Rounding can lead even
// Bland's rule round in a circle, where many forces are nought at once; another order of the columns leads out
// of it, so a program that gets lost is tried again with the columns turned round by a share.
func (p *program) solve() (answer, error) {
	const tries = 5
	n := len(p.cost)
	for k := range tries {
		by := n * k / tries
		got, err := p.turned(by).once()
		if err == nil {
			got.x = turn(got.x, n-by)
			return got, nil
		}
	}
	return answer{}, errLost
}

// turned is the program with its columns turned round by so many.
func (p *program) turned(by int) *program {
	if by == 0 {
		return p
	}
	q := &program{b: p.b, cost: turn(p.cost, by)}
	for _, row := range p.a {
		q.a = append(q.a, turn(row, by))
	}
	return q
}

func turn(x []float64, by int) []float64 {
	if len(x) == 0 || by == len(x) {
		return x
	}
	return append(slices.Clone(x[by:]), x[:by]...)
}

// once solves it in the order that it has.
func (p *program) once() (answer, error) {
	t := newTable(p)
	first := make([]float64, t.real+len(p.b))
	for i := range p.b {
		first[t.real+i] = 1
	}
	if !t.run(first) {
		return answer{}, errLost
	}
	if t.sum(first) > narrow/10 {
		return p.refused(t.prices(first))
	}
	t.settle()
	t.drop()
	second := make([]float64, t.real+len(p.b))
	copy(second, p.cost)
	if !t.run(second) {
		return answer{}, errLost
	}
	return t.p.proved(t, second)
}

// run pivots until no column lowers the cost. Artificial columns never come in again. The
// table is worked out afresh now and then and at the end. False where the cost has no least,
// which no program of this package has, or pivots run out.
func (t *table) run(cost []float64) bool {
	fresh := false
	for n := range pivots {
		in := t.entering(cost)
		switch {
		case in < 0 && fresh:
			return true
		case in < 0 || n%40 == 39:
			if !t.afresh() {
				return false
			}
			fresh = true
			continue
		}
		out := t.leaving(in)
		if out < 0 {
			return false
		}
		t.pivot(out, in)
		fresh = false
	}
	return false
}

// afresh works the table out of the program's own figures for the basis that it has, each
// column where it stands strongest. False where the columns of the basis say the same.
func (t *table) afresh() bool {
	f, done, put := newTable(t.p), []int(nil), []int(nil)
	for range t.basis {
		best, out, in := 0.0, -1, -1
		for _, b := range t.basis {
			for i, row := range f.rows {
				if !slices.Contains(done, i) && !slices.Contains(put, b) && math.Abs(row[b]) > best {
					best, out, in = math.Abs(row[b]), i, b
				}
			}
		}
		if out < 0 || best < tiny {
			return false
		}
		f.pivot(out, in)
		done, put = append(done, out), append(put, in)
	}
	t.rows, t.basis, t.sign = f.rows, f.basis, f.sign
	return true
}

// settle takes what the artificial columns still hold, less than narrow of the load, off the
// load: it counts as balanced.
func (t *table) settle() {
	b := append([]float64(nil), t.p.b...)
	for i, c := range t.basis {
		if c >= t.real {
			k := c - t.real
			b[k] -= t.sign[k] * t.rows[i][len(t.rows[i])-1]
			t.rows[i][len(t.rows[i])-1] = 0
		}
	}
	t.p = &program{a: t.p.a, b: b, cost: t.p.cost}
}

// entering is the first column whose reduced cost is below nought; -1 none.
func (t *table) entering(cost []float64) int {
	for j := range t.real {
		d := cost[j]
		for i, b := range t.basis {
			if cost[b] != 0 {
				d -= cost[b] * t.rows[i][j]
			}
		}
		if d < -tiny {
			return j
		}
	}
	return -1
}

// leaving is the row that comes to nought first; of several the one with the least column.
func (t *table) leaving(in int) int {
	best, out := math.Inf(1), -1
	for i, row := range t.rows {
		if row[in] <= tiny {
			continue
		}
		r := math.Max(row[len(row)-1], 0) / row[in]
		if out < 0 || r < best-tiny*(1+best) || r < best+tiny*(1+best) && t.basis[i] < t.basis[out] {
			best, out = math.Min(best, r), i
		}
	}
	return out
}

func (t *table) pivot(out, in int) {
	row := t.rows[out]
	k := row[in]
	for j := range row {
		row[j] /= k
	}
	for i, other := range t.rows {
		if f := other[in]; i != out && f != 0 {
			for j, v := range row {
				other[j] -= f * v
			}
			other[in] = 0
		}
	}
	t.basis[out] = in
}

// drop puts artificial columns that are left at nought out of the basis, each for the largest
// figure of its row; a row of noughts says nothing that others do not say.
func (t *table) drop() {
	for i, b := range t.basis {
		if b < t.real {
			continue
		}
		row, best := t.rows[i], 0
		for j := range t.real {
			if math.Abs(row[j]) > math.Abs(row[best]) {
				best = j
			}
		}
		if math.Abs(row[best]) > narrow {
			t.pivot(i, best)
		}
	}
}

func (t *table) sum(cost []float64) (s float64) {
	for i, b := range t.basis {
		s += cost[b] * t.rows[i][len(t.rows[i])-1]
	}
	return s
}

// prices of the rows as the program has them: the reduced cost of an artificial column is its
// cost less the price of its row.
func (t *table) prices(cost []float64) []float64 {
	y := make([]float64, len(t.basis))
	for k := range y {
		for i, b := range t.basis {
			y[k] += cost[b] * t.rows[i][t.real+k]
		}
		y[k] *= t.sign[k]
	}
	return y
}

// refused looks at the proof that there is no solution: y A at most nought, y b above it.
func (p *program) refused(y []float64) (answer, error) {
	drive := 0.0
	for i, v := range p.b {
		drive += y[i] * v
	}
	for j := range p.cost {
		if p.worth(y, j)*beyond > drive {
			return answer{}, errLost
		}
	}
	return answer{prices: y}, nil
}

// worth of a column at prices.
func (p *program) worth(y []float64, j int) (w float64) {
	for i, row := range p.a {
		w += y[i] * row[j]
	}
	return w
}

// proved works forces out again and looks at both bounds.
func (p *program) proved(t *table, cost []float64) (answer, error) {
	x := make([]float64, t.real)
	for i, b := range t.basis {
		if b < t.real {
			x[b] = math.Max(t.rows[i][len(t.rows[i])-1], 0)
		}
	}
	y := t.prices(cost)
	upper, lower := 0.0, 0.0
	for j, v := range x {
		upper += p.cost[j] * v
		if p.worth(y, j) > p.cost[j]+narrow {
			return answer{}, errLost
		}
	}
	for i, row := range p.a {
		off, size := -p.b[i], 1+math.Abs(p.b[i])
		for j, v := range x {
			off += row[j] * v
			size += math.Abs(row[j] * v)
		}
		if math.Abs(off) > narrow*size {
			return answer{}, errLost
		}
		lower += y[i] * p.b[i]
	}
	if math.Abs(upper-lower) > narrow*(1+math.Abs(upper)) {
		return answer{}, errLost
	}
	return answer{holds: true, x: x, cost: upper, prices: y}, nil
}
