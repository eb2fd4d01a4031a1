package bar

import (
	"cmp"
	"fmt"
	"slices"
)

// rack is a job in whole numbers: kinds of pieces, longest first, and kinds of bars,
// offcuts first and shortest first among equals. A piece takes its length, facing and kerf.
type rack struct {
	job    Job
	sizes  []int64 // taken by each kind of piece
	wanted []int
	names  [][]string // of the pieces of each kind, one for each piece
	bars   []stock
	usable int64
	unit   int64 // what one count is, in units
}

type stock struct {
	room   int64 // for pieces with their kerf
	length int64
	count  int
	fresh  bool
	names  []string // of the bars of this kind, with their numbers
	counts []int
}

// filling is one bar of a kind with what is sawn from it, as counts of the kinds of pieces.
type filling struct {
	bar  int
	take []int
}

func newRack(j Job) (*rack, error) {
	if err := j.check(); err != nil {
		return nil, err
	}
	r := &rack{job: j, usable: units(j.Usable)}
	for _, p := range j.Pieces {
		r.addPiece(p)
	}
	total := 0
	for _, w := range r.wanted {
		total += w
	}
	for _, b := range j.Bars {
		r.addBar(b, total)
	}
	if len(r.sizes) > MostKinds || len(r.bars) > MostKinds {
		return nil, fmt.Errorf("%d lengths of pieces from %d lengths of bars: up to %d of each are looked at", len(r.sizes), len(r.bars), MostKinds)
	}
	r.sort()
	for i, size := range r.sizes {
		if !slices.ContainsFunc(r.bars, func(b stock) bool { return b.room >= size }) {
			return nil, fmt.Errorf("%s takes %v mm with its saw cut, and no bar has that much room", r.names[i][0], mm(size))
		}
	}
	r.shorten()
	return r, nil
}

func (r *rack) addPiece(p Piece) {
	if p.Count == 0 {
		return
	}
	size := units(p.Length) + units(r.job.Saw.Facing) + units(r.job.Saw.Kerf)
	i := slices.Index(r.sizes, size)
	if i < 0 {
		i = len(r.sizes)
		r.sizes, r.wanted, r.names = append(r.sizes, size), append(r.wanted, 0), append(r.names, nil)
	}
	r.wanted[i] += p.Count
	for range p.Count {
		r.names[i] = append(r.names[i], p.Name)
	}
}

// addBar adds bars, of which no more count than there are pieces.
func (r *rack) addBar(b Bar, pieces int) {
	length, n := units(b.Length), min(b.Count, pieces)
	room := r.job.Saw.room(length)
	if n == 0 || room <= 0 {
		return
	}
	i := slices.IndexFunc(r.bars, func(s stock) bool { return s.length == length && s.fresh == !b.Offcut })
	if i < 0 {
		i = len(r.bars)
		r.bars = append(r.bars, stock{room: room, length: length, fresh: !b.Offcut})
	}
	s := &r.bars[i]
	s.count = min(s.count+n, pieces)
	s.names, s.counts = append(s.names, b.Name), append(s.counts, n)
}

func (r *rack) sort() {
	order := make([]int, len(r.sizes))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Compare(r.sizes[b], r.sizes[a]) })
	sizes, wanted, names := r.sizes, r.wanted, r.names
	r.sizes, r.wanted, r.names = nil, nil, nil
	for _, i := range order {
		r.sizes, r.wanted, r.names = append(r.sizes, sizes[i]), append(r.wanted, wanted[i]), append(r.names, names[i])
	}
	slices.SortStableFunc(r.bars, func(a, b stock) int {
		if a.fresh != b.fresh {
			if b.fresh {
				return -1
			}
			return 1
		}
		return cmp.Compare(a.length, b.length)
	})
}

// shorten divides all lengths by what they have in common, so that tables over lengths
// stay small.
func (r *rack) shorten() {
	g := r.usable
	for _, s := range r.sizes {
		g = common(g, s)
	}
	for _, b := range r.bars {
		g = common(common(g, b.room), b.length)
	}
	r.unit = max(g, 1)
	r.usable /= r.unit
	for i := range r.sizes {
		r.sizes[i] /= r.unit
	}
	for i := range r.bars {
		r.bars[i].room /= r.unit
		r.bars[i].length /= r.unit
	}
}

func common(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// worth scores one bar from which pieces that take up used are sawn.
func (r *rack) worth(bar int, used int64) score {
	s := score{touched: 1}
	if r.bars[bar].fresh {
		s.fresh = 1
	}
	left := max(0, r.bars[bar].length-used)
	if r.usable > 0 && left >= r.usable {
		s.kept = 1
	} else {
		s.scrap = left
	}
	return s
}

func (r *rack) used(take []int) (sum int64) {
	for i, n := range take {
		sum += int64(n) * r.sizes[i]
	}
	return sum
}

func (r *rack) score(f []filling) (s score) {
	for _, x := range f {
		s = s.plus(r.worth(x.bar, r.used(x.take)))
	}
	return s
}

// plan writes fillings out, offcuts first and by length, with names.
func (r *rack) plan(f []filling) Plan {
	f = slices.Clone(f)
	slices.SortStableFunc(f, func(a, b filling) int {
		return cmp.Or(cmp.Compare(a.bar, b.bar), -slices.Compare(a.take, b.take))
	})
	s := r.score(f)
	p := Plan{NewBars: s.fresh, Scrap: mm(s.scrap * r.unit), Kept: s.kept, Touched: s.touched}
	piece := make([]int, len(r.sizes))
	taken := make([]int, len(r.bars))
	for _, x := range f {
		b := r.bars[x.bar]
		used := r.used(x.take)
		left := max(0, b.length-used)
		c := Cut{Bar: b.name(taken[x.bar]), Length: mm(b.length * r.unit), Offcut: !b.fresh, Left: mm(left * r.unit), Kept: r.worth(x.bar, used).kept > 0}
		taken[x.bar]++
		for i, n := range x.take {
			for range n {
				c.Pieces = append(c.Pieces, r.names[i][piece[i]])
				piece[i]++
			}
		}
		p.Cuts = append(p.Cuts, c)
	}
	return p
}

// name is that of the nth bar of a kind that is taken.
func (s stock) name(n int) string {
	for i, c := range s.counts {
		if n < c {
			return s.names[i]
		}
		n -= c
	}
	return s.names[len(s.names)-1]
}
