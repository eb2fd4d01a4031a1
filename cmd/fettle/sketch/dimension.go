package sketch

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// Lettering and dimension lines, in mm on the paper.
const (
	lettering = 3.5  // height of capitals of dimensions and notes (ISO 3098: 2.5, 3.5, 5)
	headLong  = 3.0  // an arrowhead, 15 degrees to each side of a third of its length
	gap       = 1.0  // between an outline and its extension line
	over      = 2.0  // how far an extension line runs past the dimension line
	away      = 10.0 // from an outline to the first dimension line, with letters of 3.5
	level     = 8.0  // between dimension lines that lie side by side
	above     = 1.0  // between a dimension line and the foot of its text
)

// awayBy and levelBy are away and level with letters of a height.
func awayBy(h float64) float64  { return away }
func levelBy(h float64) float64 { return level }

func (h Head) corners() [3]Point {
	back := h.At.sub(h.To.times(headLong))
	side := h.To.left().times(headLong / 6)
	return [3]Point{h.At, back.add(side), back.sub(side)}
}

func (h Head) box() box {
	c := h.corners()
	b := box{c[0], c[0]}
	for _, p := range c {
		b.lo = Point{min(b.lo.X, p.X), min(b.lo.Y, p.Y)}
		b.hi = Point{max(b.hi.X, p.X), max(b.hi.Y, p.Y)}
	}
	return b
}

// Dimension is a size between two places, level or upright on the sheet. Its line lies outside
// of both places, on the side Out points to: (0, -1) below, (-1, 0) to the left.
type Dimension struct {
	From, To Point
	Out      Point
	Words    string
}

// Dimension draws a dimension at the first place out from the part where its text is free, and
// with its text beside it where there is no room between the arrows. It is an error if it is
// not level or upright, or if none of ten places is free.
func (d *Drawing) Dimension(m Dimension) error { return d.dimension(m, math.Inf(-1), nil) }

// dimension is Dimension with its line at least away from a base along Out, and with a text that
// keeps clear, if it can, of where extension lines still to come will run: their places along the line.
func (d *Drawing) dimension(m Dimension, base float64, comes []float64) error {
	upright := m.Out.X != 0
	if (m.Out.X != 0) == (m.Out.Y != 0) || !finite(m.From.X, m.From.Y, m.To.X, m.To.Y, m.Out.X, m.Out.Y) {
		return fmt.Errorf("the dimension %q lies neither beside nor above or below what it measures", m.Words)
	}
	out := m.Out.unit()
	if l := m.To.sub(m.From); math.Abs(l.cross(out)) < 0.01 {
		return fmt.Errorf("the dimension %q has no length", m.Words)
	}
	base = max(base, m.From.dot(out), m.To.dot(out))
	for k := range 20 {
		at := base + awayBy(d.capitals()) + levelBy(d.capitals())*float64(k%10)
		a, b := m.From.add(out.times(at-m.From.dot(out))), m.To.add(out.times(at-m.To.dot(out)))
		if upright && a.Y > b.Y || !upright && a.X > b.X {
			a, b, m.From, m.To = b, a, m.To, m.From
		}
		for _, t := range textsAlong(a, b, m.Words, d.capitals(), upright) {
			if k < 10 && t.box().stands(comes, upright) {
				continue
			}
			if d.free(t) && d.open(a, b) && !t.box().crossedBy(a, b) && d.headsFree(a, b) && !d.alongside(a, b) &&
				d.untouched(m.From, a.add(out.times(over))) && d.untouched(m.To, b.add(out.times(over))) {
				d.dimensionAt(m, out, a, b, t)
				return nil
			}
		}
	}
	return fmt.Errorf("there is no room for the dimension %q", m.Words)
}

// stands says whether a box stands in the way of one of some lines square to a dimension line.
func (b box) stands(at []float64, upright bool) bool {
	lo, hi := b.lo.X, b.hi.X
	if upright {
		lo, hi = b.lo.Y, b.hi.Y
	}
	return slices.ContainsFunc(at, func(x float64) bool { return x > lo-0.5 && x < hi+0.5 })
}

// textsAlong gives places for the text of a dimension: over the middle of its line, then beside
// its ends.
func textsAlong(a, b Point, words string, high float64, upright bool) (out []Text) {
	w := Room(words, high)
	l := b.sub(a).len()
	along := b.sub(a).times(1 / l)
	foot := along.left().times(above + 0.35*high)
	turn := 0.0
	if upright {
		turn = 90
	}
	put := func(t float64) {
		out = append(out, Text{At: a.add(along.times(t)).add(foot), Words: words, Height: high, Turn: turn})
	}
	if w < l-1 {
		put((l - w) / 2)
		for _, f := range []float64{0.25, 0.75} {
			put(between(f*l-w/2, 0.5, l-0.5-w))
		}
	}
	put(l + 2*headLong + 1)
	put(-w - 2*headLong - 1)
	return out
}

// open says whether a dimension line would run through no text and along no wide line.
func (d *Drawing) open(a, b Point) bool {
	for _, t := range d.Texts {
		if t.box().grown(0.5).crossedBy(a, b) {
			return false
		}
	}
	strip := box{Point{min(a.X, b.X) - 2, min(a.Y, b.Y) - 2}, Point{max(a.X, b.X) + 2, max(a.Y, b.Y) + 2}}
	for i := range d.Strokes {
		s := &d.Strokes[i]
		for k := range s.Points[1:] {
			if s.Pen == Wide && strip.crossedBy(s.Points[k], s.Points[k+1]) {
				return false
			}
		}
	}
	return true
}

// headsFree says whether arrowheads at the ends of a dimension line, within or without, would
// lie on no text.
func (d *Drawing) headsFree(a, b Point) bool {
	along := b.sub(a).unit()
	return d.untouched(a.sub(along.times(2*headLong)), b.add(along.times(2*headLong)))
}

func (d *Drawing) dimensionAt(m Dimension, out, a, b Point, t Text) {
	for _, e := range [2][2]Point{{m.From, a}, {m.To, b}} {
		d.Line(Narrow, e[0].add(out.times(gap)), e[1].add(out.times(over)))
	}
	along := b.sub(a).unit()
	l := b.sub(a).len()
	x := t.At.sub(a).dot(along)
	if l > 2.5*headLong {
		end := Room(t.Words, t.Height) // the line runs on under a text that stands beside it
		d.Line(Narrow, a.add(along.times(min(x, 0))), a.add(along.times(max(x+end, l))))
		d.Heads = append(d.Heads, Head{a, along.times(-1)}, Head{b, along})
	} else {
		end := Room(t.Words, t.Height)
		d.Line(Narrow, a.add(along.times(min(x, -2*headLong))), a.add(along.times(max(x+end, l+2*headLong))))
		d.Heads = append(d.Heads, Head{a, along}, Head{b, along.times(-1)})
	}
	d.Texts = append(d.Texts, t)
}

// Leader draws an arrow to a place and a text at its other end: of sixteen directions and some
// lengths that are free the one whose arrow is short and crosses little. It is an error if none is free.
func (d *Drawing) Leader(at Point, words string) error { return d.leader(at, 0, words) }

// leader is Leader with an arrow that ends on a circle round the place and points to its middle.
func (d *Drawing) leader(middle Point, radius float64, words string) error {
	if !finite(middle.X, middle.Y, radius) {
		return errors.New("a leader's place is no number")
	}
	high := d.capitals()
	w := Room(words, high)
	var best struct {
		at, knee, end Point
		text          Text
		costs         float64
	}
	best.costs = math.Inf(1)
	for _, l := range []float64{12, 18, 26, 36, 50, 70} {
		for k := range 16 {
			a := math.Pi/4 + float64((k+1)/2)*float64(1-k%2*2)*math.Pi/8
			sin, cos := math.Sincos(a)
			if math.Abs(cos) < 0.2 || math.Abs(sin) < 0.3 || l >= best.costs {
				continue
			}
			at := middle.add(Point{cos, sin}.times(radius))
			knee := at.add(Point{cos, sin}.times(l))
			end := knee.add(Point{math.Copysign(w+1, cos), 0})
			t := Text{At: Point{min(knee.X, end.X) + 0.5, knee.Y + above + 0.35*high}, Words: words, Height: high}
			if !d.free(t) || d.crossesNarrow(knee, end) || !d.untouched(at, knee) || !d.untouched(knee, end) || t.box().crossedBy(at, knee) {
				continue
			}
			if c := l + 8*float64(d.crossed(at.add(Point{cos, sin}), knee)) + 0.01*float64(k); c < best.costs {
				best.at, best.knee, best.end, best.text, best.costs = at, knee, end, t, c
			}
		}
	}
	if math.IsInf(best.costs, 1) {
		return fmt.Errorf("there is no room for the note %q", words)
	}
	d.Path(Narrow, best.at, best.knee, best.end)
	d.Heads = append(d.Heads, Head{best.at, best.at.sub(best.knee).unit()})
	d.Texts = append(d.Texts, best.text)
	return nil
}

// crossed counts the lines that a straight stretch crosses.
func (d *Drawing) crossed(a, b Point) (n int) {
	for i := range d.Strokes {
		s := &d.Strokes[i]
		for k := range s.Points[1:] {
			p, q := s.Points[k], s.Points[k+1]
			if (b.sub(a).cross(p.sub(a)) > 0) != (b.sub(a).cross(q.sub(a)) > 0) && (q.sub(p).cross(a.sub(p)) > 0) != (q.sub(p).cross(b.sub(p)) > 0) {
				n++
			}
		}
	}
	return n
}

// untouched says whether a narrow line would run through no text.
func (d *Drawing) untouched(a, b Point) bool {
	for _, t := range d.Texts {
		if t.box().grown(0.3).crossedBy(a, b) {
			return false
		}
	}
	return true
}

// crossesNarrow says whether a line would cross, or run along, another narrow one.
func (d *Drawing) crossesNarrow(a, b Point) bool {
	strip := box{Point{min(a.X, b.X) - 1, min(a.Y, b.Y) - 1}, Point{max(a.X, b.X) + 1, max(a.Y, b.Y) + 1}}
	for i := range d.Strokes {
		s := &d.Strokes[i]
		for k := range s.Points[1:] {
			if s.Pen == Narrow && strip.crossedBy(s.Points[k], s.Points[k+1]) {
				return true
			}
		}
	}
	return false
}

// Write puts a text at a place; it is an error if it would overlap something.
func (d *Drawing) Write(at Point, words string, height float64) error {
	t := Text{At: at, Words: words, Height: height}
	if !finite(at.X, at.Y, height) || !(height > 0) || !d.free(t) {
		return fmt.Errorf("there is no room for %q at %s, %s", words, number(at.X), number(at.Y))
	}
	d.Texts = append(d.Texts, t)
	return nil
}

// Hatch fills outlines with narrow lines at 45 degrees, apart mm from each other; what lies in
// an even number of outlines is left free.
func (d *Drawing) Hatch(outlines [][]Point, apart float64) error {
	if !(apart >= 0.5) || !finite(apart) {
		return fmt.Errorf("hatching %v mm apart; at least 0.5", apart)
	}
	// Each hatching line is where y − x = c·√2.
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, o := range outlines {
		for _, p := range o {
			c := (p.Y - p.X) / math.Sqrt2
			lo, hi = min(lo, c), max(hi, c)
		}
	}
	if !finite(lo, hi) {
		return nil
	}
	for k := math.Ceil(lo/apart) + 0; k*apart < hi; k++ {
		xs := crossings(outlines, k*apart)
		for i := 0; i+1 < len(xs); i += 2 {
			if xs[i+1]-xs[i] > 0.2 {
				d.Line(Narrow, slanted(xs[i], k*apart), slanted(xs[i+1], k*apart))
			}
		}
	}
	return nil
}

func slanted(t, c float64) Point { return Point{(t - c) / math.Sqrt2, (t + c) / math.Sqrt2} }
