package handbook

import "testing"

// Laws of the table: a spring pin is larger than its hole can be before it is driven in (H12: from the nominal size
// to 0.21 mm over it up to 20 mm), by no more than a third of it, and pins grow with their size; other sizes have no pin.
func TestPins(t *testing.T) {
	last := Pin{}
	n := 0
	for _, r := range load("pin").rows {
		if r.text("kind") != "spring" {
			continue
		}
		n++
		d := r.number("to_mm")
		p, ok := PinOf("spring", d)
		h12 := 0.1
		for _, s := range [][2]float64{{3, 0.12}, {6, 0.15}, {10, 0.18}, {18, 0.21}} {
			if d > s[0] {
				h12 = s[1]
			}
		}
		if !ok || p.Hole != "H12" || p.Least <= d+h12 || p.Most <= p.Least || p.Most > d*4/3+hair || p.Least <= last.Least {
			t.Errorf("%v: %+v after %+v", d, p, last)
		}
		last = p
	}
	if n < 15 {
		t.Errorf("%d sizes", n)
	}
	for _, c := range []struct {
		kind string
		d    float64
		want Pin
		ok   bool
	}{
		{"spring", 4, Pin{Least: 4.4, Most: 4.6, Hole: "H12"}, true},
		{"spring", 4.2, Pin{}, false},
		{"grooved", 3, Pin{Hole: "H9"}, true},
		{"grooved", 4, Pin{Hole: "H11"}, true},
		{"taper", 4, Pin{Limits: "h10"}, true},
		{"parallel", 4, Pin{}, false},
		{"", 4, Pin{}, false},
		{"taper", 60, Pin{}, false},
	} {
		if p, ok := PinOf(c.kind, c.d); ok != c.ok || p != c.want {
			t.Errorf("%s of %v: %+v %v", c.kind, c.d, p, ok)
		}
	}
}
