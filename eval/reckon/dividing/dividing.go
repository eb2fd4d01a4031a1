// Package dividing is the arithmetic of the dividing head and the rotary table: plain, direct,
// angular, compound, differential and block indexing, which circles of holes would serve, the
// running table of every position, and the nearest setting with its error where none is exact.
//
// # One equation
//
// Let R be the turns of the crank for one turn of the work, s the way from one place to the
// next as a part of the circle (1/N for N equal divisions, k/N where k spaces are taken at
// once, an angle over 360 degrees). The crank must make
//
//	t = R s turns.
//
// In lowest terms t = a/b. Plain: any circle whose holes are a multiple of b serves. Direct: the
// plate on the spindle itself serves if its holes are a multiple of the denominator of s.
// Compound: the plate's own pin is moved too, in another circle of the same face, and
// t = h1/c1 + h2/c2 has an answer just where b divides the least common multiple of c1 and c2.
// Differential: the plate is geared to the spindle and makes e turns for one turn of it; the
// crank is counted on the moving plate, n turns a move, so that s (R - e) = n and
//
//	e = R - n/s,
//
// which for s = 1/N is the R - N n of the handbooks. e above 0 turns the plate the way of the
// crank, below 0 against it; a train of one pair gives spindle wheel over plate wheel, one of two
// pairs the product of both.
//
// Everything is exact: whole numbers and fractions of them. Only angles for print (Degrees,
// Seconds) and lengths at a radius (Arc) are floating point, right to about 1 in 1e15.
//
// # Sources
//
// The formulae of plain, direct, angular and differential indexing are in the Practical
// Treatise on Milling and Milling Machines, in US Army course OD1644 and in Machinery's
// Handbook. The rule of idlers differs from head to head, so it is a property of the head. Block
// indexing and rounding from absolute positions are common practice. What has no source follows from
// the equation above or is the definition of its words.
//
// Where a function gives an error, it names the figure that is out of range; what a Fraction cannot
// hold is no number.
package dividing

import (
	"fmt"
	"math"
)

// The ranges taken. Within them every answer takes less than 10 ms on a small machine and no
// product of whole numbers leaves 64 bits.
const (
	MostPlaces  = 1_000_000
	MostRatio   = 1000 // turns of the crank for one of the work; at least 1
	MostParts   = 100  // denominator of a ratio that is not whole
	MostHoles   = 400  // in a circle; at least 2
	MostCircles = 120  // on all plates together
	MostFace    = 40   // circles on one face
	MostWheels  = 24
	MostTeeth   = 300        // of a change wheel; at least 10
	finest      = 40_000_000 // denominator of a way from place to place: a tenth of a second and 1e-5 deg are coarser
)

// Job is what is to be divided. Make one with Divisions, Block or Angle.
type Job struct {
	Step   Fraction // way of one move, part of the circle, above 0, at most 1
	Places int      // places to be reached, the first included
	Spaces int      // spaces of the division taken at once; 1 save in blocks
	Whole  bool     // equal divisions of the whole circle: the last move comes back to the first place
}

// Divisions asks for n equal divisions of the circle, 1 to MostPlaces. An error for others.
func Divisions(n int) (Job, error) { return Block(n, 1) }

// Block asks for n equal divisions, 1 to MostPlaces, of which k are passed over at each move. All
// places are reached, in k rounds of the work, only where k and n have no common divisor; others
// are refused, with the places that would be reached. k runs from 1 to n - 1, and may be 1 for n =
// 1.
func Block(n, k int) (Job, error) {
	switch {
	case n < 1 || n > MostPlaces:
		return Job{}, fmt.Errorf("%d divisions: they run from 1 to %d", n, MostPlaces)
	case k < 1 || k > max(1, n-1):
		return Job{}, fmt.Errorf("%d spaces at once of %d: they run from 1 to %d", k, n, max(1, n-1))
	}
	if g := gcd(int64(n), int64(k)); g > 1 {
		return Job{}, fmt.Errorf("%d spaces at once of %d: both can be divided by %d, so only %d of the %d places would be reached",
			k, n, g, n/int(g), n)
	}
	return Job{Step: Of(int64(k), int64(n)), Places: n, Spaces: k, Whole: true}, nil
}

// Angle asks for moves of an angle in degrees, above 0, at most 360, and in parts of the circle no
// finer than 1/40,000,000; and for the places to be reached with it, the first included, 1 to
// MostPlaces. An error names what is outside.
func Angle(degrees Fraction, places int) (Job, error) {
	step := degrees.Over(Of(360, 1))
	switch {
	case !step.Valid() || step.Num <= 0 || step.Cmp(Of(1, 1)) > 0:
		return Job{}, fmt.Errorf("an angle of %s deg: angles run from above 0 to 360 deg", degrees)
	case step.Den > finest:
		return Job{}, fmt.Errorf("an angle of %s deg: it is finer than 1/%d of the circle", degrees, finest)
	case places < 1 || places > MostPlaces:
		return Job{}, fmt.Errorf("%d places: they run from 1 to %d", places, MostPlaces)
	}
	return Job{Step: step, Places: places, Spaces: 1}, nil
}

// Head is a dividing head, or a rotary table with plates. What is asked of one outside the ranges
// above is an error, which names the figure.
type Head struct {
	Ratio  Fraction // turns of the crank for one turn of the work, 1 to MostRatio
	Plates []Plate
	Direct []int // holes or notches that turn with the spindle, one figure a circle
	Gear   Gearing
}

// Plate is a plate with circles of holes.
type Plate struct {
	Name  string
	Faces [][]int // circles of each face

	// Mixed says that the faces are not told apart: the circles are one list of both sides,
	// and whether two of them stand on one side must be looked up on the plate.
	Mixed bool
}

// check refuses a head outside the ranges. The zero Gearing is in order.
func (h Head) check() error {
	r := h.Ratio
	if !r.Valid() || r.Cmp(Of(1, 1)) < 0 || r.Cmp(Of(MostRatio, 1)) > 0 || r.Den > MostParts {
		return fmt.Errorf("a ratio of %s: ratios run from 1 to %d turns of the crank for one of the work, in parts of 1/%d at the finest",
			r, MostRatio, MostParts)
	}
	count := 0
	for _, p := range h.Plates {
		for _, face := range p.Faces {
			if err := circles(face, "a circle"); err != nil {
				return err
			}
			if count += len(face); len(face) > MostFace {
				return fmt.Errorf("%d circles on one face: at most %d are taken", len(face), MostFace)
			}
		}
	}
	if count > MostCircles || len(h.Direct) > MostCircles {
		return fmt.Errorf("%d circles: at most %d are taken", max(count, len(h.Direct)), MostCircles)
	}
	if err := circles(h.Direct, "a direct plate"); err != nil {
		return err
	}
	return h.Gear.check()
}

func circles(all []int, what string) error {
	for _, c := range all {
		if c < 2 || c > MostHoles {
			return fmt.Errorf("%s of %d holes: they run from 2 to %d", what, c, MostHoles)
		}
	}
	return nil
}

// check refuses a job that was not made by Divisions, Block or Angle.
func (j Job) check() error {
	if !j.Step.Valid() || j.Step.Num <= 0 || j.Step.Den > finest || j.Step.Cmp(Of(1, 1)) > 0 || j.Places < 1 || j.Places > MostPlaces || j.Spaces < 1 {
		return fmt.Errorf("a move of %s of the circle, %d places, %d spaces at once: no such job", j.Step, j.Places, j.Spaces)
	}
	return nil
}

// Degrees turns a part of the circle into degrees; NaN where it is no number.
func Degrees(part Fraction) float64 { return 360 * part.Float() }

// Seconds turns a part of the circle into seconds of arc; NaN where it is no number.
func Seconds(part Fraction) float64 { return 1_296_000 * part.Float() }

// Arc gives the length of a part of the circle at a radius, in the radius's unit, by geometry. A
// bare formula, which refuses nothing; NaN where the part is no number.
func Arc(part Fraction, radius float64) float64 { return 2 * math.Pi * radius * part.Float() }
