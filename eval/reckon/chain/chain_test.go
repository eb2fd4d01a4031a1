package chain

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fettle/schema/printed"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

func linksOf(t *testing.T, f []string) (out []Link) {
	for _, s := range f {
		n := strings.Split(s, ":")
		out = append(out, Link{s, printed.Figure(t, n[0]), printed.Figure(t, n[1]), printed.Figure(t, n[2]), printed.Figure(t, n[3])})
	}
	return out
}

// chartOf reads a chart of the table.
func chartOf(t testing.TB, rows [][]string, name string) (c Chart) {
	for _, r := range rows {
		if r[1] != name {
			continue
		}
		f := strings.Fields(r[2])
		switch r[0] {
		case "raw":
			c.Raw = append(c.Raw, dim(t, f))
		case "drawing":
			c.Drawing = append(c.Drawing, dim(t, f))
		case "cut":
			tol := printed.Figure(t, f[4])
			k := Cut{Name: f[0], From: f[1], Makes: f[2], Size: printed.Figure(t, f[3]), Lower: -tol, Upper: tol}
			if len(f) > 5 {
				k.Metal = map[string]Side{"left": Left, "right": Right}[f[5]]
			}
			c.Cuts = append(c.Cuts, k)
		}
	}
	return c
}

func dim(t testing.TB, f []string) Dim {
	return Dim{f[0], f[1], f[2], printed.Figure(t, f[3]), printed.Figure(t, f[4]), printed.Figure(t, f[5])}
}

// Of the collected worked rows two are not rows here by themselves: Z1III is chart T1-III, and
// ZO00 only describes the part of ZO02 to ZO04.
func TestPublished(t *testing.T) {
	rows := printed.Rows(t, "chain.tsv", 5)
	counts := map[string]int{}
	for _, r := range rows {
		counts[r[0]]++
		c := chartOf(t, rows, r[1])
		f, want := strings.Fields(r[2]), strings.Fields(r[3])
		switch r[0] {
		case "raw", "cut", "drawing":
		case "close":
			s, err := Close(linksOf(t, f))
			if err != nil || s.Least != printed.Figure(t, want[0]) || s.Most != printed.Figure(t, want[1]) ||
				len(want) > 2 && math.Abs(s.Statistical-printed.Figure(t, want[3])) > 5e-5 {
				t.Errorf("%s: %+v (%v), printed %s in %s", r[2], s, err, r[3], r[4])
			}
		case "solve":
			lo, hi, err := Solve(printed.Figure(t, f[0]), printed.Figure(t, f[1]), linksOf(t, f[3:]), printed.Figure(t, f[2]))
			if none := want[0] == "none"; none != (err != nil) || !none && (lo != printed.Figure(t, want[0]) || hi != printed.Figure(t, want[1])) {
				t.Errorf("%s: %v to %v (%v), printed %s in %s", r[2], lo, hi, err, r[3], r[4])
			}
		case "result":
			checkResult(t, c, f[0], want, r[4])
		case "shift":
			s, err := Shifts(c)
			if err != nil || len(s) == 0 || s[0].Cut != f[0] || s[0].Touches != 0 ||
				!(s[0].Least <= printed.Figure(t, want[0])) || s[0].BoundAbove || s[0].Least != printed.Figure(t, want[2]) {
				t.Errorf("%s: %+v (%v), printed %s in %s", r[1], s, err, r[3], r[4])
			}
		case "tighten":
			got, err := Tighten(c, nil)
			if err != nil || len(got) != 1 || fmt.Sprintf("%s:%.3f", got[0].Cut, got[0].To) != r[3] {
				t.Errorf("%s: %+v (%v), printed %s in %s", r[1], got, err, r[3], r[4])
			}
		case "rooms":
			rooms(t, c, want, r[4])
		case "fault":
			fault(t, c, f, r)
		case "loop":
			got, err := Loops(append(slices.Clone(c.Drawing), dim(t, f)))
			if err != nil || len(got) != 1 || !sameNames(got[0].Dims, want) || got[0].Off != 0 {
				t.Errorf("%s: %+v (%v), printed %s in %s", r[2], got, err, r[3], r[4])
			}
		default:
			t.Errorf("no check for %q", r[0])
		}
	}
	for what, n := range map[string]int{"close": 22, "solve": 8, "result": 12, "shift": 1, "tighten": 1, "rooms": 1, "fault": 3, "loop": 1} {
		if counts[what] != n {
			t.Errorf("%d rows of %s, want %d", counts[what], what, n)
		}
	}
}

func sameNames(a, b []string) bool {
	a, b = slices.Sorted(slices.Values(a)), slices.Sorted(slices.Values(b))
	return slices.Equal(a, b)
}

func resultOf(t *testing.T, c Chart, name string) Result {
	t.Helper()
	reading, err := Read(c)
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(reading.Results, func(r Result) bool { return r.Name == name })
	if i < 0 {
		t.Fatalf("no result %s: %+v", name, reading)
	}
	return reading.Results[i]
}

// checkResult compares limits, the statistical half, the terms and whether it holds.
func checkResult(t *testing.T, c Chart, name string, want []string, source string) {
	t.Helper()
	r := resultOf(t, c, name)
	terms := slices.Clone(r.Terms)
	slices.SortFunc(terms, func(a, b Term) int { return strings.Compare(a.Name, b.Name) })
	chain := ""
	for _, m := range terms {
		chain += map[int]string{1: "+", -1: "-"}[m.Sign] + m.Name
	}
	ok := r.Sum.Least == printed.Figure(t, want[0]) && r.Sum.Most == printed.Figure(t, want[1])
	for n, w := range want[2:] {
		switch {
		case w == "rss":
			ok = ok && math.Abs(r.Sum.Statistical-printed.Figure(t, want[n+3])) < 5e-5
		case w == "holds" || w == "fails":
			ok = ok && r.Holds == (w == "holds")
		case strings.ContainsAny(w[:1], "+-"):
			ok = ok && chain == w
		}
	}
	if !ok {
		t.Errorf("%s: %s, %+v, printed %v in %s", name, chain, r, want, source)
	}
}

// rooms compares the factors of the results that the case names, with its repaired cut and
// least stock on A and B.
func rooms(t *testing.T, c Chart, want []string, source string) {
	t.Helper()
	for i := range c.Cuts {
		switch c.Cuts[i].Name {
		case "2":
			c.Cuts[i].Size = 20.40
		case "5", "6":
			c.Cuts[i].Stock = 0.05
		}
	}
	got, err := Rooms(c)
	if err != nil || len(got) == 0 || got[0].Name != strings.Split(want[0], ":")[0] {
		t.Errorf("%+v (%v), printed %v in %s", got, err, want, source)
	}
	for _, w := range want {
		name, factor, _ := strings.Cut(w, ":")
		i := slices.IndexFunc(got, func(r Room) bool { return r.Name == name })
		if i < 0 || math.Abs(got[i].Factor-printed.Figure(t, factor)) > 5e-4 {
			t.Errorf("%s: %+v, printed %v in %s", name, got, want, source)
		}
	}
	if reading, _ := Read(c); !reading.Holds() {
		t.Errorf("the repaired chart does not hold: %+v", reading)
	}
	if s, err := Shifts(c); err != nil || s != nil {
		t.Errorf("shifts of a chart that holds: %v", s)
	}
}

// fault spoils a chart as a row says and looks for what must be said.
func fault(t *testing.T, c Chart, how []string, r []string) {
	t.Helper()
	at := func(name string) int { return slices.IndexFunc(c.Cuts, func(k Cut) bool { return k.Name == name }) }
	switch how[0] {
	case "drop":
		c.Cuts = slices.Delete(c.Cuts, at(how[1]), at(how[1])+1)
	case "cut":
		c.Cuts[at(how[1])].From = how[3]
	case "swap":
		a, b := at(how[1]), at(how[2])
		c.Cuts[a], c.Cuts[b] = c.Cuts[b], c.Cuts[a]
	}
	want := strings.Fields(r[3])
	reading, err := Read(c)
	if err != nil {
		t.Fatal(err)
	}
	if want[0] == "result" {
		if got := resultOf(t, c, want[1]); got.Holds || got.Sum.Least != printed.Figure(t, want[2]) || got.Sum.Most != printed.Figure(t, want[3]) {
			t.Errorf("%v: %+v, printed %s in %s", how, got, r[3], r[4])
		}
		return
	}
	kind := map[string]FaultKind{"made": NotMade, "yet": NotYet}[want[1]]
	if len(reading.Faults) == 0 || reading.Faults[0] != (Fault{kind, want[2], want[3]}) {
		t.Errorf("%v: %+v, printed %s in %s", how, reading.Faults, r[3], r[4])
	}
}

func TestShares(t *testing.T) {
	// The three ways of T1: the deeper cut takes most of what the slot may vary.
	rows := printed.Rows(t, "chain.tsv", 5)
	r := resultOf(t, chartOf(t, rows, "T1-I"), "depth")
	for i, m := range r.Terms {
		want := map[string]float64{"1": 2.0 / 14, "2": 10.0 / 14, "3": 2.0 / 14}[m.Name]
		if math.Abs(r.Sum.Shares[i]-want) > 1e-12 {
			t.Errorf("cut %s takes %v, want %v", m.Name, r.Sum.Shares[i], want)
		}
	}
}

// With the cuts 1 and 3 of T1 in no need of being finer than they are, but cut 2 not to be
// had finer than 0.007, no single cut does it; two do.
func TestTightenTwo(t *testing.T) {
	c := chartOf(t, printed.Rows(t, "chain.tsv", 5), "T1-I")
	got, err := Tighten(c, map[string]float64{"2": 0.007})
	if err != nil || len(got) != 2 {
		t.Fatalf("%+v (%v)", got, err)
	}
	for i, k := range c.Cuts {
		for _, g := range got {
			if g.Cut == k.Name {
				c.Cuts[i].Lower, c.Cuts[i].Upper = -g.To, g.To
			}
		}
	}
	if r := resultOf(t, c, "depth"); !r.Holds || math.Abs(r.Sum.Worst-0.010) > 1e-9 {
		t.Errorf("tightened by %+v: %+v", got, r)
	}
	if got, err := Tighten(c, map[string]float64{"1": 0.002, "2": 0.010, "3": 0.002}); err != nil || got != nil {
		t.Errorf("a chart that holds is tightened: %v (%v)", got, err)
	}
	c = chartOf(t, printed.Rows(t, "chain.tsv", 5), "T1-I")
	if got, err := Tighten(c, map[string]float64{"1": 0.002, "2": 0.010, "3": 0.002}); err == nil {
		t.Errorf("as fine as can be, and still %v", got)
	}
}

func TestRefused(t *testing.T) {
	for _, l := range []Link{{"a", 0, 1, 0, 0}, {"a", 1, math.NaN(), 0, 0}, {"a", 1, 2e6, 0, 0}, {"a", 1, 1, 0.1, -0.1}, {"a", math.Inf(1), 1, 0, 0}} {
		if s, err := Close([]Link{l}); err == nil || !strings.Contains(err.Error(), "a") {
			t.Errorf("%+v: %+v", l, s)
		}
	}
	if _, err := Close(make([]Link, MostLinks+1)); err == nil {
		t.Error("too many links")
	}
	for _, x := range [][3]float64{{1, 0, 1}, {0, 1, 0}, {math.NaN(), 1, 1}, {0, 2e6, 1}, {0, 1, math.NaN()}} {
		if lo, hi, err := Solve(x[0], x[1], nil, x[2]); err == nil {
			t.Errorf("%v: %v to %v", x, lo, hi)
		}
	}
	for name, c := range map[string]Chart{
		"two alike": {Cuts: []Cut{{Name: "1", From: "a", Makes: "b"}, {Name: "1", From: "a", Makes: "c"}}},
		"to itself": {Drawing: []Dim{{Name: "x", From: "a", To: "a"}}},
		"stock":     {Cuts: []Cut{{Name: "1", From: "a", Makes: "b", Stock: -1}}},
	} {
		if r, err := Read(c); err == nil {
			t.Errorf("%s: %+v", name, r)
		}
	}
	raw := []Dim{{"blank", "a", "b", 10, 0, 0}, {"other", "c", "d", 5, 0, 0}, {"tie", "d", "e", 1, 0, 0}}
	r, err := Read(Chart{Raw: raw, Cuts: []Cut{{Name: "1", From: "a", Makes: "a"}, {Name: "2", From: "a", Makes: "b", Size: 9}},
		Drawing: []Dim{{"x", "a", "e", 1, 0, 0}}})
	want := []Fault{{Itself, "1", "a"}, {NoSide, "2", "b"}, {NoChain, "x", "e"}}
	if err != nil || !slices.Equal(r.Faults, want) {
		t.Errorf("%+v (%v)", r.Faults, err)
	}
}

// The dimensions of a blank may come in any order: a later one can tie two parts of it.
func TestBlankInAnyOrder(t *testing.T) {
	raw := []Dim{{"1", "a", "b", 10, -0.1, 0.1}, {"2", "c", "d", 5, -0.2, 0.2}, {"3", "b", "c", 2, 0, 0}}
	r, err := Read(Chart{Raw: raw, Drawing: []Dim{{"x", "a", "d", 17, -0.3, 0.3}, {"y", "d", "a", -17, -0.3, 0.29}}})
	if err != nil || len(r.Results) != 2 || r.Results[0].Sum.Least != 16.7 || !r.Results[0].Holds || r.Results[1].Holds || r.Results[1].Sum.Most != -16.7 {
		t.Errorf("%+v (%v)", r, err)
	}
}

func links100(t *rapid.T) (out []Link) {
	for range rapid.IntRange(1, 6).Draw(t, "links") {
		lower := float64(rapid.IntRange(-200, 200).Draw(t, "lower")) / 1000
		out = append(out, Link{"x", rapid.SampledFrom([]float64{1, -1, 0.5, -0.5, 2}).Draw(t, "ratio"),
			float64(rapid.IntRange(-90000, 90000).Draw(t, "size")) / 1000, lower, lower + float64(rapid.IntRange(0, 300).Draw(t, "width"))/1000})
	}
	return out
}

// The worst case is what the worst of all corners gives; it is never better than the
// statistical reading; shares make one whole; and solving for a link and closing again comes
// back to the limits asked for.
func TestLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		links := links100(t)
		s, err := Close(links)
		if err != nil {
			t.Fatal(err)
		}
		least, most := math.Inf(1), math.Inf(-1)
		for bits := range 1 << len(links) {
			sum := 0.0
			for i, l := range links {
				d := l.Lower
				if bits&(1<<i) != 0 {
					d = l.Upper
				}
				sum += l.Ratio * (l.Size + d)
			}
			least, most = min(least, sum), max(most, sum)
		}
		share := 0.0
		for _, x := range s.Shares {
			share += x
		}
		if math.Abs(s.Least-least) > 1e-9 || math.Abs(s.Most-most) > 1e-9 || s.Statistical > s.Worst+1e-12 || s.Worst > 0 && math.Abs(share-1) > 1e-9 {
			t.Fatalf("%+v: %+v, corners %v to %v", links, s, least, most)
		}
		ratio := rapid.SampledFrom([]float64{1, -1, 0.5, -2}).Draw(t, "unknown")
		lo, hi, err := Solve(s.Least-1, s.Most+2, links, ratio)
		if err != nil {
			t.Fatal(err)
		}
		again, _ := Close(append(links, Link{"y", ratio, lo, 0, hi - lo}))
		if math.Abs(again.Least-(s.Least-1)) > 1e-9 || math.Abs(again.Most-(s.Most+2)) > 1e-9 {
			t.Fatalf("%v to %v gives %v to %v", lo, hi, again.Least, again.Most)
		}
	})
}

// Law: a chain is no tighter than any link: half its tolerance, by the worst case and by the root
// of the squares, is at least that of each link times its ratio; and one link more never makes
// it tighter.
func TestNoTighterThanALink(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		links := links100(t)
		s, err := Close(links)
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range links {
			if own := math.Abs(l.Ratio) * (l.Upper - l.Lower) / 2; s.Worst < own-1e-12 || s.Statistical < own-1e-12 {
				t.Fatalf("%+v: %+v is tighter than %+v", links, s, l)
			}
		}
		if fewer, err := Close(links[1:]); len(links) > 1 && (err != nil || fewer.Worst > s.Worst+1e-12 || fewer.Statistical > s.Statistical+1e-12) {
			t.Fatalf("%+v: %+v, without the first %+v (%v)", links, s, fewer, err)
		}
	})
}

// draw gives a random chart: each cut from a surface that is there.
func draw(t *rapid.T) Chart {
	surfaces := []string{"a", "b", "c", "d"}
	c := Chart{Raw: []Dim{{"blank", "a", "d", 60, -0.5, 0.5}, {"step", "a", "b", 20, -0.2, 0.2}, {"bore", "d", "c", -15, -0.2, 0.2}}}
	at := map[string]float64{"a": 0, "b": 20, "c": 45, "d": 60}
	for n := range rapid.IntRange(1, 7).Draw(t, "cuts") {
		pair := rapid.Permutation(surfaces).Draw(t, "pair")
		tol := float64(rapid.IntRange(1, 100).Draw(t, "tolerance")) / 1000
		side := rapid.SampledFrom([]Side{Left, Right}).Draw(t, "side")
		to := at[pair[1]] + float64(side)*float64(rapid.IntRange(0, 500).Draw(t, "stock"))/1000
		c.Cuts = append(c.Cuts, Cut{strconv.Itoa(n), pair[0], pair[1], to - at[pair[0]], -tol, tol, side, 0})
		at[pair[1]] = to
	}
	pair := rapid.Permutation(surfaces).Draw(t, "wanted")
	c.Drawing = []Dim{{"want", pair[0], pair[1], at[pair[1]] - at[pair[0]], -0.1, 0.1}}
	return c
}

// Whatever place each cut takes within its limits, no result leaves its worst case; and its
// ends are reached.
func TestChartAgainstCutting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := draw(t)
		reading, err := Read(c)
		if err != nil || len(reading.Faults) > 0 {
			t.Fatal(err, reading.Faults)
		}
		for _, r := range reading.Results {
			for _, end := range []float64{-1, 0, 1} {
				off := map[string]float64{}
				for _, k := range c.Cuts {
					off[k.Name] = float64(rapid.IntRange(-10, 10).Draw(t, "off")) / 10
				}
				for _, d := range c.Raw {
					off[d.Name] = float64(rapid.IntRange(-10, 10).Draw(t, "off")) / 10
				}
				if end != 0 {
					for _, m := range r.Terms {
						off[m.Name] = end * float64(m.Sign)
						if m.Raw && m.Size < 0 != (m.Name == "bore") { // hung the other way round
							off[m.Name] = -off[m.Name]
						}
					}
				}
				got := made(c, off, r)
				switch {
				case got < r.Sum.Least-1e-9 || got > r.Sum.Most+1e-9,
					end < 0 && math.Abs(got-r.Sum.Least) > 1e-9, end > 0 && math.Abs(got-r.Sum.Most) > 1e-9:
					t.Fatalf("%s at %v: %v, worst case %v to %v", r.Name, end, got, r.Sum.Least, r.Sum.Most)
				}
			}
		}
	})
}

// made plays the cuts, each off its middle by a part of its half tolerance.
func made(c Chart, off map[string]float64, r Result) float64 {
	at := map[string]float64{"a": 0, "d": 60 + 0.5*off["blank"], "b": 20 + 0.2*off["step"]}
	at["c"] = at["d"] - 15 + 0.2*off["bore"]
	for _, k := range c.Cuts {
		old := at[k.Makes]
		at[k.Makes] = at[k.From] + k.Size + k.Upper*off[k.Name]
		if r.Stock && r.Name == k.Name {
			return float64(k.Metal) * (at[k.Makes] - old)
		}
	}
	return at[c.Drawing[0].To] - at[c.Drawing[0].From]
}

// Every change that is offered cures: the size moved to either bound, or the tolerances
// tightened. A single size that would cure is not missed.
func TestRepairsCure(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := draw(t)
		before, _ := Read(c)
		shifts, err := Shifts(c)
		if err != nil {
			t.Fatal(err)
		}
		with := func(name string, size float64) bool {
			d := c
			d.Cuts = slices.Clone(c.Cuts)
			for i := range d.Cuts {
				if d.Cuts[i].Name == name {
					d.Cuts[i].Size = size
				}
			}
			r, _ := Read(d)
			return r.Holds()
		}
		for _, s := range shifts {
			if s.BoundBelow && !with(s.Cut, s.Least) || s.BoundAbove && !with(s.Cut, s.Most) ||
				s.BoundBelow && with(s.Cut, s.Least-0.001) || s.BoundAbove && with(s.Cut, s.Most+0.001) {
				t.Fatalf("%+v does not bound what cures", s)
			}
		}
		for _, k := range c.Cuts {
			size := k.Size + float64(rapid.IntRange(-800, 800).Draw(t, "moved"))/1000
			if !before.Holds() && with(k.Name, size) && !slices.ContainsFunc(shifts, func(s Shift) bool { return s.Cut == k.Name }) {
				t.Fatalf("%s at %v cures and is not offered", k.Name, size)
			}
		}
		tight, err := Tighten(c, nil)
		if err != nil || before.Holds() {
			return
		}
		for i, k := range c.Cuts {
			for _, g := range tight {
				if g.Cut == k.Name {
					c.Cuts[i].Lower, c.Cuts[i].Upper = -g.To, g.To
				}
			}
		}
		if r, _ := Read(c); !r.Holds() || len(tight) == 0 {
			t.Fatalf("tightened by %+v: %+v", tight, r)
		}
	})
}

func BenchmarkChart(b *testing.B) {
	c := chartOf(b, printed.Rows(b, "chain.tsv", 5), "T5")
	for b.Loop() {
		if _, err := Read(c); err != nil {
			b.Fatal(err)
		}
		if _, err := Shifts(c); err != nil {
			b.Fatal(err)
		}
	}
}
