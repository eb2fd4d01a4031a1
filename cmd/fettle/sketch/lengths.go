package sketch

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"fettle/eval/solid"
)

// Which is one of the three views of a part.
type Which uint8

const (
	InFront Which = iota
	Above
	Aside // from the left in first angle, from the right in third angle
)

// Sizes is what a drawing says of a part besides its outlines.
type Sizes struct {
	Lengths []Length
	Notes   []Note
	Lines   []Line
	General string // what holds for sizes without limits of their own; "" nothing is said
	Paper   Paper
	// Turned: nothing of the part differs between the views from the front and from above, and
	// the second is left out.
	Turned bool
}

// Length is a distance along an axis of the part that lies in a view.
type Length struct {
	In       Which
	Axis     int     // of the part: 0 x, 1 y, 2 z
	From, To float64 // places along it, mm
	At, Upto float64 // what is measured lies between these across it, mm on the part; NaN: all of the view
	Placed   bool    // To is laid from a datum, From: several such share one line
	Words    string
}

// Line is a line that is no edge, drawn as axes are: where sheet is to be bent.
type Line struct {
	In   Which
	A, B solid.Vec
}

// Note is a word about a place of the part with an arrow to it.
type Note struct {
	In     Which
	At     solid.Vec
	Radius float64 // of the round that the arrow ends on, mm on the part; 0 it ends at the place
	Words  string
}

// lies says how a length lies in a view: along the sheet (1) or up it (2), and on which axis its
// other co-ordinate is; 0 where the view looks along it.
func (v View) lies(axis int) (way, other int) {
	var e solid.Vec
	e[axis] = 1
	switch {
	case math.Abs(v.Right.Dot(e)) > 0.5:
		way = 1
	case math.Abs(v.Up.Dot(e)) > 0.5:
		way = 2
	default:
		return 0, 0
	}
	for i := range 3 {
		var o solid.Vec
		o[i] = 1
		if i != axis && math.Abs(v.Towards.Dot(o)) < 0.5 {
			other = i
		}
	}
	return way, other
}

// enough is how many lengths from one datum make a common line of them.
const enough = 3

// sorted splits lengths of one view and axis into those that have lines of their own, the short ones
// first, and those that share one, by datum.
func sorted(ls []Length) (single []Length, shared [][]Length) {
	by := map[float64][]Length{}
	var datums []float64
	for _, l := range ls {
		if !l.Placed {
			single = append(single, l)
			continue
		}
		k := math.Round(l.From*1e6) / 1e6
		if by[k] == nil {
			datums = append(datums, k)
		}
		by[k] = append(by[k], l)
	}
	for _, k := range datums {
		if len(by[k]) < enough {
			single = append(single, by[k]...)
			continue
		}
		slices.SortStableFunc(by[k], func(a, b Length) int { return cmp.Compare(a.To, b.To) })
		shared = append(shared, by[k])
	}
	slices.SortStableFunc(single, func(a, b Length) int {
		return cmp.Compare(math.Abs(a.To-a.From), math.Abs(b.To-b.From))
	})
	return single, shared
}

// margin is the room that lengths of one view and axis need beside it, mm on the paper, at a scale and
// with letters of a height.
func margin(ls []Length, f, high float64) float64 {
	single, shared := sorted(ls)
	if len(single)+len(shared) == 0 {
		return 0
	}
	var rows [][][2]float64
	for _, l := range single {
		a, b := min(l.From, l.To)*f, max(l.From, l.To)*f
		if w := Room(l.Words, high); w > b-a-1 {
			b += w + 2*headLong + 2
		}
		k := slices.IndexFunc(rows, func(r [][2]float64) bool {
			return !slices.ContainsFunc(r, func(o [2]float64) bool { return a < o[1]+2 && o[0] < b+2 })
		})
		if k < 0 {
			k, rows = len(rows), append(rows, nil)
		}
		rows[k] = append(rows[k], [2]float64{a, b})
	}
	deep := awayBy(high) + levelBy(high)*float64(len(rows)-1) + 3
	for _, s := range shared {
		long := 0.0
		for _, l := range s {
			long = max(long, Room(l.Words, high))
		}
		deep += levelBy(high) + kink + long
	}
	return deep
}

// kink is how far behind a common line its texts begin.
const kink = 4.0

// laid draws the lengths of a view; what found no room is given back.
func (d *Drawing) laid(v View, which Which, at Point, f float64, lo, hi solid.Vec, all []Length) (left []string) {
	for _, way := range []int{1, 2} {
		var ls []Length
		for _, l := range all {
			if w, _ := v.lies(l.Axis); l.In == which && w == way {
				ls = append(ls, l)
			}
		}
		single, shared := sorted(ls)
		out := Point{0, -1}
		if way == 2 {
			out = Point{-1, 0}
		}
		place := func(l Length, x float64) (p Point) {
			_, other := v.lies(l.Axis)
			var q, e solid.Vec
			q[l.Axis], q[other] = x, l.At
			e[other] = 1
			outwards := v.flat(e).dot(out) > 0
			switch all := math.IsNaN(l.At); {
			case all && outwards:
				q[other] = hi[other]
			case all:
				q[other] = lo[other]
			case outwards:
				q[other] = l.Upto
			}
			return at.add(v.flat(q).times(f))
		}
		var dims []Dimension
		for _, l := range single {
			m := Dimension{place(l, l.From), place(l, l.To), out, l.Words}
			if l.Placed { // the datum is an edge of the part, wherever the place is
				edge := l
				edge.At = math.NaN()
				m.From = place(edge, l.From)
			}
			dims = append(dims, m)
		}
		along := func(p Point) float64 { return []float64{p.X, p.Y}[way-1] }
		var comes []float64
		for _, s := range shared {
			comes = append(comes, along(place(s[0], s[0].From)))
			for _, l := range s {
				comes = append(comes, along(place(l, l.To)))
			}
		}
		for i, m := range dims {
			ahead := slices.Clone(comes)
			for _, o := range dims[i+1:] {
				ahead = append(ahead, along(o.From), along(o.To))
			}
			edge := single[i]
			edge.At = math.NaN()
			if err := d.dimension(m, place(edge, edge.From).dot(out), ahead); err != nil {
				left = append(left, m.Words)
			}
		}
		for _, s := range shared {
			edge := s[0]
			edge.At = math.NaN()
			var ps []Place
			for _, l := range s {
				ps = append(ps, Place{place(l, l.To), l.Words})
			}
			if err := d.Common(place(edge, s[0].From), ps, out); err != nil {
				for _, l := range s {
					left = append(left, l.Words)
				}
			}
		}
	}
	return left
}

// Place is one end of a distance and what is written there.
type Place struct {
	At    Point
	Words string
}

// Common draws distances from one datum on a common line (ISO 129-1, running dimensions, from
// memory): a small circle at the datum, an arrowhead and the figure at each place. It is an error if there is no
// room for it.
func (d *Drawing) Common(datum Point, ps []Place, out Point) error {
	base := datum.dot(out)
	for _, p := range ps {
		base = max(base, p.At.dot(out))
	}
	along := Point{1, 0}
	if out.X != 0 {
		along = Point{0, 1}
	}
	for k := range 12 {
		line := base + awayBy(d.capitals()) + levelBy(d.capitals())*float64(k)
		if d.common(datum, ps, out, along, line) {
			return nil
		}
	}
	return fmt.Errorf("there is no room for %d distances on a common line", len(ps))
}

func (d *Drawing) common(datum Point, ps []Place, out, along Point, line float64) bool {
	on := func(t, deep float64) Point { return along.times(t).add(out.times(deep)) }
	zero := datum.dot(along)
	all := append([]Place{{datum, "0"}}, ps...)
	slices.SortStableFunc(all, func(a, b Place) int { return cmp.Compare(a.At.dot(along), b.At.dot(along)) })
	ts := make([]float64, len(all))
	for i, p := range all {
		ts[i] = p.At.dot(along)
	}
	spread(ts, d.capitals()+2.1)
	lo, hi := all[0].At.dot(along), all[len(all)-1].At.dot(along)
	if !d.open(on(lo, line), on(hi, line)) || d.alongside(on(lo, line), on(hi, line)) || !d.headsFree(on(lo, line), on(hi, line)) {
		return false
	}
	was := *d
	d.Strokes, d.Texts, d.Heads = slices.Clip(d.Strokes), slices.Clip(d.Texts), slices.Clip(d.Heads)
	for i, p := range all {
		t := p.At.dot(along)
		foot, knee, end := p.At.add(out.times(gap)), on(t, line+1), on(ts[i], line+kink)
		if !d.untouched(foot, knee) || !d.untouched(knee, end) {
			*d = was
			return false
		}
		x := Text{Words: p.Words, Height: d.capitals()}
		w := Room(x.Words, x.Height)
		if along.X != 0 {
			x.Turn = 90
			x.At = end.add(out.times(0.5 + w)).add(Point{0.4 * x.Height, 0})
		} else {
			x.At = end.add(out.times(0.5 + w)).sub(Point{0, 0.5 * x.Height})
		}
		if !d.free(x) {
			*d = was
			return false
		}
		d.Path(Narrow, foot, knee, end)
		d.Texts = append(d.Texts, x)
		if t != zero {
			d.Heads = append(d.Heads, Head{on(t, line), along.times(math.Copysign(1, t-zero))})
		}
	}
	d.Line(Narrow, on(lo, line), on(hi, line))
	d.Circle(Narrow, on(zero, line), 1.2)
	return true
}

// spread moves figures in rising order apart so that each two lie at least so far from each other,
// and none farther than needed from where it was.
func spread(ts []float64, least float64) {
	type run struct {
		mid float64 // where the run's middle belongs
		n   int
	}
	var runs []run
	for _, t := range ts {
		runs = append(runs, run{t, 1})
		for len(runs) > 1 {
			a, b := runs[len(runs)-2], runs[len(runs)-1]
			if b.mid-a.mid >= least*float64(a.n+b.n)/2 {
				break
			}
			n := a.n + b.n
			runs = append(runs[:len(runs)-2], run{(a.mid*float64(a.n) + b.mid*float64(b.n)) / float64(n), n})
		}
	}
	i := 0
	for _, r := range runs {
		for k := range r.n {
			ts[i] = r.mid + least*(float64(k)-float64(r.n-1)/2)
			i++
		}
	}
}

// alongside says whether a line would run beside another narrow one, so near that one takes them for one.
func (d *Drawing) alongside(a, b Point) bool {
	dir := b.sub(a).unit()
	for i := range d.Strokes {
		s := &d.Strokes[i]
		for k := range s.Points[1:] {
			p, q := s.Points[k], s.Points[k+1]
			if l := q.sub(p).len(); s.Pen != Narrow || l == 0 || math.Abs(q.sub(p).cross(dir)) > 0.01*l || math.Abs(p.sub(a).cross(dir)) > 4 {
				continue
			}
			t0, t1 := p.sub(a).dot(dir), q.sub(a).dot(dir)
			if min(t0, t1) < b.sub(a).len()-0.5 && max(t0, t1) > 0.5 {
				return true
			}
		}
	}
	return false
}
