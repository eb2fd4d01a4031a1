package hold

import (
	"fmt"
	"math"
)

// Pinched is a thin ring under equal jaws, mm on radius for a force on each jaw.
type Pinched struct {
	Jaw     float64 // how far the ring goes inward at a jaw
	Between float64 // how far it goes outward half way between two jaws
	Lobing  float64 // what is left on a bore that was cut round under the jaws and let go: the sum
	Odd     bool    // lobes stand across from hollows: measuring over two points shows nothing of it
}

// Lobes gives the share of W R^3/(E I) that a thin ring goes inward under each of n equal jaws, 2
// to 100, and outward half way between them; n 2 is a vise. With h = pi/n, s = sin h, c = cos h:
//
//	inward  = ((h + s c)/s^2 - 2/h)/4        outward = (2/h - 1/s - h c/s^2)/4
//
// Thin-ring theory without stretch (Timoshenko, Roark: from memory); 2 jaws give the printed
// 0.0744 and 0.0683. A paper on rings in chucks finds a thin-ring model within 6 % of what was
// measured at a bore of 0.88 of the outside. Another number of jaws is an error.
func Lobes(jaws int) (inward, outward float64, err error) {
	if jaws < 2 || jaws > 100 {
		return 0, 0, fmt.Errorf("a ring in %d jaws: 2 to 100 are wanted", jaws)
	}
	h := math.Pi / float64(jaws)
	s, c := math.Sincos(h)
	if jaws == 2 {
		c = 0
	}
	return ((h+s*c)/(s*s) - 2/h) / 4, (2/h - 1/s - h*c/(s*s)) / 4, nil
}

// Ring gives how a ring goes out of round under 2 to 100 jaws: force on each 0 to 1e7 N, outside
// 0.1 to 10,000, bore 0.01 to 10,000 and length 0.01 to 10,000 mm, E 1 to 1e7 MPa. I = length
// wall^3/12 about the middle of the wall. The theory is for thin rings and leaves out shear and
// stretch; thick says that the wall is above a fifth of the mean radius, where the figures are off
// by more than some percent. An error names the figure out of range, or a bore that leaves no
// ring.
func Ring(jaws int, force, outside, bore, length, e float64) (p Pinched, thick bool, err error) {
	k, m, err := Lobes(jaws)
	if err != nil {
		return p, false, err
	}
	if err := in(figure{"force N", force, 0, mostForce}, figure{"outside mm", outside, 0.1, 1e4}, figure{"bore mm", bore, 0.01, 1e4}, figure{"length mm", length, 0.01, 1e4}, figure{"E MPa", e, 1, 1e7}); err != nil {
		return p, false, err
	}
	wall, r := (outside-bore)/2, (outside+bore)/4
	if wall < 1e-6 {
		return p, false, fmt.Errorf("a bore of %v mm leaves no ring of %v mm: it must be smaller", bore, outside)
	}
	unit := force * r * r * r / (e * length * wall * wall * wall / 12)
	return Pinched{Jaw: k * unit, Between: m * unit, Lobing: (k + m) * unit, Odd: jaws%2 == 1}, wall > r/5, nil
}

// RingForce is the other way about: the force on each jaw, N, that leaves a lobing, 0 to 10 mm on
// radius. Errors as of Ring; the force then means nothing.
func RingForce(jaws int, lobing, outside, bore, length, e float64) (force float64, err error) {
	p, _, err := Ring(jaws, 1, outside, bore, length, e)
	if err == nil {
		err = in(figure{"lobing mm", lobing, 0, 10})
	}
	return lobing / p.Lobing, err
}

// Closed is a slot between two prongs that jaws press together. All mm.
type Closed struct {
	Jaw   float64 // how far each prong goes inward at the height of the jaw, mm
	Mouth float64 // the same at the mouth
	Width float64 // how much narrower the mouth is while clamped: both prongs
}

// Slot gives how far a slot closes, mm: force of the jaws 0 to 1e7 N, height of the jaw above the
// root of the slot, 0 to its depth, depth of the slot, thickness and length of each prong 0.01 to
// 10,000 mm, E 1 to 1e7 MPa. Each prong is a beam held at the root: F a^3/(3 E I) at the jaw and F
// a^2/(2 E I) of slope from there on, I = length thickness^3/12 (theory of beams). A root that
// gives makes it more: the figure is a least one. Shear is left out, so a prong shorter than twice
// its thickness closes by more as well. An error names the figure out of range.
func Slot(force, height, depth, thick, length, e float64) (Closed, error) {
	if err := in(figure{"force N", force, 0, mostForce}, figure{"height of the jaw above the root mm", height, 0, 1e4}, figure{"depth mm", depth, 0.01, 1e4}, figure{"thickness of a prong mm", thick, 0.01, 1e4}, figure{"length mm", length, 0.01, 1e4}, figure{"E MPa", e, 1, 1e7}); err != nil {
		return Closed{}, err
	}
	if height > depth+1e-9 {
		return Closed{}, fmt.Errorf("the jaw presses %v mm above the root of a slot %v mm deep: its height must not be above the depth", height, depth)
	}
	ei := e * length * thick * thick * thick / 12
	at := force * height * height * height / (3 * ei)
	mouth := at + force*height*height/(2*ei)*(depth-height)
	return Closed{Jaw: at, Mouth: mouth, Width: 2 * mouth}, nil
}

// SlotForce is the other way about: the force of the jaws, N, that makes the mouth narrower by a
// width, 0 to 100 mm. Errors as of Slot, and for a jaw at the root; the force then means nothing.
func SlotForce(width, height, depth, thick, length, e float64) (force float64, err error) {
	c, err := Slot(1, height, depth, thick, length, e)
	switch {
	case err != nil:
		return 0, err
	case c.Width <= 0:
		return 0, fmt.Errorf("a jaw at the root of the slot does not close it: a height above 0 is wanted")
	}
	return width / c.Width, in(figure{"width mm", width, 0, 100})
}
