package gear

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The flank is drawn again, step by step, by a circle that rolls on the pitch circle: where it comes to
// the middle of the tooth it is as far out as Pointed says.
func TestPointedIsOnTheFlank(t *testing.T) {
	for _, c := range [][2]int{{60, 10}, {96, 8}, {30, 6}, {12, 12}, {200, 7}, {8, 64}} {
		got, err := Pointed(c[0], c[1])
		if err != nil {
			t.Fatal(err)
		}
		r, roll := float64(c[0])/2, float64(c[1])/4
		half := math.Pi / (2 * float64(c[0]))
		const steps = 2000000
		want := math.NaN()
		for i := range steps {
			turn := math.Pi * float64(i) / steps // of the rolling circle about its own middle
			at := turn * roll / r
			x := (r+roll)*math.Cos(at) - roll*math.Cos(at+turn)
			y := (r+roll)*math.Sin(at) - roll*math.Sin(at+turn)
			if math.Atan2(y, x) >= half {
				want = math.Hypot(x, y) - r
				break
			}
		}
		near(t, "height of the point", got, want, 5e-5) // a step of the drawing
	}
	for _, c := range [][2]int{{2, 10}, {10001, 10}, {60, 2}, {60, 1001}} {
		if _, err := Pointed(c[0], c[1]); err == nil {
			t.Errorf("a pair of %d and %d was taken", c[0], c[1])
		}
	}
}

// A larger wheel with the same pinion has a flatter flank, so that its teeth are taller.
func TestPointedLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z, p := rapid.IntRange(6, 5000).Draw(t, "wheel"), rapid.IntRange(6, 200).Draw(t, "pinion")
		h, err := Pointed(z, p)
		if err != nil {
			t.Fatal(err)
		}
		if !(h > 0) {
			t.Fatalf("%d and %d: %v modules", z, p, h)
		}
		more, err := Pointed(z+1, p)
		if err != nil || more < h-1e-12 {
			t.Fatalf("%d and %d: %v modules, of one tooth more %v (%v)", z, p, h, more, err)
		}
	})
}

func TestServesCycloidal(t *testing.T) {
	cutter := Cutter{Module: 0.5, Form: "cycloidal", Teeth: Range{60, 0}}
	for _, c := range []struct {
		of     func(c *Cutter)
		module float64
		teeth  int
		want   Fit
	}{
		{func(*Cutter) {}, 0.5, 96, Yes},
		{func(*Cutter) {}, 0.5, 59, No},
		{func(*Cutter) {}, 0.51, 96, No},
		{func(c *Cutter) { c.Form = "involute" }, 0.5, 96, No},
		{func(c *Cutter) { c.Form = "" }, 0.5, 96, NotKnown},
		{func(c *Cutter) { c.Module = 0 }, 0.5, 96, NotKnown},
		{func(c *Cutter) { c.Teeth = Range{} }, 0.5, 96, NotKnown},
		{func(c *Cutter) { c.Form, c.Teeth = "", Range{8, 9} }, 0.5, 96, No},
	} {
		one := cutter
		c.of(&one)
		if got, why := one.ServesCycloidal(c.module, c.teeth); got != c.want {
			t.Errorf("%+v for %d teeth of module %v: %v, %s", one, c.teeth, c.module, got, why)
		}
	}
}
