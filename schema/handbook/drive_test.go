package handbook_test

import (
	"math"
	"testing"

	"fettle/schema/handbook"
)

// The square goes into its shank: across the corners it is no wider than the shank, 1.414 of 0.707; and the
// tables rise with the size, within each head.
func TestDrives(t *testing.T) {
	was := [2]float64{}
	for _, d := range []float64{2, 3, 4, 5, 6, 8, 10, 12, 16, 20} {
		lo, hi, ok := handbook.TapSquare(d)
		if !ok || lo > hi || lo < was[0]-0.5 || hi < was[1]-1.1 {
			t.Errorf("M%g: a square of %g to %g after %g to %g", d, lo, hi, was[0], was[1])
		}
		was = [2]float64{lo, hi}
	}
	if lo, hi := handbook.ShankSquare(10); lo > 8 || hi < 8 || hi*math.Sqrt2 > 12 {
		t.Errorf("a shank of 10 mm has a square of 8 (ISO 237), not %g to %g", lo, hi)
	}
	if _, _, ok := handbook.TapSquare(7.3); ok {
		t.Error("no tap is 7.3 mm")
	}
	for _, d := range []float64{1, 1.6, 2, 2.5, 3.15, 4, 5, 6.3} {
		// the mouth of the hole, some 2.12 pilots wide, lies within the body
		if body, l, ok := handbook.CentreDrill(d); !ok || body < 2.12*d || l < d || l > 1.6*d {
			t.Errorf("a centre drill of %g mm: body %g, pilot %g long, %v", d, body, l, ok)
		}
	}
	for _, head := range []string{"cap", "grub", "hexagon"} {
		last := 0.0
		for _, d := range []float64{3, 4, 5, 6, 8, 10, 12} {
			key, s, ok := handbook.Driver(head, d)
			if !ok || key == "" || s <= last || head == "hexagon" && s < 1.4*d || head != "hexagon" && s >= d {
				t.Errorf("%s M%g: %s of %g", head, d, key, s)
			}
			last = s
		}
	}
	if _, _, ok := handbook.Driver("pan", 3); ok {
		t.Error("a pan head has one of several slots, and none is said")
	}
}
