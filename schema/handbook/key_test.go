package handbook

import "testing"

// Laws of the tables: a keyway in the shaft and one in the bore together are deeper than the key is high,
// by no more than half a millimetre; borders of the ranges belong to the lower one.
func TestKeys(t *testing.T) {
	for _, r := range load("key").rows {
		k := keyOf(r)
		if gap := k.Shaft + k.Bore - k.Height; gap < 0.1 || gap > 0.5 {
			t.Errorf("key %v: %v over it", k, gap)
		}
		if w, ok := KeyOfWidth(k.Width); !ok || w != k {
			t.Errorf("key of width %v: %v", k.Width, w)
		}
	}
	for _, c := range []struct{ shaft, width float64 }{{8, 2}, {8.01, 3}, {12, 4}, {17, 5}, {20, 6}, {30, 8}} {
		if k, ok := KeyFor(c.shaft); !ok || k.Width != c.width {
			t.Errorf("a shaft of %v has a key of %v", c.shaft, k.Width)
		}
	}
	for _, no := range []float64{0, 6, 75.1, -5} {
		if k, ok := KeyFor(no); ok {
			t.Errorf("a shaft of %v has a key: %v", no, k)
		}
	}
}

// Laws of the tables: a groove is a tenth or more wider than its ring; on a shaft its floor lies below the surface,
// in a bore above it; both grow with the size.
func TestCirclips(t *testing.T) {
	for _, bore := range []bool{false, true} {
		last := Circlip{}
		n := 0
		for d := 1.0; d <= 60; d++ {
			c, ok := CirclipFor(d, bore)
			if !ok {
				continue
			}
			n++
			if (c.Floor > d) != bore || c.Width-c.Ring < 0.1-hair || c.Width-c.Ring > 0.15+hair || c.Floor <= last.Floor || c.Ring < last.Ring {
				t.Errorf("%v, in a bore %v: %+v after %+v", d, bore, c, last)
			}
			last = c
		}
		if n < 20 {
			t.Errorf("%d sizes", n)
		}
	}
}
