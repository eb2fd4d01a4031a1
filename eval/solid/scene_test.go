package solid

import (
	"fmt"
	"math"
	"math/rand"
	"testing"
)

// A random piece of milled work: boxes, upright, lying and leaning rounds, cones, fillets.
func randomPiece(r *rand.Rand, n int) *Piece {
	p := Raw(Box(Vec{}, Vec{100, 60, 30}))
	for i := range n {
		p = p.Cut(randomRemoval(r, fmt.Sprint("cut ", i)))
	}
	return p
}

func randomRemoval(r *rand.Rand, by string) Removal {
	c := Vec{r.Float64() * 100, r.Float64() * 60, r.Float64() * 30}
	spread := func(lo, hi float64) float64 { return lo + r.Float64()*(hi-lo) }
	switch r.Intn(8) {
	case 0, 1:
		d := Vec{spread(2, 30), spread(2, 20), spread(1, 15)}
		return Removal{Take: Box(c.Sub(d), c.Add(d)), By: by}
	case 2, 3:
		return Removal{Take: Cylinder(Vec{c[0], c[1], c[2] - 5}, Vec{c[0], c[1], 31}, spread(1, 12)), By: by}
	case 4:
		return Removal{Take: Cylinder(Vec{c[0], -1, c[2]}, Vec{c[0], 61, c[2]}, spread(1, 8)), By: by}
	case 5:
		h := spread(1, 8)
		return Removal{Take: Cone(c, c.Add(along(r.Intn(3)).Times(h)), spread(0, 4), spread(1, 9)), By: by}
	case 6: // a pocket with a boss left standing
		d := Vec{spread(4, 20), spread(4, 15), spread(3, 10)}
		return Removal{Take: Box(c.Sub(d), c.Add(d)),
			Less: []Shape{Cylinder(c.Sub(Vec{0, 0, 40}), c.Add(Vec{0, 0, 40}), spread(1, 4))}, By: by}
	}
	lean := Vec{spread(-0.5, 0.5), spread(-0.5, 0.5), 1}
	return Removal{Take: Cylinder(c.Sub(lean.Times(20)), c.Add(lean.Times(20)), spread(1, 6)), By: by}
}

func randomTool(r *rand.Rand) (Turned, Move) {
	a := Vec{r.Float64() * 100, r.Float64() * 60, r.Float64() * 35}
	t := Turned{0, 2 + r.Float64()*15, 1 + r.Float64()*6, 0, "tool"}
	t.R1 = t.R0
	if r.Intn(3) == 0 {
		t.R1 = r.Float64() * 8
	}
	b := a
	switch r.Intn(4) {
	case 0, 1:
		b[0] += r.Float64()*30 - 15
		b[1] += r.Float64()*30 - 15
	case 2:
		b[2] += r.Float64()*10 - 5
	}
	return t, Move{a, b}
}

// Law 1: whatever sampling finds, Meets finds, and what it finds is metal within the sweep.
func TestMeetsAgainstSampling(t *testing.T) {
	n := 20000
	if testing.Short() {
		n = 2000
	}
	r := rand.New(rand.NewSource(7))
	meet, clear, covered := 0, 0, 0
	for i := range n {
		p := randomPiece(r, 4+r.Intn(20))
		tool, m := randomTool(r)
		if i%2 == 0 { // within the room of some removals
			tool, m = p.inRoom(tool, m, r)
		}
		got, ok := p.Meets(tool, m)
		if ok {
			meet++
			if !p.Holds(got.At) || !inSweep(tool, m, got.At, 0) {
				t.Fatalf("scene %d: the place %v is not metal within the sweep of %+v %+v", i, got.At, tool, m)
			}
			continue
		}
		clear++
		if v, found := sampled(p, tool, m, r); found {
			t.Fatalf("scene %d: clear, but metal at %v in the sweep of %+v %+v", i, v, tool, m)
		}
		if lo, hi := (&way{tool, m}).bounds(); overlap(lo, hi, p.blank.lo, p.blank.hi) {
			covered++
		}
	}
	if meet < n/20 || covered < n/50 {
		t.Errorf("too few to mean anything: %d meet, %d clear", meet, covered)
	}
	t.Logf("%d meet, %d clear, of these %d within the blank", meet, clear, covered)
}

// inRoom makes a tool smaller and puts it where a removal was made.
func (p *Piece) inRoom(t Turned, m Move, r *rand.Rand) (Turned, Move) {
	c := p.cuts[r.Intn(len(p.cuts))].Take
	f := 0.05 + 0.6*r.Float64()
	d := m.To.Sub(m.From).Times(f)
	t.Z1, t.R0, t.R1 = t.Z1*f, t.R0*f, t.R1*f
	m.From = c.lo.Add(c.hi).Times(0.5).Sub(Vec{0, 0, t.Z1 / 2}).Sub(d.Times(0.5))
	m.To = m.From.Add(d)
	return t, m
}

// inSweep says whether a place lies in what the tool sweeps, by a fine walk along the way.
func inSweep(t Turned, m Move, v Vec, inside float64) bool {
	const n = 4000
	d := m.To.Sub(m.From)
	// The nearest tip in the plane and the one at the nearest height are looked at too.
	try := []float64{0, 1}
	if l := d[0]*d[0] + d[1]*d[1]; l > 0 {
		try = append(try, between(((v[0]-m.From[0])*d[0]+(v[1]-m.From[1])*d[1])/l, 0, 1))
	} else if d[2] != 0 {
		for j := range n {
			try = append(try, float64(j)/n)
		}
	}
	for _, f := range try {
		tip := m.From.Add(d.Times(f))
		h := v[2] - tip[2]
		if h < t.Z0+inside || h > t.Z1-inside {
			continue
		}
		if math.Hypot(v[0]-tip[0], v[1]-tip[1]) <= t.R0+t.slope()*(h-t.Z0)-inside {
			return true
		}
	}
	return false
}

// sampled looks for metal at 1500 places of a sweep and, by straight lines, at all heights
// above and beside them, more than a few Grains inside of the sweep and of the metal.
func sampled(p *Piece, t Turned, m Move, r *rand.Rand) (Vec, bool) {
	d := m.To.Sub(m.From)
	for range 1500 {
		h := t.Z0 + 3*Grain + r.Float64()*(t.Z1-t.Z0-6*Grain)
		rad := t.R0 + t.slope()*(h-t.Z0) - 0.02
		if rad <= 0 {
			continue
		}
		a, s := r.Float64()*2*math.Pi, rad*math.Sqrt(r.Float64())
		v := m.From.Add(d.Times(r.Float64())).Add(Vec{s * math.Cos(a), s * math.Sin(a), h})
		if p.deep(v, 2*Grain) {
			return v, true
		}
	}
	return Vec{}, false
}

// deep says whether a place is metal by a margin.
func (p *Piece) deep(v Vec, margin float64) bool {
	if p.blank.depth(v) < margin {
		return false
	}
	for _, c := range p.cuts {
		if c.takes(v, -margin) {
			return false
		}
	}
	return true
}

// Law 2: a web is found however thin. Two pockets stand apart by web; a cutter that spans
// them meets it at once where it is thicker than a Grain or two, whatever it is made of.
func TestThinWebs(t *testing.T) {
	for _, web := range []float64{0.5, 0.2, 0.05, 0.01, 0.003} {
		for name, cuts := range map[string][]Removal{
			"between boxes": {
				{Take: Box(Vec{10, 10, 10}, Vec{30, 50, 31})}, {Take: Box(Vec{30 + web, 10, 10}, Vec{60, 50, 31})}},
			"between bores": {
				{Take: Cylinder(Vec{20, 30, 5}, Vec{20, 30, 31}, 12)}, {Take: Cylinder(Vec{44 + web, 30, 5}, Vec{44 + web, 30, 31}, 12)}},
			"over a cross hole": {
				{Take: Cylinder(Vec{-1, 30, 10}, Vec{101, 30, 10}, 6)}, {Take: Box(Vec{-1, 20, 16 + web}, Vec{101, 40, 31})}},
			"between cross holes": {
				{Take: Cylinder(Vec{32, -1, 15}, Vec{32, 61, 15}, 6)}, {Take: Cylinder(Vec{44 + web, -1, 15}, Vec{44 + web, 61, 15}, 6)}},
		} {
			p := Raw(Box(Vec{}, Vec{100, 60, 30})).Cut(cuts...)
			tool := Turned{0, 20, 1, 1, "cutter"}
			m := Move{Vec{29, 30, 12}, Vec{33, 30, 12}}
			if name == "over a cross hole" {
				m = Move{Vec{30, 30, 15}, Vec{40, 30, 15}}
			}
			if name == "between cross holes" {
				tool.Z1 = 5
				m = Move{Vec{36, 30, 12.5}, Vec{40, 30, 12.5}}
			}
			if name == "between bores" {
				m = Move{Vec{30, 30, 12}, Vec{34, 30, 12}}
			}
			if _, ok := p.Meets(tool, m); !ok {
				t.Errorf("%s: a web of %g mm is missed", name, web)
			}
		}
	}
}

// Law 3: a tool is clear in the room that it made itself, and after a move of two Grains
// into the wall it is not.
func TestOwnRoom(t *testing.T) {
	blank := Raw(Box(Vec{}, Vec{100, 60, 30}))
	slot := Move{Vec{20, 30, 12}, Vec{70, 41, 12}}
	n := Vec{-11, 50, 0}.Unit()
	tool := Turned{0, 40, 5, 5, "cutter"}
	side := func(v Vec) []Half { // a prism along the slot
		d := slot.To.Sub(slot.From).Unit()
		return []Half{{n, n.Dot(v) + 5}, {n.Times(-1), -n.Dot(v) + 5}, {d, d.Dot(slot.To)}, {d.Times(-1), -d.Dot(slot.From)},
			{Vec{0, 0, 1}, 40}, {Vec{0, 0, -1}, -12}}
	}
	up := func(v Vec) Vec { return Vec{v[0], v[1], 40} }
	p := blank.Cut(Removal{Take: Prism(side(slot.From)...)}, Removal{Take: Cylinder(slot.From, up(slot.From), 5)},
		Removal{Take: Cylinder(slot.To, up(slot.To), 5)})
	if m, ok := p.Meets(tool, slot); ok {
		t.Errorf("slot: meets its own room at %v", m.At)
	}
	off := n.Times(3 * Grain)
	if _, ok := p.Meets(tool, Move{slot.From.Add(off), slot.To.Add(off)}); !ok {
		t.Error("slot: clear three Grains into its wall")
	}
	sink := Cone(Vec{50, 30, 24}, Vec{50, 30, 31}, 2, 9)
	hole := Cylinder(Vec{50, 30, -1}, Vec{50, 30, 31}, 2)
	cone := Turned{0, 7, 2, 9, "countersink"}
	p = blank.Cut(Removal{Take: sink}, Removal{Take: hole})
	if m, ok := p.Meets(cone, Move{Vec{50, 30, 40}, Vec{50, 30, 24}}); ok {
		t.Errorf("countersink: meets its own room at %v", m.At)
	}
	if _, ok := p.Meets(cone, Move{Vec{50, 30, 40}, Vec{50, 30, 24 - 4*Grain}}); !ok {
		t.Error("countersink: clear four Grains too deep")
	}
	across := blank.Cut(Removal{Take: Cylinder(Vec{-1, 30, 30}, Vec{101, 30, 30}, 6)}) // a round trough
	if m, ok := across.Meets(Turned{0, 10, 3, 3, "cutter"}, Move{Vec{-5, 30, 30 - math.Sqrt(27)}, Vec{105, 30, 30 - math.Sqrt(27)}}); ok {
		t.Errorf("trough: meets at %v", m.At)
	}
	if _, ok := across.Meets(Turned{0, 10, 3, 3, "cutter"}, Move{Vec{-5, 30, 29.99 - math.Sqrt(27)}, Vec{105, 30, 29.99 - math.Sqrt(27)}}); !ok {
		t.Error("trough: clear a hundredth too deep")
	}
}

// The hardest of its kind: a cone along a groove of its own slope, whose room is two cones and
// a prism, so that no height is decided before it is a Grain thick.
func grooved() (*Piece, Turned, Move) {
	m := Move{Vec{20, 20, 24}, Vec{70, 31, 24}}
	d := m.To.Sub(m.From).Unit()
	n := Vec{-d[1], d[0], 0}
	wall := func(n Vec) Half { // |n·(v − from)| ≤ 2 + (z − 24)
		return Half{n.Sub(Vec{0, 0, 1}), n.Dot(m.From) + 2 - 24}
	}
	room := Prism(wall(n), wall(n.Times(-1)), Half{d, d.Dot(m.To)}, Half{d.Times(-1), -d.Dot(m.From)}, Half{Vec{0, 0, 1}, 31}, Half{Vec{0, 0, -1}, -24})
	up := Vec{0, 0, 7}
	p := Raw(Box(Vec{}, Vec{100, 60, 30})).Cut(Removal{Take: room, By: "groove"},
		Removal{Take: Cone(m.From, m.From.Add(up), 2, 9), By: "groove"}, Removal{Take: Cone(m.To, m.To.Add(up), 2, 9), By: "groove"})
	return p, Turned{0, 7, 2, 9, "cutter"}, m
}

func TestOwnGroove(t *testing.T) {
	p, tool, m := grooved()
	if hit, ok := p.Meets(tool, m); ok {
		t.Errorf("meets its own room at %v", hit.At)
	}
	if _, ok := p.Meets(tool, m.raised(-4*Grain)); !ok {
		t.Error("clear four Grains too deep")
	}
}

func BenchmarkGroove(b *testing.B) {
	p, tool, m := grooved()
	for b.Loop() {
		p.Meets(tool, m)
	}
}

// Law 4: turning everything to any attitude that leaves the spindle upright, mirroring it, or
// moving it all, changes no answer.
func TestMeetsMovesAlong(t *testing.T) {
	r := rand.New(rand.NewSource(11))
	poses := []Pose{Still().Shifted(Vec{7.25, -31.5, 4.125}), Attitude(Vec{0, 0, 1}, Vec{1, 0, 0}),
		Attitude(Vec{0, 0, 1}, Vec{0, -1, 0}), Attitude(Vec{0, 0, 1}, Vec{0.6, 0.8, 0}),
		{row: [3]Vec{{-1, 0, 0}, {0, 1, 0}, {0, 0, 1}}}}
	for i := range 600 {
		p := randomPiece(r, 12)
		tool, m := randomTool(r)
		_, want := p.Meets(tool, m)
		for j, q := range poses {
			if _, got := p.Placed(q).Meets(tool, Move{q.Point(m.From), q.Point(m.To)}); got != want {
				t.Errorf("scene %d, pose %d: %v, unmoved %v", i, j, got, want)
			}
		}
	}
}

// A slanting way is taken a little too large where the tool is a cone, never too small.
func TestSlantingWays(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	meet := 0
	for i := range 1500 {
		p := randomPiece(r, 15)
		tool, m := randomTool(r)
		m.To = m.From.Add(Vec{r.Float64()*20 - 10, r.Float64()*20 - 10, r.Float64()*12 - 6})
		if _, ok := p.Meets(tool, m); ok {
			meet++
		} else if v, found := sampled(p, tool, m, r); found {
			t.Fatalf("scene %d: clear, but metal at %v", i, v)
		}
	}
	if meet == 0 || meet == 1500 {
		t.Errorf("%d of 1500 meet", meet)
	}
}

// FuzzMeets: nothing that can be asked makes it panic or contradict itself: a tool that is
// smaller, or a piece with more taken away, never meets where the larger is clear.
func FuzzMeets(f *testing.F) {
	f.Add(int64(1), 5.0, 10.0, 3.0, 2.0, 4.0, 1.0, 0.0)
	f.Add(int64(2), -5.0, 10.0, 30.0, 0.0, 0.0, -7.0, 5.0)
	f.Add(int64(3), math.Inf(1), math.NaN(), 3.0, 1e300, -1.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, seed int64, x, y, z, dx, dy, dz, taper float64) {
		r := rand.New(rand.NewSource(seed))
		p := randomPiece(r, 10)
		m := Move{Vec{x, y, z}, Vec{x + dx, y + dy, z + dz}}
		large := Turned{0, 10, 4, 4 + taper, "large"}
		small := Turned{0.1, 9.9, 3.8, 3.8 + taper, "small"}
		_, l := p.Meets(large, m)
		_, s := p.Meets(small, m)
		if s && !l && math.Abs(taper) < 4 {
			t.Errorf("the small one meets, the large one does not")
		}
		if _, after := p.Cut(randomRemoval(r, "more")).Meets(large, m); after && !l {
			t.Errorf("taking metal away made it meet")
		}
	})
}

func benchScenes(clear bool) (ps []*Piece, ts []Turned, ms []Move) {
	r := rand.New(rand.NewSource(9))
	for len(ps) < 200 {
		p := randomPiece(r, 20)
		t, m := randomTool(r)
		if _, ok := p.Meets(t, m); ok == clear {
			continue
		}
		ps, ts, ms = append(ps, p), append(ts, t), append(ms, m)
	}
	return ps, ts, ms
}

func BenchmarkMeets20(b *testing.B) {
	ps, ts, ms := benchScenes(false)
	i := 0
	for b.Loop() {
		ps[i%200].Meets(ts[i%200], ms[i%200])
		i++
	}
}

func BenchmarkClear20(b *testing.B) {
	ps, ts, ms := benchScenes(true)
	i := 0
	for b.Loop() {
		ps[i%200].Meets(ts[i%200], ms[i%200])
		i++
	}
}

func BenchmarkRay20(b *testing.B) {
	r := rand.New(rand.NewSource(3))
	p := randomPiece(r, 20)
	var s scan
	for b.Loop() {
		p.line(Vec{50, 30, 15}, Vec{0.6, 0.64, 0.48}, &s)
	}
}
