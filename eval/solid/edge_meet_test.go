package solid

import (
	"math"
	"math/rand"
	"testing"
)

// skinOf gives a random surface of a kind; a third of them lie along axes.
func skinOf(r *rand.Rand, k skinKind) surface {
	at := Vec{r.Float64() * 20, r.Float64() * 20, r.Float64() * 20}
	d := Vec{r.NormFloat64(), r.NormFloat64(), r.NormFloat64()}.Unit()
	if r.Intn(3) == 0 {
		d = along(r.Intn(3))
	}
	switch k {
	case plain:
		return surface{n: d, c: d.Dot(at)}
	case globe:
		return surface{kind: globe, from: at, r0: 2 + 8*r.Float64()}
	}
	s := Cylinder(at, at.Add(d.Times(30)), 2+6*r.Float64())
	if r.Intn(2) == 0 {
		s = Cone(at, at.Add(d.Times(30)), 2+6*r.Float64(), 8*r.Float64())
	}
	return s.skins()[0]
}

// Law 6: every place of the curve of two surfaces lies on both, and places on both lie on a
// curve.
func TestCurvesOfSurfaces(t *testing.T) {
	r := rand.New(rand.NewSource(26))
	curves, worst, found := 0, 0.0, 0
	for range 6000 {
		a, b := skinOf(r, skinKind(r.Intn(3))), skinOf(r, skinKind(r.Intn(3)))
		cs := meet(&a, &b)
		for i := range cs {
			c := &cs[i]
			if c.kind == straight {
				c.lo, c.hi = -40, 40
			}
			curves++
			for k := range 41 {
				v := c.at(c.lo + (c.hi-c.lo)*float64(k)/40)
				if pastTip(&a, v) || pastTip(&b, v) {
					continue
				}
				off := max(math.Abs(a.depth(v)), math.Abs(b.depth(v)))
				if worst = max(worst, off); off > 1e-5 {
					t.Fatalf("%v of %+v and %+v at %v is off by %g", c.kind, a, b, v, off)
				}
			}
		}
		one, other := &a, &b
		if a.kind == plain {
			one, other = &b, &a
		}
		if v, ok := common2(r, one, other); ok {
			found++
			if d := fromCurves(cs, v); d > 0.05 {
				t.Errorf("%v on both of %+v and %+v is %.3f mm from their curves", v, a, b, d)
			}
		}
	}
	t.Logf("%d curves, worst %g mm; %d places looked for", curves, worst, found)
	if found < 400 {
		t.Error("too few places to mean anything")
	}
}

// pastTip says whether a place is past the point of a cone.
func pastTip(s *surface, v Vec) bool {
	return s.kind == turned && s.r0+s.k*v.Sub(s.from).Dot(s.axis) < 1e-3
}

// pastEnd says whether a place is past an end of a turned surface.
func pastEnd(s *surface, v Vec) bool {
	t := v.Sub(s.from).Dot(s.axis)
	return s.kind == turned && (t < 0 || t > s.h)
}

// common2 looks for a place on two surfaces by halving a great circle or ruling of the first.
func common2(r *rand.Rand, a, b *surface) (Vec, bool) {
	var at func(float64) Vec
	switch a.kind {
	case plain:
		return Vec{}, false
	case turned:
		o, d := a.ruling(r.Float64() * 6)
		at = func(t float64) Vec { return o.Add(d.Times(t * a.h)) }
	default:
		u := Vec{r.NormFloat64(), r.NormFloat64(), r.NormFloat64()}.Unit()
		v := square(u)
		at = func(t float64) Vec {
			return a.from.Add(u.Times(a.r0 * math.Cos(t))).Add(v.Times(a.r0 * math.Sin(t)))
		}
	}
	x, y := 0.01, 0.99
	if (b.depth(at(x)) < 0) == (b.depth(at(y)) < 0) {
		return Vec{}, false
	}
	for range 60 {
		if m := (x + y) / 2; (b.depth(at(m)) < 0) == (b.depth(at(x)) < 0) {
			x = m
		} else {
			y = m
		}
	}
	v := at(x)
	return v, !pastTip(a, v) && !pastTip(b, v) && !pastEnd(a, v) && !pastEnd(b, v)
}

func fromCurves(cs []curve, v Vec) float64 {
	best := math.Inf(1)
	for i := range cs {
		ps, _ := cs[i].points(cs[i].lo, cs[i].hi)
		for k := range ps[1:] {
			best = min(best, fromChord(v, ps[k], ps[k+1]))
		}
	}
	return best
}

// Law 7: on the contour of a surface its normal is square to the view.
func TestContours(t *testing.T) {
	r := rand.New(rand.NewSource(27))
	n := 0
	for range 500 {
		s := skinOf(r, skinKind(1+r.Intn(2)))
		w := Vec{r.NormFloat64(), r.NormFloat64(), r.NormFloat64()}.Unit()
		for _, c := range s.contour(w) {
			n++
			for k := range 20 {
				v := c.at(c.lo + (c.hi-c.lo)*(float64(k)+0.5)/20)
				if math.Abs(s.depth(v)) > 1e-9 || math.Abs(s.out(v).Dot(w)) > 1e-9 {
					t.Fatalf("contour of %+v from %v at %v", s, w, v)
				}
			}
		}
	}
	if n < 500 {
		t.Errorf("only %d contours", n)
	}
}

// Law 8: no edge ends in the open. Where the metal's edges meet there are two or more, but
// where an edge runs out smoothly into a surface.
func TestEdgesMeet(t *testing.T) {
	r := rand.New(rand.NewSource(28))
	ends, open := 0, 0
	for range 200 {
		p := randomPiece(r, 2+r.Intn(14))
		var all []Vec
		for _, e := range p.Edges() {
			if !e.Closed() {
				all = append(all, e.Points[0], e.Points[len(e.Points)-1])
			}
		}
		for i, v := range all {
			ends++
			alone := true
			for j, u := range all {
				alone = alone && (i == j || v.Sub(u).Len() > 0.01)
			}
			if alone {
				open++
			}
		}
	}
	t.Logf("%d ends, %d in the open", ends, open)
	if open > ends/1000 {
		t.Errorf("%d of %d ends are in the open", open, ends)
	}
}

// Law 9: of metal bounded by planes, corners less edges plus faces is 2 for each piece without
// holes (Euler), counted on stairs of n steps: 2n + 6 faces.
func TestEuler(t *testing.T) {
	for n := 1; n <= 8; n++ {
		p := Raw(Box(Vec{}, Vec{100, 40, 50}))
		for i := range n {
			p = p.Cut(Removal{Take: Box(Vec{-1, -1, 50 - 5*float64(i+1)}, Vec{80 - 8*float64(i), 41, 51})})
		}
		es := p.Edges()
		var corners []Vec
		for _, e := range es {
			for _, v := range e.Points {
				known := false
				for _, u := range corners {
					known = known || u.Sub(v).Len() < Grain
				}
				if !known {
					corners = append(corners, v)
				}
			}
		}
		faces := 2*n + 6
		if len(corners)-len(es)+faces != 2 {
			t.Errorf("%d steps: %d corners, %d edges, %d faces", n, len(corners), len(es), faces)
		}
	}
}
