package sketch

import (
	"cmp"
	"fettle/eval/solid"
	"slices"

	"errors"
	"fmt"
	"math"
)

// Projection is how views are laid out (ISO 5456-2).
type Projection uint8

const (
	FirstAngle Projection = iota // the view from above lies below the view from the front
	ThirdAngle                   // it lies above it
)

func (p Projection) String() string {
	return [2]string{"first angle", "third angle"}[p&1]
}

// scales are those of ISO 5455, the largest first; of a part it is paper : part.
var scales = func() (out [][2]int) {
	for _, s := range []int{50, 20, 10, 5, 2, 1} {
		out = append(out, [2]int{s, 1})
	}
	for _, f := range []int{1, 10, 100} {
		for _, s := range []int{2, 5, 10} {
			out = append(out, [2]int{1, s * f})
		}
	}
	return out
}()

// Paper is what a part is drawn on.
type Paper uint8

const (
	Standard Paper = iota // A4 lying or A3, borders as ISO 5457
	Column                // as wide as the text of an A4 page with 12 mm margins, and as high as need be: it is printed true to scale
)

// format is the sheets of a paper, mm, the first to be tried first, and their borders.
type format struct {
	sheets                  [][2]float64
	binding, border, titles float64 // the border on the left, the others, the strip at the foot
	letters                 float64 // height of capitals
}

var formats = [2]format{
	Standard: {[][2]float64{{297, 210}, {420, 297}}, 20, 10, 22, lettering},
	Column:   {[][2]float64{{186, 90}, {186, 110}, {186, 135}, {186, 170}, {186, 245}}, 1, 1, 13, 2.5},
}

// layout is how big a part's views are on the sheet and where the lower left corner of each
// lies.
type layout struct {
	format
	sheet                 [2]float64
	scale                 [2]int
	w, d, h               float64 // on the sheet
	pictorial             float64 // the isometric view is smaller than the others by this factor
	iw, ih                float64 // of the isometric view
	front, top, side, iso Point
	below, left           [3]float64 // room for lengths, by view
	turned, noted         bool
}

func (l *layout) factor() float64 { return float64(l.scale[0]) / float64(l.scale[1]) }

// fits lists the ways in which all views with their lengths lie on a sheet: on the first down to full
// size, then on the next, then smaller, the largest scale of each first.
func fits(size solid.Vec, pr Projection, views [4]View, s *Sizes) (out []layout) {
	on := formats[s.Paper]
	for i, sheet := range on.sheets {
		for _, sc := range scales {
			if i < len(on.sheets)-1 && sc[1] > 2 {
				break
			}
			l := layout{format: on, sheet: sheet, scale: sc, turned: s.Turned, noted: len(s.Notes) > 0}
			f := l.factor()
			l.w, l.d, l.h = size[0]*f, size[1]*f, size[2]*f
			if max(l.w, l.d, l.h) > sheet[0] {
				continue
			}
			for k, v := range views[:3] {
				var lying, up []Length
				for _, x := range s.Lengths {
					switch way, _ := v.lies(x.Axis); {
					case x.In != Which(k):
					case way == 1:
						lying = append(lying, x)
					case way == 2:
						up = append(up, x)
					}
				}
				l.below[k], l.left[k] = margin(lying, f, on.letters), margin(up, f, on.letters)
			}
			for _, l.pictorial = range []float64{1, 0.5} {
				l.iw, l.ih = (l.w+l.d)*math.Cos(math.Pi/6)*l.pictorial, ((l.w+l.d)/2+l.h)*l.pictorial
				if l.place(pr) {
					out = append(out, l)
					break
				}
			}
		}
	}
	// On a larger sheet at full size rather than on a smaller one at half.
	slices.SortStableFunc(out, func(a, b layout) int {
		return cmp.Compare(min(1, b.factor()), min(1, a.factor()))
	})
	return out
}

// place lays the views out; false where they do not go on the sheet. Round every view lies some
// room for words that stand beside it. The isometric view stands under or over the view from the side, or,
// where there is no view from above and so it takes less room, in the place of that.
func (l *layout) place(pr Projection) bool {
	return l.turned && l.placed(pr, true) || l.placed(pr, false)
}

func (l *layout) placed(pr Projection, isoFirst bool) bool {
	around := 6.0
	if l.noted {
		around = 4 * l.letters
	}
	// The two columns: widths, and what lies in them beside the row of the view from the front.
	left1 := max(around, l.left[InFront], l.left[Above])
	left2 := max(around, l.left[Aside])
	first, second := l.w, max(left2+l.d, around+l.iw)
	more := [2]float64{l.below[Above] + l.d, l.ih}
	if l.turned {
		more[0] = 0
	}
	if isoFirst {
		first, second, more = max(l.w, l.iw), left2+l.d, [2]float64{l.ih, 0}
	}
	under := [2]float64{l.below[InFront], l.below[Aside]}
	var low, high float64 // room below and above the row
	for i := range 2 {
		if more[i] > 0 {
			more[i] += around
		}
		if pr == FirstAngle {
			low, high = max(low, under[i]+more[i], around), around
		} else {
			low, high = max(low, under[i], around), max(high, more[i]+around)
		}
	}
	w, h := left1+first+around+second+around, low+l.h+high
	bottom := l.border + l.titles
	if w > l.sheet[0]-l.binding-l.border || h > l.sheet[1]-l.border-bottom-around {
		return false
	}
	// what is left over goes between and around
	sx, sy := (l.sheet[0]-l.binding-l.border-w)/3, (l.sheet[1]-l.border-bottom-around-h)/3
	x1 := l.binding + sx + left1
	x2 := x1 + first + around + sx
	y := bottom + low + sy
	l.side = Point{x2 + left2, y}
	xi := x2 + max(around, (second-l.iw)/2)
	if isoFirst {
		xi = x1 + max(0, (l.w-l.iw)/2)
	}
	if pr == ThirdAngle { // front view below, the view from above over it
		l.front, l.top, l.iso = Point{x1, y}, Point{x1, y + l.h + around + sy + l.below[Above]}, Point{xi, y + l.h + around + sy}
		return true
	}
	y += sy
	l.front, l.side.Y = Point{x1, y}, y
	l.top = Point{x1, y - l.below[InFront] - around - sy - l.d}
	l.iso = Point{xi, y - l.below[Aside] - around - sy - l.ih}
	if isoFirst {
		l.iso.Y = y - l.below[InFront] - around - sy - l.ih
	}
	return true
}

// tries is in how many ways of laying out room for all sizes is looked for.
const tries = 6

// Part draws a part in three views and an isometric one, with its sizes. In first angle
// projection the view from above lies below and the view from the left on the right; in third
// angle the view from above lies above and the view from the right on the right. The isometric view
// shows no hidden lines, and its axes are to scale or half as long. What of the sizes found no room in
// the best of a few layouts is given back.
func Part(name string, p *solid.Piece, pr Projection, sizes Sizes) (*Drawing, []string, error) {
	var lo, hi solid.Vec
	for i := range 3 {
		lo[i], hi[i] = p.Extent(i, -1), p.Extent(i, 1)
	}
	if !finite(lo[0], lo[1], lo[2], hi[0], hi[1], hi[2]) {
		return nil, nil, errors.New("there is no metal to draw")
	}
	side, hand := Left, -1.0
	if pr == ThirdAngle {
		side, hand = Right, 1
	}
	views := [4]View{Front, Top, side, Isometric(hand)}
	size := hi.Sub(lo)
	all := fits(size, pr, views, &sizes)
	if len(all) == 0 {
		sizes.Notes, sizes.Lengths = nil, nil
		if all = fits(size, pr, views, &sizes); len(all) == 0 {
			return nil, nil, fmt.Errorf("a part of %s x %s x %s mm does not go on the largest sheet at 1:1000", Figure(size[0]), Figure(size[1]), Figure(size[2]))
		}
	}
	seen, err := p.SeenFrom(views[0].Towards, views[1].Towards, views[2].Towards, views[3].Towards)
	if err != nil {
		return nil, nil, err
	}
	var best *Drawing
	var left []string
	for i := range chosen(all) {
		d, out, err := all[i].draw(name, seen, views, lo, hi, pr, &sizes)
		if err != nil {
			return nil, nil, err
		}
		if best == nil || len(out) < len(left) {
			best, left = d, out
		}
		if len(left) == 0 {
			break
		}
	}
	return best, left, nil
}

// chosen is how many of the layouts are tried.
func chosen(all []layout) []layout { return all[:min(tries, len(all))] }

func (l *layout) draw(name string, seen [][]solid.Edge, views [4]View, lo, hi solid.Vec, pr Projection, sizes *Sizes) (*Drawing, []string, error) {
	d := &Drawing{Width: l.sheet[0], Height: l.sheet[1], Title: name, Letters: l.letters}
	f := l.factor()
	var at [4]Point
	for i, corner := range [4]Point{l.front, l.top, l.side, l.iso} {
		v, scale, flat := views[i], f, i < 3
		if !flat {
			scale = f * math.Sqrt(1.5) * l.pictorial
		}
		at[i] = v.origin(lo, hi, corner, scale)
		if i == int(Above) && l.turned {
			continue
		}
		d.Strokes = append(d.Strokes, v.lines(seen[i], at[i], scale, flat)...)
	}
	for _, x := range sizes.Lines {
		v := views[x.In]
		d.Line(Centre, at[x.In].add(v.flat(x.A).times(f)), at[x.In].add(v.flat(x.B).times(f)))
	}
	if err := d.frame(name, l, pr, sizes.General); err != nil {
		return nil, nil, err
	}
	d.within = box{Point{l.binding + 1, l.border + l.titles + 1}, Point{d.Width - l.border - 1, d.Height - l.border - 1}}
	var left []string
	for i, v := range views[:3] {
		left = append(left, d.laid(v, Which(i), at[i], f, lo, hi, sizes.Lengths)...)
	}
	for _, n := range sizes.Notes {
		v := views[n.In]
		if err := d.leader(at[n.In].add(v.flat(n.At).times(f)), n.Radius*f, n.Words); err != nil {
			left = append(left, n.Words)
		}
	}
	return d, left, nil
}

// origin gives where the part's origin lies so that the lower left corner of its box lies at a
// place.
func (v View) origin(lo, hi solid.Vec, corner Point, scale float64) Point {
	least := Point{math.Inf(1), math.Inf(1)}
	for i := range 8 {
		c := lo
		for a := range 3 {
			if i>>a&1 == 1 {
				c[a] = hi[a]
			}
		}
		q := v.flat(c)
		least = Point{min(least.X, q.X), min(least.Y, q.Y)}
	}
	return corner.sub(least.times(scale))
}

// frame draws the border and the strip at the foot: scale, unit, general tolerance and projection, and on
// a sheet of the standard the name.
func (d *Drawing) frame(name string, l *layout, pr Projection, general string) error {
	x0, y0, x1, y1 := l.binding, l.border, d.Width-l.border, d.Height-l.border
	d.Path(Wide, Point{x0, y0}, Point{x1, y0}, Point{x1, y1}, Point{x0, y1}, Point{x0, y0})
	foot := y0 + l.titles
	d.Line(Wide, Point{x0, foot}, Point{x1, foot})
	if l.titles > 20 {
		split := x1 - 150
		d.Line(Narrow, Point{split, y0}, Point{split, foot})
		height := 5.0
		if Room(name, height) > split-x0-8 {
			height = l.letters
		}
		if err := d.Write(Point{x0 + 4, y0 + 8}, shorten(name, height, split-x0-8), height); err != nil {
			return err
		}
	}
	if general == "" {
		general = "no general tolerance"
	}
	scale := fmt.Sprintf("scale %d:%d; sizes in mm", l.scale[0], l.scale[1])
	proj := x1 - 70
	if l.titles < 20 {
		proj = x1 - 34 - Room(pr.String(), l.letters)
	}
	one, two := Point{x1 - 146, foot - 8.5}, Point{x1 - 146, foot - 16}
	if l.titles < 20 {
		one = Point{x0 + 4, y0 + l.titles/2 - 2}
		two = Point{one.X + Room(scale, l.letters) + 6, one.Y}
		general = shorten(general, l.letters, proj-3-two.X)
	}
	if err := errors.Join(d.Write(one, scale, l.letters), d.Write(two, general, l.letters)); err != nil {
		return err
	}
	if err := d.Write(Point{proj, y0 + l.titles/2 - 2}, pr.String(), l.letters); err != nil {
		return err
	}
	d.symbol(Point{x1 - 19, y0 + l.titles/2}, pr)
	return nil
}

// shorten cuts a text to a width in mm.
func shorten(words string, height, width float64) string {
	r := []rune(words)
	if Room(words, height) <= width {
		return words
	}
	for len(r) > 0 && Room(string(r)+"...", height) > width {
		r = r[:len(r)-1]
	}
	return string(r) + "..."
}

// symbol draws the sign of a projection round a place: the frustum of a cone from the side and
// from its small end (ISO 5456-2, from memory): both
// rounds are seen, so it is the view from the left, where the frustum's small end is. In first
// angle that view lies on the right, in third angle on the left.
func (d *Drawing) symbol(at Point, pr Projection) {
	const big, small, long = 4.0, 2.0, 8.0
	side, rounds := at.X-10, at.X+9.0 // left edge of the frustum; middle of the circles
	if pr == ThirdAngle {
		rounds, side = at.X-9, at.X+2
	}
	d.Circle(Wide, Point{rounds, at.Y}, big)
	d.Circle(Wide, Point{rounds, at.Y}, small)
	d.Path(Wide, Point{side, at.Y - small}, Point{side + long, at.Y - big}, Point{side + long, at.Y + big},
		Point{side, at.Y + small}, Point{side, at.Y - small})
	d.Line(Centre, Point{side - 2, at.Y}, Point{side + long + 2, at.Y})
	d.Line(Centre, Point{rounds - big - 2, at.Y}, Point{rounds + big + 2, at.Y})
	d.Line(Centre, Point{rounds, at.Y - big - 2}, Point{rounds, at.Y + big + 2})
}

// Alone draws a part in the isometric view alone, hidden lines left out, on a small sheet of its
// own.
func Alone(name string, p *solid.Piece) (*Drawing, error) {
	const width, height, edge = 90.0, 70.0, 5.0
	var lo, hi solid.Vec
	for i := range 3 {
		lo[i], hi[i] = p.Extent(i, -1), p.Extent(i, 1)
	}
	if !finite(lo[0], lo[1], lo[2], hi[0], hi[1], hi[2]) {
		return nil, errors.New("there is no metal to draw")
	}
	v := Isometric(-1)
	s := Setting{Lo: lo, Hi: hi}
	w, h := s.span(v)
	f := min((width-2*edge)/w, (height-2*edge)/h)
	d := &Drawing{Width: width, Height: height, Title: name}
	corner := Point{(width - w*f) / 2, (height - h*f) / 2}
	ss, err := v.Lines(p, v.origin(lo, hi, corner, f), f, false)
	d.Strokes = ss
	return d, err
}
