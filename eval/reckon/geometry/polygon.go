package geometry

import (
	"fmt"
	"math"
)

// Polygon is a regular polygon on a round bar: its corners lie on the round. Make one with
// FromRound or OfFlats; the methods refuse nothing, and of no sides make no number.
type Polygon struct {
	Sides int
	Round float64 // over the corners, diameter, mm
}

// FromRound is the largest polygon, 3 to 360 sides, in a round of 0.001 to 100,000 mm. With the
// error for others the polygon means nothing.
func FromRound(sides int, round float64) (Polygon, error) {
	return Polygon{sides, round}, first(whole("sides", sides, 3, 360), length("diameter of the round", round))
}

// OfFlats is the polygon of a size across flats: the round that it wants is that over cos(180/n),
// 1.4142 of a square, 1.1547 of a hexagon, 1.0824 of an octagon. A metal allowance for cleaning up
// comes to it. Of an odd number of sides the size is twice the distance from the middle to a flat.
// 3 to 360 sides, 0.001 to 100,000 mm across; an error names the figure out of range.
func OfFlats(sides int, across float64) (Polygon, error) {
	if err := first(whole("sides", sides, 3, 360), length("across flats", across)); err != nil {
		return Polygon{}, err
	}
	return Polygon{sides, across / math.Cos(math.Pi/float64(sides))}, nil
}

// Across gives the size across flats, mm: round times cos(180/n); with an odd number of sides
// twice the distance from the middle to a flat. No number where there are no sides.
func (p Polygon) Across() float64 { return p.Round * math.Cos(math.Pi/float64(p.Sides)) }

// Side gives the width of a flat, mm: round times sin(180/n). No number where there are no sides.
func (p Polygon) Side() float64 { return p.Round * math.Sin(math.Pi/float64(p.Sides)) }

// Depth gives how deep each flat is cut into the round, mm: round times sin²(90/n). No number
// where there are no sides.
func (p Polygon) Depth() float64 {
	return p.Round * math.Pow(math.Sin(math.Pi/float64(2*p.Sides)), 2)
}

// Short is what is missing where a round is smaller than its polygon wants: flats of a size across on a
// round. The corners stay round, and each flat is narrower than it should be.
type Short struct {
	Lacks float64 // of diameter, mm; 0 or less: the corners come out sharp
	Flat  float64 // width of each flat, mm
	Want  float64 // that it should have
	Round float64 // width that stays round at each corner, along the arc, mm
}

// OnRound says how far a polygon of a size across flats fills out on a round. No flat is left on a
// round no larger than across flats: that is an error. Other errors name the figure out of range:
// 3 to 360 sides, sizes 0.001 to 100,000 mm.
func OnRound(sides int, across, round float64) (Short, error) {
	p, err := OfFlats(sides, across)
	if err := first(err, length("diameter of the round", round)); err != nil {
		return Short{}, err
	}
	if round <= across {
		return Short{}, fmt.Errorf("a round of %v mm has no metal for flats %v mm across", round, across)
	}
	s := Short{Lacks: p.Round - round, Flat: p.Side(), Want: p.Side()}
	if s.Lacks > 0 {
		half := math.Acos(across / round) // angle from the middle of a flat to its edge
		s.Flat, s.Round = round*math.Sin(half), round*(math.Pi/float64(sides)-half)
	}
	return s, nil
}

// RoundForBar gives the round that a rectangular bar of two widths, 0.001 to 100,000 mm, wants,
// mm: sqrt(a² + b²). With the error for others it means nothing.
func RoundForBar(a, b float64) (float64, error) {
	return math.Hypot(a, b), first(length("width", a), length("width", b))
}

// Corner is two straight sides that meet, at an angle of 1 to 179 degrees.
type Corner struct{ Angle float64 } // between them, degrees

// Fillet gives what a radius in the corner takes up, mm: where it touches the sides, from the
// corner, r/tan(A/2), and how far the arc stays off the corner, r(1/sin(A/2) - 1). The angle is 1
// to 179 degrees, the radius 0.001 to 100,000; an error names the figure out of range.
func (c Corner) Fillet(radius float64) (touches, off float64, err error) {
	if err := first(in("angle of the corner", c.Angle, 1, 179, " degrees"), length("radius", radius)); err != nil {
		return 0, 0, err
	}
	half := rad(c.Angle / 2)
	return radius / math.Tan(half), radius * (1/math.Sin(half) - 1), nil
}

// Tangent gives the lengths of the straight lines that touch two circles, mm, by their radii and
// the distance of their centres: one that leaves both on one side, and one that crosses between
// them. Circles that meet have no second one (0), and of circles of which one lies in the other
// there is none at all, which is an error, as is a length outside 0.001 to 100,000.
func Tangent(one, other, centres float64) (outside, between float64, err error) {
	err = first(length("radius", one), length("radius", other), length("centres", centres))
	if err == nil && centres < math.Abs(one-other) {
		err = fmt.Errorf("circles of radius %v and %v mm whose centres are %v mm apart lie in each other", one, other, centres)
	}
	if err != nil {
		return 0, 0, err
	}
	square := func(x float64) float64 { return math.Sqrt(max((centres-x)*(centres+x), 0)) }
	return square(math.Abs(one - other)), square(one + other), nil
}

// Blend gives the middle of an arc of a radius that touches two circles from outside, mm: along
// the line of centres from the first, and square to it. All lengths are 0.001 to 100,000; an error
// names the one that is not, or the least radius that would reach both.
func Blend(one, other, centres, radius float64) (Point, error) {
	err := first(length("radius", one), length("radius", other), length("centres", centres), length("radius between", radius))
	if err != nil {
		return Point{}, err
	}
	a, b := one+radius, other+radius
	x := (centres*centres + (a-b)*(a+b)) / (2 * centres)
	if a < math.Abs(x) {
		return Point{}, fmt.Errorf("an arc of radius %v mm cannot touch both circles: it is at least %v mm", radius, (centres-one-other)/2)
	}
	return Point{x, math.Sqrt((a - x) * (a + x))}, nil
}
