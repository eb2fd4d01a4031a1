package handbook

import (
	"math"
	"testing"
)

// Laws of the table: heads are wider than their thread and grow with it; a counterbore is wider than its head, and deeper than
// the head is high, which for a cap screw is its thread; countersunk heads of ISO metric screws have a cone of 90 degrees.
func TestHeads(t *testing.T) {
	last := map[string]Head{}
	for _, r := range load("head").rows {
		d, kind := r.number("thread_mm"), r.text("head")
		h, ok := HeadFor(kind, d, r.text("key"))
		before := last[kind+r.text("key")]
		if !ok || h.Diameter < 1.4*d || h.Diameter <= before.Diameter || h.Bore < before.Bore || h.Deep < before.Deep {
			t.Errorf("%s %v: %v after %v", kind, d, h, before)
		}
		if h.Bore > 0 && (h.Bore <= h.Diameter || h.Deep <= d) {
			t.Errorf("%s %v does not go into its counterbore: %v", kind, d, h)
		}
		if (kind == "countersunk") != (h.Angle == 90) {
			t.Errorf("%s %v: a cone of %v degrees", kind, d, h.Angle)
		}
		if kind == "countersunk" && r.text("key") == "hexagon key" && d <= 12 && math.Abs(h.Diameter-2.24*d) > 0.001 {
			t.Errorf("countersunk %v: %v; the heads of ISO 10642 up to M12 are 2.24 threads wide (from memory)", d, h.Diameter)
		}
		last[kind+r.text("key")] = h
	}
	for _, c := range []struct {
		head, driver string
		thread       float64
		want         Head
		ok           bool
	}{
		{"cap", "", 5, Head{8.5, 10, 5.4, 0}, true}, // ISO 4762, DIN 974-1 (from memory)
		{"countersunk", "hexagon key, 3 mm", 5, Head{Diameter: 11.2, Angle: 90}, true},
		{"countersunk", "slot 1.2", 5, Head{Diameter: 10.4, Angle: 90}, true},
		{"countersunk", "", 4, Head{Diameter: 9.4, Angle: 90}, true}, // the wider of 8.96 and 9.4
		{"raised countersunk", "", 5, Head{Diameter: 11.2, Angle: 90}, true},
		{"countersunk", "", 4.5, Head{}, false},
		{"pan", "", 5, Head{}, false},
	} {
		if got, ok := HeadFor(c.head, c.thread, c.driver); got != c.want || ok != c.ok {
			t.Errorf("%s %v %q: %v %v, want %v", c.head, c.thread, c.driver, got, ok, c.want)
		}
	}
}
