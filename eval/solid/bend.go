package solid

import (
	"fmt"
	"math"
)

// Bent sheet: flat legs and, between them, parts of round tube, joined.

// Bend is a bend in sheet: the angle turned through in radians, towards the upper face (W) of
// the legs or, negative, away from it; the radius on its inside; and the length of flat metal
// that it takes up.
type Bend struct{ Angle, Inside, Allowance float64 }

// Allowance gives the length of flat metal that a bend takes up where the layer that keeps its
// length lies at a share k of the thickness from the inside: angle × (inside + k·thickness). The
// share belongs to the caller, with its source; it lies between 0 and 1.
func Allowance(angle, inside, thick, k float64) float64 {
	return math.Abs(angle) * (inside + k*thick)
}

// Setback gives how far the end of the straight part of a leg lies from where the leg is measured
// to: what to take off an outside measure to come to the straight length. Up to a right angle a leg
// is measured to where the outsides of both legs meet; over it, where that is far off or nowhere, to
// the tangent on the outside of the bend that stands square to the leg, the outermost place of the
// bend. At a right angle both are the same. DIN 6935 (from memory).
func Setback(angle, inside, thick float64) float64 {
	return (inside + thick) * math.Tan(min(math.Abs(angle), math.Pi/2)/2)
}

// Apart gives where the end of the leg that is folded lies from the end of the leg before it, each
// as it is measured to (Setback): along the leg before it, and towards the side that it rises to. Up to
// a right angle they are one place.
func Apart(angle, inside, thick float64) (along, up float64) {
	a := math.Abs(angle)
	if a <= math.Pi/2 {
		return 0, 0
	}
	sin, cos := math.Sincos(a)
	r := inside + thick
	return r * (snapped(sin) - 1 - snapped(cos)), r * (1 - snapped(cos) - snapped(sin))
}

// Leg is a straight part of bent sheet: its frame as it is folded, its length, and where it
// begins in the flat pattern.
type Leg struct {
	Frame  Frame
	Length float64
	Flat   float64
}

// Sheet is bent sheet with its flat pattern.
type Sheet struct {
	Piece *Piece
	Legs  []Leg
	Flat  float64 // length of the flat pattern, mm
}

// Folded gives sheet of a thickness, in legs along U joined by bends across it: the first leg
// begins at the frame's place, its width along V, its thickness along W. Legs are the lengths of
// the straight parts, one more than bends. By names the bends.
func (f Frame) Folded(width, thick float64, legs []float64, bends []Bend, by string) (Sheet, error) {
	if len(legs) != len(bends)+1 || len(bends) > 100 {
		return Sheet{}, fmt.Errorf("%d legs and %d bends: there is one leg more than bends, and at most 100 bends", len(legs), len(bends))
	}
	if !(width > 0) || !(thick > 0) || !finite(Vec{width, thick}) {
		return Sheet{}, fmt.Errorf("sheet %g wide and %g thick", width, thick)
	}
	var out Sheet
	var parts []*Piece
	for i, l := range legs {
		if !(l > 0) || !finite(Vec{l}) {
			return Sheet{}, fmt.Errorf("leg %d has a straight part of %g mm", i+1, l)
		}
		out.Legs = append(out.Legs, Leg{f, l, out.Flat})
		out.Flat += l
		parts = append(parts, Raw(f.Block(Vec{}, Vec{l, width, thick})))
		if i == len(bends) {
			break
		}
		b := bends[i]
		if a := math.Abs(b.Angle); !(a > 1e-6) || !(a <= math.Pi) || !(b.Inside >= 0) || !(b.Allowance >= 0) || !finite(Vec{b.Inside, b.Allowance}) {
			return Sheet{}, fmt.Errorf("bend %d: %g degrees, inside radius %g, allowance %g", i+1, b.Angle*180/math.Pi, b.Inside, b.Allowance)
		}
		out.Flat += b.Allowance
		f.At = f.Point(l, 0, 0)
		parts = append(parts, f.Bent(width, thick, b, by))
		f = f.after(thick, b)
	}
	out.Piece = Joined(parts...)
	return out, nil
}

// Bent gives the metal of a bend that begins at the frame's place: the sector of a tube. Its own
// frame has U from the middle of the bend to the end of the leg, V the way the leg runs.
func (f Frame) Bent(width, thick float64, b Bend, by string) *Piece {
	g := Frame{f.Point(0, width, thick+b.Inside), f.W().Times(-1), f.U} // W is −V
	if b.Angle < 0 {
		g = Frame{f.Point(0, 0, -b.Inside), f.W(), f.U} // W is V
	}
	outer := b.Inside + thick
	p := Raw(Cylinder(g.At, g.Point(0, 0, width), outer))
	var rest []Removal
	if b.Inside > 0 {
		rest = append(rest, Removal{Take: Cylinder(g.Point(0, 0, -1), g.Point(0, 0, width+1), b.Inside), By: by})
	}
	for _, s := range g.sector(math.Abs(b.Angle), 2*math.Pi, outer, 0, width) {
		rest = append(rest, Removal{Take: s, By: by})
	}
	return p.Cut(rest...)
}

// after gives the frame of the leg that follows a bend.
func (f Frame) after(thick float64, b Bend) Frame {
	sin, cos := math.Sincos(b.Angle)
	sin, cos = snapped(sin), snapped(cos)
	u, w := f.U, f.W()
	g := Frame{V: f.V, U: u.Times(cos).Add(w.Times(sin))}
	up := w.Times(cos).Sub(u.Times(sin))
	if b.Angle > 0 {
		g.At = f.Point(0, 0, thick+b.Inside).Sub(up.Times(thick + b.Inside))
	} else {
		g.At = f.Point(0, 0, -b.Inside).Add(up.Times(b.Inside))
	}
	return g
}
