package sketch

import (
	"fettle/eval/solid"

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

// The sheet: A4 lying or A3, borders as ISO 5457.
var sheets = [2][2]float64{{297, 210}, {420, 297}}

const (
	binding = 20.0 // the border on the left
	border  = 10.0
	titles  = 22.0 // height of the strip at the foot
	apart   = 26.0 // between two views, with room for dimensions
	room    = 24.0 // between a view and the border, for dimensions
)

// layout is how big a part's views are on the sheet and where the lower left corner of each
// lies.
type layout struct {
	sheet                 [2]float64
	scale                 [2]int
	w, d, h               float64 // on the sheet
	iw, ih                float64 // of the isometric view
	front, top, side, iso Point
}

func (l *layout) factor() float64 { return float64(l.scale[0]) / float64(l.scale[1]) }

// fit finds the smaller sheet and the largest scale at which all views lie on it: on A4 down
// to 1:2, else on A3.
func fit(lo, hi solid.Vec, pr Projection) (layout, error) {
	size := hi.Sub(lo)
	for i, sheet := range sheets {
		for _, s := range scales {
			if i == 0 && s[1] > 2 {
				break
			}
			l := layout{sheet: sheet, scale: s}
			f := l.factor()
			l.w, l.d, l.h = size[0]*f, size[1]*f, size[2]*f
			cos, sin := math.Cos(math.Pi/6), 0.5
			l.iw, l.ih = (l.w+l.d)*cos, (l.w+l.d)*sin+l.h
			if l.place(pr) {
				return l, nil
			}
		}
	}
	return layout{}, fmt.Errorf("a part of %s x %s x %s mm does not go on a sheet A3 at 1:1000", Figure(size[0]), Figure(size[1]), Figure(size[2]))
}

// place lays the views out; false where they do not go on the sheet.
func (l *layout) place(pr Projection) bool {
	right := max(l.d, l.iw)
	below := max(l.d, l.ih)
	x0, y0 := binding+room, border+titles+room/3
	width := room + l.w + apart + right + room/2
	height := room/3 + l.h + apart + below + room/3
	if width > l.sheet[0]-binding-border || height > l.sheet[1]-2*border-titles {
		return false
	}
	// what is left over goes between and around
	sx, sy := (l.sheet[0]-binding-border-width)/3, (l.sheet[1]-2*border-titles-height)/3
	x1 := x0 + sx
	x2 := x1 + l.w + apart + sx
	low, high := y0+sy, y0+sy+below+apart+sy
	if pr == ThirdAngle { // front view below, the view from above over it
		l.front, l.top = Point{x1, low}, Point{x1, low + l.h + apart + sy}
		l.side, l.iso = Point{x2, low}, Point{x2, low + l.h + apart + sy}
		return true
	}
	l.front, l.top = Point{x1, high}, Point{x1, high - apart - sy - l.d}
	l.side, l.iso = Point{x2, high}, Point{x2, high - apart - sy - l.ih}
	return true
}

// Part draws a part in three views and an isometric one, with its overall sizes. In first angle
// projection the view from above lies below and the view from the left on the right; in third
// angle the view from above lies above and the view from the right on the right. Sizes are
// those of the metal in mm; the isometric view shows no hidden lines, and its axes are to scale.
func Part(name string, p *solid.Piece, pr Projection) (*Drawing, error) {
	var lo, hi solid.Vec
	for i := range 3 {
		lo[i], hi[i] = p.Extent(i, -1), p.Extent(i, 1)
	}
	if !finite(lo[0], lo[1], lo[2], hi[0], hi[1], hi[2]) {
		return nil, errors.New("there is no metal to draw")
	}
	l, err := fit(lo, hi, pr)
	if err != nil {
		return nil, err
	}
	d := &Drawing{Width: l.sheet[0], Height: l.sheet[1], Title: name}
	side, hand := Left, -1.0
	if pr == ThirdAngle {
		side, hand = Right, 1
	}
	f := l.factor()
	iso := math.Sqrt(1.5) * f
	views := [4]View{Front, Top, side, Isometric(hand)}
	seen, err := p.SeenFrom(views[0].Towards, views[1].Towards, views[2].Towards, views[3].Towards)
	if err != nil {
		return nil, err
	}
	for i, corner := range [4]Point{l.front, l.top, l.side, l.iso} {
		v, scale, flat := views[i], f, i < 3
		if !flat {
			scale = iso
		}
		d.Strokes = append(d.Strokes, v.lines(seen[i], v.origin(lo, hi, corner, scale), scale, flat)...)
	}
	if err := d.frame(name, l, pr); err != nil {
		return nil, err
	}
	return d, d.overall(&l, hi.Sub(lo))
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

// overall draws the three sizes: width and height at the view from the front, depth at the
// view from above.
func (d *Drawing) overall(l *layout, size solid.Vec) error {
	for _, m := range []Dimension{
		{l.front, l.front.add(Point{l.w, 0}), Point{0, -1}, Figure(size[0])},
		{l.front, l.front.add(Point{0, l.h}), Point{-1, 0}, Figure(size[2])},
		{l.top, l.top.add(Point{0, l.d}), Point{-1, 0}, Figure(size[1])},
	} {
		if err := d.Dimension(m); err != nil {
			return err
		}
	}
	return nil
}

// frame draws the border and the strip at the foot: name, scale, unit and projection.
func (d *Drawing) frame(name string, l layout, pr Projection) error {
	x0, y0, x1, y1 := binding, border, d.Width-border, d.Height-border
	d.Path(Wide, Point{x0, y0}, Point{x1, y0}, Point{x1, y1}, Point{x0, y1}, Point{x0, y0})
	foot := y0 + titles
	d.Line(Wide, Point{x0, foot}, Point{x1, foot})
	split := x1 - 150
	d.Line(Narrow, Point{split, y0}, Point{split, foot})
	height := 5.0
	if Room(name, height) > split-x0-8 {
		height = lettering
	}
	if err := d.Write(Point{x0 + 4, y0 + 8}, shorten(name, height, split-x0-8), height); err != nil {
		return err
	}
	for i, words := range []string{fmt.Sprintf("scale %d:%d", l.scale[0], l.scale[1]), "sizes in mm, overall"} {
		if err := d.Write(Point{split + 4, foot - 8.5 - 7.5*float64(i)}, words, lettering); err != nil {
			return err
		}
	}
	if err := d.Write(Point{split + 80, y0 + 9}, pr.String(), lettering); err != nil {
		return err
	}
	d.symbol(Point{x1 - 19, y0 + titles/2}, pr)
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
