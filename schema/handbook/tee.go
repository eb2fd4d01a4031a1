package handbook

import "math"

// TeeSlot gives foot, its height and the least depth of a tee slot by the width of its throat,
// mm, by ISO 299. False for a throat that the standard does not have.
func TeeSlot(throat float64) (foot, height, depth float64, ok bool) {
	for _, r := range load("tee_slot").rows {
		if math.Abs(r.number("throat_mm")-throat) < hair {
			return r.number("foot_mm"), r.number("foot_height_mm"), r.number("depth_mm"), true
		}
	}
	return 0, 0, 0, false
}
