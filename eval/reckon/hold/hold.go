// Package hold is the statics of holding work: how hard clamps must press for given contacts
// and cutting load, what a vise does when the work sits off its screw, how far slots and
// rings close under a jaw, what a strap passes on, whether a tip dents.
//
// Lengths are millimetres, forces N, pressures MPa, torques N mm, angles radians. Nothing
// that comes out of here says that a holding is safe: bodies are taken as rigid (but for
// slots and rings), friction as a guess from tables, and a cut that grabs pulls many times
// harder than a cut that runs. A factor of 2 to 3 on the load is common practice.
//
// Where a function gives an error, it names the figure that is out of range or what does not go
// together; what is not a number is out of every range.
package hold

import (
	"fmt"
	"math"
)

// Vector is a place, mm, a way or a force, N, in the frame of the piece.
type Vector [3]float64

func (a Vector) plus(b Vector) Vector { return Vector{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }
func (a Vector) times(k float64) Vector {
	return Vector{a[0] * k, a[1] * k, a[2] * k}
}
func (a Vector) dot(b Vector) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
func (a Vector) cross(b Vector) Vector {
	return Vector{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

// Length is the length of a vector, in its unit. A bare formula, which refuses nothing.
func (a Vector) Length() float64 { return math.Hypot(math.Hypot(a[0], a[1]), a[2]) }

// Contact is a point where a piece is touched. A jaw or a strap that bears on a patch is given as
// the corners of that patch. Places are mm.
type Contact struct {
	Name     string
	At       Vector
	Normal   Vector  // the way the piece is pushed; any length but 0
	Friction float64 // 0 to 2
	Clamp    bool    // the force of this contact is what is asked for; others only answer
	Body     int     // the piece that is pushed, counted from 1; 0 is read as 1
	Against  int     // 0: the machine; else the piece that pushes, counted from 1
}

// Load is a force on a piece: the cut, a weight, both. Forces are N, places mm.
type Load struct {
	Force Vector
	At    Vector
	Body  int // counted from 1; 0 is read as 1
}

// Bounds of what is taken. They keep sums far from the ends of float64.
const (
	mostContacts = 64
	mostBodies   = 8
	mostLength   = 1e5 // mm
	mostForce    = 1e7 // N
	mostFriction = 2
	mostWork     = 4096 // contacts by sides by pieces: Bland's rule is slow on large programs
	LeastSides   = 4
	MostSides    = 64
)

// check refuses what cannot be reckoned with, and names it.
func check(contacts []Contact, loads []Load, sides int) (bodies int, err error) {
	switch {
	case sides < LeastSides || sides > MostSides || sides%2 != 0:
		return 0, fmt.Errorf("a friction cone of %d sides: an even number from %d to %d is wanted", sides, LeastSides, MostSides)
	case len(contacts) == 0 || len(contacts) > mostContacts:
		return 0, fmt.Errorf("%d contacts: 1 to %d are wanted", len(contacts), mostContacts)
	case len(loads) == 0 || len(loads) > mostContacts:
		return 0, fmt.Errorf("%d loads: 1 to %d are wanted", len(loads), mostContacts)
	}
	for n, c := range contacts {
		name := called("contact", c.Name, n)
		switch {
		case !within(c.At, mostLength):
			return 0, fmt.Errorf("%s is at %v: every figure must lie within %g mm", name, c.At, mostLength)
		case !within(c.Normal, mostLength) || c.Normal.Length() < 1e-9:
			return 0, fmt.Errorf("%s has the normal %v, which points nowhere", name, c.Normal)
		case !(c.Friction >= 0 && c.Friction <= mostFriction):
			return 0, fmt.Errorf("%s has the friction %v: 0 to %v is wanted", name, c.Friction, mostFriction)
		case c.Body < 0 || c.Body > mostBodies || c.Against < 0 || c.Against > mostBodies || c.Against == max(c.Body, 1):
			return 0, fmt.Errorf("%s lies between piece %d and %d: pieces are counted from 1 to %d, and 0 is the machine", name, max(c.Body, 1), c.Against, mostBodies)
		}
		bodies = max(bodies, c.Body, c.Against, 1)
	}
	for n, l := range loads {
		name := called("load", "", n)
		switch {
		case !within(l.Force, mostForce):
			return 0, fmt.Errorf("%s is %v: every figure must lie within %g N", name, l.Force, mostForce)
		case !within(l.At, mostLength):
			return 0, fmt.Errorf("%s acts at %v: every figure must lie within %g mm", name, l.At, mostLength)
		case l.Body < 0 || l.Body > mostBodies:
			return 0, fmt.Errorf("%s acts on piece %d: pieces are counted from 1 to %d", name, l.Body, mostBodies)
		}
		bodies = max(bodies, l.Body)
	}
	if n := len(contacts) * sides * bodies; n > mostWork {
		return 0, fmt.Errorf("%d contacts of %d sides on %d pieces come to %d: their product may be %d, so give fewer sides", len(contacts), sides, bodies, n, mostWork)
	}
	return bodies, nil
}

func called(what, name string, n int) string {
	if name != "" {
		return fmt.Sprintf("%s %q", what, name)
	}
	return fmt.Sprintf("%s %d", what, n+1)
}

func within(v Vector, most float64) bool {
	for _, x := range v {
		if !(math.Abs(x) <= most) {
			return false
		}
	}
	return true
}
