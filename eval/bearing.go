package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
	"fettle/schema/text"
)

// Bearing is what lies under the tip of one strap clamp.
type Bearing struct {
	Place text.Place
	At    solid.Vec // where the tip presses, in the machine's frame
	Metal bool      // there is metal under it at all
	Foot  float64   // lowest metal under the tip, above the table
	Seat  float64   // what the piece lies on there, above the table
	// Against says that it presses the piece on the upright of an angle plate; Foot is then how far that
	// metal stands off it, less than 0, and Borne whether the upright is behind it.
	Against bool
	Borne   model.Known[bool] // table, packing or a jack stands under that metal
}

// Bearings lists the clamps of a holding whose places are known and that press from above.
func (h *Holding) Bearings() []Bearing {
	if h.Choice.Clamps == nil || h.Unplayed != "" {
		return nil
	}
	var out []Bearing
	for i := range h.Work.SetUp.Clamps {
		c := &h.Work.SetUp.Clamps[i]
		at, ok := h.pressed(c)
		if !ok {
			continue
		}
		b := Bearing{Place: c.At.At, At: at, Seat: h.Lo[2] + h.Sunk, Against: h.Choice.Plate != nil}
		if b.Against {
			h.bearUpright(&b, c.Tip)
		} else {
			h.bear(&b, c.Tip)
		}
		out = append(out, b)
	}
	return out
}

// pressed is where the tip of a clamp presses, in the machine's frame. False where its place
// is not known, or it presses on a face that does not look up.
func (h *Holding) pressed(c *model.ClampAt) (solid.Vec, bool) {
	pos, ok := c.At.Get()
	face, on := h.Choice.Up, h.clampOn(c)
	if h.Choice.Plate != nil {
		face = h.Choice.Back.Opposite()
	}
	if !ok || on != face {
		return solid.Vec{}, false
	}
	v, known := h.Part.locate(face, pos)
	a, b := across(face)
	if !known[a] || !known[b] {
		return solid.Vec{}, false
	}
	v[face.Axis()] = h.Before.Faces[face].At
	return h.Pose.Point(v), true
}

// bear finds what lies under a tip. Without its width the tip is a point: what a point finds
// a wider tip finds as well, and what it does not find hangs on the width.
func (h *Holding) bear(b *Bearing, tip model.Known[float64]) {
	r := square(b.At, math.Max(tip.Or(0), 2*model.Grain))
	b.Foot, b.Metal = h.footUnder(r)
	yes, lacks := h.borne(r)
	switch {
	case yes:
		b.Borne = model.Sure(true)
	case !tip.Is():
		b.Borne = model.Lacking[bool](tip.Missing())
	case len(lacks) > 0:
		b.Borne = model.Lacking[bool](lacks)
	default:
		b.Borne = model.Sure(false)
	}
}

// square is a square of the width given about a place, seen from above.
func square(at solid.Vec, width float64) solid.Rect {
	return solid.Rect{Lo: [2]float64{at[0] - width/2, at[1] - width/2}, Hi: [2]float64{at[0] + width/2, at[1] + width/2}}
}

// footUnder is how high above the table the metal under a rectangle ends, on the vertical
// through its middle. False where there is none.
func (h *Holding) footUnder(r solid.Rect) (float64, bool) {
	from := solid.Vec{(r.Lo[0] + r.Hi[0]) / 2, (r.Lo[1] + r.Hi[1]) / 2, h.Lo[2] - 1}
	spans := h.Piece.Ray(from, solid.Vec{0, 0, 1})
	if len(spans) == 0 {
		return 0, false
	}
	return from[2] + spans[0].A, true
}

// borne says whether something stands under the metal in a rectangle: the table or a board
// where the piece lies on it, else packing or a jack at its own place.
func (h *Holding) borne(r solid.Rect) (bool, []model.Lack) {
	on := func(at float64, r solid.Rect) bool { return h.Piece.Contact(2, -1, at, r).Touches }
	for _, j := range h.Work.SetUp.Jacks.V {
		if v, ok := h.under(j); ok && v[0] >= r.Lo[0] && v[0] <= r.Hi[0] && v[1] >= r.Lo[1] && v[1] <= r.Hi[1] {
			return true, nil
		}
	}
	if h.Vee != nil && h.Vee.Standing() && h.Vee.Looks == "up" {
		return h.inVee(solid.Vec{(r.Lo[0] + r.Hi[0]) / 2, (r.Lo[1] + r.Hi[1]) / 2, 0})
	}
	base := h.Lo[2] + h.Sunk
	flat := h.Lo[2] < model.Grain || h.Choice.Divided != nil && len(h.Work.SetUp.Packing) == 0 // on the table, or on a rotary table
	var lacks []model.Lack
	for i := range h.Work.SetUp.Packing {
		p := &h.Work.SetUp.Packing[i]
		pos, ok := p.At.Get()
		if !ok {
			flat = true // a board under the whole
			continue
		}
		v, ok := h.under(pos)
		size, sized := p.Size.Get()
		switch {
		case !ok:
		case !sized || len(size) != 2:
			lacks = append(lacks, p.Size.Missing()...)
		default:
			q := solid.Rect{
				Lo: [2]float64{math.Max(r.Lo[0], v[0]-size[0]/2), math.Max(r.Lo[1], v[1]-size[1]/2)},
				Hi: [2]float64{math.Min(r.Hi[0], v[0]+size[0]/2), math.Min(r.Hi[1], v[1]+size[1]/2)},
			}
			if q.Lo[0] < q.Hi[0] && q.Lo[1] < q.Hi[1] && on(p.Under.V, q) {
				return true, nil
			}
		}
	}
	if flat && on(base, r) {
		return true, nil
	}
	if d := h.Choice.Divided; d != nil && h.Choice.Vise == nil && h.maySink(d) {
		lacks = append(lacks, d.Table.Bore.Missing()...)
	}
	return false, lacks
}

// rise is how high the piece stands on its packing: pieces that lie side by side carry it
// by the one that lifts it most, each from the underside as it is at its place, so that one
// that fills a hollow lifts nothing.
func (h *Holding) rise() float64 {
	most := 0.0
	for i := range h.Work.SetUp.Packing {
		p := &h.Work.SetUp.Packing[i]
		hollow := 0.0
		if pos, ok := p.At.Get(); ok {
			if v, ok := h.under(pos); ok {
				if foot, metal := h.footUnder(square(v, 0)); metal {
					hollow = foot - h.Lo[2]
				}
			}
		}
		most = math.Max(most, p.Under.V-hollow)
	}
	return most
}

// under is a place on the underside of the piece, in the machine's frame.
func (h *Holding) under(pos model.Position) (solid.Vec, bool) {
	down := h.Choice.Up.Opposite()
	v, known := h.Part.locate(down, pos)
	a, b := across(down)
	if !known[a] || !known[b] {
		return v, false
	}
	v[down.Axis()] = h.Before.Faces[down].At
	return h.Pose.Point(v), true
}
