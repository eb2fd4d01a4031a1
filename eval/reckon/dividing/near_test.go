package dividing

import (
	"math/big"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Law: the nearest single circle is off by at most half a hole of it over the ratio, and no other
// hole of any circle is nearer; places rounded from the first one are never off by more than
// AtMost, which is at most half a hole, and with a whole ratio some place of N is off by just that.
func TestNear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, j := scene(t)
		n, err := Near(h, j)
		must(t, err)
		way := h.Ratio.Times(j.Step)
		for _, s := range []Setting{n.Single, n.Compound} {
			if s.Method == 0 {
				continue
			}
			off := new(big.Rat).Sub(turned(h, s), rat(j.Step))
			if off.Cmp(rat(s.PerSpace)) != 0 || s.Method == Compound && !on(h, s) {
				t.Fatalf("%+v is off by %s", s, off)
			}
			half := Of(1, 2*int64(s.Crank.Circle)).Over(h.Ratio)
			if s.PerSpace.Abs().Cmp(half) > 0 {
				t.Fatalf("%+v is off by more than half a hole", s)
			}
			if closing := off.Mul(off, big.NewRat(int64(j.Places), 1)); j.Whole && closing.Cmp(rat(s.AtClosing)) != 0 {
				t.Fatalf("%+v closes with %s", s, closing)
			}
		}
		for _, at := range h.seats() {
			for holes := range int64(h.Ratio.Float()+2) * int64(at.circle) {
				miss := Of(holes, int64(at.circle)).Minus(way).Over(h.Ratio).Abs()
				if holes > 0 && n.Single.Method != 0 && miss.Cmp(n.Single.PerSpace.Abs()) < 0 {
					t.Fatalf("%d holes of %d are nearer than %+v", holes, at.circle, n.Single)
				}
			}
		}
		if n.Rounded.Circle > 0 {
			worst := Of(0, 1)
			for p := range n.Rounded.Table(h, j) {
				if p.Error.Abs().Cmp(worst) > 0 {
					worst = p.Error.Abs()
				}
			}
			half := Of(1, 2*int64(n.Rounded.Circle)).Over(h.Ratio)
			if worst.Cmp(n.Rounded.AtMost) > 0 || n.Rounded.AtMost.Cmp(half) > 0 || j.Whole && h.Ratio.Den == 1 && worst.Cmp(n.Rounded.AtMost) != 0 {
				t.Fatalf("off by %s, said %s, half a hole %s", worst, n.Rounded.AtMost, half)
			}
		}
	})
}

// Law: two pins come as near as any two circles of one face can: no way h/c + k/d
// is nearer, and they are given just where one circle comes less near.
func TestNearCompound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		face := rapid.SliceOfNDistinct(rapid.IntRange(3, 24), 2, 4, rapid.ID[int]).Draw(t, "circles")
		h := Head{Ratio: Of(40, 1), Plates: []Plate{{Faces: [][]int{face}}}}
		j, err := Divisions(rapid.IntRange(2, 200).Draw(t, "divisions"))
		must(t, err)
		n, err := Near(h, j)
		must(t, err)
		way := h.Ratio.Times(j.Step)
		best, fewest := Fraction{}, 0
		for _, c := range face {
			for _, d := range face {
				for a := int64(1); c != d && a < 21*int64(c); a++ {
					for k := 1 - int64(d); k < int64(d); k++ {
						sum := Of(a, int64(c)).Plus(Of(k, int64(d)))
						// A sum that one of the circles makes alone is no business of two pins.
						if sum.Num <= 0 || int64(c)%sum.Den == 0 || int64(d)%sum.Den == 0 {
							continue
						}
						holes := int(a)%c + int(max(k, -k))
						if miss := sum.Minus(way).Abs(); !best.Valid() || miss.Cmp(best) < 0 || miss.Cmp(best) == 0 && holes < fewest {
							best, fewest = miss, holes
						}
					}
				}
			}
		}
		single := Fraction{}
		if n.Single.Method != 0 {
			single = n.Single.turn().Minus(way).Abs()
		}
		wanted := best.Valid() && (!single.Valid() || best.Cmp(single) < 0)
		if wanted != (n.Compound.Method != 0) {
			t.Fatalf("one circle is off by %s, two by %s: %+v", single, best, n.Compound)
		}
		if miss := n.Compound.turn().Minus(way).Abs(); wanted && (miss.Cmp(best) != 0 || n.Compound.Holes() != fewest) {
			t.Fatalf("%s is off by %s, %s is possible with %d holes", written(n.Compound), miss, best, fewest)
		}
	})
}

// Law: places read from the first one are never off by more than half a line; a move rounded once
// and repeated is off by N times its own error at closing; turns and lines are those of the dial.
func TestDial(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ratio := Of(rapid.SampledFrom([]int64{36, 40, 60, 72, 80, 90, 120, 180}).Draw(t, "ratio"), 1)
		r, err := Lined(ratio, Of(360, 1).Over(ratio).Over(Of(int64(rapid.IntRange(1, 2000).Draw(t, "lines")), 1)))
		must(t, err)
		j := job(t)
		s, err := r.Step(j)
		must(t, err)
		if s.AtMost.Cmp(r.Line.Over(Of(2, 1))) > 0 || j.Whole && s.AtClosing.Cmp(s.PerSpace.Times(Of(int64(j.Places), 1))) != 0 {
			t.Fatalf("%+v", s)
		}
		for p := range r.Table(j) {
			if p.Error.Abs().Cmp(s.AtMost) > 0 {
				t.Fatalf("%+v is off by more than %s", p, s.AtMost)
			}
			if p.Dial.Lines < 0 || p.Dial.Lines >= r.lines().Num {
				t.Fatalf("%+v: no such line", p)
			}
			at := new(big.Rat).Quo(big.NewRat(p.Dial.Turns, 1), rat(ratio))
			at.Add(at, new(big.Rat).Mul(big.NewRat(p.Dial.Lines, 1), rat(r.Line)))
			if at.Sub(at, new(big.Rat).Mul(rat(j.Step), big.NewRat(int64(p.Move), 1))).Cmp(rat(p.Error)) != 0 {
				t.Fatalf("%+v is off by %s", p, at)
			}
		}
	})
}

// Law: a circle serves just where its size is a multiple of the least, and Settings finds it.
func TestServe(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, j := scene(t)
		s, err := Serve(h, j, 200)
		must(t, err)
		for c := 2; c <= 200; c++ {
			h.Plates, h.Direct = []Plate{{Faces: [][]int{{c}}}}, []int{c}
			all, err := Settings(h, j)
			must(t, err)
			plain := slices.ContainsFunc(all, func(s Setting) bool { return s.Method == Plain })
			direct := slices.ContainsFunc(all, func(s Setting) bool { return s.Method == Direct })
			if plain != slices.Contains(s.Sizes, c) || plain != (int64(c)%s.Least == 0) || direct != (int64(c)%s.Direct == 0) {
				t.Fatalf("%d holes: plain %v, direct %v, %+v", c, plain, direct, s)
			}
		}
	})
}
