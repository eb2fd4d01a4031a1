// Package chain adds up chains of dimensions: what a gap, a wall or the metal left for a
// cut comes to when each dimension may lie anywhere within its limits; which dimension takes
// how much of the tolerance; and what must change where the sum does not hold.
//
// Lengths are millimetres. Sums are worked out in decimals to 12 places and compared
// exactly, so that a sum on its border is on it; figures that come back are the nearest
// float64. Two readings are given. The worst case takes every dimension at its worst at
// once, and is the one that counts for a single piece. The statistical one, the root of the
// sum of the squares, holds for most of many pieces whose dimensions are independent and
// lie about their middles; a single piece has no statistics to lean on.
//
// Where a function gives an error, it names the figure that is out of range or what does not go
// together; what is not a number is out of every range.
package chain

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
)

// Link is one dimension of a chain: sizes and deviations within MostLength mm, the ratio from 1e-6
// to 1000 either way.
type Link struct {
	Name         string
	Ratio        float64 // how much the closing dimension grows when this one grows by 1; a diameter that counts on radius has 0.5 or -0.5
	Size         float64 // mm
	Lower, Upper float64 // deviations from Size, mm
}

// Sum is what a chain comes to. It does not say how the links lie within their limits.
type Sum struct {
	Nominal     float64   // of the sizes as written, mm
	Least, Most float64   // worst case, mm; both are reached
	Mean        float64   // middle between Least and Most, mm
	Worst       float64   // half of Most less Least, mm
	Statistical float64   // root of the sum of the squares of the links' halves, mm
	Shares      []float64 // part of Worst that each link takes, 0 to 1, in their order; all 0 where Worst is
}

// The ranges taken.
const (
	MostLength = 1e6 // mm
	MostLinks  = 1000
	leastRatio = 1e-6 // twelve decimals have six figures of it
	mostRatio  = 1000
)

// Close adds a chain of up to MostLinks up: closing dimension = sum of ratio times link, mm; its
// worst-case tolerance is the sum of all tolerances, whatever their signs (the rule of operation
// chains; the published examples are in the tests). An error names the link and the figure that is
// out of range. A chain of no links is 0.
func Close(links []Link) (Sum, error) {
	total, err := addUp(links)
	if err != nil {
		return Sum{}, err
	}
	return total.sum(), nil
}

// Solve gives the limits of an unknown link, mm: the widest that keep the closing dimension within
// least and most, mm, when everything else in the chain is given. Either of them may be infinite
// where there is no such limit, and so may the answer on that side. The ratio, 1e-6 to 1000 either
// way, is that of the unknown link. Where the others alone use up the tolerance it is an error:
// the dimension cannot be held this way. Other errors name the figure out of range.
func Solve(least, most float64, links []Link, ratio float64) (lo, hi float64, err error) {
	rest, err := addUp(links)
	switch {
	case err != nil:
		return 0, 0, err
	case !(math.Abs(ratio) >= leastRatio && math.Abs(ratio) <= mostRatio):
		return 0, 0, fmt.Errorf("the ratio of the unknown link is %v: it runs from %v to %v either way", ratio, leastRatio, mostRatio)
	case math.IsNaN(least) || math.IsNaN(most) || !(least <= most) || beyond(least) || beyond(most):
		return 0, 0, fmt.Errorf("the closing dimension is to lie from %v to %v mm: up to %v mm, the smaller first", least, most, MostLength)
	}
	lo, hi = math.Inf(-1), math.Inf(1)
	low, high := new(big.Rat), new(big.Rat) // what is left for ratio times link
	if !math.IsInf(least, 0) {
		lo = 0
		low.Sub(exact(least), rest.least())
	}
	if !math.IsInf(most, 0) {
		hi = 0
		high.Sub(exact(most), rest.most())
	}
	if lo == 0 && hi == 0 && low.Cmp(high) >= 0 {
		return 0, 0, fmt.Errorf("the other dimensions vary by %v mm together and the closing one may vary by %v: nothing is left for this one",
			float(new(big.Rat).Mul(two, rest.half)), float(new(big.Rat).Sub(exact(most), exact(least))))
	}
	r := exact(ratio)
	low.Quo(low, r)
	high.Quo(high, r)
	if r.Sign() < 0 {
		low, high, lo, hi = high, low, -hi, -lo
	}
	if lo == 0 {
		lo = float(low)
	}
	if hi == 0 {
		hi = float(high)
	}
	return lo, hi, nil
}

func beyond(x float64) bool { return !math.IsInf(x, 0) && math.Abs(x) > MostLength }

// total is a chain added up exactly.
type total struct {
	nominal, mean, half *big.Rat
	squares             *big.Rat
	parts               []*big.Rat // of half
}

func (t total) least() *big.Rat { return new(big.Rat).Sub(t.mean, t.half) }
func (t total) most() *big.Rat  { return new(big.Rat).Add(t.mean, t.half) }

func addUp(links []Link) (total, error) {
	t := total{nominal: new(big.Rat), mean: new(big.Rat), half: new(big.Rat), squares: new(big.Rat)}
	if len(links) > MostLinks {
		return t, fmt.Errorf("%d links: up to %d are added up", len(links), MostLinks)
	}
	for _, l := range links {
		if err := l.check(); err != nil {
			return t, err
		}
		r, mean, half := exact(l.Ratio), l.middle(), l.half()
		t.nominal.Add(t.nominal, new(big.Rat).Mul(r, exact(l.Size)))
		t.mean.Add(t.mean, mean.Mul(mean, r))
		half.Mul(half, r.Abs(r))
		t.half.Add(t.half, half)
		t.squares.Add(t.squares, new(big.Rat).Mul(half, half))
		t.parts = append(t.parts, half)
	}
	return t, nil
}

func (l Link) check() error {
	for _, x := range []float64{l.Size, l.Lower, l.Upper} {
		if math.IsNaN(x) || math.Abs(x) > MostLength {
			return fmt.Errorf("%s: %v mm is out of range: lengths run up to %v mm", l.Name, x, MostLength)
		}
	}
	if l.Lower > l.Upper {
		return fmt.Errorf("%s: its lower deviation, %v mm, is above its upper one, %v mm", l.Name, l.Lower, l.Upper)
	}
	if !(math.Abs(l.Ratio) >= leastRatio && math.Abs(l.Ratio) <= mostRatio) {
		return fmt.Errorf("%s: its ratio is %v: it runs from %v to %v either way", l.Name, l.Ratio, leastRatio, mostRatio)
	}
	return nil
}

// middle is the size in the middle of the limits; half is half of what they are apart.
func (l Link) middle() *big.Rat {
	m := new(big.Rat).Add(exact(l.Lower), exact(l.Upper))
	return m.Add(m.Quo(m, two), exact(l.Size))
}

func (l Link) half() *big.Rat {
	h := new(big.Rat).Sub(exact(l.Upper), exact(l.Lower))
	return h.Quo(h, two)
}

func (t total) sum() Sum {
	s := Sum{Nominal: float(t.nominal), Least: float(t.least()), Most: float(t.most()),
		Mean: float(t.mean), Worst: float(t.half), Statistical: math.Sqrt(float(t.squares))}
	for _, p := range t.parts {
		share := 0.0
		if t.half.Sign() > 0 {
			share = float(new(big.Rat).Quo(p, t.half))
		}
		s.Shares = append(s.Shares, share)
	}
	return s
}

var two = big.NewRat(2, 1)

// exact is a figure as a decimal of 12 places, which is what was written: inch sizes down to
// 1/1024 in have fewer, and the dust of float64 lies below.
func exact(x float64) *big.Rat {
	r, _ := new(big.Rat).SetString(strconv.FormatFloat(x, 'f', 12, 64))
	return r
}

func float(r *big.Rat) float64 {
	f, _ := r.Float64()
	return f
}
