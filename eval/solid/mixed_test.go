package solid

import (
	"fmt"
	"math"
	"math/rand"
	"testing"
)

// Random pieces of turned and mixed work, made by the trade's forms.

func spread(r *rand.Rand, lo, hi float64) float64 { return lo + r.Float64()*(hi-lo) }

// randomBar is round, hexagon, square or tube, or a plate, turned so that its axis lies or
// stands.
func randomBar(r *rand.Rand) (Shape, *Piece) {
	const l = 80.0
	switch r.Intn(5) {
	case 0:
		s := Hexagon(0, l, 36)
		return s, Raw(s)
	case 1:
		s := Square(0, l, 34)
		return s, Raw(s)
	case 2:
		return Bar(0, l, 40), Tube(0, l, 40, spread(r, 3, 12))
	}
	s := Bar(0, l, 40)
	return s, Raw(s)
}

// randomMixed is a bar with n forms.
func randomMixed(r *rand.Rand, n int) *Piece {
	raw, p := randomBar(r)
	for i := range n {
		p = p.Cut(randomForm(r, raw, fmt.Sprint("form ", i))...)
	}
	return p
}

func randomForm(r *rand.Rand, raw Shape, by string) []Removal {
	a := Axle{}
	if r.Intn(6) == 0 {
		a = a.Eccentric(spread(r, 0.5, 4), r.Float64()*6)
	}
	x := spread(r, -5, 75)
	w := spread(r, 1, 25)
	angle := r.Float64() * 2 * math.Pi
	if r.Intn(2) == 0 {
		angle = float64(r.Intn(4)) * math.Pi / 2
	}
	face := Frame{a.At(x).Add(Out(angle).Times(18)), Vec{1, 0, 0}, Out(angle).Cross(Vec{1, 0, 0})}
	one := func(m Removal) []Removal { return []Removal{m} }
	or := func(m Removal, err error) []Removal {
		if err != nil {
			return one(a.Outside(raw, x, x+w, 12, by))
		}
		return one(m)
	}
	switch r.Intn(16) {
	case 0:
		return one(a.Outside(raw, x, x+w, spread(r, 6, 20), by))
	case 1:
		return one(a.Taper(raw, x, x+w, spread(r, 4, 20), spread(r, 4, 20), by))
	case 2:
		return or(a.Groove(raw, x, x+w, spread(r, 6, 18), min(w/2.2, spread(r, 0.2, 2)), by))
	case 3:
		return or(a.Profile(raw, by, Station{x, 20, 0}, Station{x + w/2, 16, 1}, Station{x + w/2, 11, 1.5}, Station{x + w, 9, 0}))
	case 4:
		return one(a.Ball(raw, x, x+w, x+w*r.Float64(), spread(r, 8, 20), by))
	case 5:
		return one(a.Bore(x, x+w, spread(r, 2, 9), by))
	case 6:
		return one(a.BoreTaper(x, x+w, spread(r, 1, 9), spread(r, 1, 9), by))
	case 7:
		return one(a.Cup(x, spread(r, 3, 12), by))
	case 8:
		return one(a.CrossHole(raw, x, angle, spread(r, 1, 6), spread(r, -15, 10), by))
	case 9:
		return one(a.FlatOn(raw, x, x+w, angle, spread(r, 8, 18), by))
	case 10:
		return face.Slot(w, spread(r, 2, 8), spread(r, 1, 10), 9, w > 10, w > 10, by)
	case 11:
		return face.TeeSlot(w, 5, 10, 9, 4, 9, by)
	case 12:
		lean := Out(angle).Add(Vec{spread(r, -0.6, 0.6), 0, 0})
		return one(Removal{Take: Cylinder(a.At(x).Add(lean.Times(-25*r.Float64())), a.At(x).Add(lean.Times(30)), spread(r, 1, 5)), By: by})
	case 13:
		side := On(Vec{x, a.Y, 0}, Vec{0, 1, 0}, Vec{1, 0, 0})
		return side.ArcSlot(spread(r, 5, 15), spread(r, 2, 6), w, 90, 0, spread(r, 0.3, 5), by)
	case 14:
		if ms, err := a.ToothGaps(3+r.Intn(4), angle, x, x+w, Trapezium(12, 18, 1, 3, 5), by); err == nil {
			return ms
		}
	}
	return one(Removal{Take: Ball(Vec{x, spread(r, -20, 20), spread(r, -20, 20)}, spread(r, 2, 9)), By: by})
}

// aroundBar moves a tool of randomTool to where a bar lies.
func aroundBar(t Turned, m Move) (Turned, Move) {
	d := Vec{-10, -30, -20}
	return t, Move{m.From.Add(d), m.To.Add(d)}
}

// Law 1 for turned and mixed work, the axis lying as on a mill or standing as on a rotary table.
func TestMixedMeetsAgainstSampling(t *testing.T) {
	n := 6000
	if testing.Short() {
		n = 1000
	}
	r := rand.New(rand.NewSource(17))
	meet, clear, covered := 0, 0, 0
	for i := range n {
		p := randomMixed(r, 2+r.Intn(10))
		if i%3 == 2 {
			p = p.Placed(Attitude(Vec{1, 0, 0}, Vec{0, 0, 1}).Shifted(Vec{40, 0, -20}))
		}
		tool, m := aroundBar(randomTool(r))
		if i%2 == 0 {
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

// Rays and volumes of turned and mixed work agree with random places.
func TestMixedAgainstPlaces(t *testing.T) {
	r := rand.New(rand.NewSource(19))
	for i := range 40 {
		p := randomMixed(r, 2+r.Intn(10))
		want, by := sampledVolume(p, 100000, r)
		near(t, fmt.Sprint("volume ", i), p.Volume(), want, 4.5*by)
		for range 300 {
			o := Vec{spread(r, -10, 90), spread(r, -22, 22), spread(r, -22, 22)}
			d := Vec{r.NormFloat64(), r.NormFloat64(), r.NormFloat64()}.Unit()
			spans := p.Line(o, d)
			for range 10 {
				at := spread(r, -60, 60)
				in, edge := false, false
				for _, s := range spans {
					in = in || at > s.A && at < s.B
					edge = edge || math.Abs(at-s.A) < 2*Grain || math.Abs(at-s.B) < 2*Grain
				}
				if v := o.Add(d.Times(at)); !edge && in != p.Holds(v) {
					t.Errorf("piece %d: at %v on %v along %v: metal %v, spans %v", i, at, o, d, !in, spans)
				}
			}
		}
	}
}

func BenchmarkMixedMeets20(b *testing.B) {
	r := rand.New(rand.NewSource(9))
	var ps []*Piece
	var ts []Turned
	var ms []Move
	for range 200 {
		t, m := aroundBar(randomTool(r))
		ps, ts, ms = append(ps, randomMixed(r, 20)), append(ts, t), append(ms, m)
	}
	i := 0
	for b.Loop() {
		ps[i%200].Meets(ts[i%200], ms[i%200])
		i++
	}
}
