package dividing

import (
	"cmp"
	"slices"
)

// compound gives the settings with two pins in two circles of one face, neither of which would
// serve alone. The plate's way stays below one turn either way; of two ways the same but for
// which pin makes which, the one that moves the plate by fewer holes is given.
func (h Head) compound(t Fraction) (out []Setting) {
	h.pairs(func(crank, back seat, sure bool) {
		for _, s := range twoPins(t, crank, back) {
			s.OneSide = sure
			out = append(out, s)
		}
	})
	slices.SortStableFunc(out, easier)
	return out
}

func easier(a, b Setting) int {
	return cmp.Or(cmp.Compare(a.Holes(), b.Holes()), cmp.Compare(a.Back.Holes, b.Back.Holes),
		cmp.Compare(b.Crank.Circle, a.Crank.Circle))
}

// pairs goes through the ordered pairs of different circles that one face may hold.
func (h Head) pairs(each func(crank, back seat, sure bool)) {
	for _, p := range h.Plates {
		for n, face := range p.Faces {
			at := n + 1
			if p.Mixed {
				at = 0
			}
			own := once(face)
			for _, a := range own {
				for _, b := range own {
					if a != b {
						each(seat{a, p.Name, at}, seat{b, p.Name, at}, !p.Mixed)
					}
				}
			}
		}
	}
}

// twoPins solves t = turns + h/c ± k/d, 0 < h < c, 0 < k < d.
//
// With l the least common multiple of c and d, and t l a whole number m, it is
// h l/c + k' l/d = m up to whole turns, so that k' is fixed to within d/g, g the greatest common
// divisor of c and d: there are g answers for each sign. The least is found by trying, since
// d is small.
func twoPins(t Fraction, crank, back seat) (out []Setting) {
	c, d := int64(crank.circle), int64(back.circle)
	g := gcd(c, d)
	if c/g*d%t.Den != 0 || c%t.Den == 0 || d%t.Den == 0 {
		return nil
	}
	for k := int64(1); k <= d/g; k++ {
		if t.Minus(Of(k, d)).Times(Of(c, 1)).Den != 1 {
			continue
		}
		for ; k < d; k += d / g {
			for _, way := range []int64{k, k - d} {
				if s, ok := pinned(t, crank, back, way); ok {
					out = append(out, s)
				}
			}
		}
	}
	return out
}

// pinned is the setting in which the plate goes k of its holes, against the crank if k is below 0.
func pinned(t Fraction, crank, back seat, k int64) (Setting, bool) {
	c, d := int64(crank.circle), int64(back.circle)
	rest := t.Minus(Of(k, d))
	turns, part := rest.Whole()
	holes := part.Times(Of(c, 1))
	if rest.Num <= 0 || holes.Den != 1 || holes.Num == 0 {
		return Setting{}, false
	}
	if k > 0 && (holes.Num < k || holes.Num == k && c < d) {
		return Setting{}, false // the same with the pins changed over moves the plate by less
	}
	return Setting{Method: Compound, Crank: Count{turns, int(holes.Num), crank.circle}, Plate: crank.plate, Face: crank.face,
		Back: Count{0, int(max(k, -k)), back.circle}, Against: k < 0}, true
}
