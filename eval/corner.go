package eval

import (
	"math"

	"fettle/eval/solid"
)

// Corners of turned surfaces. A full corner, on the rim of an outside or at the mouth of a bore,
// loses metal to a chamfer or a rounding. In a hollow corner, where a surface ends at a shoulder
// or at the floor of a bore, the fillet or bevel is metal that the tool leaves standing when it
// turns the surface; nothing is taken for it afterwards.

// hollow says whether a surface meets a face square to the axis in a hollow corner: the face then
// looks along the surface, and not away from it. left: the corner is at the surface's left end.
func hollow(l Lathe, at Plane) (hollow, left bool) {
	left = math.Abs(at.At-l.X0) < math.Abs(at.At-l.X1)
	return left == (at.Face.Sign() > 0), left
}

// cornerShape gives the half section of a corner of a size along the axis and a size across it.
// From a full corner of an outside it goes in to a smaller radius, in a hollow one out to a larger;
// in a bore the other way round.
func cornerShape(l Lathe, at Plane, along, across float64, on *Form) *Lathe {
	c := &Lathe{X0: at.At, X1: at.At, R0: l.R0, R1: l.R0, Inside: l.Inside, On: on}
	var left bool
	c.Hollow, left = hollow(l, at)
	end := l.R0 - across
	if c.Hollow != l.Inside {
		end = l.R0 + across
	}
	if left {
		c.X1 += along
		c.R0 = end
	} else {
		c.X0 -= along
		c.R1 = end
	}
	return c
}

// stations gives a corner as a profile: the surface, the corner itself with its rounding, the
// face; from left to right.
func (l *Lathe) stations(round float64) []solid.Station {
	surface := math.Max(l.R0, l.R1)
	if l.Inside != l.Hollow {
		surface = math.Min(l.R0, l.R1)
	}
	if near(l.R0, surface) {
		return []solid.Station{{X: l.X0, R: surface}, {X: l.X1, R: surface, Round: round}, {X: l.X1, R: l.R1}}
	}
	return []solid.Station{{X: l.X0, R: l.R0}, {X: l.X0, R: surface, Round: round}, {X: l.X1, R: surface}}
}

// cornerTook is what a rounding takes off a full corner, at most solid.Within less than drawn;
// nothing where it does not fit.
func cornerTook(l *Lathe, round float64, raw solid.Shape, name string) []solid.Removal {
	if l.Inside {
		took, err := solid.Axle{}.BoreProfile(name, l.stations(round)...)
		if err != nil {
			return nil
		}
		return took
	}
	m, err := solid.Axle{}.Profile(raw, name, l.stations(round)...)
	if err != nil {
		return nil
	}
	return []solid.Removal{m}
}

// fillets are the radii that are drawn in the hollow corners at the two ends of a surface; 0: none.
func (p *Part) fillets(f *Form) (left, right float64) {
	for _, g := range p.Forms {
		l := g.Lathe
		if g.Feature.Kind != "radius" || l == nil || !l.Hollow || l.On != f || f.Lathe == nil {
			continue
		}
		if near(l.X0, f.Lathe.X0) {
			left = math.Max(left, g.Size)
		} else {
			right = math.Max(right, g.Size)
		}
	}
	return left, right
}

// filletedTook is what turning or boring a straight surface takes where fillets are left standing
// at its ends; false where they do not fit.
func filletedTook(l Lathe, left, right float64, raw solid.Shape, name string) ([]solid.Removal, bool) {
	if !l.Inside {
		m, err := solid.Axle{}.Shoulder(raw, l.X0, l.X1, l.R0, left, right, name)
		return []solid.Removal{m}, err == nil
	}
	st := []solid.Station{{X: l.X0, R: l.R0, Round: left}, {X: l.X1, R: l.R0, Round: right}}
	if left > 0 {
		st = append([]solid.Station{{X: l.X0}}, st...)
	}
	if right > 0 {
		st = append(st, solid.Station{X: l.X1})
	}
	took, err := solid.Axle{}.BoreProfile(name, st...)
	return took, err == nil
}
