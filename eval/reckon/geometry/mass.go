package geometry

import (
	"fmt"
	"math"
)

// Section is what a bar is across: area gives its face.
type Section struct {
	Shape Shape
	Size  float64 // diameter, or across flats; of a plate or flat bar its width, mm
	Other float64 // the other width of a flat bar, mm
	Bore  float64 // of a round hole along the axis, mm; 0: none
}

// Shape is the shape of a bar.
type Shape uint8

const (
	Round Shape = iota
	Square
	Hexagon
	Octagon
	Flatbar // two widths
)

func (s Shape) sides() int { return [...]int{0, 4, 6, 8, 4}[min(s, Flatbar)] }

// Area gives the area across the bar, mm²: a polygon of n sides and A across flats has n A²
// tan(180/n)/4. Sizes 0.001 to 100,000 mm; an error names the one out of range, or the bore that
// leaves nothing.
func (s Section) Area() (float64, error) {
	if err := first(length("size", s.Size), in("bore", s.Bore, 0, mostLength, " mm")); err != nil {
		return 0, err
	}
	least, area := s.Size, math.Pi/4*s.Size*s.Size
	switch n := s.Shape.sides(); {
	case s.Shape == Flatbar:
		if err := length("other width", s.Other); err != nil {
			return 0, err
		}
		least, area = min(s.Size, s.Other), s.Size*s.Other
	case n > 0:
		area = float64(n) * s.Size * s.Size / 4 * math.Tan(math.Pi/float64(n))
	}
	if s.Bore >= least {
		return 0, fmt.Errorf("a bore of %v mm leaves nothing of a bar of %v mm", s.Bore, least)
	}
	return area - math.Pi/4*s.Bore*s.Bore, nil
}

// Volume gives the volume of a length of bar, 0.001 to 100,000 mm, in mm³. An error names the
// figure out of range; the volume then means nothing.
func (s Section) Volume(along float64) (float64, error) {
	area, err := s.Area()
	return area * along, first(err, length("length", along))
}

// Cone gives the volume of a cone that is cut off between two diameters, mm³: pi l/12 (D² + D d +
// d²). One diameter may be 0. Diameters 0 to 100,000, length 0.001 to 100,000; an error names the
// figure out of range, and the volume then means nothing.
func Cone(one, other, along float64) (float64, error) {
	err := first(in("diameter", one, 0, mostLength, " mm"), in("diameter", other, 0, mostLength, " mm"), length("length", along))
	return math.Pi / 12 * along * (one*one + one*other + other*other), err
}

// Ball gives the volume of a ball, mm³: pi D³/6, of a diameter of 0.001 to 100,000 mm. With the
// error for others the volume means nothing.
func Ball(diameter float64) (float64, error) {
	return math.Pi / 6 * diameter * diameter * diameter, length("diameter", diameter)
}

// Mass gives the mass in kg of a volume in mm³, 0 to 1e18, by the density in kg/m³, 1 to 30,000.
// An error names the figure out of range; the mass then means nothing.
func Mass(volume, density float64) (float64, error) {
	return volume * density * 1e-9, first(in("volume", volume, 0, 1e18, " mm³"), in("density", density, 1, 30000, " kg/m³"))
}

// LengthOf gives the length of bar that a mass, 1e-9 to 1e9 kg, is, in mm, by the density, 1 to
// 30,000 kg/m³. An error names the figure out of range.
func (s Section) LengthOf(mass, density float64) (float64, error) {
	area, err := s.Area()
	if err := first(err, in("mass", mass, 1e-9, 1e9, " kg"), in("density", density, 1, 30000, " kg/m³")); err != nil {
		return 0, err
	}
	return mass / (density * 1e-9) / area, nil
}
