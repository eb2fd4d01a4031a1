package dividing

import (
	"fmt"
	"math/big"
	"slices"
	"strings"
	"testing"

	_ "fettle/schema/seeded"
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

// Law: a setting moves exactly 1/N. Every setting moves the work by just what was asked for, k/N
// of the circle with k spaces at once, by whatever method; the crank never turns backwards; each hole is on a circle that the head has.
func TestSettingsMoveWhatIsAsked(t *testing.T) {
	seen := map[Method]int{}
	asked := func(t interface{ Fatalf(string, ...any) }, h Head, j Job) {
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
	}
	for _, n := range []int{7, 24, 69, 127} {
		asked(t, allWays, divisions(t, n))
	}
	for m := Plain; m <= Differential; m++ {
		if seen[m] == 0 {
			t.Errorf("%s never came up", m)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		h, j := scene(t)
		asked(t, h, j)
	})
}

// allWays is a head with which every method comes up: 24 by the direct plate, 69 with two circles of
// a face, 127 with change wheels.
var allWays = Head{Ratio: Of(40, 1), Plates: []Plate{{Name: "a", Faces: [][]int{{15, 16, 17, 18, 19, 20}, {21, 23, 27, 29, 31, 33}}}},
	Direct: []int{24}, Gear: Gearing{Wheels: []int{24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100}, Axis: Level, Idlers: Classic}}

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
	every := func(t interface{ Fatalf(string, ...any) }, h Head, j Job) {
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
	}
	every(t, allWays, divisions(t, 69))
	if pairs == 0 {
		t.Error("no pair came up")
	}
	rapid.Check(t, func(t *rapid.T) {
		h, j := scene(t)
		every(t, h, j)
	})
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
