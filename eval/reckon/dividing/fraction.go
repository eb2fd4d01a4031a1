package dividing

import (
	"cmp"
	"math"
	"math/bits"
	"strconv"
)

// Fraction is an exact number Num/Den in lowest terms, Den above 0. The zero value is no
// number: what leaves 64 bits comes to it and stays there, as a division by 0 does. Within the
// ranges of this package that does not happen.
type Fraction struct{ Num, Den int64 }

// Of gives num/den in lowest terms; no number where den is 0 or either is the least whole number
// of 64 bits, which has no opposite.
func Of(num, den int64) Fraction {
	if den == 0 || num == math.MinInt64 || den == math.MinInt64 {
		return Fraction{}
	}
	if den < 0 {
		num, den = -num, -den
	}
	g := gcd(num, den)
	return Fraction{num / g, den / g}
}

// Valid says whether it is a number.
func (a Fraction) Valid() bool { return a.Den > 0 && a.Num != math.MinInt64 }

// Plus adds; no number where either is none or the sum leaves 64 bits.
func (a Fraction) Plus(b Fraction) Fraction {
	if !a.Valid() || !b.Valid() {
		return Fraction{}
	}
	g := gcd(a.Den, b.Den)
	x, ok1 := times(a.Num, b.Den/g)
	y, ok2 := times(b.Num, a.Den/g)
	den, ok3 := times(a.Den/g, b.Den)
	sum := x + y
	if !ok1 || !ok2 || !ok3 || (x > 0) == (y > 0) && (sum > 0) != (x > 0) {
		return Fraction{}
	}
	return Of(sum, den)
}

// Minus takes b away; no number where either is none or the difference leaves 64 bits.
func (a Fraction) Minus(b Fraction) Fraction { return a.Plus(Fraction{-b.Num, b.Den}) }

// Times multiplies; no number where either is none or the product leaves 64 bits.
func (a Fraction) Times(b Fraction) Fraction {
	if !a.Valid() || !b.Valid() {
		return Fraction{}
	}
	g, h := gcd(a.Num, b.Den), gcd(b.Num, a.Den)
	num, ok1 := times(a.Num/g, b.Num/h)
	den, ok2 := times(a.Den/h, b.Den/g)
	if !ok1 || !ok2 {
		return Fraction{}
	}
	return Fraction{num, den}
}

// Over divides; no number where b is 0, either is none or the quotient leaves 64 bits.
func (a Fraction) Over(b Fraction) Fraction {
	if !b.Valid() {
		return Fraction{}
	}
	return a.Times(Of(b.Den, b.Num))
}

// Cmp is below 0, 0 or above 0 as a is less than b, equal or greater; no number is less than all.
func (a Fraction) Cmp(b Fraction) int {
	switch {
	case !a.Valid() && !b.Valid():
		return 0
	case !a.Valid():
		return -1
	case !b.Valid():
		return 1
	}
	if s, t := sign(a.Num), sign(b.Num); s != t {
		return cmp.Compare(s, t)
	}
	h1, l1 := bits.Mul64(size(a.Num), uint64(b.Den))
	h2, l2 := bits.Mul64(size(b.Num), uint64(a.Den))
	c := cmp.Compare(h1, h2)
	if c == 0 {
		c = cmp.Compare(l1, l2)
	}
	return c * sign(a.Num)
}

// Abs leaves the sign away; no number stays none.
func (a Fraction) Abs() Fraction { return Fraction{max(a.Num, -a.Num), a.Den} }

// Sign is -1, 0 or 1, that of Num.
func (a Fraction) Sign() int { return sign(a.Num) }

// Whole gives the greatest whole number not above it, and what is left, 0 or more and below 1; 0
// and no number where it is none.
func (a Fraction) Whole() (int64, Fraction) {
	if !a.Valid() {
		return 0, a
	}
	w := a.Num / a.Den
	if a.Num%a.Den < 0 {
		w--
	}
	return w, Fraction{a.Num - w*a.Den, a.Den}.low()
}

// Round gives the nearest whole number; a half goes up; 0 where it is no number.
func (a Fraction) Round() int64 {
	w, rest := a.Whole()
	if rest.Cmp(Fraction{1, 2}) >= 0 {
		w++
	}
	return w
}

// Float gives the nearest floating-point number to within a rounding; NaN where it is no number.
func (a Fraction) Float() float64 {
	if !a.Valid() {
		return math.NaN()
	}
	return float64(a.Num) / float64(a.Den)
}

// String writes 3/4, or 5 where it is whole, or "no number".
func (a Fraction) String() string {
	switch {
	case !a.Valid():
		return "no number"
	case a.Den == 1:
		return strconv.FormatInt(a.Num, 10)
	}
	return strconv.FormatInt(a.Num, 10) + "/" + strconv.FormatInt(a.Den, 10)
}

func (a Fraction) low() Fraction { return Of(a.Num, a.Den) }

// times multiplies and says whether the product fits.
func times(a, b int64) (int64, bool) {
	hi, lo := bits.Mul64(size(a), size(b))
	if hi != 0 || lo > math.MaxInt64 {
		return 0, false
	}
	if sign(a)*sign(b) < 0 {
		return -int64(lo), true
	}
	return int64(lo), true
}

func size(a int64) uint64 {
	if a < 0 {
		return uint64(-a)
	}
	return uint64(a)
}

func sign(a int64) int { return cmp.Compare(a, 0) }

// gcd is the greatest common divisor, at least 1.
func gcd(a, b int64) int64 {
	a, b = max(a, -a), max(b, -b)
	for b != 0 {
		a, b = b, a%b
	}
	return max(a, 1)
}
