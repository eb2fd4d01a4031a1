package screwcut

import (
	"fmt"
	"math"
	"math/big"
	"strings"
	"testing"

	"fettle/schema/drawing"
	"fettle/schema/printed"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

func read(t testing.TB, s string) Pitch {
	t.Helper()
	p, err := ParsePitch(s, drawing.Millimetre)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// job reads "lead screw; lead; rest".
func job(t testing.TB, s string) (l Lathe, lead Pitch, rest string) {
	t.Helper()
	f := strings.Split(s, "; ")
	if len(f) == 3 {
		rest = f[2]
	}
	return Lathe{Screw: read(t, f[0])}, read(t, f[1]), rest
}

func pair(t testing.TB, s string) (a, b int) {
	t.Helper()
	if n, err := fmt.Sscanf(s, "%d/%d", &a, &b); n != 2 {
		t.Fatal(s, err)
	}
	return a, b
}

// only gives the train that two wheels make, or none.
func only(t testing.TB, l Lathe, lead Pitch, wheels string, within float64) []Train {
	t.Helper()
	pairs := strings.Split(wheels, " x ")
	for _, p := range pairs {
		a, b := pair(t, p)
		l.Wheels = append(l.Wheels, a, b)
	}
	got, err := Trains(l, Wanted{lead, within, len(pairs)})
	if err != nil {
		t.Fatal(err)
	}
	if got.Found != len(got.Trains) {
		t.Fatalf("%d found, %d listed", got.Found, len(got.Trains))
	}
	return got.Trains
}

func TestPublished(t *testing.T) {
	counts := map[string]int{}
	for _, f := range printed.Rows(t, "screwcut.tsv", 5) {
		counts[f[0]]++
		switch f[0] {
		case "idlers":
			way := map[int]string{0: "same", 1: "against"}[Train{Pairs: 1}.Meshes(int(printed.Figure(t, f[1])))%2]
			if way != f[2] {
				t.Errorf("%s idlers: %s, printed %s", f[1], way, f[2])
			}
			continue
		case "exact ratio":
			l, lead, _ := job(t, f[1])
			if got := Ratio(l, lead); got.String() != f[2] {
				t.Errorf("%s: %s, printed %s", f[1], got, f[2])
			}
			continue
		}
		l, lead, rest := job(t, f[1])
		switch f[0] {
		case "driven wheel":
			got, err := Mate(l, lead, int(printed.Figure(t, rest)))
			if err != nil {
				t.Fatal(err)
			}
			if x, _ := got.Float64(); math.Abs(x-printed.Figure(t, f[2])) > printed.Figure(t, f[3]) {
				t.Errorf("%s: %v, printed %s", f[1], x, f[2])
			}
		case "train":
			if got := only(t, l, lead, rest, 0); len(got) != 1 || !got[0].Exact || got[0].String() != rest {
				t.Errorf("%s: %v", f[1], got)
			}
		case "misprint":
			if got := only(t, l, lead, rest, 0); len(got) != 0 {
				t.Errorf("%s: %v, which is a misprint", f[1], got)
			}
			if got := only(t, l, lead, f[2], 0); len(got) != 1 {
				t.Errorf("%s: %s does not come out", f[1], f[2])
			}
		case "approximation":
			got := only(t, l, lead, rest, MostWithin)
			if len(got) == 0 || got[0].Pairs != strings.Count(rest, "/") {
				t.Fatalf("%s: %v", f[1], got)
			}
			want, within := printed.Figures(t, f[2]), printed.Figures(t, f[3])
			if g := got[0]; g.Exact || math.Abs(g.PPM-want[0]) > within[0] || math.Abs(g.Over(25)*1000-want[1]) > within[1] {
				t.Errorf("%s: %v ppm, %v um over 25 mm, computed %s", f[1], g.PPM, g.Over(25)*1000, f[2])
			}
		default:
			t.Errorf("no check for %q", f[0])
		}
	}
	for what, n := range map[string]int{"train": 33, "driven wheel": 3, "misprint": 1, "approximation": 23, "exact ratio": 9, "idlers": 2} {
		if counts[what] != n {
			t.Errorf("%d rows of %s, want %d", counts[what], what, n)
		}
	}
}

// A usual rack of a small lathe with an inch screw (from memory: twenties to seventies by fives,
// with a 38 and a double).
var rack = []int{20, 20, 25, 30, 35, 38, 40, 45, 50, 55, 60, 65, 70, 75}

func trains(t testing.TB, l Lathe, w Wanted) Answer {
	t.Helper()
	a, err := Trains(l, w)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// Every train, against trying all orders of wheels one by one.
func TestEvery(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		wheels := rapid.SliceOfN(rapid.IntRange(15, 40), 2, 7).Draw(r, "wheels")
		w := Wanted{Within: rapid.SampledFrom([]float64{0, 100, 5000}).Draw(r, "within"), Pairs: rapid.IntRange(1, 3).Draw(r, "pairs")}
		l := Lathe{Screw: read(t, "3 mm"), Wheels: wheels, Mesh: Mesh{Spare: rapid.SampledFrom([]int{0, 15}).Draw(r, "spare")}}
		w.Lead = read(t, rapid.SampledFrom([]string{"1 mm", "1.5 mm", "2 mm", "3 mm", "13 tpi", "module 0.5"}).Draw(r, "lead"))
		got := map[string]bool{}
		for _, x := range trains(t, l, w).Trains {
			if k := sorted(x); got[k] {
				r.Fatalf("%s stands twice", k)
			} else {
				got[k] = true
			}
			if !l.Mesh.Stands(x) {
				r.Fatalf("%v cannot stand", x)
			}
			if math.Abs(x.Lead/w.Lead.MM()-1-x.PPM/1e6) > 1e-12 || x.Exact != (x.PPM == 0) || math.Abs(x.PPM) > w.Within+1e-6 {
				r.Fatalf("%v cuts %v for %v: %v ppm", x, x.Lead, w.Lead.MM(), x.PPM)
			}
		}
		want := map[string]bool{}
		for pairs := 1; pairs <= w.Pairs; pairs++ {
			byHand(l, w, Train{Pairs: pairs}, 0, map[int]bool{}, want)
		}
		for k := range want {
			if !got[k] {
				r.Fatalf("%s is not found", k)
			}
		}
		if len(want) != len(got) {
			r.Fatalf("%d trains, by hand %d", len(got), len(want))
		}
	})
}

// sorted names a train by its wheels, in no order.
func sorted(x Train) string {
	a, b := x.Driver, x.Driven
	for n := range x.Pairs {
		for m := range n {
			if a[n] < a[m] {
				a[n], a[m] = a[m], a[n]
			}
			if b[n] < b[m] {
				b[n], b[m] = b[m], b[n]
			}
		}
	}
	return fmt.Sprint(a[:x.Pairs], b[:x.Pairs])
}

func byHand(l Lathe, w Wanted, x Train, at int, used map[int]bool, out map[string]bool) {
	if at == 2*x.Pairs {
		p, q := big.NewRat(1, 1), big.NewRat(1, 1)
		for n := range x.Pairs {
			p.Mul(p, big.NewRat(int64(x.Driver[n]), 1))
			q.Mul(q, big.NewRat(int64(x.Driven[n]), 1))
		}
		e := new(big.Rat).Quo(p, q)
		e.Quo(e, Ratio(l, w.Lead)).Sub(e, big.NewRat(1, 1))
		if x, _ := e.Float64(); math.Abs(x)*1e6 > w.Within {
			return
		}
		for n := range x.Pairs - 1 {
			a, b, c, d := x.Driver[n], x.Driven[n], x.Driver[n+1], x.Driven[n+1]
			if a+b < c+l.Mesh.Spare || c+d < b+l.Mesh.Spare {
				return
			}
		}
		out[sorted(x)] = true
		return
	}
	for i, z := range l.Wheels {
		if used[i] {
			continue
		}
		used[i] = true
		if at%2 == 0 {
			x.Driver[at/2] = z
		} else {
			x.Driven[at/2] = z
		}
		byHand(l, w, x, at+1, used, out)
		used[i] = false
	}
}

// Laws: ratios. A screw, lead and head that grow alike want the same wheels; twice the lead wants
// twice the ratio; a head that turns twice wants half.
func TestRatioLaws(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		l := Lathe{Screw: read(t, "8 tpi")}
		n := rapid.IntRange(1, 12).Draw(r, "times")
		p, err := Millimetres(float64(rapid.IntRange(10, 6000).Draw(r, "hundredths")) / 100)
		if err != nil {
			r.Fatal(err)
		}
		many, err := p.Times(n)
		if err != nil {
			r.Fatal(err)
		}
		one := Ratio(l, p)
		if new(big.Rat).Mul(one, big.NewRat(int64(n), 1)).Cmp(Ratio(l, many)) != 0 {
			r.Fatal("the lead of many starts")
		}
		l.Head = Fraction{int64(n), 1}
		if Ratio(l, many).Cmp(one) != 0 {
			r.Fatal("a head that turns more")
		}
	})
}

func TestRanked(t *testing.T) {
	l := Lathe{Screw: read(t, "8 tpi"), Wheels: append([]int{63, 80, 100, 127}, rack...), Mesh: Mesh{Spare: RuleOfThumb}}
	a := trains(t, l, Wanted{read(t, "1.25 mm"), 200, 2})
	if !a.Trains[0].Exact || a.Trains[0].String() != "50/127" || a.Found != len(a.Trains) {
		t.Errorf("first %+v of %d", a.Trains[0], a.Found)
	}
	for n, x := range a.Trains[1:] {
		if rank(a.Trains[n], x) >= 0 {
			t.Errorf("%v before %v", a.Trains[n], x)
		}
	}
	if lead := a.Trains[0].Lead; math.Abs(lead-1.25) > 1e-12 {
		t.Errorf("cuts %v", lead)
	}
}

// A double is used twice only where it is there twice.
func TestDoubles(t *testing.T) {
	w := Wanted{read(t, "3 mm"), 0, 1}
	if a := trains(t, Lathe{Screw: w.Lead, Wheels: []int{40, 50}}, w); a.Found != 0 {
		t.Errorf("%v", a.Trains)
	}
	if a := trains(t, Lathe{Screw: w.Lead, Wheels: []int{40, 50, 40}}, w); a.Found != 1 || a.Trains[0].String() != "40/40" {
		t.Errorf("%v", a.Trains)
	}
}

func TestMesh(t *testing.T) {
	train := func(a, b, c, d int) Train {
		return Train{Pairs: 2, Driver: [3]int{a, c}, Driven: [3]int{b, d}}
	}
	rule := Mesh{Spare: RuleOfThumb}
	for _, c := range []struct {
		name string
		m    Mesh
		t    Train
		want bool
	}{
		{"20+60 = 65+15, on the border", rule, train(20, 60, 65, 40), true},
		{"20+60 < 66+15", rule, train(20, 60, 66, 40), false},
		{"65+10 = 60+15, on the border", rule, train(30, 60, 65, 10), true},
		{"64+10 < 60+15", rule, train(30, 60, 64, 10), false},
		{"nut of 13 mm at module 1 is 15 teeth", Mesh{Module: 1, Boss: 13}, train(20, 60, 65, 40), true},
		{"nut of 13.5 mm is more", Mesh{Module: 1, Boss: 13.5}, train(20, 60, 65, 40), false},
		{"module 0.5: the same nut wants 28 teeth", Mesh{Module: 0.5, Boss: 13}, train(20, 60, 53, 40), false},
		{"studs 40 and 50 mm apart close on 90", Mesh{Module: 1, Centres: 90}, train(20, 60, 40, 60), true},
		{"and not on 91", Mesh{Module: 1, Centres: 91}, train(20, 60, 40, 60), false},
		{"nor on 9: the last wheel is in the way", Mesh{Module: 1, Centres: 9}, train(20, 60, 40, 60), false},
		{"the stud 50 mm from the screw is on a slot from 50", Mesh{Module: 1, Nearest: 50, Far: 90}, train(20, 60, 40, 60), true},
		{"and not on one from 50.1", Mesh{Module: 1, Nearest: 50.1, Far: 90}, train(20, 60, 40, 60), false},
		{"nor on one to 49.9", Mesh{Module: 1, Nearest: 20, Far: 49.9}, train(20, 60, 40, 60), false},
	} {
		if got := c.m.Stands(c.t); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
	// 20/60 on 100 mm: 40 lies between, for 30 and 50 mm do not reach; 80 does (50 + 70 >= 100).
	l := Lathe{Screw: read(t, "3 mm"), Wheels: []int{20, 60, 40, 80}, Mesh: Mesh{Module: 1, Centres: 100}}
	a := trains(t, l, Wanted{read(t, "1 mm"), 0, 1})
	if len(a.Trains) != 1 || a.Trains[0].Idler != 80 {
		t.Errorf("idler: %+v", a)
	}
	l.Wheels = []int{20, 60, 40}
	if a := trains(t, l, Wanted{read(t, "1 mm"), 0, 1}); a.Found != 0 || a.Blocked != 1 {
		t.Errorf("no idler reaches: %+v", a)
	}
}

func TestHalfNuts(t *testing.T) {
	for _, c := range []struct {
		screw, lead string
		anywhere    bool
		turns       int64
		dial, marks int
	}{ // 8 tpi with a dial of 16 teeth: any thread of a multiple of 8 anywhere; 12 at every second
		// tooth; odd numbers at every eighth; halves at one place (common practice, by arithmetic)
		{"8 tpi", "16 tpi", true, 1, 16, 16}, {"8 tpi", "12 tpi", false, 2, 16, 8}, {"8 tpi", "10 tpi", false, 4, 16, 4},
		{"8 tpi", "13 tpi", false, 8, 16, 2}, {"8 tpi", "11.5 tpi", false, 16, 16, 1}, {"8 tpi", "1.25 mm", false, 50, 16, 0},
		{"3 mm", "1.5 mm", true, 1, 14, 14}, {"3 mm", "1.75 mm", false, 7, 14, 2}, {"3 mm", "1.25 mm", false, 5, 15, 3}, {"3 mm", "4.5 mm", false, 3, 15, 5},
	} {
		l := Lathe{Screw: read(t, c.screw)}
		r := Ratio(l, read(t, c.lead))
		x := Train{Pairs: 1, Driver: [3]int{int(r.Num().Int64())}, Driven: [3]int{int(r.Denom().Int64())}}
		x.cuts(Fraction{1, 1}, l.Screw.MM())
		n, err := HalfNuts(x, l.Screw)
		if err != nil || n.Anywhere != c.anywhere || n.Screw != c.turns || n.Marks(c.dial) != c.marks {
			t.Errorf("%s on %s: %+v, %d marks, %v", c.lead, c.screw, n, n.Marks(c.dial), err)
		}
		if turns := n.Way / x.Lead; math.Abs(turns-float64(n.Spindle)) > 1e-9 {
			t.Errorf("%s on %s: %v mm is %v turns, not %d", c.lead, c.screw, n.Way, turns, n.Spindle)
		}
	}
	// A 63-tooth wheel for 127 keeps the nuts shut however near its thread is.
	a := trains(t, Lathe{Screw: read(t, "8 tpi"), Wheels: []int{63, 80, 50, 100}}, Wanted{read(t, "1.25 mm"), 200, 2})
	if n, err := HalfNuts(a.Trains[0], read(t, "8 tpi")); err != nil || n.Screw != 63 || n.Anywhere {
		t.Errorf("%v: %+v %v", a.Trains[0], n, err)
	}
}

// Laws: closing the nuts after Nuts.Screw turns finds the groove, after fewer it does not; closing
// them after NextStart turns again and again comes to each start once.
func TestNutLaws(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		f := reduced(int64(rapid.IntRange(1, 60).Draw(r, "screw")), int64(rapid.IntRange(1, 60).Draw(r, "spindle")))
		n, err := HalfNuts(Train{Turn: f}, read(t, "3 mm"))
		if err != nil {
			r.Fatal(err)
		}
		for k := int64(1); k <= n.Screw; k++ {
			if right := k*f.Den%f.Num == 0; right != (k == n.Screw) {
				r.Fatalf("%v: after %d of %d turns: %v", f, k, n.Screw, right)
			}
		}
		starts := rapid.IntRange(2, 6).Draw(r, "starts")
		turns, ok := n.NextStart(starts)
		if !ok {
			if n.Screw%int64(starts) == 0 {
				r.Fatal("no next start")
			}
			return
		}
		seen := map[int64]bool{}
		for k := range int64(starts) {
			phase := k * turns * f.Den % f.Num * int64(starts)
			if phase%f.Num != 0 {
				r.Fatalf("between the starts: %d", phase)
			}
			seen[phase/f.Num] = true
		}
		if len(seen) != starts {
			r.Fatalf("%d starts of %d", len(seen), starts)
		}
	})
}

func TestStartTeeth(t *testing.T) {
	for _, c := range []struct {
		wheel, starts int
		head          Fraction
		teeth         int64
		ok            bool
	}{{40, 2, Fraction{}, 20, true}, {45, 2, Fraction{}, 0, false}, {45, 2, Fraction{2, 1}, 45, true}, {60, 3, Fraction{1, 2}, 10, true}, {0, 3, Fraction{}, 0, false}, {60, 1, Fraction{}, 0, false}} {
		if teeth, ok := StartTeeth(c.wheel, c.head, c.starts); teeth != c.teeth || ok != c.ok {
			t.Errorf("%+v: %d %v", c, teeth, ok)
		}
	}
}

// A rack without it wants the 127-tooth wheel for metric threads on an inch screw.
func TestWheelsToGet(t *testing.T) {
	got, err := WheelsToGet(Lathe{Screw: read(t, "8 tpi"), Wheels: rack, Mesh: Mesh{Spare: RuleOfThumb}}, Wanted{read(t, "1.5 mm"), 50, 2})
	if err != nil || len(got) != 1 || got[0] != 127 {
		t.Errorf("%v %v", got, err)
	}
}

func TestPitch(t *testing.T) {
	for _, c := range []struct {
		s, words string
		mm       float64
	}{
		{"1.5", "1.5 mm", 1.5}, {"0.75 mm", "0.75 mm", 0.75}, {"1/8 in", "8 tpi", 3.175}, {"1.2345", "1.2345 mm", 1.2345}, {"2/3", "2/3 mm", 2.0 / 3}, {"13 tpi", "13 tpi", 25.4 / 13}, {"11 1/2 tpi", "11.5 tpi", 25.4 / 11.5},
		{"2.875TPI", "2.875 tpi", 25.4 / 2.875}, {"1/3 in", "3 tpi", 25.4 / 3}, {"module 0.8", "module 0.8 mm", 0.8 * math.Pi}, {"20 DP", "diametral pitch 20", 25.4 * math.Pi / 20},
	} {
		p, err := ParsePitch(c.s, drawing.Millimetre)
		if err != nil || p.String() != c.words || math.Abs(p.MM()-c.mm) > 1e-12 {
			t.Errorf("%s: %v, %v mm, %v", c.s, p, p.MM(), err)
		}
	}
	for _, s := range []string{"", "0", "-1", "tpi", "1e999 tpi", "module", "0 dp", "1500 mm", "0.001", "NaN", "8 tpi tpi", "module 0.8 tpi", "9999999 tpi"} {
		if p, err := ParsePitch(s, drawing.Millimetre); err == nil {
			t.Errorf("%q is taken for %v", s, p)
		}
	}
	if p, err := Millimetres(25.4 / 13); err != nil || p.String() != "13 tpi" {
		t.Errorf("%v %v", p, err)
	}
}

func TestRefuses(t *testing.T) {
	good := Lathe{Screw: read(t, "8 tpi"), Wheels: rack}
	want := Wanted{read(t, "1.5 mm"), 0, 2}
	for name, change := range map[string]func(*Lathe, *Wanted){
		"no screw":         func(l *Lathe, _ *Wanted) { l.Screw = Pitch{} },
		"no lead":          func(_ *Lathe, w *Wanted) { w.Lead = Pitch{} },
		"one wheel":        func(l *Lathe, _ *Wanted) { l.Wheels = []int{20} },
		"too many wheels":  func(l *Lathe, _ *Wanted) { l.Wheels = make([]int, MostWheels+1) },
		"a wheel of none":  func(l *Lathe, _ *Wanted) { l.Wheels = []int{0, 20} },
		"a huge wheel":     func(l *Lathe, _ *Wanted) { l.Wheels = []int{20, math.MaxInt} },
		"within NaN":       func(_ *Lathe, w *Wanted) { w.Within = math.NaN() },
		"within 3 percent": func(_ *Lathe, w *Wanted) { w.Within = 30000 },
		"no pairs":         func(_ *Lathe, w *Wanted) { w.Pairs = 0 },
		"four pairs":       func(_ *Lathe, w *Wanted) { w.Pairs = 4 },
		"head backwards":   func(l *Lathe, _ *Wanted) { l.Head = Fraction{-1, 2} },
		"head huge":        func(l *Lathe, _ *Wanted) { l.Head = Fraction{math.MaxInt64, 1} },
		"spare":            func(l *Lathe, _ *Wanted) { l.Mesh.Spare = -1 },
		"module NaN":       func(l *Lathe, _ *Wanted) { l.Mesh.Module = math.NaN() },
		"banjo alone":      func(l *Lathe, _ *Wanted) { l.Mesh.Centres = 100 },
		"slot backwards":   func(l *Lathe, _ *Wanted) { l.Mesh = Mesh{Module: 1, Nearest: 50, Far: 40} },
	} {
		l, w := good, want
		change(&l, &w)
		if a, err := Trains(l, w); err == nil {
			t.Errorf("%s: %d trains", name, a.Found)
		}
	}
}

func FuzzPitch(f *testing.F) {
	for _, s := range []string{"1.5", "8 tpi", "11 1/2 tpi", "1/8 in", "module 0.8", "20 dp", "1e9", "-0", "\x00", "25.4/13", "8131/81"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		p, err := ParsePitch(s, drawing.Millimetre)
		if err != nil {
			return
		}
		if mm := p.MM(); !(mm >= LeastPitch*(1-1e-9) && mm <= MostPitch*(1+1e-9)) {
			t.Fatalf("%q is %v mm", s, mm)
		}
		if q, err := ParsePitch(p.String(), drawing.Millimetre); err != nil || math.Abs(q.MM()/p.MM()-1) > 1e-7 { // nine decimals of odd fractions
			t.Fatalf("%q says %v and that reads %v, %v", s, p, q, err)
		}
	})
}

func BenchmarkTwoPairs(b *testing.B) {
	l := Lathe{Screw: read(b, "8 tpi"), Wheels: rack, Mesh: Mesh{Spare: RuleOfThumb}}
	for b.Loop() {
		trains(b, l, Wanted{read(b, "1.25 mm"), 500, 2})
	}
}

func BenchmarkThreePairs(b *testing.B) {
	l := Lathe{Screw: read(b, "8 tpi"), Wheels: append([]int{24, 28, 32, 36, 44, 48, 52, 63, 127, 120, 100, 80}, rack...), Mesh: Mesh{Spare: RuleOfThumb}}
	for b.Loop() {
		trains(b, l, Wanted{read(b, "1.25 mm"), 500, 3})
	}
}

func BenchmarkThreePairsOfSixty(b *testing.B) {
	l := Lathe{Screw: read(b, "8 tpi"), Mesh: Mesh{Spare: RuleOfThumb}}
	for z := 20; z < 80; z++ {
		l.Wheels = append(l.Wheels, z)
	}
	for b.Loop() {
		trains(b, l, Wanted{read(b, "1.25 mm"), 500, 3})
	}
}

func BenchmarkThreePairsOfSixtyCoarse(b *testing.B) {
	l := Lathe{Screw: read(b, "8 tpi")}
	for z := 20; z < 80; z++ {
		l.Wheels = append(l.Wheels, z)
	}
	for b.Loop() {
		trains(b, l, Wanted{read(b, "1.25 mm"), MostWithin, 3})
	}
}

func BenchmarkWheelsToGet(b *testing.B) {
	l := Lathe{Screw: read(b, "8 tpi"), Wheels: rack, Mesh: Mesh{Spare: RuleOfThumb}}
	for b.Loop() {
		if _, err := WheelsToGet(l, Wanted{read(b, "1.5 mm"), 0, 2}); err != nil {
			b.Fatal(err)
		}
	}
}
