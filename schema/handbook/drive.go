package handbook

import (
	"math"
	"sync"
)

var (
	tapSquares   = sync.OnceValue(func() []row { return load("tap_square").rows })
	centreDrills = sync.OnceValue(func() []row { return load("centre_drill").rows })
	drivers      = sync.OnceValue(func() []row { return load("driver").rows })
)

// TapSquare gives the driving square of a hand tap for a coarse metric thread of so many mm: the
// smallest and the largest of the standards across the flats, mm. False for other diameters.
func TapSquare(thread float64) (least, most float64, ok bool) {
	for _, r := range tapSquares() {
		if math.Abs(r.number("thread_mm")-thread) < hair {
			return r.number("least_mm"), r.number("most_mm"), true
		}
	}
	return 0, 0, false
}

// The driving square of a shank is 0.8 of its diameter; sizes are rounded in the series of ISO 237,
// which from memory keeps them between these shares.
const squareLeast, squareMost = 0.75, 0.82

// ShankSquare gives the driving square of a plain shank, mm across the flats.
func ShankSquare(shank float64) (least, most float64) { return squareLeast * shank, squareMost * shank }

// CentreDrill gives the diameter of the body of a centre drill of form A and the length of its pilot,
// mm, for a pilot diameter. False for one that the standard does not have.
func CentreDrill(pilot float64) (body, length float64, ok bool) {
	for _, r := range centreDrills() {
		if math.Abs(r.number("pilot_mm")-pilot) < hair {
			return r.number("body_mm"), r.number("length_mm"), true
		}
	}
	return 0, 0, false
}

// Driver gives what a metric screw of a head ("cap", "grub", "hexagon") is driven with: "hexagon key",
// "spanner", and its size across the flats, mm. False where the table has none.
func Driver(head string, thread float64) (key string, across float64, ok bool) {
	for _, r := range drivers() {
		if r.text("head") == head && math.Abs(r.number("thread_mm")-thread) < hair {
			return r.text("key"), r.number("across_mm"), true
		}
	}
	return "", 0, false
}
