// Package sketch draws on a sheet of paper: views, sections, dimensions and notes as exact
// lines, written as SVG.
//
// Lengths are millimetres on the paper; the datum of a sheet is its lower left corner, x to
// the right and y up. What is drawn of a part is its size times the scale. Lines are those of
// ISO 128: wide continuous for visible edges, narrow dashed for hidden ones, narrow chain for
// centre lines, narrow continuous for dimensions and hatching; dimensions follow ISO 129-1,
// lettering ISO 3098, scales ISO 5455, projection ISO 5456-2 (all from memory). Everything is
// black and can be read without colour.
//
// No text overlaps another text or a wide line: whatever has a choice of places takes the first
// that is free, and is an error if none is.
package sketch

import (
	"math"
)

// Point is a place on the sheet, in mm from its lower left corner.
type Point struct{ X, Y float64 }

func (a Point) add(b Point) Point       { return Point{a.X + b.X, a.Y + b.Y} }
func (a Point) sub(b Point) Point       { return Point{a.X - b.X, a.Y - b.Y} }
func (a Point) times(f float64) Point   { return Point{a.X * f, a.Y * f} }
func (a Point) dot(b Point) float64     { return a.X*b.X + a.Y*b.Y }
func (a Point) cross(b Point) float64   { return a.X*b.Y - a.Y*b.X }
func (a Point) len() float64            { return math.Sqrt(a.X*a.X + a.Y*a.Y) }
func (a Point) left() Point             { return Point{-a.Y, a.X} }
func (a Point) unit() Point             { return a.times(1 / a.len()) }
func between(x, lo, hi float64) float64 { return min(max(x, lo), hi) }
func finite(xs ...float64) bool {
	for _, x := range xs {
		if math.IsNaN(x) || math.Abs(x) > 1e6 {
			return false
		}
	}
	return true
}

// Pen is a kind of line.
type Pen uint8

const (
	Wide   Pen = iota // visible edges and outlines
	Hidden            // hidden edges
	Centre            // axes and centre marks
	Narrow            // dimensions, extension lines, leaders, hatching
	Beside            // outlines of things that stand beside the part: jaws, parallels, tools
)

// The two widths of lines (ISO 128-2, 2:1, from memory), and the parts of dashed and chain
// lines: dashes 12, long dashes 24, gaps 3 and dots at most 0.5 widths.
const (
	wide   = 0.5
	narrow = 0.25
)

// Stroke is a line on the sheet: through Points, or an arc of an ellipse, Middle + cos t·U +
// sin t·V for t from From to To. Points are given of an arc too, within 0.02 mm.
type Stroke struct {
	Pen          Pen
	Points       []Point
	Arc          bool
	Middle, U, V Point
	From, To     float64
}

// Text is one line of lettering: At is the left end of its foot line, and it runs in the
// direction of Turn, 0 or 90 degrees anticlockwise.
type Text struct {
	At     Point
	Words  string
	Height float64 // of capitals
	Turn   float64
	End    bool // At is the right end of its foot line; only of level ones
}

// Head is an arrowhead: a filled triangle with its tip At, pointing along To.
type Head struct{ At, To Point }

// Drawing is a sheet of paper with what is drawn on it.
type Drawing struct {
	Width, Height float64
	Title         string // for those who cannot see it
	Strokes       []Stroke
	Texts         []Text
	Heads         []Head
	Letters       float64 // height of capitals of dimensions and notes; nought: 3.5
	within        box     // where texts may still stand; nought: all over the sheet
}

// capitals is the height of capitals of dimensions and notes.
func (d *Drawing) capitals() float64 {
	if d.Letters > 0 {
		return d.Letters
	}
	return lettering
}

// Line draws a straight line.
func (d *Drawing) Line(pen Pen, a, b Point) {
	d.Strokes = append(d.Strokes, Stroke{Pen: pen, Points: []Point{a, b}})
}

// Path draws a line through several places.
func (d *Drawing) Path(pen Pen, ps ...Point) {
	d.Strokes = append(d.Strokes, Stroke{Pen: pen, Points: ps})
}

// Circle draws a circle.
func (d *Drawing) Circle(pen Pen, middle Point, r float64) {
	d.Strokes = append(d.Strokes, Ellipse(pen, middle, Point{r, 0}, Point{0, r}, 0, 2*math.Pi))
}

// Ellipse gives an arc of an ellipse with its two half diameters; of a circle they are equally
// long and square to each other.
func Ellipse(pen Pen, middle, u, v Point, from, to float64) Stroke {
	s := Stroke{Pen: pen, Arc: true, Middle: middle, U: u, V: v, From: from, To: to}
	r := max(u.len(), v.len(), 0.1)
	n := max(4, int(math.Ceil((to-from)/(2*math.Acos(max(0.5, 1-0.01/r))))))
	for i := range n + 1 {
		s.Points = append(s.Points, s.at(from+(to-from)*float64(i)/float64(n)))
	}
	return s
}

// at gives the place of an arc at an angle.
func (s *Stroke) at(t float64) Point {
	sin, cos := math.Sincos(t)
	return s.Middle.add(s.U.times(cos)).add(s.V.times(sin))
}
