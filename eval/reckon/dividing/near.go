package dividing

import "cmp"

// Nearest is what comes nearest where nothing is exact (or, as exactly, where something is).
type Nearest struct {
	// Single is the move in one circle with the least error, the larger circle where two are as
	// near; Compound that with two pins on one face, if it errs less. Method is 0 where there is
	// none: without plates, or where a move is less than half a hole of every circle.
	Single, Compound Setting

	// Rounded: count from the first place, each time to the hole nearest to the place, and no
	// place is off by more than AtMost, part of the circle; the errors do not add up. It is
	// the circle in which that is least.
	Rounded Rounding
}

// Rounding is the moving to the nearest hole of a circle, counted from the first place.
type Rounding struct {
	Circle int // 0 where there is no circle
	Plate  string
	Face   int
	AtMost Fraction // part of the circle of the work; a half hole over the ratio or less
}

// Near gives what comes nearest, exactly reckoned. The error of Single is at most half a hole of
// the circle over the ratio, that of Compound at most half of the step of both pins together. An
// error for a head or job outside the ranges.
func Near(h Head, j Job) (Nearest, error) {
	t, err := Turns(h, j)
	if err != nil {
		return Nearest{}, err
	}
	n := Nearest{}
	for _, at := range h.seats() {
		c := Of(int64(at.circle), 1)
		holes := t.Times(c).Round()
		s := Setting{Method: Plain, Crank: Count{holes / c.Num, int(holes % c.Num), at.circle}, Plate: at.plate, Face: at.face}
		if s = h.judged(s, j); holes > 0 && (n.Single.Method == 0 || closer(s, n.Single) < 0) {
			n.Single = s
		}
		if r := h.rounding(t, at); n.Rounded.Circle == 0 || r.AtMost.Cmp(n.Rounded.AtMost) < 0 {
			n.Rounded = r
		}
	}
	if s := h.nearPair(j, t); s.Method != 0 && (n.Single.Method == 0 || closer(s, n.Single) < 0) {
		n.Compound = s
	}
	return n, nil
}

func closer(a, b Setting) int { return a.PerSpace.Abs().Cmp(b.PerSpace.Abs()) }

// rounding: the places are at multiples of t c holes, t c = a/b, and miss the nearest hole by
// whole parts 1/b of a hole; none is more than a half.
func (h Head) rounding(t Fraction, at seat) Rounding {
	b := t.Times(Of(int64(at.circle), 1)).Den
	return Rounding{at.circle, at.plate, at.face, Of(b/2, b).Over(Of(int64(at.circle), 1)).Over(h.Ratio)}
}

// nearPair: two pins together reach every multiple of 1/l turn, l the least common multiple of
// their circles, and only the multiples on either side of t are asked for. Of ways that are as
// near the easier one is taken.
func (h Head) nearPair(j Job, t Fraction) (best Setting) {
	off := Fraction{}
	h.pairs(func(crank, back seat, sure bool) {
		l := int64(crank.circle) / gcd(int64(crank.circle), int64(back.circle)) * int64(back.circle)
		below, _ := t.Times(Of(l, 1)).Whole()
		for _, n := range []int64{below, below + 1} {
			aim := Of(n, l)
			miss := aim.Minus(t).Abs()
			if miss.Cmp(Of(1, 2*l)) > 0 || off.Valid() && miss.Cmp(off) > 0 {
				continue
			}
			for _, s := range twoPins(aim, crank, back) {
				s.OneSide = sure
				if best.Method == 0 || cmp.Or(miss.Cmp(off), easier(s, best)) < 0 {
					best, off = s, miss
				}
			}
		}
	})
	if best.Method == 0 {
		return best
	}
	return h.judged(best, j)
}
