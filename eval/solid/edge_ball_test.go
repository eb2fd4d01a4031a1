package solid

import (
	"fmt"
	"math"
	"math/rand"
	"testing"
)

// randomBalls is a random piece with balls taken from it or left standing; every third is
// two such pieces joined.
func randomBalls(r *rand.Rand) *Piece {
	p := randomPiece(r, 2+r.Intn(8))
	for i := range 1 + r.Intn(4) {
		c := Vec{r.Float64() * 100, r.Float64() * 60, r.Float64() * 30}
		rad := 2 + 10*r.Float64()
		b := Ball(c, rad)
		if r.Intn(3) == 0 {
			b = BallBetween(c, along(r.Intn(3)), rad, -rad*r.Float64(), rad*r.Float64())
		}
		rm := Removal{Take: b, By: fmt.Sprint("ball ", i)}
		if r.Intn(3) == 0 {
			d := Vec{rad * 1.5, rad * 1.5, rad * 1.5}
			rm = Removal{Take: Box(c.Sub(d), c.Add(d)), Less: []Shape{b}, By: rm.By}
		}
		p = p.Cut(rm)
	}
	if r.Intn(3) == 0 {
		q := Raw(Cylinder(Vec{50, 30, 20}, Vec{50, 30, 60}, 12)).Cut(Removal{Take: Ball(Vec{50, 30, 60}, 8), By: "cup"})
		p = Joined(p, q).Cut(randomRemoval(r, "after"))
	}
	return p
}

// Laws 1 and 2 hold of balls and of joined pieces, and sections of them have the area of rays.
func TestEdgesOfBallsAndJoined(t *testing.T) {
	r := rand.New(rand.NewSource(29))
	vis, hid, open := 0, 0, 0
	for i := range 150 {
		p := randomBalls(r)
		w := Vec{r.NormFloat64(), r.NormFloat64(), r.NormFloat64()}.Unit()
		if i%2 == 0 {
			w = along(r.Intn(3))
		}
		for _, e := range seen(t, p, w) {
			for range 4 {
				v, ok := placeOn(&e, r)
				if !ok {
					break
				}
				offs := []float64{0.0002}
				if e.Visible {
					offs = []float64{0.003, 0.006}
				}
				switch reach := nearestReach(p, v, w, offs...); {
				case e.Visible && reach > 0.1:
					t.Errorf("piece %d from %v: visible %v %v %v at %v is %.3f behind metal", i, w, e.Kind, e.Contour, e.By, v, reach)
				case !e.Visible && e.Contour && reach < -0.003, !e.Visible && reach < 0.1 && reach > 0.003:
					open++
				case !e.Visible && reach < 0.003:
					t.Errorf("piece %d from %v: hidden %v %v %v at %v is seen (%.4f)", i, w, e.Kind, e.Contour, e.By, v, reach)
				case e.Visible:
					vis++
				default:
					hid++
				}
			}
		}
		at := Vec{20 + 60*r.Float64(), 10 + 40*r.Float64(), 5 + 20*r.Float64()}
		ls, err := p.Section(at, w)
		if err != nil {
			t.Errorf("piece %d square to %v: %v", i, w, err)
			continue
		}
		want := areaByRays(p, at, w)
		if off := math.Abs(loopsArea(ls)-want) / max(want, 100); off > 2e-4 {
			t.Errorf("piece %d at %v square to %v: %.4f mm², by rays %.4f", i, at, w, loopsArea(ls), want)
		}
	}
	t.Logf("%d visible, %d hidden, %d open", vis, hid, open)
}

func TestBallCounted(t *testing.T) {
	es := seen(t, Raw(Ball(Vec{1, 2, 3}, 5)), Vec{1, 2, 3})
	if len(es) != 1 || !es[0].Contour || !es[0].Visible || !es[0].Closed() {
		t.Errorf("a ball is drawn as %+v", es)
	}
	es = seen(t, Raw(BallBetween(Vec{}, Vec{0, 0, 1}, 5, -3, 5)), Vec{0, -1, 0})
	if c := tally(es, every); c.arc != 2 {
		t.Errorf("a ball with a flat is drawn as %+v", c)
	}
}
