package solid

import "math"

// OnCentre is how a pointed centre sits in a piece.
type OnCentre struct {
	Jaw
	Tip float64 // station of the centre's point, to a few Grains
}

// OnCentre gives what a centre touches that is pushed onto an end of the piece along an axle, to
// the right (side 1: into the left end) or to the left; its point has an included angle in
// radians and a greatest diameter. Lo and Hi tell the stations of the touched band and how far
// round it reaches. Where it finds no metal to rest on, nothing touches.
func (p *Piece) OnCentre(a Axle, side, angle, diameter float64) OnCentre {
	if !(angle > 0.1) || !(angle < 3) || !(diameter > 0) || !finite(Vec{diameter, a.Y, a.Z}) || p.blank.kind == empty {
		return OnCentre{}
	}
	out := -1.0
	if side < 0 {
		out = 1
	}
	q := Attitude(Vec{out, 0, 0}, Vec{0, 1, 0})
	up := p.Placed(q)
	high := diameter / 2 / math.Tan(angle/2)
	tip := q.Point(a.At(0))
	tip[2] = up.blank.hi[2] - high
	t := Turned{0, high, 0, diameter / 2, "centre"}
	if _, ok := up.Meets(t, Move{tip, tip}); !ok {
		return OnCentre{}
	}
	tip[2] += up.lift(t, Move{tip, tip}) - Grain/2 // lift clears by half a Grain at most
	x := tip[2] * out
	s := sleeve{axle: a, x0: x, x1: x + out*high, r0: 0, r1: diameter / 2, inside: true}
	return OnCentre{p.patch(s, 0, 2*math.Pi), x}
}
