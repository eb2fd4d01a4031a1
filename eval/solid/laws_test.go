package solid

import (
	"fmt"
	"math"
	"math/rand"
	"runtime"
	"testing"
)

// Law 10: for turned and mixed work too, the order of cuts does not matter, a cut never adds
// metal, a mirrored piece measures the same, and moving or turning all of it changes nothing.
func TestMixedLaws(t *testing.T) {
	r := rand.New(rand.NewSource(31))
	mirror := Pose{row: [3]Vec{{-1, 0, 0}, {0, 1, 0}, {0, 0, 1}}}
	poses := []Pose{mirror, Still().Shifted(Vec{7.25, -31.5, 4.125}), Attitude(Vec{1, 0, 0}, Vec{0, 0, 1}), Attitude(Vec{0, 0, 1}, Vec{0.6, 0.8, 0})}
	for i := range 25 {
		p := randomMixed(r, 2+r.Intn(8))
		raw := Bar(0, 80, 40)
		after := p.Cut(randomForm(r, raw, "more")...)
		v := p.Volume()
		if after.Volume() > v+1e-6 {
			t.Errorf("piece %d: a cut added %g", i, after.Volume()-v)
		}
		c, ok := p.Centre()
		if !ok {
			continue
		}
		all := p.Removals()
		r.Shuffle(len(all), func(a, b int) { all[a], all[b] = all[b], all[a] })
		near(t, fmt.Sprint("other order ", i), Raw(p.Blank()).Cut(all...).Volume(), v, 2e-4*v)
		tool, m := aroundBar(randomTool(r))
		_, meets := p.Meets(tool, m)
		d := Vec{r.NormFloat64(), r.NormFloat64(), r.NormFloat64()}
		far := p.Farthest(d)
		for k, q := range poses {
			afresh := Raw(p.Blank().Placed(q)) // so that it is measured again
			for _, x := range p.cuts {
				afresh = afresh.Cut(x.placed(q))
			}
			near(t, fmt.Sprintf("piece %d, pose %d: volume", i, k), afresh.Volume(), v, 2e-4*v)
			if c2, _ := afresh.Centre(); c2.Sub(q.Point(c)).Len() > 2e-4*90 {
				t.Errorf("piece %d, pose %d: centre %v, want %v", i, k, c2, q.Point(c))
			}
			near(t, fmt.Sprintf("piece %d, pose %d: farthest", i, k), afresh.Farthest(q.Dir(d)), far+q.shift.Dot(q.Dir(d).Unit()), 3*Grain)
			if q.row[2] != (Vec{0, 0, 1}) {
				continue
			}
			if _, got := afresh.Meets(tool, Move{q.Point(m.From), q.Point(m.To)}); got != meets {
				t.Errorf("piece %d, pose %d: meets %v, unmoved %v", i, k, got, meets)
			}
		}
	}
}

// Law 11: pieces cut from the same one do not disturb each other.
func TestCutsApart(t *testing.T) {
	p := Raw(Box(Vec{}, Vec{100, 60, 30})).Cut(Removal{Take: Box(Vec{}, Vec{1, 1, 1}), By: "first"})
	a := p.Cut(Removal{Take: Box(Vec{}, Vec{2, 2, 2}), By: "a"})
	b := p.Cut(Removal{Take: Box(Vec{}, Vec{3, 3, 3}), By: "b"})
	aa := a.Cut(Removal{Take: Box(Vec{}, Vec{4, 4, 4}), By: "aa"})
	for _, c := range []struct {
		p    *Piece
		want string
	}{{p, "first "}, {a, "first a "}, {b, "first b "}, {aa, "first a aa "}} {
		got := ""
		for _, r := range c.p.Removals() {
			got += r.By + " "
		}
		if got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	near(t, "volume of b", b.Volume(), 180000-27, 1e-6)
}

// A chain of pieces, each cut from the one before and all of them kept, takes memory in
// proportion to its length.
func TestMemoryIsLinear(t *testing.T) {
	took := func(n int) float64 {
		r := rand.New(rand.NewSource(1))
		var rs []Removal
		for range n {
			rs = append(rs, randomRemoval(r, "x"))
		}
		var a, b runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&a)
		chain := []*Piece{Raw(Box(Vec{}, Vec{100, 60, 30}))}
		for _, x := range rs {
			chain = append(chain, chain[len(chain)-1].Cut(x))
		}
		runtime.ReadMemStats(&b)
		runtime.KeepAlive(chain)
		return float64(b.TotalAlloc-a.TotalAlloc) / float64(n)
	}
	few, many := took(200), took(3200)
	t.Logf("%.0f bytes a removal in a chain of 200, %.0f in one of 3200", few, many)
	if many > 1.6*few {
		t.Errorf("memory grows faster than the chain: %.0f bytes a removal, then %.0f", few, many)
	}
}

// Growth with removals, milled pieces: one of each kind of question.
func BenchmarkGrowth(b *testing.B) {
	for _, n := range []int{5, 20, 50, 100, 200} {
		r := rand.New(rand.NewSource(int64(n)))
		var ps []*Piece
		var ts []Turned
		var ms []Move
		for range 100 {
			t, m := randomTool(r)
			ps, ts, ms = append(ps, randomPiece(r, n)), append(ts, t), append(ms, m)
		}
		b.Run(fmt.Sprint("meets ", n), func(b *testing.B) {
			i := 0
			for b.Loop() {
				ps[i%100].Meets(ts[i%100], ms[i%100])
				i++
			}
		})
		b.Run(fmt.Sprint("ray ", n), func(b *testing.B) {
			var s scan
			i := 0
			for b.Loop() {
				ps[i%100].line(Vec{50, 30, 15}, Vec{0.6, 0.64, 0.48}, &s)
				i++
			}
		})
	}
}

func BenchmarkGrip(b *testing.B) {
	bar := Bar(0, 60, 30)
	p := Raw(bar).Cut(Axle{}.Outside(bar, 20, 60, 10, "waist"), Axle{}.CrossHole(bar, 35, 0.3, 3, Axle{}.Through(bar), "cross"))
	for b.Loop() {
		p.Grip(Jaws{Count: 3, Width: 8, From: 0, To: 12})
	}
}

func BenchmarkRest(b *testing.B) {
	p := randomPiece(rand.New(rand.NewSource(3)), 20)
	for b.Loop() {
		p.Rest(0)
	}
}

// FuzzForms: whatever is asked of the forms, they give an error or shapes of numbers, and a piece
// cut with them answers.
func FuzzForms(f *testing.F) {
	f.Add(0.0, 10.0, 5.0, 1.0, 0.5)
	f.Add(3.0, -10.0, 0.0, 1e9, -2.0)
	f.Add(math.NaN(), math.Inf(1), 1e-12, 7.0, 3.0)
	f.Fuzz(func(t *testing.T, x, w, r, s, a float64) {
		bar := Bar(0, 60, 30)
		ax := Axle{s / 3, a}
		fr := On(Vec{x, 0, 15}, Vec{1, a, 0}, Vec{0, 0, 1})
		ms := []Removal{ax.Taper(bar, x, x+w, r, s, "t"), ax.Ball(bar, x, x+w, s, r, "b"), ax.CrossHole(bar, x, a, r, s, "c"), ax.FlatOn(bar, x, x+w, a, r, "f"), fr.Keyseat(w, r, s, "k")}
		ms = append(ms, fr.Slot(w, r, s, 1, true, a > 0, "s")...)
		ms = append(ms, fr.ArcSlot(r, s, 3, 1, a, a+w, "a")...)
		if m, err := ax.Groove(bar, x, x+w, r, s, "g"); err == nil {
			ms = append(ms, m)
		}
		if all, err := fr.Dovetail(w, r, s, a, 1, "d"); err == nil {
			ms = append(ms, all...)
		}
		if all, err := fr.Opening([][2]float64{{x, r}, {w, s}, {s, x}, {a, w}}, []OutlineArc{{1, r}, {2, -w}}, 5, 1, "o"); err == nil {
			ms = append(ms, all...)
		}
		p := Raw(bar).Cut(ms...)
		if v := p.Volume(); math.IsNaN(v) || v < 0 || v > Raw(bar).Volume()*1.001 {
			t.Errorf("volume %g", v)
		}
		p.Meets(Turned{0, 10, 3, 3, "tool"}, Move{Vec{10, 0, 5}, Vec{20, 5, 5}})
		p.Line(Vec{10, 1, 2}, Vec{1, 2, 3})
		p.Grip(Jaws{Count: 3, Width: s, From: x, To: x + w})
		p.Reach(Vec{x, w, r}, Vec{s, a, 1}, Rod{2, 30, 10})
	})
}
