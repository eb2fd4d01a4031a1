package handbook

import (
	"math"
	"strings"
)

// Head is the head of a metric screw, mm and degrees: its largest diameter, of a countersunk one to the sharp edge; the
// counterbore that it stands in without a washer, 0 where the table has none; the included angle of its cone, 0 where it is flat.
type Head struct{ Diameter, Bore, Deep, Angle float64 }

// CounterboreLimits are the limits of the diameter of a counterbore (DIN 974-1, from memory).
const CounterboreLimits = "H13"

// HeadFor gives the head of a screw ("cap", "countersunk") for a diameter of thread, mm. Countersunk heads differ by what
// drives them, a hexagon key or a blade; where that is not said, or neither, the wider one counts, so that either lies below
// the face. False where the table has none.
func HeadFor(head string, thread float64, driver string) (Head, bool) {
	if head == "raised countersunk" {
		head = "countersunk"
	}
	out, found := Head{}, false
	for _, r := range load("head").rows {
		if r.text("head") != head || math.Abs(r.number("thread_mm")-thread) >= hair {
			continue
		}
		h := Head{r.number("diameter_mm"), r.number("bore_mm"), r.number("deep_mm"), r.number("angle_deg")}
		switch {
		case drivenBy(driver) == r.text("key"):
			return h, true
		case h.Diameter > out.Diameter:
			out, found = h, true
		}
	}
	return out, found
}

// drivenBy is which of the two keys of the table people mean; "" where they mean neither.
func drivenBy(driver string) string {
	w := strings.ToLower(driver)
	switch {
	case strings.Contains(w, "hexagon"), strings.Contains(w, "hex key"), strings.Contains(w, "socket"):
		return "hexagon key"
	case strings.Contains(w, "slot"), strings.Contains(w, "blade"):
		return "blade"
	}
	return ""
}
