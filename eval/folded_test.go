package eval

import (
	"math"
	"math/rand"
	"testing"

	"fettle/eval/solid"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// foldedBy is a strip as it lies after its bends are folded in the order given.
func foldedBy(t testing.TB, p *Part, order []int) (*Part, *State) {
	t.Helper()
	if p.flatOr(nil); p.Flat == nil {
		t.Fatal("the strip has no flat pattern")
	}
	q := p.Flat.Part
	q.Blank.Lo, q.Blank.Hi = q.Low, q.High()
	q.Blank.Shape = solid.Box(q.Blank.Lo, q.Blank.Hi)
	s := q.start()
	for _, i := range order {
		q, s = p.Flat.fold(p, q, s, q.Forms[i], finding.Spot{})
	}
	return q, s
}

// upwards says for every bend of a strip which way it rises and how far.
func upwards(p *Part, up []bool, degrees []float64) {
	for i, f := range p.Forms {
		face := model.Top
		if !up[i] {
			face = model.Bottom
		}
		f.Feature.Towards = model.Sure(model.Ref{Face: face})
		f.Feature.Angle = model.Sure(degrees[i])
	}
}

// An angle of 50 and 20 mm over its outsides, of sheet of 1 mm: it is 50 long and 20 high, and a tray's four
// walls stand round its bottom.
func TestFoldedOverItsOutsides(t *testing.T) {
	p := bracket(70, 1, 1.5, 50)
	upwards(p, []bool{true}, []float64{90})
	_, s := foldedBy(t, p, []int{0})
	lo, hi := s.Bounds()
	if want := (solid.Vec{50, 20, 20}); lo.Len() > 1e-9 || hi.Sub(want).Len() > 1e-9 {
		t.Errorf("it reaches from %v to %v", lo, hi)
	}
	// 48.5 and 18.5 mm straight less the thickness of 1 mm in the corner; the quarter of a ring, 1.5 to 2.5 mm.
	if want := 20 * (47.5 + 17.5 + math.Pi/4*(2.5*2.5-1.5*1.5)); math.Abs(s.Piece.Volume()-want) > 1e-4*want {
		t.Errorf("%v mm³, %v wanted", s.Piece.Volume(), want)
	}
	p = bracket(70, 1, 1.5, 50)
	upwards(p, []bool{false}, []float64{90})
	_, s = foldedBy(t, p, []int{0})
	if lo, hi = s.Bounds(); lo.Sub(solid.Vec{0, 0, -19}).Len() > 1e-9 || hi.Sub(solid.Vec{50, 20, 1}).Len() > 1e-9 {
		t.Errorf("folded down it reaches from %v to %v", lo, hi)
	}
}

// A bend over 90 degrees: either leg is measured to the outermost place of the bend, square to itself. Of sheet
// of 1 mm, 50 and 20 mm, with 1.5 mm inside: 50 long whatever the angle, and as high as the end of the short leg.
func TestFoldedOver90(t *testing.T) {
	for _, degrees := range []float64{90, 100, 120, 135, 150, 179, 180} {
		for _, up := range []bool{true, false} {
			p := bracket(70, 1, 1.5, 50)
			upwards(p, []bool{up}, []float64{degrees})
			q, s := foldedBy(t, p, []int{0})
			a := degrees * math.Pi / 180
			// From the middle of the bend, 2.5 mm above: the inside of the short leg, which stands 17.5 mm straight.
			high := 2.5 - 1.5*math.Cos(a) + 17.5*math.Sin(a)
			if top := 2.5 - 2.5*math.Cos(a) + 17.5*math.Sin(a); top > high {
				high = top
			}
			want := [2]solid.Vec{{0, 0, 0}, {50, 20, high}}
			if !up {
				want = [2]solid.Vec{{0, 0, 1 - high}, {50, 20, 1}}
			}
			lo, hi := s.Bounds()
			if lo.Sub(want[0]).Len() > 1e-6 || hi.Sub(want[1]).Len() > 1e-6 {
				t.Errorf("%v degrees, up %v: it reaches from %v to %v, not to %v", degrees, up, lo, hi, want)
			}
			if q.Low.Sub(want[0]).Len() > 1e-6 || q.High().Sub(want[1]).Len() > 1e-6 {
				t.Errorf("%v degrees, up %v: as drawn it reaches from %v to %v, not %v", degrees, up, q.Low, q.High(), want)
			}
			flat := 47.5 + 17.5 + a*(1.5+(0.65+0.5*math.Log10(1.5))/2)
			if x := p.Flat.Part.Size[0]; math.Abs(x-flat) > 1e-9 {
				t.Errorf("%v degrees: flat it is %v, not %v", degrees, x, flat)
			}
			sheet := 20*(47.5+17.5) + 20*a/2*(2.5*2.5-1.5*1.5)
			if v := s.Piece.Volume(); math.Abs(v-sheet) > 1e-4*sheet {
				t.Errorf("%v degrees: %v mm³, %v wanted", degrees, v, sheet)
			}
		}
	}
}

// Law: folded leg by leg about the lines where their outsides meet, in any order, sheet is what the chain of
// its straight parts and of its bends makes, each beginning where the one before it ends.
func TestFoldedAsAChain(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	for range 24 {
		thick := []float64{0.5, 1, 1.5, 2}[r.Intn(4)]
		inside := thick * (0.3 + 3.7*r.Float64())
		n := 1 + r.Intn(4)
		var at, degrees []float64
		var up []bool
		x := 0.0
		for range n {
			x += 25 + 35*r.Float64()
			at = append(at, x)
			up = append(up, r.Intn(2) == 0)
			degrees = append(degrees, []float64{90, 90, 45, 30, 67.5, 100, 135, 160, 180}[r.Intn(9)])
		}
		long := x + 25 + 35*r.Float64()
		p := bracket(long, thick, inside, at...)
		upwards(p, up, degrees)
		q, s := foldedBy(t, p, r.Perm(n))
		var legs []float64
		var bends []solid.Bend
		for i := range n + 1 {
			from, to := p.Flat.Along[0].straight(p, i)
			legs = append(legs, to-from)
			if i < n {
				k := p.Flat.Bends[i]
				bends = append(bends, solid.Bend{Angle: k.Angle, Inside: k.Inside, Allowance: k.Allowance()})
			}
		}
		chain, err := solid.Frame{U: solid.Vec{1, 0, 0}, V: solid.Vec{0, 1, 0}}.Folded(p.Size[1], thick, legs, bends, "bend")
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(chain.Flat-p.Flat.Part.Size[0]) > 1e-9 {
			t.Fatalf("flat it is %v, the chain %v", p.Flat.Part.Size[0], chain.Flat)
		}
		first := s.Piece.Placed(q.Bent.Poses[p.Flat.leg(0, 0)].Inverse())
		for range 15 {
			v := solid.Vec{long * r.Float64(), p.Size[1] * r.Float64(), 100*r.Float64() - 50}
			for _, d := range []solid.Vec{{1, 0, 0}, {0, 0, 1}} {
				a, b := first.Line(v, d), chain.Piece.Line(v, d)
				if !alikeSpans(a, b) {
					t.Fatalf("through %v along %v: %v, the chain has %v", v, d, a, b)
				}
			}
		}
	}
}

// alikeSpans compares spans of metal; slivers where a line just touches a bend are passed over.
func alikeSpans(a, b []solid.Span) bool {
	var as, bs []solid.Span
	for _, x := range a {
		if x.B-x.A > 0.05 {
			as = append(as, x)
		}
	}
	for _, x := range b {
		if x.B-x.A > 0.05 {
			bs = append(bs, x)
		}
	}
	if len(as) != len(bs) {
		return false
	}
	for i := range as {
		if math.Abs(as[i].A-bs[i].A) > 1e-3 || math.Abs(as[i].B-bs[i].B) > 1e-3 {
			return false
		}
	}
	return true
}
