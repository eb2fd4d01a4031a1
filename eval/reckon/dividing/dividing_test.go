package dividing

import (
	"fmt"
	"math/big"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// scene is any head, with a job that it is asked for.
func scene(t *rapid.T) (Head, Job) {
	h := Head{Ratio: Of(int64(rapid.IntRange(1, 120).Draw(t, "ratio")), 1)}
	if rapid.IntRange(0, 5).Draw(t, "odd ratio") == 0 {
		h.Ratio = Of(int64(rapid.IntRange(100, 1000).Draw(t, "parts")), int64(rapid.IntRange(1, 100).Draw(t, "of")))
		if h.Ratio.Cmp(Of(1, 1)) < 0 {
			h.Ratio = Of(1, 1)
		}
	}
	circle := rapid.IntRange(2, 70)
	for i := range rapid.IntRange(0, 3).Draw(t, "plates") {
		p := Plate{Name: fmt.Sprint(i), Mixed: rapid.Bool().Draw(t, "mixed")}
		for range rapid.IntRange(1, 2).Draw(t, "faces") {
			p.Faces = append(p.Faces, rapid.SliceOfN(circle, 1, 6).Draw(t, "circles"))
		}
		h.Plates = append(h.Plates, p)
	}
	h.Direct = rapid.SliceOfN(circle, 0, 3).Draw(t, "direct")
	h.Gear.Wheels = rapid.SliceOfN(rapid.IntRange(10, 120), 0, 9).Draw(t, "wheels")
	h.Gear.Axis = Axis(rapid.IntRange(0, 2).Draw(t, "axis"))
	h.Gear.Idlers = rapid.SampledFrom([]Idlers{{}, Classic, Reversed}).Draw(t, "idlers")
	return h, job(t)
}

func job(t *rapid.T) Job {
	if rapid.IntRange(0, 3).Draw(t, "kind") == 0 {
		j, err := Angle(Of(int64(rapid.IntRange(1, 36000).Draw(t, "angle")), 100), rapid.IntRange(1, 50).Draw(t, "places"))
		must(t, err)
		return j
	}
	n := rapid.IntRange(1, 400).Draw(t, "divisions")
	k := rapid.SampledFrom(append(Blocks(n, 8), 1)).Draw(t, "spaces")
	j, err := Block(n, k)
	must(t, err)
	return j
}

func must(t interface{ Fatalf(string, ...any) }, err error) {
	if err != nil {
		t.Fatalf("%v", err)
	}
}

func rat(a Fraction) *big.Rat { return big.NewRat(a.Num, a.Den) }

// turned plays one move on a model of the head, wheel by wheel, in exact numbers that share no
// code with the package: what the work turns by.
func turned(h Head, s Setting) *big.Rat {
	pin := func(c Count) *big.Rat {
		x := new(big.Rat).SetInt64(c.Turns)
		if c.Circle > 0 {
			x.Add(x, big.NewRat(int64(c.Holes), int64(c.Circle)))
		}
		return x
	}
	if s.Method == Direct {
		return pin(s.Crank)
	}
	way := pin(s.Crank)
	back := pin(s.Back)
	if s.Against {
		back.Neg(back)
	}
	way.Add(way, back)
	// The crank goes "way" past the plate while the plate goes e x: R x - e x = way.
	e := new(big.Rat)
	if tr := s.Train; tr.Pairs > 0 {
		e.SetFrac64(int64(tr.Spindle), int64(tr.Plate))
		if tr.Pairs == 2 {
			e.SetFrac64(int64(tr.Spindle), int64(tr.StudIn))
			e.Mul(e, big.NewRat(int64(tr.StudOut), int64(tr.Plate)))
		}
		// An even number of meshes turns the classic head's plate the way of the crank.
		even := tr.Meshes()%2 == 0
		if h.Gear.Idlers == Reversed {
			even = !even
		}
		if !even {
			e.Neg(e)
		}
	}
	return way.Quo(way, new(big.Rat).Sub(rat(h.Ratio), e))
}

// Law: every setting moves the work by just what was asked for, k/N of the circle, by whatever
// method; the crank never turns backwards; each hole is on a circle that the head has.
func TestSettingsMoveWhatIsAsked(t *testing.T) {
	seen := map[Method]int{}
	rapid.Check(t, func(t *rapid.T) {
		h, j := scene(t)
		all, err := Settings(h, j)
		must(t, err)
		g, err := Gears(h, j)
		must(t, err)
		for _, s := range slices.Concat(all, g.Settings) {
			seen[s.Method]++
			if turned(h, s).Cmp(rat(j.Step)) != 0 || !s.Exact() || h.Moves(s).Cmp(j.Step) != 0 {
				t.Fatalf("%+v moves %s, asked %s", s, turned(h, s), j.Step)
			}
			if s.turn().Sign() <= 0 || s.Crank.Turns < 0 || s.Crank.Holes < 0 || s.Crank.Holes >= max(1, s.Crank.Circle) {
				t.Fatalf("%+v: a way of the crank that cannot be counted", s)
			}
			if s.Method != Direct && s.Holes() > 0 && !on(h, s) {
				t.Fatalf("%+v: no such circle, or not both on one face", s)
			}
			if way := h.Ratio.Times(j.Step); s.Method == Compound && (way.Times(Of(int64(s.Crank.Circle), 1)).Den == 1 || way.Times(Of(int64(s.Back.Circle), 1)).Den == 1) {
				t.Fatalf("%+v: one of the circles serves alone", s)
			}
			if s.Method == Direct && !slices.Contains(h.Direct, s.Crank.Circle) {
				t.Fatalf("%+v: no such direct plate", s)
			}
		}
	})
	for m := Plain; m <= Differential; m++ {
		if seen[m] == 0 {
			t.Errorf("%s never came up", m)
		}
	}
}

// on says whether a face that the setting names has its circles.
func on(h Head, s Setting) bool {
	for _, p := range h.Plates {
		for n, face := range p.Faces {
			if p.Name == s.Plate && (s.Face == n+1 && !p.Mixed || s.Face == 0 && p.Mixed) && slices.Contains(face, s.Crank.Circle) &&
				(s.Method != Compound || slices.Contains(face, s.Back.Circle) && s.OneSide == !p.Mixed) {
				return true
			}
		}
	}
	return false
}

// Law: plain and compound indexing leave no answer out: trying every hole of every circle, and of
// every two circles of a face, finds no way that the settings lack.
func TestNoSettingLeftOut(t *testing.T) {
	pairs := 0
	rapid.Check(t, func(t *rapid.T) {
		h, j := scene(t)
		all, err := Settings(h, j)
		must(t, err)
		want := new(big.Rat).Mul(rat(h.Ratio), rat(j.Step))
		has := map[string]bool{}
		for _, s := range all {
			has[fmt.Sprint(s.Method, s.Plate, s.Face, s.Crank, s.Back, s.Against)] = true
		}
		parts := func(x *big.Rat, c int) (int64, int, bool) { // turns and holes of a way
			n := new(big.Rat).Mul(x, big.NewRat(int64(c), 1))
			if !n.IsInt() || n.Sign() <= 0 {
				return 0, 0, false
			}
			return n.Num().Int64() / int64(c), int(n.Num().Int64() % int64(c)), true
		}
		for _, p := range h.Plates {
			for n, face := range p.Faces {
				at := n + 1
				if p.Mixed {
					at = 0
				}
				for _, c := range face {
					turns, holes, ok := parts(want, c)
					if s := fmt.Sprint(Plain, p.Name, at, Count{turns, holes, c}, Count{}, false); ok && holes > 0 && !has[s] {
						t.Fatalf("%s is not given", s)
					}
					for _, d := range face {
						if _, _, alone := parts(want, d); d == c || ok || alone {
							continue
						}
						for k := 1 - d; k < d; k++ {
							rest := new(big.Rat).Sub(want, big.NewRat(int64(k), int64(d)))
							turns, holes, fits := parts(rest, c)
							if !fits || k == 0 || k > 0 && (holes < k || holes == k && c < d) {
								continue // k > holes: the same with the pins changed over
							}
							pairs++
							s := fmt.Sprint(Compound, p.Name, at, Count{turns, holes, c}, Count{0, max(k, -k), d}, k < 0)
							if holes > 0 && !has[s] {
								t.Fatalf("%s is not given", s)
							}
						}
					}
				}
			}
		}
	})
	if pairs == 0 {
		t.Error("no pair came up")
	}
}

// Law: no setting is given twice, nor once more with the pins changed over.
func TestNoneTwice(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := Head{Ratio: Of(int64(rapid.IntRange(1, 12).Draw(t, "ratio")), 1),
			Plates: []Plate{{Faces: [][]int{rapid.SliceOfNDistinct(rapid.IntRange(2, 12), 2, 5, rapid.ID[int]).Draw(t, "circles")}}}}
		j, err := Divisions(rapid.IntRange(2, 80).Draw(t, "divisions"))
		must(t, err)
		all, err := Settings(h, j)
		must(t, err)
		seen := map[string]bool{}
		for _, s := range all {
			a, b := fmt.Sprint(s.Crank.Holes, "/", s.Crank.Circle), fmt.Sprint(s.Back.Holes, "/", s.Back.Circle)
			if !s.Against && a > b {
				a, b = b, a
			}
			key := fmt.Sprint(s.Method, s.Crank.Turns, a, b, s.Against)
			if seen[key] {
				t.Fatalf("%+v is given twice", s)
			}
			seen[key] = true
		}
	})
	// 7/12 is 1/3 and 1/4: one hole on each pin, given once, the crank on the larger circle.
	h := Head{Ratio: Of(7, 1), Plates: []Plate{{Faces: [][]int{{3, 4}}}}}
	if got := of(t, h, divisions(t, 12), Compound); !slices.Equal(got, []string{"0 + 1/4 + 1/3", "1 + 1/4 - 2/3", "1 + 1/3 - 3/4"}) {
		t.Errorf("%q", got)
	}
}

// Law: the differential leaves no train out: trying all wheels in all places against all ways
// of the crank up to Within finds nothing that the settings lack. No wheel is used more often
// than it is there, idlers counted; wheels that drive stand larger first, and so do those that
// are driven.
func TestNoTrainLeftOut(t *testing.T) {
	found := 0
	rapid.Check(t, func(t *rapid.T) {
		wheels := rapid.SliceOfN(rapid.SampledFrom([]int{20, 24, 28, 32, 40, 48, 56, 64, 72, 100}), 2, 6).Draw(t, "wheels")
		h := Head{Ratio: Of(40, 1), Plates: []Plate{{Faces: [][]int{{rapid.IntRange(15, 30).Draw(t, "circle")}}}},
			Gear: Gearing{Wheels: wheels, Axis: Level, Idlers: rapid.SampledFrom([]Idlers{Classic, Reversed}).Draw(t, "idlers")}}
		j, err := Divisions(rapid.IntRange(30, 200).Draw(t, "divisions"))
		must(t, err)
		g, err := Gears(h, j)
		must(t, err)
		has := map[string]bool{}
		for _, s := range g.Settings {
			has[fmt.Sprint(s.Crank, s.Train)] = true
			used := s.Train.Pairs*2 + s.Train.Idlers
			for _, w := range []int{s.Train.Spindle, s.Train.Plate, s.Train.StudIn, s.Train.StudOut} {
				if w > 0 && count([]int{s.Train.Spindle, s.Train.Plate, s.Train.StudIn, s.Train.StudOut}, w) > count(wheels, w) {
					t.Fatalf("%+v uses %d more often than it is there", s.Train, w)
				}
			}
			if used > len(wheels) || s.Train.Spindle < s.Train.StudOut || s.Train.Plate < s.Train.StudIn {
				t.Fatalf("%+v", s.Train)
			}
		}
		c := h.Plates[0].Faces[0][0]
		for holes := 1; holes < 3*c; holes++ {
			e := new(big.Rat).Sub(big.NewRat(40, 1), big.NewRat(int64(holes*j.Places), int64(c)))
			if x, _ := e.Float64(); e.Sign() == 0 || max(x, -x) > g.Within {
				continue
			}
			for _, tr := range every(wheels, h.Gear.Idlers, e) {
				found++
				s := fmt.Sprint(Count{int64(holes / c), holes % c, c}, tr)
				if !has[s] {
					t.Fatalf("%s is not given", s)
				}
			}
		}
	})
	if found == 0 {
		t.Error("no train came up")
	}
}

func count(all []int, one int) (n int) {
	for _, x := range all {
		if x == one {
			n++
		}
	}
	return n
}

// every tries every choice of two and of four different wheels of the list.
func every(wheels []int, rule Idlers, e *big.Rat) (out []Train) {
	size, against := new(big.Rat).Abs(e), e.Sign() < 0
	idlers := [2]int{rule.SimpleWith, rule.CompoundWith}
	if against {
		idlers = [2]int{rule.SimpleAgainst, rule.CompoundAgainst}
	}
	for a := range wheels {
		for b := range wheels {
			if a != b && big.NewRat(int64(wheels[a]), int64(wheels[b])).Cmp(size) == 0 && len(wheels) >= 2+idlers[0] {
				out = append(out, Train{Pairs: 1, Spindle: wheels[a], Plate: wheels[b], Idlers: idlers[0], Against: against})
			}
			for c := range wheels {
				for d := range wheels {
					if a == b || a == c || a == d || b == c || b == d || c == d || wheels[a] < wheels[b] || wheels[c] < wheels[d] {
						continue
					}
					if big.NewRat(int64(wheels[a]*wheels[b]), int64(wheels[c]*wheels[d])).Cmp(size) == 0 && len(wheels) >= 4+idlers[1] {
						out = append(out, Train{Pairs: 2, Spindle: wheels[a], StudOut: wheels[b], Plate: wheels[c], StudIn: wheels[d], Idlers: idlers[1], Against: against})
					}
				}
			}
		}
	}
	return out
}

// Law: the settings stand in order of preference: plain before direct before compound; within
// plain and direct the larger circle first; within compound the fewer holes first; trains with
// fewer wheels first.
func TestPreference(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, j := scene(t)
		all, err := Settings(h, j)
		must(t, err)
		g, err := Gears(h, j)
		must(t, err)
		all = append(all, g.Settings...)
		for i := 1; i < len(all); i++ {
			a, b := all[i-1], all[i]
			switch {
			case a.Method > b.Method:
				t.Fatalf("%s before %s", a.Method, b.Method)
			case a.Method < b.Method:
			case a.Method <= Direct && a.Crank.Circle < b.Crank.Circle:
				t.Fatalf("%v before %v", a.Crank, b.Crank)
			case a.Method == Compound && a.Holes() > b.Holes():
				t.Fatalf("%v before %v", a, b)
			case a.Method == Differential && a.Train.Pairs*2+a.Train.Idlers > b.Train.Pairs*2+b.Train.Idlers:
				t.Fatalf("%v before %v", a.Train, b.Train)
			}
		}
	})
}

// Law: the running table of an exact setting reaches every place once, never errs, and closes:
// of equal divisions the last line is the first place again, after k whole turns of the work.
func TestTableCloses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, j := scene(t)
		all, err := Settings(h, j)
		must(t, err)
		g, err := Gears(h, j)
		must(t, err)
		for _, s := range slices.Concat(all, g.Settings) {
			closes(t, h, j, s)
		}
	})
	for _, n := range []int{51, 57, 63, 69, 77, 87, 91, 96, 99, 225} {
		h, j := Head{Ratio: Of(40, 1), Plates: three}, divisions(t, n)
		all, err := Settings(h, j)
		must(t, err)
		if len(all) == 0 {
			t.Errorf("%d: no setting with two pins", n)
		}
		for _, s := range all {
			closes(t, h, j, s)
		}
	}
}

func closes(t interface{ Fatalf(string, ...any) }, h Head, j Job, s Setting) {
	reached := map[int]bool{}
	var last Position
	for p := range Table(j, s) {
		last = p
		if at := Of(int64(p.Place-1), int64(j.Places)); j.Whole && at.Cmp(p.Work) != 0 {
			t.Fatalf("%+v: place %d is at %s", p, p.Place, at)
		}
		// Both pins stand where so many moves bring them, up to whole turns.
		pins := Of(int64(p.Hole), max(1, int64(s.Crank.Circle))).Plus(Of(int64(p.Back), max(1, int64(s.Back.Circle))))
		if diff := pins.Minus(s.turn().Times(Of(int64(p.Move), 1))); diff.Den != 1 {
			t.Fatalf("%+v: the pins are %s off", p, diff)
		}
		reached[p.Place] = true
		if p.Error.Num != 0 || !p.Error.Valid() {
			t.Fatalf("%+v errs", p)
		}
		// The place that the table names is where the head, played on its own, stands.
		way := turned(h, s)
		way.Mul(way, big.NewRat(int64(p.Move), 1))
		if diff := way.Sub(way, rat(p.Work)); !diff.IsInt() {
			t.Fatalf("%+v: the work is %s off", p, diff)
		}
	}
	if !j.Whole {
		if last.Move != j.Places-1 {
			t.Fatalf("ends with %+v", last)
		}
		return
	}
	if len(reached) != j.Places || last.Place != 1 || last.Work.Num != 0 || last.Move != j.Places {
		t.Fatalf("%d places, ends with %+v", len(reached), last)
	}
	if h.Ratio.Den == 1 && s.Method == Plain && (last.Hole != 0 || last.Turns != h.Ratio.Num*int64(j.Spaces)) {
		t.Fatalf("closes at %+v", last)
	}
}

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

func TestIdlers(t *testing.T) {
	for _, i := range []Idlers{{1, 1, 0, 1}, {1, 2, 1, 2}, {1, 2, 0, 2}, {1, 2, 0, -1}, {5, 2, 0, 1}} {
		h := Head{Ratio: Of(40, 1), Gear: Gearing{Idlers: i}}
		if _, err := Gears(h, Job{Of(1, 7), 7, 1, true}); err == nil || !strings.Contains(err.Error(), "idler") {
			t.Errorf("%v is taken: %v", i, err)
		}
	}
	for _, i := range []Idlers{Classic, Reversed} {
		g := Gearing{Idlers: i}
		if err := g.check(); err != nil {
			t.Error(err)
		}
	}
}

// Not for lack of trains, but by what the head is, none is given.
func TestAllowed(t *testing.T) {
	j, _ := Divisions(127)
	full := Head{Ratio: Of(40, 1), Plates: three, Gear: Gearing{Wheels: usual}}
	for _, c := range []struct {
		change func(*Head)
		want   Allowed
		some   bool
	}{
		{func(h *Head) {}, IfLevel, true},
		{func(h *Head) { h.Gear.Axis = Level }, Yes, true},
		{func(h *Head) { h.Gear.Axis = Tilted }, StandsUp, false},
		{func(h *Head) { h.Gear.Wheels = nil }, NoWheels, false},
		{func(h *Head) { h.Plates = nil }, NoWheels, false},
		{func(h *Head) { h.Gear.Axis, h.Gear.Wheels = Level, []int{24, 56} }, Yes, false}, // no wheels left for its idlers
	} {
		h := full
		c.change(&h)
		g, err := Gears(h, j)
		if err != nil || g.Allowed != c.want || len(g.Settings) > 0 != c.some {
			t.Errorf("%+v: %v, %d settings, %v", h.Gear, g.Allowed, len(g.Settings), err)
		}
	}
}

func TestRefused(t *testing.T) {
	h := Head{Ratio: Of(40, 1)}
	sized := func(n int) []int { return make([]int, n) }
	for _, c := range []struct {
		err  error
		says string
	}{
		{second(Divisions(0)), "0 divisions: they run from 1 to 1000000"},
		{second(Divisions(1_000_001)), "1000001 divisions: they run from 1 to 1000000"},
		{second(Block(12, 3)), "3 spaces at once of 12: both can be divided by 3, so only 4 of the 12 places would be reached"},
		{second(Block(12, 0)), "0 spaces at once of 12: they run from 1 to 11"},
		{second(Angle(Of(0, 1), 1)), "an angle of 0 deg: angles run from above 0 to 360 deg"},
		{second(Angle(Of(361, 1), 1)), "an angle of 361 deg: angles run from above 0 to 360 deg"},
		{second(Angle(Fraction{}, 1)), "an angle of no number deg: angles run from above 0 to 360 deg"},
		{second(Angle(Of(1, 1_000_003), 1)), "an angle of 1/1000003 deg: it is finer than 1/40000000 of the circle"},
		{second(Settings(Head{Ratio: Of(1, 2)}, Job{Of(1, 7), 7, 1, true})), "a ratio of 1/2: ratios run from 1 to 1000 turns of the crank for one of the work, in parts of 1/100 at the finest"},
		{second(Settings(Head{}, Job{Of(1, 7), 7, 1, true})), "a ratio of no number: ratios run from 1 to 1000 turns of the crank for one of the work, in parts of 1/100 at the finest"},
		{second(Settings(h, Job{})), "a move of no number of the circle, 0 places, 0 spaces at once: no such job"},
		{second(Settings(Head{Ratio: Of(40, 1), Plates: []Plate{{Faces: [][]int{{401}}}}}, Job{Of(1, 7), 7, 1, true})), "a circle of 401 holes: they run from 2 to 400"},
		{second(Settings(Head{Ratio: Of(40, 1), Direct: []int{1}}, Job{Of(1, 7), 7, 1, true})), "a direct plate of 1 holes: they run from 2 to 400"},
		{second(Gears(Head{Ratio: Of(40, 1), Gear: Gearing{Wheels: sized(25)}}, Job{Of(1, 7), 7, 1, true})), "25 change wheels: at most 24 are taken"},
		{second(Gears(Head{Ratio: Of(40, 1), Gear: Gearing{Wheels: []int{9}}}, Job{Of(1, 7), 7, 1, true})), "a change wheel of 9 teeth: they run from 10 to 300"},
		{second(Serve(h, Job{Of(1, 7), 7, 1, true}, 1)), "a bound of 1 holes: they run from 2 to 400"},
		{second(Lined(Of(40, 1), Of(7, 60))), "a line of 7/60 deg on the dial of a table of 40 to 1: a turn of the handle is 9 deg, which must be 1 to 100000 whole lines"},
		{second(Lined(Of(40, 1), Of(0, 1))), "a line of 0 deg on the dial of a table of 40 to 1: a turn of the handle is 9 deg, which must be 1 to 100000 whole lines"},
		{second(Rotary{}.Step(Job{Of(1, 7), 7, 1, true})), "a ratio of no number: ratios run from 1 to 1000 turns of the crank for one of the work, in parts of 1/100 at the finest"},
	} {
		if c.err == nil || c.err.Error() != c.says {
			t.Errorf("%v, not %q", c.err, c.says)
		}
	}
}

func second[T any](_ T, err error) error { return err }

// Law: fractions reckon as big.Rat does, or come to no number; never to a wrong one.
func TestFractions(t *testing.T) {
	number := rapid.OneOf(rapid.Int64(), rapid.Int64Range(-1000, 1000), rapid.Int64Range(-1<<31, 1<<31))
	rapid.Check(t, func(t *rapid.T) {
		a, b := Of(number.Draw(t, "a"), number.Draw(t, "b")), Of(number.Draw(t, "c"), number.Draw(t, "d"))
		if !a.Valid() || !b.Valid() {
			return
		}
		x, y := rat(a), rat(b)
		check := func(name string, got Fraction, want *big.Rat) {
			fits := want != nil && want.Num().IsInt64() && want.Denom().IsInt64()
			if got.Valid() && (want == nil || rat(got).Cmp(want) != 0) || !got.Valid() && fits && name != "plus" && name != "minus" && want.Num().Int64() != -1<<63 {
				t.Fatalf("%s %s %s: %s, not %s", a, name, b, got, want)
			}
		}
		check("plus", a.Plus(b), new(big.Rat).Add(x, y))
		check("minus", a.Minus(b), new(big.Rat).Sub(x, y))
		check("times", a.Times(b), new(big.Rat).Mul(x, y))
		if b.Num != 0 {
			check("over", a.Over(b), new(big.Rat).Quo(x, y))
		} else {
			check("over", a.Over(b), nil)
		}
		if a.Cmp(b) != x.Cmp(y) || a.Sign() != x.Sign() {
			t.Fatalf("%s against %s: %d", a, b, a.Cmp(b))
		}
		w, rest := a.Whole()
		if sum := new(big.Rat).Add(big.NewRat(w, 1), rat(rest)); sum.Cmp(x) != 0 || rest.Num < 0 || rest.Cmp(Of(1, 1)) >= 0 {
			t.Fatalf("%s is %d and %s", a, w, rest)
		}
	})
}

// Law: where the differential stops for having enough, it has all up to Within: each circle
// alone gives no train as slow that all circles together lack.
func TestEnough(t *testing.T) {
	h := Head{Ratio: Of(40, 1), Plates: slices.Concat(three, sided), Gear: Gearing{Wheels: usual, Axis: Level}}
	for _, n := range []int{2, 3, 7, 12} {
		j, err := Divisions(n)
		must(t, err)
		g, err := Gears(h, j)
		must(t, err)
		has := map[string]bool{}
		for _, s := range g.Settings {
			has[fmt.Sprint(s)] = true
			if s.Train.Ratio().Abs().Float() > g.Within+1e-6 {
				t.Errorf("%d: %v is faster than %v", n, s.Train, g.Within)
			}
		}
		if len(g.Settings) < enough {
			t.Errorf("%d: %d settings up to %v are no test of this", n, len(g.Settings), g.Within)
		}
		for _, p := range h.Plates {
			for i, face := range p.Faces {
				for _, c := range face {
					alone := h
					alone.Plates = []Plate{{Name: p.Name, Faces: make([][]int, i+1)}}
					alone.Plates[0].Faces[i] = []int{c}
					one, err := Gears(alone, j)
					must(t, err)
					for _, s := range one.Settings {
						if fast := s.Train.Ratio().Abs().Float(); fast <= min(g.Within, one.Within) && !has[fmt.Sprint(s)] {
							t.Errorf("%d: %+v is not given", n, s)
						}
					}
				}
			}
		}
	}
}
