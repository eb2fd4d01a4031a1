// Package rigid is how far work and tools give way under a cutting force: bars in a chuck,
// with a centre, between centres, stepped and hollow; boring bars and end mills; thin walls;
// and the speed at which an overhanging bar begins to whirl.
//
// Lengths are millimetres, forces N, stiffness MPa, speeds rev/min. Work that is pushed off by
// y while it is turned comes out larger by 2 y on diameter.
//
// What is left out makes things give way more: chuck jaws, centre, spindle, post and holder
// are taken as rigid and the clamped end as held all over. Take the answers as the least.
//
// Where a function gives an error, it names the figure that is out of range or what does not go
// together; what is not a number is out of every range.
package rigid

import (
	"errors"
	"fmt"
	"math"

	"fettle/schema/handbook"
)

// A bar is a row of parts, each of one section, from the clamped end (or the left centre) on.
// All forces push one way, square to it. With y the way it gives, positive with the force,
// the theory of slender beams has
//
//	E I y'' = m(x) = sum of F (a - x) over the forces F at a > x, reactions at the right among them
//
// m is straight between forces and I steady within a part, so walking from cut to cut the slope
// and the way are exact: over a step h with m from m0 to m1
//
//	slope += h (m0 + m1)/(2 E I)    y += slope h + h^2 (2 m0 + m1)/(6 E I)
//
// Nothing is approximated but by float64. A chuck holds y and slope at 0. A centre adds a
// reaction that brings y there back to 0, found from the walk under a unit force. Between
// centres the reactions follow from levers, and the slope at the left from y being 0 at the right.
//
// Shear adds to the slope k F/(G A) under the forces still to come. It matters for stubby
// bars (3 % of the bending at four diameters, 14 % at two) and is kept apart, since the
// published figures leave it out. At a sharp step the thick part does not bend as a whole up
// to its end: finite elements give 2 to 5 % more than this theory for steps to 0.6 of the
// diameter (testdata/elastic).

// Part is a length of a bar with one section. Lengths are above 0 to 100,000 mm.
type Part struct {
	Length float64 // mm
	Bend   float64 // second moment of area, mm^4
	Area   float64 // mm^2
	Shear  float64 // how unevenly shear spreads over the section, 1 even
}

// Round gives a round part, hollow where inside is over 0; all mm. Its shear figure is G. R.
// Cowper's for Poisson's ratio 0.3, J. Appl. Mech. 33 (1966) 335 (from memory). A bare formula: a
// part without a section, or of what is no number, is refused where the bar is asked.
func Round(length, outside, inside float64) Part {
	o2, i2 := outside*outside, inside*inside
	m := i2 / o2
	s := (1 + m) * (1 + m)
	return Part{length, math.Pi / 64 * (o2*o2 - i2*i2), math.Pi / 4 * (o2 - i2), (8.8*s + 23.6*m) / (7.8 * s)}
}

// Flat gives a rectangular part, bent over its height; all mm. Its shear figure is that of the
// same paper, (12 + 11 v)/(10 (1 + v)) for v = 0.3 (from memory). A bare formula, as Round is.
func Flat(length, width, height float64) Part {
	return Part{length, width * height * height * height / 12, width * height, 15.3 / 13}
}

// Hold is how a bar is held.
type Hold uint8

const (
	Chuck   Hold = iota + 1 // clamped at its beginning, free at its end
	Centre                  // clamped at its beginning, a centre at its end
	Centres                 // a centre at each end
)

// Bar is what bends. Its stiffness is MPa, 1 to 2,000,000.
type Bar struct {
	Parts []Part
	Hold  Hold
	Young handbook.Band
}

// Load is a force square to the bar.
type Load struct {
	At    float64 // from the beginning, mm
	Force float64 // N
}

// Bend is how a bar gives way.
type Bend struct {
	Way    handbook.Band // by bending, mm
	Shear  handbook.Band // what shear adds, mm; not in Way
	Centre float64       // force on the centre at the end, N; 0 without one
}

const (
	mostParts = 100
	longest   = 1e5 // mm
	least     = 1e-3
	strongest = 1e7 // N
)

// Length is the whole length, mm: the sum of its parts, which are not asked for their range.
func (b Bar) Length() float64 {
	var l float64
	for _, p := range b.Parts {
		l += p.Length
	}
	return l
}

func (b Bar) check() error {
	if len(b.Parts) == 0 || len(b.Parts) > mostParts {
		return fmt.Errorf("a bar has 1 to %d parts, not %d", mostParts, len(b.Parts))
	}
	for n, p := range b.Parts {
		if !(p.Length > 0 && p.Length <= longest && p.Bend > 1e-12 && p.Bend < 1e18 && p.Area > 1e-9 && p.Area < 1e10 && p.Shear >= 0 && p.Shear < 10) {
			return fmt.Errorf("part %d must be over 0 up to %v mm long and have a section that is there, not %v mm with %v mm2 and %v mm4 (uneven shear %v)",
				n+1, float64(longest), p.Length, p.Area, p.Bend, p.Shear)
		}
	}
	if !(b.Young.Lo >= 1 && b.Young.Lo <= b.Young.Hi && b.Young.Hi <= 2e6) {
		return fmt.Errorf("the stiffness must lie from 1 to 2,000,000 MPa, not %v to %v", b.Young.Lo, b.Young.Hi)
	}
	if b.Hold < Chuck || b.Hold > Centres {
		return errors.New("the bar is held in a chuck, with a centre, or between centres")
	}
	return nil
}

// Under gives how far a bar gives way at a place, mm, under a load of 0 to 1e7 N, by the theory
// above. Places lie from 0 to its length, both in. An error names a place, force or stiffness (1
// to 2,000,000 MPa) out of range, a bar of no parts or more than 100, a part without a section, or
// a bar that nothing holds.
func (b Bar) Under(load Load, at float64) (Bend, error) {
	if err := b.check(); err != nil {
		return Bend{}, err
	}
	l := b.Length()
	for _, x := range []float64{load.At, at} {
		if !(x >= 0 && x <= l*(1+1e-12)) {
			return Bend{}, fmt.Errorf("the place must lie from 0 to %v mm along the bar, not %v", l, x)
		}
	}
	if !(load.Force >= 0 && load.Force <= strongest) {
		return Bend{}, fmt.Errorf("the force must lie from 0 to %v N, not %v", float64(strongest), load.Force)
	}
	load.At, at = math.Min(load.At, l), math.Min(at, l)
	plain, centre := b.give(load, at, 0)
	all, _ := b.give(load, at, 1)
	over := handbook.Band{Lo: 1 / b.Young.Hi, Hi: 1 / b.Young.Lo}
	return Bend{over.Times(plain), over.Times(all - plain), centre}, nil
}

// give is the way times E, and the force on the centre. Shear is 1 to count it, 0 to leave it out.
func (b Bar) give(load Load, at, shear float64) (way, centre float64) {
	l := b.Length()
	free := []Load{load}
	switch b.Hold {
	case Centre:
		unit := walk(b.Parts, []Load{{l, 1}}, l, shear)
		centre = walk(b.Parts, free, l, shear) / unit
		return walk(b.Parts, append(free, Load{l, -centre}), at, shear), centre
	case Centres:
		centre = load.Force * load.At / l
		both := append(free, Load{l, -centre})
		return walk(b.Parts, both, at, shear) - walk(b.Parts, both, l, shear)*at/l, centre
	}
	return walk(b.Parts, free, at, shear), 0
}

// walk gives the way at a place times E from a beginning with way and slope 0.
func walk(parts []Part, loads []Load, at, shear float64) float64 {
	var x, y, slope float64
	for _, p := range parts {
		end := x + p.Length
		for x < end && x < at {
			to := math.Min(end, at)
			for _, f := range loads {
				if f.At > x && f.At < to {
					to = f.At
				}
			}
			h := to - x
			m0, m1, v := right(loads, x, to)
			y += slope*h + h*h*(2*m0+m1)/(6*p.Bend) + shear*h*v*p.Shear*2.6/p.Area // E/G = 2 (1 + 0.3)
			slope += h * (m0 + m1) / (2 * p.Bend)
			x = to
		}
		x = math.Max(x, end)
	}
	return y
}

// right gives the moments at both ends of a step and the force in it, of the loads beyond it.
func right(loads []Load, from, to float64) (m0, m1, v float64) {
	for _, f := range loads {
		if f.At >= to {
			m0 += f.Force * (f.At - from)
			m1 += f.Force * (f.At - to)
			v += f.Force
		}
	}
	return m0, m1, v
}
