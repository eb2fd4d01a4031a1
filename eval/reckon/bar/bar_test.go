package bar

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"fettle/schema/printed"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

// times reads "120x3".
func times(t testing.TB, s string) (length float64, n int) {
	a, b, _ := strings.Cut(s, "x")
	n, err := strconv.Atoi(b)
	if err != nil {
		t.Fatal(err)
	}
	return printed.Figures(t, a)[0], n
}

// rollJob is the job of a bars row: lengths have all losses in them.
func rollJob(t testing.TB, given string) Job {
	f := strings.Fields(given)
	j := Job{Bars: []Bar{{"bar", printed.Figures(t, f[0])[0], MostPieces, false}}}
	for _, s := range f[1:] {
		length, n := times(t, s)
		j.Pieces = append(j.Pieces, Piece{s, length, n})
	}
	return j
}

// rackJob is the job of a rack row: kerf, usable, new bars, five offcuts, pieces.
func rackJob(t testing.TB, given string) Job {
	f := strings.Fields(given)
	j := Job{Saw: Saw{Kerf: printed.Figures(t, f[0])[0]}, Usable: printed.Figures(t, f[1])[0]}
	for i, s := range f[2:] {
		length, n := times(t, s)
		if i < 6 {
			j.Bars = append(j.Bars, Bar{s, length, n, i > 0})
		} else {
			j.Pieces = append(j.Pieces, Piece{s, length, n})
		}
	}
	return j
}

func TestPublished(t *testing.T) {
	counts := map[string]int{}
	for _, r := range printed.Rows(t, "bar.tsv", 5) {
		counts[r[0]]++
		start := time.Now()
		switch r[0] {
		case "count":
			g, want := printed.Figures(t, r[2]), printed.Figures(t, r[3])
			n, left, err := Count(g[0], g[1], Saw{Kerf: g[2], Facing: g[3], Grip: g[4], EndIsFace: true})
			if err != nil || float64(n) != want[0] || left != want[1] {
				t.Errorf("%s: %d, %v (%v), printed %s in %s", r[1], n, left, err, r[3], r[4])
			}
		case "bars":
			j := rollJob(t, r[2])
			p, err := Plans(j)
			if err != nil || p.NewBars != p.LeastNew || strconv.Itoa(p.NewBars) != r[3] || p.Proved < NewBars {
				t.Errorf("%s: %d, bound %d (%v), printed %s in %s", r[1], p.NewBars, p.LeastNew, err, r[3], r[4])
			}
			if f := faults(j, p); f != "" {
				t.Errorf("%s: %s", r[1], f)
			}
		case "ffd":
			k, err := newRack(rollJob(t, r[2]))
			if err != nil {
				t.Fatal(err)
			}
			if got := strconv.Itoa(len(k.byLength([]int{0}))); got != r[3] {
				t.Errorf("%s: longest first %s, printed %s in %s", r[1], got, r[3], r[4])
			}
		case "rack":
			j := rackJob(t, r[2])
			p, err := Plans(j)
			if got := fmt.Sprint(p.NewBars, p.Scrap, p.Kept, p.Touched); err != nil || got != r[3] || p.Proved != Touched {
				t.Errorf("%s: %s, proved %v (%v), printed %s in %s", r[1], got, p.Proved, err, r[3], r[4])
			}
			if f := faults(j, p); f != "" {
				t.Errorf("%s: %s", r[1], f)
			}
		default:
			t.Errorf("no check for %q", r[0])
		}
		t.Logf("%s %s: %v", r[0], r[1], time.Since(start))
	}
	for what, n := range map[string]int{"count": 6, "bars": 7, "ffd": 7, "rack": 1} {
		if counts[what] != n {
			t.Errorf("%d rows of %s, want %d", counts[what], what, n)
		}
	}
}

// faults reads a plan as someone at the saw would, and says what is wrong with it.
func faults(j Job, p Plan) string {
	length, wanted, there := map[string]float64{}, map[string]int{}, map[string]int{}
	for _, x := range j.Pieces {
		length[x.Name] = x.Length
		wanted[x.Name] += x.Count
	}
	for _, b := range j.Bars {
		there[b.Name] += b.Count
	}
	fresh, kept, scrap := 0, 0, 0.0
	for _, c := range p.Cuts {
		there[c.Bar]--
		left := c.Length
		for _, name := range c.Pieces {
			left -= length[name] + j.Saw.Facing + j.Saw.Kerf
			wanted[name]--
		}
		room := j.Saw.Grip
		if j.Saw.EndIsFace && room == 0 {
			room = -j.Saw.Kerf
		}
		if left < room-1e-6 || math.Abs(max(0, left)-c.Left) > 1e-6 || len(c.Pieces) == 0 {
			return fmt.Sprintf("%+v has %v left", c, left)
		}
		if c.Kept != (j.Usable > 0 && c.Left >= j.Usable-1e-9) {
			return fmt.Sprintf("%+v kept", c)
		}
		if !c.Offcut {
			fresh++
		}
		if c.Kept {
			kept++
		} else {
			scrap += c.Left
		}
	}
	for name, n := range wanted {
		if n != 0 {
			return fmt.Sprintf("%d of %s missing", n, name)
		}
	}
	for name, n := range there {
		if n < 0 {
			return fmt.Sprintf("%d too many of bar %s", -n, name)
		}
	}
	if fresh != p.NewBars || kept != p.Kept || math.Abs(scrap-p.Scrap) > 1e-6 || len(p.Cuts) != p.Touched || p.LeastNew > p.NewBars {
		return fmt.Sprintf("adds up to %d new, %v scrap, %d kept, %d touched: %+v", fresh, scrap, kept, len(p.Cuts), p)
	}
	return ""
}

func TestRefused(t *testing.T) {
	good := Job{Bars: []Bar{{"bar", 100, 1, false}}, Pieces: []Piece{{"a", 40, 2}}}
	for name, spoil := range map[string]func(*Job){
		"kerf":   func(j *Job) { j.Saw.Kerf = -1 },
		"facing": func(j *Job) { j.Saw.Facing = math.NaN() },
		"usable": func(j *Job) { j.Usable = math.Inf(1) },
		"length": func(j *Job) { j.Pieces = []Piece{{"a", 0, 1}} },
		"bar":    func(j *Job) { j.Bars = []Bar{{"b", -5, 1, false}} },
		"count":  func(j *Job) { j.Pieces = []Piece{{"a", 1, -1}} },
		"many":   func(j *Job) { j.Pieces = []Piece{{"a", 1, MostPieces + 1}} },
		"long":   func(j *Job) { j.Pieces = []Piece{{"a", 101, 1}} },
		"none":   func(j *Job) { j.Bars = nil },
	} {
		j := Job{Bars: slices.Clone(good.Bars), Pieces: slices.Clone(good.Pieces)}
		spoil(&j)
		var short *Short
		if p, err := Plans(j); err == nil || errors.As(err, &short) {
			t.Errorf("%s: %+v (%v)", name, p, err)
		}
	}
	if p, err := Plans(Job{}); err != nil || p.Proved != Touched || len(p.Cuts) != 0 {
		t.Errorf("nothing wanted: %+v (%v)", p, err)
	}
	var short *Short
	good.Pieces[0].Count = 3
	if _, err := Plans(good); !errors.As(err, &short) || short.By != 20 || !short.Proved {
		t.Errorf("120 mm out of 100: %v", err)
	}
	good.Bars, good.Pieces = []Bar{{"bar", 50, 2, false}}, []Piece{{"a", 30, 2}, {"b", 20, 2}}
	if p, err := Plans(good); err != nil || p.Scrap != 0 {
		t.Errorf("30 and 20 twice out of 50: %+v (%v)", p, err)
	}
	good.Pieces = []Piece{{"a", 30, 1}, {"b", 22, 3}}
	if _, err := Plans(good); !errors.As(err, &short) || short.By != 0 || !short.Proved {
		t.Errorf("30 and three of 22 out of two of 50: %v", err)
	}
	for _, x := range [][2]float64{{0, 1}, {1, 0}, {math.NaN(), 1}, {2e6, 1}} {
		if n, _, err := Count(x[0], x[1], Saw{}); err == nil {
			t.Errorf("%v: %d", x, n)
		}
	}
	if n, left, err := Count(100, 120, Saw{}); err != nil || n != 0 || left != 100 {
		t.Errorf("%d %v %v", n, left, err)
	}
}

// Sizes of any inch fraction fit where they just fit.
func TestJustFits(t *testing.T) {
	for _, den := range []float64{1, 8, 64, 128, 512} {
		piece := 25.4 * 11 / den
		j := Job{Bars: []Bar{{"bar", piece * 7, 1, false}}, Pieces: []Piece{{"a", piece, 7}}}
		if p, err := Plans(j); err != nil || p.Scrap != 0 || len(p.Cuts) != 1 {
			t.Errorf("seven of 11/%v in: %+v (%v)", den, p, err)
		}
		if n, _, err := Count(piece*7, piece, Saw{}); err != nil || n != 7 {
			t.Errorf("seven of 11/%v in: %d (%v)", den, n, err)
		}
	}
}

func draw(t *rapid.T) Job {
	j := Job{Usable: float64(rapid.SampledFrom([]int{0, 8, 15}).Draw(t, "usable"))}
	j.Saw = Saw{Kerf: float64(rapid.IntRange(0, 3).Draw(t, "kerf")), Facing: float64(rapid.IntRange(0, 1).Draw(t, "facing")),
		Grip: float64(rapid.SampledFrom([]int{0, 0, 4}).Draw(t, "grip")), EndIsFace: rapid.Bool().Draw(t, "end")}
	for i := range rapid.IntRange(1, 3).Draw(t, "bars") {
		j.Bars = append(j.Bars, Bar{"bar " + strconv.Itoa(i), float64(rapid.IntRange(20, 60).Draw(t, "bar")), rapid.IntRange(1, 2).Draw(t, "count"), rapid.Bool().Draw(t, "offcut")})
	}
	for i := range rapid.IntRange(1, 5).Draw(t, "pieces") {
		j.Pieces = append(j.Pieces, Piece{"piece " + strconv.Itoa(i), float64(rapid.IntRange(3, 25).Draw(t, "piece")), 1})
	}
	return j
}

// The plan of a small job is the best of all ways of giving each piece a bar, tried one by
// one; and where there is none, none is given.
func TestAllPlans(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := draw(t)
		p, err := Plans(j)
		r, bad := newRack(j)
		if bad != nil {
			if err == nil {
				t.Fatal(bad)
			}
			return
		}
		var bars []Bar
		for _, b := range j.Bars {
			for range b.Count {
				b.Count = 1
				bars = append(bars, b)
			}
		}
		var best *score
		every(j, bars, make([][]float64, len(bars)), 0, func(s score) {
			if best == nil || s.compare(*best) < 0 {
				best = &s
			}
		})
		var short *Short
		if best == nil {
			if !errors.As(err, &short) || !short.Proved {
				t.Fatalf("%+v: %+v (%v), and there is no plan", j, p, err)
			}
			return
		}
		got := score{p.NewBars, units(p.Scrap), p.Kept, p.Touched}
		if err != nil || p.Proved != Touched || got != *best {
			t.Fatalf("%+v: %+v (%v), all plans %+v", j, p, err, *best)
		}
		if f := faults(j, p); f != "" {
			t.Fatal(f)
		}
		if b, rounded := r.program(); b > best.fresh || rounded != nil && r.score(rounded).fresh < best.fresh {
			t.Fatalf("%+v: the program's bound is %d, its plan %v, and the least is %d new bars", j, b, rounded, best.fresh)
		}
	})
}

// Law: adding a bar to the rack never needs more new bars, and never makes what could be sawn
// impossible; a bar that is an offcut already may save a new one and never costs one.
func TestMoreBars(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := draw(t)
		before, err := Plans(j)
		if err != nil {
			return
		}
		more := j
		more.Bars = append(slices.Clone(j.Bars), Bar{"added", float64(rapid.IntRange(5, 60).Draw(t, "added")), 1, rapid.Bool().Draw(t, "offcut too")})
		after, err := Plans(more)
		if err != nil || after.NewBars > before.NewBars {
			t.Fatalf("%+v: %d new bars; with one bar more %d (%v)", j, before.NewBars, after.NewBars, err)
		}
	})
}

// every gives the score of each way of sawing, in units of 1e-9 mm.
func every(j Job, bars []Bar, on [][]float64, next int, f func(score)) {
	if next < len(j.Pieces) {
		for b := range bars {
			old := on[b]
			on[b] = append(slices.Clone(old), j.Pieces[next].Length)
			every(j, bars, on, next+1, f)
			on[b] = old
		}
		return
	}
	var s score
	for b, pieces := range on {
		if len(pieces) == 0 {
			continue
		}
		left, room := bars[b].Length, j.Saw.Grip
		for _, l := range pieces {
			left -= l + j.Saw.Facing + j.Saw.Kerf
		}
		if room == 0 && j.Saw.EndIsFace {
			room = -j.Saw.Kerf
		}
		if left < room {
			return
		}
		left = max(0, left)
		s.touched++
		if !bars[b].Offcut {
			s.fresh++
		}
		if j.Usable > 0 && left >= j.Usable {
			s.kept++
		} else {
			s.scrap += units(left)
		}
	}
	f(s)
}

// workshop is a rack and a list of the size of a workshop, from fixed seeds.
func workshop(pieces int, seed uint64) Job {
	r := rand.New(rand.NewPCG(seed, 2))
	j := Job{Saw: Saw{Kerf: 2, Facing: 1}, Usable: 100, Bars: []Bar{{"new", 2000, 20, false}}}
	for i := range 8 {
		j.Bars = append(j.Bars, Bar{"offcut " + strconv.Itoa(i), float64(120 + r.IntN(700)), 1, true})
	}
	for i := range pieces {
		j.Pieces = append(j.Pieces, Piece{"piece " + strconv.Itoa(i), float64(20 + r.IntN(280)), 1 + r.IntN(2)})
	}
	return j
}

// At the size of a workshop the fewest new bars are proved. The time taken is logged and not
// judged, since it depends on what else the machine does.
func TestWorkshop(t *testing.T) {
	for _, pieces := range []int{8, 15, 25, 100} {
		for seed := range uint64(3) {
			j := workshop(pieces, seed)
			start := time.Now()
			p, err := Plans(j)
			if err != nil {
				t.Fatal(err)
			}
			t.Logf("%d pieces: %d new (least %d), %v scrap, %d kept, %d touched, proved %v, %v", pieces, p.NewBars, p.LeastNew, p.Scrap, p.Kept, p.Touched, p.Proved, time.Since(start))
			if f := faults(j, p); f != "" {
				t.Error(f)
			}
			if p.Proved < NewBars {
				t.Errorf("%d pieces: nothing is proved", pieces)
			}
		}
	}
}

func BenchmarkRack(b *testing.B) {
	rows := printed.Rows(b, "bar.tsv", 5)
	for _, r := range rows {
		if r[0] != "bars" && r[0] != "rack" {
			continue
		}
		b.Run(r[1], func(b *testing.B) {
			j := Job{}
			if r[0] == "rack" {
				j = rackJob(b, r[2])
			} else {
				j = rollJob(b, r[2])
			}
			for b.Loop() {
				if _, err := Plans(j); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
