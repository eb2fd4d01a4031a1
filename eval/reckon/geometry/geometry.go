// Package geometry is the plain geometry of the bench: holes on a circle, chords and arcs, polygons
// from round, rounded corners and tangents, compound angles, volume and mass.
//
// Lengths are millimetres, angles degrees at the edges. x runs left to right and y front to back, an
// angle counts from x towards y. All is trigonometry in float64, error below 1e-12 of the largest figure
// given; where a comment names no source, that is where a formula is from.
//
// Where a function gives an error, it names the figure that is out of range or what does not go
// together; what is not a number is out of every range.
package geometry

import (
	"fmt"
	"math"
)

// The ranges taken.
const (
	leastLength = 1e-3 // mm
	mostLength  = 1e5
	MostHoles   = 1000
)

// in holds a figure to its range, both ends in; what is no number is in none.
func in(name string, x, least, most float64, unit string) error {
	if !(x >= least && x <= most) {
		return fmt.Errorf("%s: %v%s is not from %v to %v%s", name, x, unit, least, most, unit)
	}
	return nil
}

func length(name string, x float64) error { return in(name, x, leastLength, mostLength, " mm") }

func whole(name string, n, least, most int) error {
	if n < least || n > most {
		return fmt.Errorf("%s: %d is not from %d to %d", name, n, least, most)
	}
	return nil
}

func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

func rad(deg float64) float64 { return deg * math.Pi / 180 }
func deg(rad float64) float64 { return rad * 180 / math.Pi }

// sin and cos of degrees are exact at the quarters, so that a hole on an axis lies on it.
func sin(d float64) float64 { return cos(d - 90) }

func cos(d float64) float64 {
	switch d = math.Mod(math.Abs(d), 360); d {
	case 90, 270:
		return 0
	}
	return math.Cos(rad(d))
}

// Point is a place, mm.
type Point struct{ X, Y float64 }

// Circle is a circle of equally spaced holes, 1 to MostHoles. Diameters are 0.001 to 100,000 mm,
// the first angle within 360 degrees either way, the middle within 100,000 mm.
type Circle struct {
	Holes    int
	Diameter float64 // through the middles of the holes, mm
	First    float64 // angle of the first hole, degrees
	Middle   Point   // of the circle from the datum: the zero Point counts from the centre
}

func (c Circle) check() error {
	return first(whole("holes", c.Holes, 1, MostHoles), length("diameter of the circle", c.Diameter), in("angle of the first hole", c.First, -360, 360, " degrees"),
		in("middle of the circle", c.Middle.X, -mostLength, mostLength, " mm"), in("middle of the circle", c.Middle.Y, -mostLength, mostLength, " mm"))
}

// Places gives the middles of the holes, mm, in order of angle from the first. An error names the
// figure out of range.
func (c Circle) Places() ([]Point, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	out := make([]Point, c.Holes)
	for n := range out {
		a := c.First + 360*float64(n)/float64(c.Holes)
		out[n] = Point{c.Middle.X + c.Diameter/2*cos(a), c.Middle.Y + c.Diameter/2*sin(a)}
	}
	return out, nil
}

// Chord gives the straight distance from a hole to the one so many holes on, 1 to one less than
// there are, in mm: what dividers are set to. D sin(180 on/n). Of a single hole it is 0. An error
// names the figure out of range.
func (c Circle) Chord(on int) (float64, error) {
	if err := first(c.check(), whole("holes on", on, 1, max(c.Holes-1, 1))); err != nil {
		return 0, err
	}
	return c.Diameter * math.Sin(math.Pi*float64(on)/float64(c.Holes)), nil
}

// Arc is a piece of a circle. Make one with ByAngle, ByLength, ByChord or ByHeight, which refuse
// what is out of range; the methods refuse nothing.
type Arc struct {
	Radius float64 // mm
	Angle  float64 // degrees, over 0 to 360
}

// Length gives the way along the arc, mm.
func (a Arc) Length() float64 { return a.Radius * rad(a.Angle) }

// Chord gives the straight distance between its ends, mm. It is always less than the way along it.
func (a Arc) Chord() float64 { return 2 * a.Radius * math.Sin(rad(a.Angle/2)) }

// Height gives how far the middle of the arc stands off its chord, mm: 2 r sin²(angle/4).
func (a Arc) Height() float64 { return 2 * a.Radius * math.Pow(math.Sin(rad(a.Angle/4)), 2) }

// ByAngle is an arc of a radius, 0.001 to 100,000 mm, over an angle, 1e-6 to 360 degrees. An error
// names the figure out of range.
func ByAngle(radius, angle float64) (Arc, error) {
	return Arc{radius, angle}, first(length("radius", radius), in("angle", angle, 1e-6, 360, " degrees"))
}

// ByLength is an arc of a radius, 0.001 to 100,000 mm, with a way along it, 1e-6 mm to once round:
// a dimension that was measured round the curve. An error names the figure out of range.
func ByLength(radius, along float64) (Arc, error) {
	if err := first(length("radius", radius), in("length along the arc", along, 1e-6, 2*math.Pi*radius*(1+1e-12), " mm")); err != nil {
		return Arc{}, err
	}
	return Arc{radius, deg(along / radius)}, nil
}

// ByChord is the arc of a radius, 0.001 to 100,000 mm, over a chord, 1e-6 mm to the diameter, the
// smaller of the two. An error names the figure out of range.
func ByChord(radius, chord float64) (Arc, error) {
	if err := first(length("radius", radius), in("chord", chord, 1e-6, 2*radius, " mm")); err != nil {
		return Arc{}, err
	}
	return Arc{radius, deg(2 * math.Asin(chord/(2*radius)))}, nil
}

// ByHeight is the arc that stands a height off its chord: r = (c² + 4h²)/8h (Machinery's
// Handbook). More than half a circle where the height is more than half the chord. Chord 0.001 to
// 100,000 mm, height 1e-6 to 100,000; an error names the figure out of range.
func ByHeight(chord, height float64) (Arc, error) {
	if err := first(length("chord", chord), in("height of the arc", height, 1e-6, mostLength, " mm")); err != nil {
		return Arc{}, err
	}
	r := (chord*chord + 4*height*height) / (8 * height)
	return Arc{r, deg(4 * math.Atan(2*height/chord))}, nil
}

// Flat gives the depth of a flat of a width on a round, or by how much the crown of a round stands
// above the edges of a keyway of that width, mm: r - sqrt(r² - w²/4). Diameter 0.001 to 100,000,
// width 1e-6 to the diameter; an error names the figure out of range.
func Flat(diameter, width float64) (float64, error) {
	if err := first(length("diameter", diameter), in("width", width, 1e-6, diameter, " mm")); err != nil {
		return 0, err
	}
	r := diameter / 2
	return width * width / 4 / (r + math.Sqrt(max(r*r-width*width/4, 0))), nil
}

// FlatWidth gives the width of a flat of a depth on a round, mm, and the chord of a circle that
// stands a height below its arc: 2 sqrt(h (D - h)). Diameter 0.001 to 100,000, depth 1e-6 to the
// diameter; an error names the figure out of range.
func FlatWidth(diameter, depth float64) (float64, error) {
	if err := first(length("diameter", diameter), in("depth", depth, 1e-6, diameter, " mm")); err != nil {
		return 0, err
	}
	return 2 * math.Sqrt(depth*(diameter-depth)), nil
}

// Scallop gives the height of the ridges, mm, that a round-nosed tool of a radius, 0.001 to 50,000
// mm, leaves at a step, 1e-6 mm to its diameter: the Flat of that width. An error names the figure
// out of range.
func Scallop(radius, step float64) (float64, error) {
	if err := length("radius", radius); err != nil {
		return 0, err
	}
	return Flat(2*radius, step)
}
