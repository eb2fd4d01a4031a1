package solid

// Flat is something that takes up room on a flat face: all within R of the stretch A–B, or
// the box from Lo to Hi.
type Flat struct {
	A, B   [2]float64
	R      float64
	Box    bool
	Lo, Hi [2]float64
}

// SparePlace gives a place within the rectangle lo–hi that nothing taken covers; false where
// there is none. It is decided at critical points, as every covering test is, so a spare
// place is found however small.
func SparePlace(lo, hi [2]float64, taken []Flat) ([2]float64, bool) {
	region := []flat{rectangle(pt{lo[0], lo[1]}, pt{hi[0], hi[1]})}
	var open []opening
	for i, t := range taken {
		f := stadium(pt{t.A[0], t.A[1]}, pt{t.B[0], t.B[1]}, t.R)
		if t.Box {
			f = rectangle(pt{t.Lo[0], t.Lo[1]}, pt{t.Hi[0], t.Hi[1]})
		}
		if f.ok {
			open = append(open, opening{take: f, by: i})
		}
	}
	var c cover
	q, ok := c.uncovered(region, open)
	return [2]float64{q.x, q.y}, ok
}

// halvings is how often the room round a place is halved in: to a thousandth of the rectangle.
const halvings = 10

// RoomiestPlace gives the place within the rectangle lo–hi that lies farthest from its edges and from all that
// is taken, and how far, to a thousandth of the rectangle's shorter side; false where nothing is spare.
func RoomiestPlace(lo, hi [2]float64, taken []Flat) (at [2]float64, far float64, ok bool) {
	at, ok = SparePlace(lo, hi, taken)
	if !ok {
		return at, 0, false
	}
	most := min(hi[0]-lo[0], hi[1]-lo[1]) / 2
	for range halvings {
		half := (far + most) / 2
		grown := make([]Flat, len(taken))
		for i, t := range taken {
			grown[i] = Flat{A: t.A, B: t.B, R: t.R + half, Box: t.Box, Lo: [2]float64{t.Lo[0] - half, t.Lo[1] - half}, Hi: [2]float64{t.Hi[0] + half, t.Hi[1] + half}}
		}
		p, found := SparePlace([2]float64{lo[0] + half, lo[1] + half}, [2]float64{hi[0] - half, hi[1] - half}, grown)
		if found {
			at, far = p, half
		} else {
			most = half
		}
	}
	return at, far, true
}
